/** `carcase lint`: what was skipped, contradictory or unsafe, at which line? */
import { sameFile } from "../cases/files/file-kind.ts";
import { roleOf } from "../cases/files/find.ts";
import { alarmNotice } from "../formats/alarm-notice.ts";
import { type LintFormat, lintFormats, lintReport } from "../formats/lint/formats.ts";
import { lintJson } from "../formats/lint/json.ts";
import type { LintReport } from "../formats/lint/report.ts";
import { shownByCodeScanning, takenByCodeScanning } from "../formats/lint/sarif.ts";
import { pageMark } from "../formats/page/html-page.ts";
import { makeStyle } from "../formats/page/style.ts";
import { checkRulesOf, type LintResult, lintResult } from "../lint/index.ts";
import { count } from "../words/listing.ts";
import type { Part } from "./affected.ts";
import { openBaseline, withBaseline } from "./baseline.ts";
import { withChanged } from "./changed.ts";
import { fixesOf, writeDiff, writeFixes } from "./fix.ts";
import { type Asked, askedOf, type LintCommandOptions } from "./lint-asked.ts";
import { lintFolders } from "./lint-folders.ts";
import { lintMark } from "./merge-lint.ts";
import { asUsage } from "./parsers.ts";
import { Run } from "./run.ts";
import { partJson } from "./shard.ts";
import { pageWidth, timeOfRun } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";
import { version } from "./version.ts";
import { watchRecords } from "./watch.ts";

export async function lint(run: Run<LintCommandOptions>): Promise<number> {
  const code = await withChanged(run, (part) => lintOnce(run, part));
  if (!run.options.watch) return code;
  await watchRecords(run, (part) => lintOnce(new Run(run.paths, { ...run.options, quiet: true }), part));
  return 0;
}

async function lintOnce(run: Run<LintCommandOptions>, part?: Part): Promise<number> {
  const { fix, dryRun, quiet } = run.options;
  const format = run.format<LintFormat>(formats);
  const asked = askedOf(run);
  const { also, failing, named, results } = asked;
  const inResult = format === "text";
  const noticed = inResult && !dryRun && isSeen(run);
  const counted = !dryRun && (inResult || format === "github" || format === "json");
  if (fix) {
    // What can be wrong with the options is found out before any file is changed.
    const archive = run.archive({ noticed, counted, results });
    asUsage("", () => {
      for (const { settings } of archive.cases) checkRulesOf(settings);
    });
    openBaseline(!run.failed && asked.everyRule, run.options);
    const fixed = fixesOf(archive, run);
    if (dryRun) return writeDiff(fixed, run);
    checkResults(format, asked, run);
    writeFixes(fixed, run);
  }
  const reading = run.reading(part?.from);
  const of = asked.shard === undefined ? {} : { shard: asked.shard };
  const job = { ...reading, read: { ...reading.read, ...of }, rules: asked.rules, results };
  const read = await lintFolders(
    part === undefined ? job : { ...job, within: part.within },
    asked.threads,
    run.options.cache,
  );
  if (read.refused !== undefined) throw new UsageError(read.refused);
  if (fix) run.clear([...read.folders.keys()]);
  else run.tellLeftovers(read.folders);
  run.wasRead(read, { noticed, counted, again: fix === true });
  const found = asUsage("", () => lintResult(read.parts, read.unreadable));
  const full = part === undefined && !run.options.watch && !run.failed && asked.everyRule;
  const baseline = openBaseline(full, run.options);
  checkResults(format, asked, run);
  const result = withBaseline(found, baseline, { parts: read.parts, options: asked.rules, full }, run);
  if (part?.within.length === 0 && part.nothing !== undefined) run.say(part.nothing);
  const report: LintReport = {
    result: { ...result, findings: result.findings.filter(isShown(part)) },
    unreadable: read.unreadable,
    passedOver: read.passedOver,
    failing,
    version,
    at: timeOfRun(),
    quiet: quiet === true,
    ...(named !== undefined && { only: named }),
    ...rulePages([format, ...also.map((one) => one.format)], run),
  };
  for (const one of also)
    run.writeResult(one, lintReport(one.format, report, makeStyle(false), pageWidth(true)), {
      sample: samples[one.format],
      format: one.format,
    });
  const notice = inResult ? alarmNotice(read.alarms, run.style, run.width) : "";
  const text =
    asked.shard === undefined
      ? notice + lintReport(format, report, run.style, run.width)
      : partJson(lintJson(report), lintMark(read, asked, run));
  run.write(text, { sample: sampleOf(format, asked) });
  noteLimits(result, [format, ...also.map((one) => one.format)], run);
  if (run.failed) return run.end();
  return run.end(
    tooManyWarnings(result, asked.mostWarnings, run) ||
      result.findings.some(({ level }) => failing.includes(level)),
  );
}

/** Beside the cases that are shown, what stands around them. */
const isShown =
  (part: Part | undefined) =>
  ({ file }: { readonly file: string }): boolean =>
    part?.shown === undefined || roleOf(file) !== "other" || part.shown.includes(sameFile(file));

/** What an earlier result of a format is known by, before there is one to compare it with. */
const samples: Record<LintFormat, string> = {
  text: "no case was read",
  json: '{"output": "lint"',
  sarif: '{"$schema": "https://json.schemastore.org/sarif-2.1.0.json"',
  junit: "<testsuites>",
  github: "no case was read",
  gitlab: '[{"description"',
  html: pageMark("lint"),
};

const sampleOf = (format: LintFormat, { shard }: Asked): string =>
  shard === undefined ? samples[format] : '{"output": "part"';

function checkResults(format: LintFormat, asked: Asked, run: Run): void {
  const { also } = asked;
  for (const one of run.output) run.checkResult(one, sampleOf(format, asked));
  for (const one of also) run.checkResult(one, samples[one.format]);
}

const formats = Object.fromEntries(lintFormats.map((format) => [format, format]));

/**
 * Whether people see standard output, where the notice of alarms is the first thing: not when it goes to a file, nor from
 * a terminal into another program.
 */
const isSeen = ({ options: { output } }: Run): boolean =>
  output === undefined && (process.stdout.isTTY === true || process.stderr.isTTY !== true);

function tooManyWarnings({ summary }: LintResult, most: number, run: Run): boolean {
  if (summary.warnings <= most) return false;
  run.say(`${count(summary.warnings, "warning")}, and --max-warnings allows ${most === 0 ? "none" : most}.`);
  return true;
}

/** SARIF alone has links. */
function rulePages(formats: readonly LintFormat[], run: Run): Pick<LintReport, "rulePages"> {
  const pages = formats.includes("sarif") ? run.settings().settings.rulePages : undefined;
  return pages === undefined ? {} : { rulePages: pages };
}

function noteLimits({ findings }: LintResult, formats: readonly string[], run: Run): void {
  if (formats.includes("sarif") && findings.length > shownByCodeScanning)
    run.say(
      `${findings.length} findings for the SARIF file; code scanning shows ${shownByCodeScanning} of one run, and no more than ${takenByCodeScanning} are written.`,
    );
}
