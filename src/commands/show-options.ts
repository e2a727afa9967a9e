/** The options of `carcase show`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { type CommonOptions, noColour } from "./options.ts";

export function addShow(program: Command): void {
  program
    .command("show")
    .argument("<paths...>", "a case by its file or name, or several")
    .option("-f, --format <format>", "text or json", "text")
    .option("-o, --output <file>", "write to a file")
    .option("-q, --quiet", "only what needs attention")
    .option("--config <file>", "settings file to use instead of the nearest carcase.yaml")
    .option(...noColour)
    .summary("a pig on one screen: found, scored, left open")
    .description(
      "Shows a pig on one screen: who it was, what was found, its scores, what was not examined, the diagnosis and what is open.",
    )
    .addHelpText("after", "\nExample:\n  carcase show alder-2026-03-14-01")
    .action(call<CommonOptions>(async () => (await import("./show.ts")).show));
}
