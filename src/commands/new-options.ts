/** The options of `carcase new`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import type { NewOptions } from "./new.ts";
import { noColour } from "./options.ts";

/** The pigs of a visit that is to come: option, what it says. */
export const wishOptions: readonly (readonly [string, string])[] = [
  ["--pigs <number>", "pigs to open"],
  ["--signs <words>", "what they show, separated by commas: sneezing,cough"],
  ["--basis <word>", "why they are opened (default: clinical with --signs)"],
  ["--healthy <number>", "healthy pigs to open beside them"],
  ["--draw <file>", "pigs of a list that plan choose wrote, with --format csv or json"],
  ["--group <name>", "the group they come from, as in farm.yaml"],
  ["--head <number>", "how many pigs that group usually has, for a farm that is new"],
  ["--age <age>", "their age: 58 d, 8 wk"],
  ["--class <word>", "their age class instead: stillborn, aborted, mummy"],
  ["--protocol <name>", "what must be covered; default: full, or that of carcase.yaml"],
  ["--method <word>", "how they are killed: barbiturate"],
  ["--veterinarian <name>", "who makes the visit"],
  ["--complaint <text>", "what the farm reported, in its words"],
  ["--date <day>", "the day, where the folder is not named by it"],
];

export function addNew(program: Command): void {
  const command = program
    .command("new")
    .argument("[folder]", "folder of the visit below that of the farm, such as alder-farm/2026-03-14");
  for (const option of wishOptions) command.option(...option);
  command
    .option(...noColour)
    .summary("the files of a visit, to be filled in: farm, visit and pigs")
    .description(
      "Begins a visit: a farm, a visit and a file a pig, with what is due and blank. Asks on a terminal what is not given. Overwrites nothing.",
    )
    .addHelpText("after", newHelp)
    .action(call<NewOptions>(async () => (await import("./new.ts")).begin));
}

const newHelp = `
Examples:
  carcase new
  carcase new alder-farm/2026-03-14 --group nursery-2 --age "58 d" --pigs 4 --signs sneezing --healthy 2
  carcase new alder-farm/2026-09-19 --draw draw.csv --age "8 wk" --protocol respiratory`;
