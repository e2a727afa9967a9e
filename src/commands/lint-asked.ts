/** What `carcase lint` is asked for, checked before any case is read. */
import type { Shard } from "../cases/index.ts";
import { type LintFormat, lintFormats } from "../formats/lint/formats.ts";
import { type Level, type LintOptions, levels, ruleNamed, rules } from "../lint/index.ts";
import { type BaselineOptions, checkBaselineOptions } from "./baseline.ts";
import type { ChangedOptions } from "./changed.ts";
import { checkFixOptions, type FixOptions } from "./fix.ts";
import type { CommonOptions } from "./options.ts";
import { asUsage, oneOf, partsOf, whole } from "./parsers.ts";
import {
  checkApart,
  checkResultFile,
  isStandardOutput,
  type ResultFile,
  resultFiles,
} from "./result-file.ts";
import type { Run } from "./run.ts";
import { shardOf } from "./shard.ts";
import { dayOfRun } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface LintCommandOptions extends CommonOptions, BaselineOptions, FixOptions, ChangedOptions {
  readonly failOn: string;
  readonly maxWarnings?: string;
  readonly also?: readonly string[];
  readonly only?: readonly string[];
  readonly rule?: readonly string[];
  readonly threads?: string;
  readonly cache: boolean;
  readonly shard?: string;
  readonly watch?: true;
}

export interface Asked {
  /** Levels that make the exit code 1. */
  readonly failing: readonly Level[];
  readonly mostWarnings: number;
  /** Further formats of the same run, each in a file. */
  readonly also: readonly Also[];
  /** All files that are to be written, the baseline among them. */
  readonly results: readonly ResultFile[];
  readonly rules: LintOptions;
  /** The rules that `--only` names, without the alarms, which are asked all the same. */
  readonly named: readonly string[] | undefined;
  /** How many threads; undefined where the size of the archive decides. */
  readonly threads: number | undefined;
  readonly shard: Shard | undefined;
  /** Whether every rule is asked, as far as the command line decides. */
  readonly everyRule: boolean;
}

interface Also extends ResultFile {
  readonly format: LintFormat;
}

/** @throws UsageError for values that mean nothing, and for options that contradict each other */
export function askedOf(run: Run<LintCommandOptions>): Asked {
  const { options, paths } = run;
  const { output, config, baseline, writeBaseline, stdinFilename } = options;
  const failing = levels.slice(0, levels.indexOf(oneOf("--fail-on", options.failOn, levels, "level")) + 1);
  const mostWarnings = warningsAllowed(options.maxWarnings);
  const inputs = [...paths, config, baseline, writeBaseline, stdinFilename];
  const also = (options.also ?? []).map((text) => alsoOf(text, inputs));
  const changed = Object.fromEntries((options.rule ?? []).map(ruleLevel));
  const named = options.only === undefined ? undefined : onlyRules(options.only.join(","));
  checkBaselineOptions(options, paths);
  checkFixOptions(run);
  checkPartOptions(run);
  const results = [
    ...resultFiles([
      ["--write-baseline", writeBaseline],
      ["--output", output],
    ]),
    ...also,
  ];
  checkApart([...resultFiles([["--baseline", baseline]]), ...results]);
  return {
    failing,
    mostWarnings,
    also,
    results,
    rules: {
      today: dayOfRun(),
      levels: changed,
      ...(named !== undefined && { only: [...named, ...alarmRules()] }),
    },
    named,
    shard: shardAsked(run),
    threads: options.threads === undefined ? undefined : whole("--threads", options.threads, 1, 16),
    everyRule: named === undefined && !Object.values(changed).includes("off"),
  };
}

const shardAsked = ({ options, paths }: Run<LintCommandOptions>): Shard | undefined =>
  shardOf(options.shard, {
    format: options.format,
    not: {
      "--fix": options.fix,
      "--baseline": options.baseline,
      "--write-baseline": options.writeBaseline,
      "--changed": options.changed,
      "--staged": options.staged,
      "--watch": options.watch,
      "--also": options.also,
      "--max-warnings": options.maxWarnings,
      "standard input": paths.includes("-") || undefined,
    },
  });

function warningsAllowed(text: string | undefined): number {
  if (text === undefined) return Number.POSITIVE_INFINITY;
  if (!/^\d{1,9}$/.test(text.trim()))
    throw new UsageError(`--max-warnings: "${text}" is not a whole number such as 0 or 10`);
  return Number(text);
}

/** Options that lint a part of the archive, or again and again. */
function checkPartOptions({ options, paths }: Run<LintCommandOptions>): void {
  const { changed, staged, watch, fix, writeBaseline, output, also, format } = options;
  const asked = Object.entries({ "--changed": changed, "--staged": staged, "--watch": watch })
    .filter(([, value]) => value !== undefined)
    .map(([name]) => name);
  const [part, other] = asked;
  if (part === undefined) return;
  if (other !== undefined) throw new UsageError(`${part} and ${other}: choose one`);
  if (paths.includes("-")) throw new UsageError(`${part} goes over files, not over standard input`);
  if (fix) throw new UsageError(`${part}: --fix puts right all cases; run it without ${part}`);
  if (writeBaseline !== undefined)
    throw new UsageError(`${part}: a baseline is of all cases; write it without ${part}`);
  if (watch && (output !== undefined || also !== undefined || format !== "text"))
    throw new UsageError("--watch shows text in the terminal; leave out --format, --output and --also");
}

/** `FORMAT=FILE`. @param inputs files that are read and must not be written over */
function alsoOf(text: string, inputs: readonly (string | false | undefined)[]): Also {
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
  const also = { format, file, option: `--also ${text}` };
  checkResultFile(also, inputs);
  return also;
}

/** Alarms are asked whatever was chosen: no option silences them. */
const alarmRules = (): string[] => rules.filter(({ family }) => family === "alarm").map(({ id }) => id);

function onlyRules(text: string): string[] {
  const ids = partsOf(text);
  if (ids.length === 0) throw new UsageError("--only names no rule; write --only skipped-organ,lobe-missing");
  return [...new Set(ids.map((id) => asUsage("--only", () => ruleNamed(id)).id))];
}

/** `RULE=LEVEL`. @throws UsageError also for a rule that nobody can lower */
function ruleLevel(text: string): [string, Level | "off"] {
  const [, id = "", name = ""] = /^([^=]*)=(.*)$/.exec(text) ?? [];
  if (id === "") throw new UsageError(`--rule ${text}: write rule=level, such as --rule treated-pig=note`);
  const rule = asUsage("--rule", () => ruleNamed(id.trim()));
  const level = oneOf(`--rule ${text}`, name, [...levels, "off"] as const, "level");
  if (rule.locked)
    throw new UsageError(
      `--rule ${text}: ${rule.id} guards the alarms or the format and stays ${rule.level}`,
    );
  return [rule.id, level];
}
