/** Where a result may go: never over a file that it was made from, nor over any record. */
import { existsSync, realpathSync } from "node:fs";
import { resolve } from "node:path";
import { UsageError } from "./usage-error.ts";

/**
 * Refuses a file for results that is one of the inputs, or that is YAML and already there: cases, visits, farms,
 * settings and scales are YAML, and no result is.
 * @param option as written, for the message; @param inputs paths that were asked about
 * @throws UsageError when the file must not be written over
 */
export function checkResultFile(option: string, file: string, inputs: readonly (string | undefined)[]): void {
  if (!existsSync(file)) return;
  const target = realpathSync(file);
  const isInput = inputs.some(
    (input) => input !== undefined && existsSync(input) && realpathSync(input) === target,
  );
  if (isInput)
    throw new UsageError(
      `${option} ${file}: that file is read by this very command; nothing was written. Give the result a name of its own.`,
    );
  if (isYaml(target) || isYaml(resolve(file)))
    throw new UsageError(
      `${option} ${file}: that YAML file is already there and would be lost, and no result is YAML; nothing was written. Give the result a name of its own.`,
    );
  if (isPicture(target) || isPicture(resolve(file)))
    throw new UsageError(
      `${option} ${file}: that picture is already there and would be lost, and no result is a picture; nothing was written. Give the result a name of its own.`,
    );
}

const isYaml = (file: string): boolean => /\.ya?ml$/i.test(file);

/** Tracings and photographs belong to cases, and no result has their form. */
const isPicture = (file: string): boolean => /\.(?:svg|geojson|jpe?g|png|tiff?|heic|webp)$/i.test(file);
