/** Tracings and photographs that cases name, and scales that settings name, are no files for results. */
import { dirname, resolve } from "node:path";
import type { Archive, Case } from "../cases/index.ts";
import { photographs, tracings } from "../record/index.ts";
import { identity } from "./file-identity.ts";
import type { ResultFile } from "./result-file.ts";

/** @returns why nothing may be written, in a sentence; undefined where no record names a file for results */
export function whyNamed(
  { cases, scales }: Pick<Archive, "cases" | "scales">,
  results: readonly ResultFile[],
): string | undefined {
  if (results.length === 0) return undefined;
  const wanted = new Map(results.map(({ option, file }) => [identity(file), option]));
  const refused = (file: string, by: string): string | undefined => {
    const option = wanted.get(identity(file));
    return option === undefined
      ? undefined
      : `${option}: ${by}; nothing was written. Give the result a name of its own.`;
  };
  for (const { file } of scales) {
    const why = refused(file, "that file is a scale of the settings");
    if (why !== undefined) return why;
  }
  for (const one of cases)
    for (const { file, line } of namedBy(one)) {
      const why = refused(resolve(dirname(one.file), file), `${one.file} names that file in line ${line}`);
      if (why !== undefined) return why;
    }
  return undefined;
}

/** The files that cases name. */
export const filesNamedBy = (cases: readonly Case[]): string[] =>
  cases.flatMap((one) =>
    [...tracings(one), ...photographs(one)].map(({ file }) => resolve(dirname(one.file), file)),
  );

/** Whether one of these files is to be written. */
export function isAnyOf(files: readonly string[], results: readonly ResultFile[] = []): boolean {
  if (results.length === 0 || files.length === 0) return false;
  const wanted = new Set(results.map(({ file }) => identity(file)));
  return files.some((file) => wanted.has(identity(file)));
}

const namedBy = (one: Case): { file: string; line: number }[] =>
  [...tracings(one), ...photographs(one)].map(({ file, path }) => ({
    file,
    line: one.document.where(path).line,
  }));
