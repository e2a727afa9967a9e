/** `carcase samples results`: what the laboratory still owes, and what it answered. */
import { moment } from "../cases/index.ts";
import { resultsCsv } from "../formats/samples/results-csv.ts";
import { resultsJson } from "../formats/samples/results-json.ts";
import { resultsText } from "../formats/samples/results-text.ts";
import { resultsOverview, type VisitResults } from "../results/index.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { dayOfRun } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface SampleResultsOptions extends CommonOptions {
  readonly all?: true;
  readonly today?: string;
}

export function sampleResults(run: Run<SampleResultsOptions>): number {
  const { options } = run;
  const today = options.today ?? dayOfRun();
  const day = moment(today);
  if (day === undefined || !day.dayOnly)
    throw new UsageError(`--today: write a day, year first, such as 2026-03-28, not "${options.today}"`);
  const written = run.format<(visits: readonly VisitResults[]) => string>({
    text: (visits) => resultsText(visits, { style: run.style, width: run.width, all: options.all === true }),
    json: (visits) => resultsJson(visits, today),
    csv: resultsCsv,
  });
  const archive = run.soundArchive();
  const visits = resultsOverview(archive.visits, day);
  if (visits.length === 0 && archive.visits.length > 0 && !run.failed && !options.quiet)
    run.say("no test was asked of a sample here, and no results.yaml lies beside a visit");
  if (visits.length > 0 || options.format !== "text") run.write(written(visits));
  return run.end();
}
