/** The options of `carcase agree`. */
import type { Command } from "commander";
import type { AgreeOptions } from "./agree.ts";
import { call } from "./call.ts";
import { addCommonOptions } from "./options.ts";

export function addAgree(program: Command): void {
  addCommonOptions(program.command("agree"), "text for people, json or csv for scripts")
    .summary("do two readers score alike?")
    .description(
      "Compares readers of the same pigs: kappa, weighted kappa, PABAK, ICC, who is higher, and the pigs by grade.",
    )
    .option("--scale <ids>", "only these scales, separated by commas")
    .option("--level <share>", "confidence level of the intervals (default: 95%)")
    .addHelpText("after", agreeHelp)
    .action(call<AgreeOptions>(async () => (await import("./agree.ts")).agree));
}

const agreeHelp = `
Examples:
  carcase agree alder-farm/2026-03-14
  carcase agree --scale maff-1978 readings.csv
A case holds further readings under readings:
  [{reader: B. Second, grades: {maff-1978: 3}}]
A table ending in .csv has the columns pig, reader and one for each scale, a line
for each pig and reader.`;
