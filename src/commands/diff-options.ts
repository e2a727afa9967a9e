/** The options of `carcase diff`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import { addOutput, type CommonOptions, noColour } from "./options.ts";

export function addDiff(program: Command): void {
  addOutput(
    program.command("diff").argument("[what...]", "one or two revisions; then cases, files or folders"),
    "text, markdown or json",
  )
    .option("--files", "compare two files, wherever they lie: OLD NEW")
    .option("-q, --quiet", "only the changes")
    .option(...noColour)
    .summary("what changed in records since a commit, in medical words")
    .description(
      "Says what changed in cases, visits, farms and results: from the last commit to the files as they are, from a revision to the files, or from one revision to another.",
    )
    .addHelpText(
      "after",
      "\nExamples:\n  carcase diff\n  carcase diff HEAD~3\n  carcase diff main..HEAD alder-farm",
    )
    .action(call<CommonOptions>(async () => (await import("./diff.ts")).diff));
}
