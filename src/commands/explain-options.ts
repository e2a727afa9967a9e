/** The options of `carcase explain`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { addOutput, noColour } from "./options.ts";

export function addExplain(program: Command): void {
  addOutput(
    program
      .command("explain")
      .argument(
        "[name]",
        "a rule, scale, organ, sign, word ..., a kind of them, such as rules, or a case file; default: what kinds there are",
      ),
    "text for people, json for scripts",
  )
    .option(
      "--config <file>",
      "settings file that names scales of your own; default: the nearest carcase.yaml",
    )
    .option(...noColour)
    .summary("what is this rule, scale, organ or word, and who says so?")
    .description("Explains a name: what it means, where it comes from, how sure that is.")
    .addHelpText("after", explainHelp)
    .action(call(async () => (await import("./explain.ts")).explain));
}

const explainHelp = `
Examples:
  carcase explain skipped-organ
  carcase explain maff-1978
  carcase explain lungs
  carcase explain consolidation
  carcase explain processes
  carcase explain farm/visit/pig-03.yaml   what is due, and what the visit gives`;
