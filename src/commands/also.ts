/** `--also FORMAT=FILE`: further formats of the same run, each in a file. */
import { type LintFormat, lintFormats } from "../formats/lint/formats.ts";
import { checkResultFile, isStandardOutput } from "./result-file.ts";
import { UsageError } from "./usage-error.ts";

export interface Also {
  readonly format: LintFormat;
  readonly file: string;
  /** As written, for messages. */
  readonly option: string;
}

/**
 * The formats and files asked for.
 * @param inputs files that are read and must not be written over
 * @throws UsageError for a format that does not exist, or a file of records
 */
export function alsoList(texts: readonly string[], inputs: readonly (string | undefined)[] = []): Also[] {
  return texts.map((text) => {
    const [, name, file = ""] = /^([^=]*)=(.+)$/.exec(text) ?? [];
    const format = lintFormats.find((one) => one === name);
    if (format === undefined || file === "")
      throw new UsageError(
        `--also ${text}: write FORMAT=FILE, such as --also sarif=carcase.sarif; formats are ${lintFormats.join(", ")}`,
      );
    if (isStandardOutput(file))
      throw new UsageError(
        `--also ${text}: standard output is for the result itself; write --format ${format}, and --also text=FILE for the text`,
      );
    checkResultFile("--also", file, inputs);
    return { format, file, option: `--also ${text}` };
  });
}
