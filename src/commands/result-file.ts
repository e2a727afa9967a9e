/** Where a result may go: never over a file that it was made from, nor where it would be taken for a record. */
import { existsSync, fstatSync, statSync } from "node:fs";
import { identity, numberOf, realTarget } from "./file-identity.ts";
import { UsageError } from "./usage-error.ts";

/** A file for a result. */
export interface ResultFile {
  /** The option with its file, as written. */
  readonly option: string;
  readonly file: string;
}

/** Names of the standard output. */
export const isStandardOutput = (file: string): boolean =>
  file === "-" || /^\/(?:dev\/(?:stdout|fd\/1)|proc\/self\/fd\/1)$/.test(file);

/**
 * Refuses a file for results that is one of the inputs, or that has the name of a record: cases, visits, farms,
 * settings and scales are YAML, and no result is.
 * @param inputs what the command reads, as named on the command line
 * @throws UsageError when the file must not be written
 */
export function checkResultFile(
  { option, file }: ResultFile,
  inputs: readonly (string | false | undefined)[],
): void {
  const there = existsSync(file);
  if (there && inputs.some((input) => typeof input === "string" && inputIdentity(input) === identity(file)))
    throw new UsageError(
      `${option}: that file is read by this very command; nothing was written. Give the result a name of its own.`,
    );
  if (isYaml(realTarget(file)) || isYaml(file))
    throw new UsageError(
      there
        ? `${option}: that YAML file is already there and would be lost, and no result is YAML; nothing was written. Give the result a name of its own.`
        : `${option}: no result is YAML, and a file of that name would be read as a record; nothing was written. Give it another ending, such as .txt or .json.`,
    );
}

const inputIdentity = (input: string): string | undefined =>
  input === "-" ? numberOf(fstatSync(0, { bigint: true })) : identity(input);

/**
 * Refuses two results for one file, whether it is there or not. Pipes and devices take all they are given.
 * @throws UsageError
 */
export function checkApart(results: readonly ResultFile[]): void {
  const taken = new Map<string, string>();
  for (const { option, file } of results) {
    if (existsSync(file) && !statSync(file).isFile()) continue;
    const target = identity(file);
    const other = taken.get(target);
    if (other !== undefined)
      throw new UsageError(
        `${option}: another result goes to that file (${other}); give each a name of its own`,
      );
    taken.set(target, option);
  }
}

/** The files that were asked for, each with its option. */
export const resultFiles = (
  options: readonly (readonly [option: string, file: string | undefined])[],
): ResultFile[] =>
  options.flatMap(([option, file]) => (file === undefined ? [] : [{ option: `${option} ${file}`, file }]));

const isYaml = (file: string): boolean => /\.ya?ml$/i.test(file);
