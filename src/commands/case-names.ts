/** Cases by their names instead of their files: `carcase explain alder-2026-03-14-03`. */
import { existsSync, readdirSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { kindOf } from "../cases/files/file-kind.ts";
import { readCases } from "../cases/index.ts";

/** A name of a case that neither a shell nor a pattern reads as anything else. */
export const plainName = /^[a-z0-9][a-z0-9._-]*$/i;

/** What tells that a folder lies in an archive: nobody wants a mistyped path to be looked for in a whole home folder. */
const records = ["farm.yaml", "visit.yaml"];
const marks = ["carcase.yaml", ...records, ".git"];

const isInArchive = (folder: string): boolean =>
  marks.some((mark) => existsSync(join(folder, mark))) ||
  (dirname(folder) !== folder && isInArchive(dirname(folder)));

/** All cases below the current folder, if it is one of an archive; else those of the farms and visits that lie in it. */
export function casesHere() {
  if (isInArchive(resolve("."))) return readCases(["."]).cases;
  const folders = readdirSync(".", { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && records.some((name) => existsSync(join(entry.name, name))))
    .map(({ name }) => name);
  return folders.length === 0 ? [] : readCases(folders).cases;
}

/** Paths of which those that are the name of a case are the path of its file. */
export function withFilesOfNames(paths: readonly string[]): readonly string[] {
  const isName = (path: string): boolean => plainName.test(path) && kindOf(path) === "nothing";
  if (!paths.some(isName)) return paths;
  const cases = casesHere();
  return paths.map((path) => (isName(path) ? cases.find(({ id }) => id === path)?.file : undefined) ?? path);
}
