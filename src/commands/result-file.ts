/** Where a result may go: never over a file that it was made from, nor over any record, nor where it would be taken for one. */
import { existsSync, realpathSync, statSync } from "node:fs";
import { realTarget } from "./files.ts";
import { UsageError } from "./usage-error.ts";

/** Names of the standard output. */
export const isStandardOutput = (file: string): boolean =>
  file === "-" || /^\/(?:dev\/(?:stdout|fd\/1)|proc\/self\/fd\/1)$/.test(file);

/**
 * Refuses a file for results that is one of the inputs, or that has the name of a record: cases, visits, farms,
 * settings and scales are YAML, and no result is.
 * @param option as written, for the message; @param inputs paths that were asked about
 * @throws UsageError when the file must not be written
 */
export function checkResultFile(option: string, file: string, inputs: readonly (string | undefined)[]): void {
  const target = realTarget(file);
  const there = existsSync(file);
  const isInput = inputs.some(
    (input) => input !== undefined && existsSync(input) && realpathSync(input) === target,
  );
  if (there && isInput)
    throw new UsageError(
      `${option} ${file}: that file is read by this very command; nothing was written. Give the result a name of its own.`,
    );
  if (isYaml(target) || isYaml(file))
    throw new UsageError(
      there
        ? `${option} ${file}: that YAML file is already there and would be lost, and no result is YAML; nothing was written. Give the result a name of its own.`
        : `${option} ${file}: no result is YAML, and a file of that name would be read as a record; nothing was written. Give it another ending, such as .txt or .json.`,
    );
  if (there && (isPicture(target) || isPicture(file)))
    throw new UsageError(
      `${option} ${file}: that picture is already there and would be lost, and no result is a picture; nothing was written. Give the result a name of its own.`,
    );
}

/**
 * Refuses two results for one file, whether it is there or not. Pipes and devices take all they are given.
 * @param results options as written, each with its file
 */
export function checkApart(
  results: readonly { readonly option: string; readonly file: string | undefined }[],
): void {
  const taken = new Map<string, string>();
  for (const { option, file } of results) {
    if (file === undefined || (existsSync(file) && !statSync(file).isFile())) continue;
    const target = realTarget(file);
    const other = taken.get(target);
    if (other !== undefined)
      throw new UsageError(
        `${option}: another result goes to that file (${other}); give each a name of its own`,
      );
    taken.set(target, option);
  }
}

const isYaml = (file: string): boolean => /\.ya?ml$/i.test(file);

/** Tracings and photographs belong to cases, and no result has their form. */
const isPicture = (file: string): boolean => /\.(?:svg|geojson|jpe?g|png|tiff?|heic|webp)$/i.test(file);
