/** `carcase samples results`: what the laboratory still owes, and what it answered. */
import { join } from "node:path";
import { moment } from "../cases/index.ts";
import { proposalText } from "../formats/import/proposal.ts";
import { resultsCsv } from "../formats/samples/results-csv.ts";
import { resultsJson } from "../formats/samples/results-json.ts";
import { resultsText } from "../formats/samples/results-text.ts";
import { importResults, resultsOverview, type VisitResults } from "../results/index.ts";
import { TableFault } from "../tally/index.ts";
import { count } from "../words/listing.ts";
import { tableBytes } from "./import.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { dayOfRun } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface SampleResultsOptions extends CommonOptions {
  readonly all?: true;
  readonly today?: string;
  readonly import?: string;
  readonly write?: true;
  readonly test?: string;
  readonly agent?: string;
}

export function sampleResults(run: Run<SampleResultsOptions>): number {
  const { options } = run;
  if (options.import !== undefined) return importTable(options.import, run);
  for (const name of ["write", "test", "agent"] as const)
    if (options[name] !== undefined) throw new UsageError(`--${name} goes with --import`);
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

function importTable(table: string, run: Run<SampleResultsOptions>): number {
  const { options } = run;
  const [folder = ".", more] = run.paths;
  if (more !== undefined) throw new UsageError("--import: name one folder, that of the visit");
  if (options.format !== "text")
    throw new UsageError("--import shows the file that it makes; leave out --format");
  if (options.today !== undefined || options.all)
    throw new UsageError(
      `--${options.all ? "all" : "today"} counts what is open; it does not go with --import`,
    );
  if (options.write) run.clear([folder]);
  const read = readOrTell(table, folder, run);
  if (read === undefined) return run.end();
  if ("unknown" in read) {
    run.faults(read.faults);
    run.write(proposalText(read.unknown, table, ["results_columns", "what of a result it is"]), {
      format: "text",
    });
    return run.end();
  }
  const { name, text, entries, samples, said } = read;
  const what = `${count(entries, "result")} of ${count(samples, "sample")}`;
  if (options.write) run.writeNew([{ file: join(folder, name), text }], folder);
  if (!options.quiet) {
    run.say(`${table}: ${said.join("; ")}`);
    run.say(
      options.write
        ? `wrote ${what} into ${join(folder, name)}`
        : `${what} for ${join(folder, name)}; nothing is written without --write`,
    );
  }
  if (!options.write) run.write(text);
  return run.end();
}

function readOrTell(
  table: string,
  folder: string,
  run: Run<SampleResultsOptions>,
): ReturnType<typeof importResults> | undefined {
  const { config, test, agent } = run.options;
  try {
    const file = table === "-" ? "standard input" : table;
    return importResults({ file, bytes: tableBytes(table), folder, config, test, agent });
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(error.message);
    if (!(error instanceof TableFault)) throw error;
    run.faults(error.faults);
    run.say("nothing was imported");
    return undefined;
  }
}
