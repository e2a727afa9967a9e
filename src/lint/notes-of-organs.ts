/** What is written in free words about organs: the site and note of each finding, and the note of the organ. */
import { type Case, formatPath, type Path } from "../cases/index.ts";
import { organs } from "../knowledge/index.ts";
import { statesOf } from "./states.ts";

export interface OrganNote {
  readonly text: string;
  readonly path: Path;
  readonly name: string;
}

export function notesOfOrgans(one: Case): OrganNote[] {
  const notes = new Map<string, OrganNote>();
  const add = (text: string | undefined, path: Path): void => {
    const name = formatPath(path);
    if (text !== undefined) notes.set(name, { text, path, name });
  };
  for (const organ of organs)
    for (const { entry, path, findings } of statesOf(one, organ)) {
      add(entry?.note, [...path, "note"]);
      for (const { finding, path: at } of findings) {
        add(finding.site, [...at, "site"]);
        add(finding.note, [...at, "note"]);
      }
    }
  return [...notes.values()];
}
