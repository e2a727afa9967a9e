/** The options of `carcase git`, and what git calls. */
import type { Command } from "commander";
import { call } from "./call.ts";
import type { CommonOptions } from "./options.ts";

export function addGit(program: Command): void {
  const git = program
    .command("git")
    .summary("let git merge records part by part, and show differences in words")
    .description(
      "Lets git call carcase where two people's work on a record meets, and where it shows a difference.",
    )
    .addHelpText("after", "\nExample:\n  carcase git enable");
  git
    .command("enable")
    .summary("for this copy of the archive")
    .description(
      "Writes .gitattributes, which goes with the archive, and the settings of git for this copy. Safe to run again.",
    )
    .action(call<CommonOptions>(async () => (await import("./git-setup.ts")).enable));
  git
    .command("disable")
    .summary("take it back")
    .description("Takes out what carcase git enable wrote.")
    .action(call<CommonOptions>(async () => (await import("./git-setup.ts")).disable));
  git
    .command("facts")
    .argument("<file>", "a record")
    .summary("a record with a fact a line; git calls it")
    .description(
      "Prints a record with a fact a line, for git to show differences of; any other file as it is.",
    )
    .action(call<CommonOptions>(async () => (await import("./git-setup.ts")).facts));
}

export function addMergeDriver(program: Command): void {
  program
    .command("merge-driver", { hidden: true })
    .argument("[files...]", "base, ours, theirs, length of marks, name: %O %A %B %L %P")
    .description(
      "Merges a record that two people changed, part by part; git calls it once carcase git enable was run.",
    )
    .action(call<CommonOptions>(async () => (await import("./merge-driver.ts")).mergeDriver));
}
