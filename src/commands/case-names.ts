/** Cases by their names instead of their files: `carcase explain alder-2026-03-14-03`. */
import { existsSync, readdirSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { kindOf } from "../cases/files/file-kind.ts";
import { readInput } from "../cases/files/input.ts";
import { maxBytes } from "../cases/files/read-text.ts";
import { ArchiveReader, byFile, type Case, readCases } from "../cases/index.ts";

/** A name of a case that neither a shell nor a pattern reads as anything else. */
export const plainName = /^[a-z0-9][a-z0-9._-]*$/i;

/** What tells that a folder lies in an archive: nobody wants a mistyped path to be looked for in a whole home folder. */
const records = ["farm.yaml", "visit.yaml"];
const marks = ["carcase.yaml", ...records, ".git"];

const isInArchive = (folder: string): boolean =>
  marks.some((mark) => existsSync(join(folder, mark))) ||
  (dirname(folder) !== folder && isInArchive(dirname(folder)));

/** Where cases are looked for: the current folder, if it is one of an archive; else the farms and visits that lie in it. */
const archivesHere = (): readonly string[] =>
  isInArchive(resolve("."))
    ? ["."]
    : readdirSync(".", { withFileTypes: true })
        .filter((entry) => entry.isDirectory() && records.some((name) => existsSync(join(entry.name, name))))
        .map(({ name }) => name);

/** All cases of the archive around the current folder, or of those in it. */
export function casesHere(): readonly Case[] {
  const paths = archivesHere();
  return paths.length === 0 ? [] : readCases(paths).cases;
}

/**
 * Those of a name that fits. Only folders are read in which a file looks like one: an archive has thousands of cases, and
 * what was only mistyped is the name of none.
 */
export function casesNamed(fits: (name: string) => boolean): readonly Case[] {
  const paths = archivesHere();
  if (paths.length === 0) return [];
  const reader = new ArchiveReader(paths);
  return reader.folders
    .filter(({ files }) => files.some(({ location }) => namesAt(location).some(fits)))
    .flatMap((folder) => reader.read(folder).cases)
    .filter(({ id }) => fits(id))
    .sort(byFile);
}

/** The names that a file may have as a case: by its key, however it is written, or without one by its own name. */
function namesAt(location: string): readonly string[] {
  const input = readInput(location, maxBytes);
  const text = input.ok ? input.bytes.toString("latin1") : "";
  const keys = text.matchAll(/case["']?\s{0,9}:\s{0,9}["']?([\w.-]+)/g);
  return [basename(location).replace(/\.ya?ml$/i, ""), ...[...keys].map(([, name = ""]) => name)];
}

/** Paths of which those that are the name of a case are the path of its file. */
export function withFilesOfNames(paths: readonly string[]): readonly string[] {
  const isName = (path: string): boolean => plainName.test(path) && kindOf(path) === "nothing";
  const names = new Set(paths.filter(isName));
  if (names.size === 0) return paths;
  const files = new Map(
    casesNamed((name) => names.has(name))
      .map(({ id, file }) => [id, file] as const)
      .reverse(),
  );
  return paths.map((path) => files.get(path) ?? path);
}
