/** The options of `carcase samples` and its questions. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { addCommonOptions } from "./options.ts";
import type { SampleResultsOptions } from "./samples-results.ts";

/** Adds the command with its subcommands; what computes is loaded only when asked. */
export function addSamples(program: Command): void {
  const samples = program
    .command("samples")
    .summary("samples: what to take, what was taken, what came back")
    .description("Samples from the knife to the laboratory's answer.");
  addResults(samples);
}

function addResults(samples: Command): void {
  addCommonOptions(samples.command("results"), "text for people; json or csv for scripts")
    .option("--all", "each result by itself, not counted by test and agent")
    .option(
      "--import <file>",
      "show what a laboratory's table, saved as CSV, makes of the results of a visit",
    )
    .option("--write", "with --import: write it beside the visit")
    .option("--test <word>", "with --import: the test of rows that name none, such as pcr")
    .option("--agent <name>", "with --import: what rows that name no agent looked for")
    .option("--today <day>", "count the days up to this day, not to today")
    .summary("what is still open, for how long, and what arrived?")
    .description(
      "Sets the tests that were asked of samples against results.yaml beside the visit: the longest wait first.",
    )
    .addHelpText("after", resultsHelp)
    .action(call<SampleResultsOptions>(async () => (await import("./samples-results.ts")).sampleResults));
}

const resultsHelp = `
Examples:
  carcase samples results alder-farm/2026-03-14
  carcase samples results --all alder-farm
  carcase samples results --format csv -o results.csv .
  carcase samples results --import report.csv alder-farm/2026-03-14
  carcase samples results --import report.csv alder-farm/2026-03-14 --write
A table has a row a result and heads such as sample, test, agent, ct and
interpretation; for other heads a map is printed, to paste into carcase.yaml.`;
