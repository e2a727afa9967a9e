/** `--also FORMAT=FILE`: further formats of the same run, each in a file. */
import { resolve } from "node:path";
import { type LintFormat, lintFormats } from "../formats/lint-formats.ts";
import { checkResultFile } from "./result-file.ts";
import { UsageError } from "./usage-error.ts";

export interface Also {
  readonly format: LintFormat;
  readonly file: string;
}

/**
 * The formats and files asked for.
 * @param output the file of `--output`; @param inputs files that are read and must not be written over
 * @throws UsageError for a format that does not exist, two results for one file, or a file of records
 */
export function alsoList(
  texts: readonly string[],
  output: string | undefined,
  inputs: readonly (string | undefined)[] = [],
): Also[] {
  const taken = new Set(output === undefined ? [] : [resolve(output)]);
  return texts.map((text) => {
    const [, name, file = ""] = /^([^=]*)=(.+)$/.exec(text) ?? [];
    const format = lintFormats.find((one) => one === name);
    if (format === undefined || file === "")
      throw new UsageError(
        `--also ${text}: write FORMAT=FILE, such as --also sarif=carcase.sarif; formats are ${lintFormats.join(", ")}`,
      );
    if (taken.has(resolve(file))) throw new UsageError(`--also ${text}: another result goes to that file`);
    checkResultFile("--also", file, inputs);
    taken.add(resolve(file));
    return { format, file };
  });
}
