/** `carcase lint`: what was skipped, contradictory or unsafe, at which line? */
import { openAlarmsOf } from "../alarms/index.ts";
import { type Case, unknownName } from "../cases/index.ts";
import { alarmNotice } from "../formats/alarm-notice.ts";
import { lintFormats, lintReport } from "../formats/lint/formats.ts";
import type { LintReport } from "../formats/lint/report.ts";
import { shownByCodeScanning } from "../formats/lint/sarif.ts";
import { makeStyle } from "../formats/page/style.ts";
import {
  type Level,
  type LintOptions,
  type LintResult,
  levels,
  lintCases,
  needsScales,
  rules,
} from "../lint/index.ts";
import { count } from "../words/listing.ts";
import { alsoList } from "./also.ts";
import { checkBaselineOptions, openBaseline, withBaseline } from "./baseline.ts";
import { withCheckedScales } from "./checked-scales.ts";
import { checkFixOptions, fixFirst } from "./fix.ts";
import type { LintCommandOptions } from "./lint-options.ts";
import { chosenFormat, openArchive } from "./open-archive.ts";
import { checkApart } from "./result-file.ts";
import { ruleChoice } from "./rule-choice.ts";
import { resultStyle, timeOfRun, writeResult } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";
import { version } from "./version.ts";
import { checkWritable, writeWhole } from "./write-file.ts";

export async function runLint(paths: readonly string[], options: LintCommandOptions): Promise<number> {
  const format = chosenFormat(options, lintFormats);
  const failing = failingLevels(options.failOn);
  const most = mostWarnings(options.maxWarnings);
  const { output, baseline: known, writeBaseline } = options;
  const also = alsoList(options.also ?? [], [...paths, options.config, known, writeBaseline]);
  const chosen = ruleChoice(options);
  checkBaselineOptions(options, paths);
  checkFixOptions(paths, options);
  checkApart([
    { option: `--baseline ${known}`, file: known },
    { option: `--write-baseline ${writeBaseline}`, file: writeBaseline },
    { option: `--output ${output}`, file: output },
    ...also,
  ]);
  const inResult = format === "text";
  const first = openArchive(paths, options, inResult && !options.dryRun && isSeen(options));
  // What can be wrong with the options is found out before any file is changed.
  checkRuleNames(first.archive.cases);
  const baseline = openBaseline(!first.failed && chosen.all, options);
  for (const { file } of [{ file: output }, ...also]) if (file !== undefined) checkWritable(file);
  const opened = fixFirst(first, paths, options);
  if (typeof opened === "number") return opened;
  const { failed } = opened;
  const archive = await withCheckedScales(opened.archive);
  const lintOptions = { ...chosen.options, ...(await gradeCheck(archive.cases)) };
  const linted = { paths, archive, options: lintOptions, full: !failed && chosen.all };
  const result = withBaseline(lintCases(archive, lintOptions), baseline, linted, options);
  const report: LintReport = {
    result,
    unreadable: archive.unreadable,
    failing,
    version,
    at: timeOfRun(),
    quiet: options.quiet === true,
    ...(chosen.named !== undefined && { only: chosen.named }),
  };
  for (const one of also) writeWhole(one.file, lintReport(one.format, report, makeStyle(false)));
  const style = resultStyle(options);
  const notice = inResult ? alarmNotice(openAlarmsOf(archive), style) : "";
  writeResult(notice + lintReport(format, report, style), options);
  noteLimits(result, [format, ...also.map((one) => one.format)]);
  if (failed) return 2;
  return tooManyWarnings(result, most) || result.findings.some(({ level }) => failing.includes(level))
    ? 1
    : 0;
}

/**
 * Whether people see standard output, where the notice of alarms is the first thing: not when it goes to a file, nor from
 * a terminal into another program.
 */
const isSeen = ({ output }: LintCommandOptions): boolean =>
  output === undefined && (process.stdout.isTTY === true || process.stderr.isTTY !== true);

/** Asks the scales about recorded grades, and loads them only where there are such grades. */
async function gradeCheck(cases: readonly Case[]): Promise<Pick<LintOptions, "gradeFaults">> {
  if (!cases.some(needsScales)) return { gradeFaults: () => [] };
  const { gradeFaults } = await import("../lint/grade-faults.ts");
  return { gradeFaults };
}

/** The levels at or above the one named. */
function failingLevels(name: string): readonly Level[] {
  const at = (levels as readonly string[]).indexOf(name);
  if (at < 0) throw new UsageError(`--fail-on: ${unknownName(name, levels, "level")}`);
  return levels.slice(0, at + 1);
}

function mostWarnings(text: string | undefined): number {
  if (text === undefined) return Number.POSITIVE_INFINITY;
  if (!/^\d{1,9}$/.test(text.trim()))
    throw new UsageError(`--max-warnings: "${text}" is not a whole number such as 0 or 10`);
  return Number(text);
}

function tooManyWarnings({ summary }: LintResult, most: number): boolean {
  if (summary.warnings <= most) return false;
  process.stderr.write(
    `carcase: ${count(summary.warnings, "warning")}, and --max-warnings allows ${most === 0 ? "none" : most}.\n`,
  );
  return true;
}

function noteLimits({ findings }: LintResult, formats: readonly string[]): void {
  if (formats.includes("sarif") && findings.length > shownByCodeScanning)
    process.stderr.write(
      `carcase: ${findings.length} findings in the SARIF file; code scanning shows ${shownByCodeScanning} of one run.\n`,
    );
}

/** @throws UsageError when the settings of a case give a level to a rule that does not exist */
function checkRuleNames(cases: ReturnType<typeof openArchive>["archive"]["cases"]): void {
  const known = rules.map((rule) => rule.id);
  for (const settings of new Set(cases.map((one) => one.settings)))
    for (const id of Object.keys(settings.rules))
      if (!known.includes(id))
        throw new UsageError(`${settings.file}: rules: ${unknownName(id, known, "rule")}`);
}
