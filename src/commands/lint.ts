/** `carcase lint`: what was skipped, contradictory or unsafe, at which line? */
import { openAlarmsOf } from "../alarms/index.ts";
import { type Case, unknownName } from "../cases/index.ts";
import { alarmNotice } from "../formats/alarm-notice.ts";
import { type LintFormat, lintFormats, lintReport } from "../formats/lint-formats.ts";
import type { LintReport } from "../formats/lint-report.ts";
import { shownByCodeScanning } from "../formats/lint-sarif.ts";
import { makeStyle } from "../formats/style.ts";
import { type LintOptions, type LintResult, lintCases, needsScales, rules } from "../lint/index.ts";
import { count } from "../words/listing.ts";
import { openBaseline, withBaseline } from "./baseline.ts";
import { checkWritable, writeWhole } from "./files.ts";
import { fixesOf, writeDiff, writeFixes } from "./fix.ts";
import { askedOf, type LintCommandOptions } from "./lint-asked.ts";
import type { Run } from "./run.ts";
import { withCheckedScales } from "./sound-cases.ts";
import { timeOfRun } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";
import { version } from "./version.ts";

export async function lint(run: Run<LintCommandOptions>): Promise<number> {
  const { output, fix, dryRun, quiet } = run.options;
  const format = run.format<LintFormat>(formats);
  const asked = askedOf(run);
  const { also, failing, named } = asked;
  const inResult = format === "text";
  let archive = run.archive({ noticed: inResult && !dryRun && isSeen(run) });
  // What can be wrong with the options is found out before any file is changed.
  checkRuleNames(archive.cases);
  const baseline = openBaseline(!run.failed && asked.everyRule, run.options);
  for (const { file } of [{ file: output }, ...also]) if (file !== undefined) checkWritable(file);
  if (fix) {
    const fixed = fixesOf(archive, run);
    if (dryRun) return writeDiff(fixed, run);
    writeFixes(fixed, run);
    archive = run.archiveAgain();
  }
  archive = await withCheckedScales(archive);
  const options = { ...asked.rules, ...(await gradeCheck(archive.cases)) };
  const linted = { archive, options, full: !run.failed && asked.everyRule };
  const result = withBaseline(lintCases(archive, options), baseline, linted, run);
  const report: LintReport = {
    result,
    unreadable: archive.unreadable,
    failing,
    version,
    at: timeOfRun(),
    quiet: quiet === true,
    ...(named !== undefined && { only: named }),
  };
  for (const one of also) writeWhole(one.file, lintReport(one.format, report, makeStyle(false)));
  const notice = inResult ? alarmNotice(openAlarmsOf(archive), run.style) : "";
  run.write(notice + lintReport(format, report, run.style));
  noteLimits(result, [format, ...also.map((one) => one.format)], run);
  return run.end(
    tooManyWarnings(result, asked.mostWarnings, run) ||
      result.findings.some(({ level }) => failing.includes(level)),
  );
}

const formats = Object.fromEntries(lintFormats.map((format) => [format, format]));

/**
 * Whether people see standard output, where the notice of alarms is the first thing: not when it goes to a file, nor from
 * a terminal into another program.
 */
const isSeen = ({ options: { output } }: Run): boolean =>
  output === undefined && (process.stdout.isTTY === true || process.stderr.isTTY !== true);

/** Asks the scales about recorded grades, and loads them only where there are such grades. */
async function gradeCheck(cases: readonly Case[]): Promise<Pick<LintOptions, "gradeFaults">> {
  if (!cases.some(needsScales)) return { gradeFaults: () => [] };
  const { gradeFaults } = await import("../lint/grade-faults.ts");
  return { gradeFaults };
}

function tooManyWarnings({ summary }: LintResult, most: number, run: Run): boolean {
  if (summary.warnings <= most) return false;
  run.say(`${count(summary.warnings, "warning")}, and --max-warnings allows ${most === 0 ? "none" : most}.`);
  return true;
}

function noteLimits({ findings }: LintResult, formats: readonly string[], run: Run): void {
  if (formats.includes("sarif") && findings.length > shownByCodeScanning)
    run.say(
      `${findings.length} findings in the SARIF file; code scanning shows ${shownByCodeScanning} of one run.`,
    );
}

/** @throws UsageError when the settings of a case give a level to a rule that does not exist */
function checkRuleNames(cases: readonly Case[]): void {
  const known = rules.map((rule) => rule.id);
  for (const settings of new Set(cases.map((one) => one.settings)))
    for (const id of Object.keys(settings.rules))
      if (!known.includes(id))
        throw new UsageError(`${settings.file}: rules: ${unknownName(id, known, "rule")}`);
}
