/** Files of pigs that lie in the folder of a visit, or in one below it that belongs to the visit, by their numbers. */
import { type Dirent, readdirSync } from "node:fs";
import { join } from "node:path";

export function pigFiles(folder: string): Map<number, string> {
  const found = new Map<number, string>();
  for (const entry of entriesOf(folder)) {
    const path = join(folder, entry.name);
    const number = /^pig-(\d{1,4})\.ya?ml$/i.exec(entry.name)?.[1];
    if (number !== undefined) found.set(Number(number), path);
    else if (entry.isDirectory() && !entry.name.startsWith(".") && !isVisit(path))
      for (const [one, file] of pigFiles(path)) found.set(one, file);
  }
  return found;
}

const isVisit = (folder: string): boolean => entriesOf(folder).some(({ name }) => name === "visit.yaml");

function entriesOf(folder: string): Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    // It is not there yet, or nobody may look.
    return [];
  }
}
