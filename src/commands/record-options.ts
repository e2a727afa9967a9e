/** The options of `carcase record`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { noColour } from "./options.ts";
import type { RecordOptions } from "./record.ts";

export function addRecord(program: Command): void {
  program
    .command("record")
    .argument("[case]", "the file of one pig, as carcase new has made it")
    .usage("[options] <case>")
    .option("--wanted", "ask of organs that are only wanted as well, where nothing else is due in their step")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option(...noColour)
    .summary("an interview about one pig, in the order of the knife")
    .description(
      "Asks in the terminal what is due in a case and blank, in the order of the knife, and writes every answer into the file at once. Stop whenever you like: the next call goes on where you were.",
    )
    .addHelpText("after", recordHelp)
    .action(call<RecordOptions>(async () => (await import("./record.ts")).record));
}

const recordHelp = `
Example:
  carcase record alder-farm/2026-03-14/pig-01.yaml`;
