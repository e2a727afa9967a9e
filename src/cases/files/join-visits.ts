/** Puts cases and visits together. */
import type { Case, Visit, VisitContext } from "../model/model.ts";

/** What is known of the folders, by their location. */
export interface VisitFolders {
  /** Folders with a visit whose files were all looked at. */
  readonly walked: ReadonlySet<string>;
  /** Folders whose visit file was asked for by itself. */
  readonly asked: ReadonlySet<string>;
  /** Folders with a file that could not be read. */
  readonly broken: ReadonlySet<string>;
  visit(folder: string): VisitContext | undefined;
}

/** Visits with the cases of their folder: those looked at without any case first, then in the order of the cases. */
export function joinVisits(cases: readonly Case[], folders: VisitFolders): Visit[] {
  const byFolder = new Map<string, Case[]>();
  for (const folder of [...folders.walked, ...folders.asked]) byFolder.set(folder, []);
  for (const one of cases) {
    if (one.visit === undefined) continue;
    const inFolder = byFolder.get(one.visit.folder) ?? [];
    inFolder.push(one);
    byFolder.set(one.visit.folder, inFolder);
  }
  return [...byFolder].flatMap(([folder, inVisit]) => {
    const visit = folders.visit(folder);
    if (visit === undefined) return [];
    // A case that could not be read, or whose name could not, is not absent.
    const nameless = inVisit.some((one) => one.faults.some(({ path }) => path[0] === "case"));
    const complete = folders.walked.has(folder) && !folders.broken.has(folder) && !nameless;
    return [{ ...visit, cases: inVisit, complete }];
  });
}
