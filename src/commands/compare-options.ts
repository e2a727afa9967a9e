/** The options of `carcase compare`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import type { CompareOptions } from "./compare.ts";
import { addCommonOptions, collect } from "./options.ts";

export function addCompare(program: Command): void {
  addCommonOptions(program.command("compare"), "text for people; json, csv or markdown")
    .summary("did it change between visits, do groups differ, which farm stands out?")
    .description(
      "Compares visits of a farm, groups of a visit, or many farms: what changed, how sure that is, and what cannot be compared.",
    )
    .option(
      "--between <what>",
      "visits, groups, farms (which stands out), ill (against comparison pigs), treatment (against control pens); default: visits, where a farm has two",
    )
    .option(
      "--where <facet=value>",
      "only these pigs: group=nursery-2, basis=random, visit, farm, age-class, reader or place; may be given again",
      collect,
    )
    .option("--indicator <ids>", "only these indicators, separated by commas")
    .option("--scale <ids>", "only these scales, separated by commas")
    .option("--level <share>", "confidence level of the intervals, such as 95%")
    .option("--cluster <what>", "pen (default), room, litter or none: what pigs share that makes them alike")
    .option("--seed <number>", "start of the random numbers that allow for several questions (default: 1)")
    .option(
      "--even-if <factors>",
      "compare although the sides differ in basis, age, place, reader, section, grade or scale",
    )
    .addHelpText("after", compareHelp)
    .action(call<CompareOptions>(async () => (await import("./compare.ts")).compare));
}

const compareHelp = `
Examples:
  carcase compare alder-farm
  carcase compare --indicator snout-grade-2-up --where basis=random alder-farm
  carcase compare --between groups alder-farm/2026-03-14
  carcase compare --between treatment --indicator pleurisy maple-farm
  carcase compare --between farms --indicator snout-grade-2-up practice
  carcase compare --even-if reader --scale maff-1978 alder-farm
Name the question before you look, in visit.yaml or here: each further one makes
all of them harder to show.`;
