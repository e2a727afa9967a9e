/** Options of `carcase score`. */
import type { Command } from "commander";
import type { CommonOptions } from "./options.ts";

export interface ScoreCommandOptions extends CommonOptions {
  readonly scale?: readonly string[];
  readonly by?: string;
  readonly matrix?: true;
  readonly ascii?: true;
}

export const scoreFormatHelp = "text for people; json, or csv with one row a pig and scale, for scripts";

const collect = (value: string, before: readonly string[] | undefined): readonly string[] => [
  ...(before ?? []),
  value,
];

export const addScoreOptions = (command: Command): Command =>
  command
    .option("--scale <ids>", "only these scales, separated by commas; may be given again", collect)
    .option(
      "--by <parts>",
      "scores by group, visit, farm or age-class (any of them, separated by commas) instead of by pig",
    )
    .option("--matrix", "the pattern over pigs: a row a pig, a mark a scale, or a part of the only scale")
    .option("--ascii", "with --matrix: plain characters instead of bars");
