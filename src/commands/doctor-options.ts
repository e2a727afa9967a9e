/** The options of `carcase doctor`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { type CommonOptions, noColour } from "./options.ts";

export function addDoctor(program: Command): void {
  program
    .command("doctor")
    .argument("[paths...]", "folders, case files or globs", ["."])
    .option("-q, --quiet", "only what needs attention")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option(...noColour)
    .summary("is all around the records in its place?")
    .description(
      "Looks at what is around the records: versions, the settings that are found, the line for editors, git and its hooks, files left over from a run that was cut off, cases that no visit lists, photographs and tracings that no case names, seals.",
    )
    .addHelpText("after", doctorHelp)
    .action(call<CommonOptions>(async () => (await import("./doctor.ts")).doctor));
}

const doctorHelp = `
Examples:
  carcase doctor
  carcase doctor alder-farm
Nothing is changed. Exit code 0: all is in its place. 1: something is to do.`;
