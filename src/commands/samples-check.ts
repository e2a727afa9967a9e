/** `carcase samples check`: what was due and not taken, and for what each sample is still good. */
import { moment } from "../cases/index.ts";
import { checkCsv, checkJson, checkMarkdown, checkText } from "../formats/samples/check.ts";
import { checkSamples, type SampleCheck } from "../samples/index.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { minuteOfRun } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface SamplesCheckOptions extends CommonOptions {
  readonly now?: string;
}

export function samplesCheck(run: Run<SamplesCheckOptions>): number {
  const { now = minuteOfRun() } = run.options;
  if (moment(now)?.dayOnly !== false)
    throw new UsageError(`--now: write a day and a time, such as 2026-03-14T18:00, not "${now}"`);
  const written = run.format<(checks: readonly SampleCheck[]) => string>({
    text: (checks) => checkText(checks, run.style, run.width),
    json: checkJson,
    csv: checkCsv,
    markdown: checkMarkdown,
  });
  const { visits } = run.soundArchive();
  const checks = visits.map((visit) => checkSamples(visit, now));
  if (checks.length === 0 && !run.failed) run.say("no visit is here; name the folder of one");
  if (checks.length > 0 || run.options.format !== "text") run.write(written(checks));
  return run.end();
}
