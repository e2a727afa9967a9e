/** The options of `carcase score`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { addCommonOptions, collect } from "./options.ts";
import type { ScoreOptions } from "./score.ts";

export function addScore(program: Command): void {
  addCommonOptions(
    program.command("score"),
    "text for people; json, or csv with one row a pig and scale, for scripts",
  )
    .option("--scale <ids>", "only these scales, separated by commas; may be given again", collect)
    .option("--all", "all scales of each organ; without it the one that was recorded")
    .option(
      "--by <parts>",
      "scores by group, visit, farm or age-class (any of them, separated by commas) instead of by pig",
    )
    .option("--matrix", "the pattern over pigs: a row a pig, a mark a scale, or a part of the only scale")
    .option("--ascii", "with --matrix: plain characters instead of bars")
    .summary("what does each published scale make of each pig?")
    .description(
      "Computes published gross scores from what was observed, and says which observations are missing.",
    )
    .addHelpText("after", scoreHelp)
    .action(call<ScoreOptions>(async () => (await import("./score.ts")).score));
}

const scoreHelp = `
Examples:
  carcase score alder-farm/2026-03-14
  carcase score --scale maff-1978,dottori-2007 .
  carcase score --by group alder-farm
  carcase score --matrix alder-farm/2026-03-14
  carcase score --format csv -o scores.csv .
A value marked * rests on a definition from memory that was not checked against
its source.`;
