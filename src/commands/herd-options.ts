/** The options of `carcase herd`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import type { HerdOptions } from "./herd.ts";
import { addCommonOptions } from "./options.ts";

export function addHerd(program: Command): void {
  addCommonOptions(
    program.command("herd"),
    "text for people; markdown for a report; json, or csv with a row an estimate, for scripts",
  )
    .summary("how common and how bad, by visit, group and selection basis, with exact intervals?")
    .description(
      "Counts indicators and scores over pigs. Pigs of different selection basis are never added up.",
    )
    .option(
      "--by <parts>",
      "an answer for each visit, group, age_class (any of them, separated by commas), or none; without it for each visit, and numbers by all three",
    )
    .option("--all", "all numbers: each indicator and scale, means and intervals, herd indices, sources")
    .option("--indicator <ids>", "only these indicators, separated by commas")
    .option("--scale <ids>", "only these scales, separated by commas")
    .option("--level <share>", "confidence level of the intervals: 90% or 0.9")
    .option("--interval <method>", "clopper-pearson (default) or blaker, which is narrower")
    .option("--finite", "intervals for the group itself, where its head count is known")
    .option("--cluster <by>", "count pigs by pen, room or litter and not as drawn singly")
    .option("--combine", "groups together as well, each weighted by its head count")
    .option("--sensitivity <share>", "of the one --indicator: 90% if known, 45/50 if estimated")
    .option("--specificity <share>", "the same for specificity: 98% or 98/100")
    .option("--bootstrap", "a bootstrap interval of the mean scores as well")
    .option("--seed <number>", "start of its random numbers (default: 1)")
    .option(
      "--shard <part>",
      "with --format json: only this part of the farms, such as 3/16; merge makes one of them",
    )
    .option("--plot", "draw the intervals instead of the tables")
    .addHelpText("after", herdHelp)
    .action(call<HerdOptions>(async () => (await import("./herd.ts")).herd));
}

const herdHelp = `
Examples:
  carcase herd alder-farm
  carcase herd --by visit --indicator snout-grade-2-up alder-farm
  carcase herd --plot --by visit,group --indicator snout-grade-2-up alder-farm
  carcase herd --cluster pen --level 90% --format csv -o herd.csv alder-farm
Only pigs drawn at random, or a whole group, give a prevalence; for others the
numbers are of the pigs examined. Which interval when, and what must not be
concluded: docs/statistics.md`;
