/** The baseline of `carcase lint`: read, written, and shrunk when findings of an old archive are gone. */
import { existsSync } from "node:fs";
import { dirname, relative, resolve, sep } from "node:path";
import { readInput } from "../cases/files/input.ts";
import { Repository } from "../cases/files/repository.ts";
import { notShown } from "../cases/index.ts";
import {
  againstBaseline,
  type Baseline,
  type FileKey,
  formatBaseline,
  type LintedParts,
  type LintOptions,
  type LintResult,
  makeBaseline,
  parseBaseline,
  samePaths,
  unaskedEntries,
} from "../lint/index.ts";
import { count } from "../words/listing.ts";
import type { CommonOptions } from "./options.ts";
import { checkResultFile, resultFiles } from "./result-file.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";
import { checkWritable, FileKept, type Keeps } from "./write-file.ts";

export interface BaselineOptions {
  readonly baseline?: string;
  readonly writeBaseline?: string;
  readonly frozenBaseline?: true;
}

type BaselineRun = Run<CommonOptions & BaselineOptions>;

/** What was linted, as far as a baseline must know it. */
export interface Linted {
  readonly parts: readonly LintedParts[];
  readonly options: LintOptions;
  /** Every rule was asked, but for what settings turn off, and every file could be read. */
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
 * Reads the baseline, before anything is written.
 * @param full whether one can be written after this run
 * @returns undefined where none was asked for, or a new one is to be written
 * @throws UsageError when it cannot be read, or a new one could not be written
 */
export function openBaseline(
  full: boolean,
  { baseline, writeBaseline }: BaselineOptions,
): Baseline | undefined {
  if (writeBaseline === undefined) return baseline === undefined ? undefined : readBaseline(baseline);
  if (!full)
    throw new UsageError(
      "--write-baseline: not written; a baseline is made by all rules from files that can all be read",
    );
  // It is read before it is replaced, so that a pipe or a device can be none.
  const there = readInput(writeBaseline);
  if (!there.ok && existsSync(writeBaseline))
    throw new UsageError(`cannot write the baseline ${writeBaseline}: ${there.message}`);
  // A case file given by mistake must not be lost.
  checkWritable(writeBaseline, unlessBaseline(writeBaseline));
  for (const one of resultFiles([["--write-baseline", writeBaseline]])) checkResultFile(one, []);
  return undefined;
}

/**
 * Takes the known findings out of a result; writes the baseline, or shrinks it, when that is asked for.
 * @param baseline as `openBaseline` gave it
 * @throws UsageError when the baseline cannot be written
 */
export function withBaseline(
  result: LintResult,
  baseline: Baseline | undefined,
  linted: Linted,
  run: BaselineRun,
): LintResult {
  const { baseline: file, writeBaseline, frozenBaseline, quiet } = run.options;
  if (writeBaseline !== undefined) return writeNew(writeBaseline, result, run);
  if (baseline === undefined || file === undefined) return result;
  const key = keyFrom(file);
  const unasked = unaskedEntries(linted.parts, linted.options, key);
  const compared = againstBaseline(result, baseline, key, unasked);
  if (compared.stale > 0 && linted.full && samePaths(baseline, run.paths, key)) {
    const gone = `${count(compared.stale, "finding")} of ${file} no longer ${compared.stale === 1 ? "occurs" : "occur"}`;
    if (frozenBaseline || isContinuousIntegration())
      run.say(`${gone}; run with --baseline outside CI to take them out.`);
    else if (shrink(file, baseline, compared.remaining, run) && !quiet)
      run.say(`${gone}; taken out of the baseline.`);
  }
  return compared.result;
}

function writeNew(file: string, result: LintResult, run: BaselineRun): LintResult {
  const key = keyFrom(file);
  const baseline = makeBaseline(result.findings, run.paths, key);
  run.replace(file, formatBaseline(baseline), unlessBaseline(file));
  const compared = againstBaseline(result, baseline, key).result;
  if (!run.options.quiet)
    run.say(
      `${count(compared.summary.baselined, "finding")} written to ${file}; use --baseline ${file} from now on.`,
    );
  return compared;
}

/** @returns whether it was written: what somebody put into it since it was read is not taken out again */
function shrink(file: string, known: Baseline, remaining: Baseline, run: BaselineRun): boolean {
  const why = `${file} was changed by somebody else since it was read, and is left as it is`;
  try {
    run.replace(file, formatBaseline(remaining), (there) => {
      const now = there === undefined ? "" : baselineIn(there);
      return typeof now !== "string" && formatBaseline(now) === formatBaseline(known) ? undefined : why;
    });
    return true;
  } catch (error) {
    if (!(error instanceof FileKept)) throw error;
    run.say(why);
    return false;
  }
}

const baselineIn = (bytes: Buffer): Baseline | string => parseBaseline(bytes.toString("utf8"));

/** A new baseline replaces another one, and no other file. */
const unlessBaseline =
  (file: string): Keeps =>
  (there) => {
    const baseline = there === undefined || there.length === 0 ? undefined : baselineIn(there);
    return typeof baseline === "string" ? notBaseline(file, baseline) : undefined;
  };

const notBaseline = (file: string, why: string): string =>
  `${file} is not a baseline: ${why.replace(/\.$/, "")}. Put back its last version, or write a new one under another name.`;

function readBaseline(file: string): Baseline {
  const read = readInput(file);
  if (!read.ok)
    throw new UsageError(
      existsSync(file)
        ? `cannot read the baseline ${file}: ${read.message}`
        : `there is no baseline ${file}; carcase lint --write-baseline ${file} makes one`,
    );
  const baseline = parseBaseline(read.bytes.toString("utf8"));
  if (typeof baseline === "string") {
    const why = new Repository(".", [file]).holds(file) ? baseline : notShown;
    throw new UsageError(notBaseline(file, why));
  }
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
