/** What stands at a path, without opening it. */
import { lstatSync, readdirSync, realpathSync, statSync } from "node:fs";
import { note } from "./witness.ts";

export type FileKind = "file" | "folder" | "loop" | "broken link" | "nothing";

/** Links are followed. Pipes and devices count as files, and are refused when they are read. */
export function kindOf(path: string): FileKind {
  const kind = kindAt(path);
  note("kind", path, () => kind);
  return kind;
}

function kindAt(path: string): FileKind {
  try {
    const status = lstatSync(path, { throwIfNoEntry: false });
    if (status === undefined) return "nothing";
    if (!status.isSymbolicLink()) return status.isDirectory() ? "folder" : "file";
    const target = statSync(path, { throwIfNoEntry: false });
    return target === undefined ? "broken link" : target.isDirectory() ? "folder" : "file";
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    return code === "ELOOP" ? "loop" : code === "EACCES" ? "file" : "nothing";
  }
}

/** Whether a plain file stands at a path, or at the end of its links. */
export function isPlainFile(path: string): boolean {
  const isPlain = isPlainAt(path);
  note("plain", path, () => String(isPlain));
  return isPlain;
}

function isPlainAt(path: string): boolean {
  try {
    return statSync(path, { throwIfNoEntry: false })?.isFile() === true;
  } catch {
    return false;
  }
}

/** Whether the path itself is a link. */
export function isLink(path: string): boolean {
  const is = lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true;
  note("link", path, () => String(is));
  return is;
}

/** One name for a file, however it was reached. */
export function sameFile(location: string): string {
  const real = realPath(location);
  note("real", location, () => real);
  return real;
}

function realPath(location: string): string {
  try {
    return realpathSync.native(location);
  } catch {
    return location;
  }
}

/** The names in a folder, in order; none where nobody may look. */
export function namesIn(folder: string): readonly string[] {
  const names = namesAt(folder);
  note("names", folder, () => joined(names));
  return names;
}

const joined = (names: readonly string[]): string => names.join("\0");

function namesAt(folder: string): string[] {
  try {
    return readdirSync(folder).sort();
  } catch {
    return [];
  }
}

/** `results.yaml`, `results-pcr.yaml`, `results_2.yml` */
export const isResultsName = (name: string): boolean => /^results(?:[-_. ].*)?\.ya?ml$/i.test(name);

/** Those of the names in a folder that are the names of results. */
export function resultsIn(folder: string): readonly string[] {
  const names = namesAt(folder).filter(isResultsName);
  note("results", folder, () => joined(names));
  return names;
}

/** What `resultsIn` notes. @param names those in the folder, in any order */
export const resultsAmong = (names: readonly string[]): string => joined(names.filter(isResultsName).sort());

/** Asks the questions of this file once more. */
export const askAgain: Readonly<Record<string, (path: string) => string>> = {
  kind: kindAt,
  plain: (path) => String(isPlainAt(path)),
  link: (path) => String(isLink(path)),
  real: realPath,
  names: (path) => joined(namesAt(path)),
  results: (path) => joined(namesAt(path).filter(isResultsName)),
};
