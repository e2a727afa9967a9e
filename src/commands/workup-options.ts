/** The options of `carcase workup`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { addCommonOptions } from "./options.ts";
import type { WorkupOptions } from "./workup.ts";

export function addWorkup(program: Command): void {
  addCommonOptions(program.command("workup"), "text for people; markdown for a report; json for scripts")
    .option("--first <number>", "so many diseases, a line each (default: 10)")
    .option("--all", "every disease that fits in full, and not only the first three")
    .summary("what do the findings fit, what speaks against it, and what would settle it?")
    .description(
      "Holds a visit, or a case named by its file, against what is known of the diseases. Says what fits with the findings for and against, and gives no probability.",
    )
    .addHelpText("after", workupHelp)
    .action(call<WorkupOptions>(async () => (await import("./workup.ts")).workup));
}

const workupHelp = `
Examples:
  carcase workup alder-farm/2026-03-14
  carcase workup alder-farm/2026-03-14/pig-02.yaml
  carcase workup --format markdown -o workup.md alder-farm/2026-03-14
While an alarm stands its notice is all that is said, and the exit code is 1.
It advises and does not diagnose.
In what order diseases stand: carcase explain workup`;
