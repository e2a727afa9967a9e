/** The options of `carcase samples` and its questions. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { addCommonOptions, addOutput, noColour } from "./options.ts";
import type { SamplesCheckOptions } from "./samples-check.ts";
import type { SamplesPlanOptions } from "./samples-plan.ts";
import type { SampleResultsOptions } from "./samples-results.ts";

/** Adds the command with its subcommands; what computes is loaded only when asked. */
export function addSamples(program: Command): void {
  const samples = program
    .command("samples")
    .summary("samples: what to take, what was taken, what came back")
    .description("Samples from the knife to the laboratory's answer.");
  addPlan(samples);
  addCheck(samples);
  addManifest(samples);
  addResults(samples);
}

function addPlan(samples: Command): void {
  addOutput(
    samples.command("plan").argument("[paths...]", "folder of a visit, or case files"),
    "text or markdown for people; json or csv for scripts",
  )
    .option("--complaint <text>", "what the farm complains of, before there is a visit")
    .option("--ages <ages>", "with --complaint: ages or classes of the pigs, such as 5 wk,sow")
    .option("--pigs <number>", "with --complaint: how many ill pigs will be opened")
    .option("--healthy <number>", "with --complaint: how many healthy ones beside them")
    .option("-q, --quiet", "only what needs attention")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option(...noColour)
    .summary("what to take of each pig, in which order, and what to bring for it")
    .description(
      "Says before the visit what goes into the car: containers, formalin, cool box; how many pigs; then what is taken of each, in the order of the knife.",
    )
    .addHelpText("after", planHelp)
    .action(call<SamplesPlanOptions>(async () => (await import("./samples-plan.ts")).samplesPlan));
}

const planHelp = `
Examples:
  carcase samples plan --complaint "cough in finishers"
  carcase samples plan --complaint "scour" --ages "6 d" --pigs 5
  carcase samples plan alder-farm/2026-03-14
While an alarm stands it prints the notice and nothing else.`;

function addCheck(samples: Command): void {
  addCommonOptions(samples.command("check"), "text or markdown for people; json or csv for scripts")
    .option("--now <time>", "reckon at this time, not by the clock: 2026-03-14T18:00")
    .summary("what was due and not taken, and for what is each sample still good?")
    .description(
      "Sets what was taken against what was due, and says for which tests each container is still good, with the time it has left: when its parcel arrives, else now.",
    )
    .addHelpText("after", checkHelp)
    .action(call<SamplesCheckOptions>(async () => (await import("./samples-check.ts")).samplesCheck));
}

const checkHelp = `
Examples:
  carcase samples check alder-farm/2026-03-14
  carcase samples check --now 2026-03-14T18:00 alder-farm/2026-03-14`;

function addManifest(samples: Command): void {
  addCommonOptions(samples.command("manifest"), "text or markdown for people; json or csv for scripts")
    .summary("what was taken, a line a container")
    .description("Lists the containers of a visit: number, pig, what, container, tests, time.")
    .addHelpText("after", manifestHelp)
    .action(call(async () => (await import("./samples-manifest.ts")).samplesManifest));
}

const manifestHelp = `
Examples:
  carcase samples manifest alder-farm/2026-03-14
  carcase samples manifest --format csv -o manifest.csv alder-farm/2026-03-14`;

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
