/** The options of `carcase log`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { addOutput, type CommonOptions, noColour } from "./options.ts";

export function addLog(program: Command): void {
  addOutput(
    program
      .command("log")
      .argument("<case>", "a case by its name or file; a visit, a farm or results by their file"),
    "text, markdown or json",
  )
    .option(...noColour)
    .summary("a case through its commits: when, who, what changed")
    .description(
      "Tells a case through its commits, the newest first: when it was kept, by whom, and what changed, also before its file was moved.",
    )
    .addHelpText("after", "\nExample:\n  carcase log alder-2026-03-14-01")
    .action(call<CommonOptions>(async () => (await import("./log.ts")).log));
}
