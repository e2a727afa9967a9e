/** The options of `carcase config`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { addOutput, type CommonOptions, noColour } from "./options.ts";

export function addConfig(program: Command): void {
  addOutput(
    program.command("config").argument("[path]", "a folder, or a case in it", "."),
    "text for people, json for scripts",
  )
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option(...noColour)
    .summary("which settings hold here, and where does each come from?")
    .description(
      "Shows the settings that hold for a folder: the file, each value with its line, what is left as it is, and what the environment says.",
    )
    .addHelpText("after", configHelp)
    .action(call<CommonOptions>(async () => (await import("./config.ts")).config));
}

const configHelp = `
Examples:
  carcase config alder-farm/2026-03-14
  carcase config --config strict.yaml
  carcase config --no-config            what holds without any settings file`;
