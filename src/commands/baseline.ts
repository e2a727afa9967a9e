/** The baseline of `carcase lint`: read, written, and shrunk when findings of an old archive are gone. */
import { existsSync, readFileSync } from "node:fs";
import { dirname, relative, resolve, sep } from "node:path";
import {
  againstBaseline,
  type Baseline,
  type FileKey,
  formatBaseline,
  type LintResult,
  makeBaseline,
  parseBaseline,
  samePaths,
} from "../lint/index.ts";
import { count } from "../words/listing.ts";
import { UsageError } from "./usage-error.ts";
import { writeWhole } from "./write-file.ts";

export interface BaselineOptions {
  readonly baseline?: string;
  readonly writeBaseline?: string;
  readonly frozenBaseline?: true;
  readonly quiet?: true;
}

/** What was linted, as far as a baseline must know it. */
export interface Linted {
  readonly paths: readonly string[];
  /** Every rule was asked and everything could be read. */
  readonly full: boolean;
}

/** @throws UsageError when the options contradict each other */
export function checkBaselineOptions(options: BaselineOptions, paths: readonly string[]): void {
  const { baseline, writeBaseline, frozenBaseline } = options;
  if (baseline !== undefined && writeBaseline !== undefined)
    throw new UsageError("--baseline and --write-baseline: choose one; --write-baseline starts anew");
  if (frozenBaseline && baseline === undefined)
    throw new UsageError("--frozen-baseline goes with --baseline FILE");
  if (writeBaseline !== undefined && paths.includes("-"))
    throw new UsageError("--write-baseline: a baseline is of files, not of standard input");
}

/**
 * Takes the known findings out of a result; writes the baseline, or shrinks it, when that is asked for.
 * @throws UsageError when the baseline cannot be read or written
 */
export function withBaseline(result: LintResult, linted: Linted, options: BaselineOptions): LintResult {
  if (options.writeBaseline !== undefined) return writeNew(options.writeBaseline, result, linted, options);
  if (options.baseline === undefined) return result;
  const file = options.baseline;
  const key = keyFrom(file);
  const baseline = readBaseline(file);
  const compared = againstBaseline(result, baseline, key);
  if (compared.stale > 0 && linted.full && samePaths(baseline, linted.paths, key)) {
    const gone = `${count(compared.stale, "finding")} of ${file} no longer ${compared.stale === 1 ? "occurs" : "occur"}`;
    if (options.frozenBaseline || isContinuousIntegration())
      process.stderr.write(`carcase: ${gone}; run with --baseline outside CI to take them out.\n`);
    else {
      writeWhole(file, formatBaseline(compared.remaining));
      if (!options.quiet) process.stderr.write(`carcase: ${gone}; taken out of the baseline.\n`);
    }
  }
  return compared.result;
}

function writeNew(
  file: string,
  result: LintResult,
  { paths, full }: Linted,
  { quiet }: BaselineOptions,
): LintResult {
  if (!full)
    throw new UsageError(
      "--write-baseline: not written; a baseline is made by all rules from files that can all be read",
    );
  // A case file given by mistake must not be lost.
  if (existsSync(file)) readBaseline(file);
  const key = keyFrom(file);
  const baseline = makeBaseline(result.findings, paths, key);
  writeWhole(file, formatBaseline(baseline));
  const compared = againstBaseline(result, baseline, key).result;
  if (!quiet)
    process.stderr.write(
      `carcase: ${count(compared.summary.baselined, "finding")} written to ${file}; use --baseline ${file} from now on.\n`,
    );
  return compared;
}

function readBaseline(file: string): Baseline {
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? "unknown reason";
    throw new UsageError(
      code === "ENOENT"
        ? `there is no baseline ${file}; carcase lint --write-baseline ${file} makes one`
        : `cannot read the baseline ${file} (${code})`,
    );
  }
  const baseline = parseBaseline(text);
  if (typeof baseline === "string")
    throw new UsageError(
      `${file} is not a baseline: ${baseline.replace(/\.$/, "")}. Put back its last version, or write a new one under another name.`,
    );
  return baseline;
}

/** Paths in a baseline start from its own folder, so that it holds wherever the program is started. */
function keyFrom(baseline: string): FileKey {
  const folder = dirname(resolve(baseline));
  return (file) => relative(folder, resolve(file)).split(sep).join("/") || ".";
}

function isContinuousIntegration(): boolean {
  const { CI: ci } = process.env;
  return ci !== undefined && !["", "0", "false"].includes(ci.toLowerCase());
}
