/** Archives on disk for the tests, read by the real reader. */
import { type Archive, readCases } from "../../src/cases/index.ts";
import { folderInTurns } from "../cases/temporary.ts";

const inTurns = folderInTurns();

/** Reads files from a folder that holds nothing else. @param files content by path; a record becomes YAML */
export function archiveOf(files: Readonly<Record<string, object>>): Archive {
  const written = Object.entries({ "carcase.yaml": { format: 1 }, ...files }).map(
    ([path, content]) => [path, JSON.stringify(content)] as const,
  );
  const archive = readCases(["."], { from: inTurns(Object.fromEntries(written)) });
  if (archive.unreadable.length > 0) throw new Error(JSON.stringify(archive.unreadable));
  return archive;
}

export const farm = (id: string) => ({ format: 1, farm: id });
export const visit = (id: string, date: string) => ({ format: 1, visit: id, date });
