/** The options of `carcase lint`. */
import type { Command } from "commander";
import { call } from "./call.ts";
import type { LintCommandOptions } from "./lint-asked.ts";
import { addCommonOptions, collect } from "./options.ts";
import { isStandardFile } from "./streams.ts";

export function addLint(program: Command): void {
  addCommonOptions(
    program.command("lint"),
    "text for people, html as a page; json, sarif, junit, github or gitlab for scripts and continuous integration",
  )
    .option("--also <format=file>", "write a second format to a file; may be given again", collect)
    .option("--fail-on <level>", "lowest level that makes the exit code 1: error, warning or note", "error")
    .option("--max-warnings <number>", "exit code 1 as well with more warnings than this")
    .option(
      "--only <ids>",
      "only these rules, separated by commas; alarms always speak; may be given again",
      collect,
    )
    .option("--rule <id=level>", "level of a rule: error, warning, note or off; may be given again", collect)
    .option("--baseline <file>", "leave out the findings that this file knows; fail only for new ones")
    .option("--write-baseline <file>", "write the findings of today to a baseline file")
    .option("--frozen-baseline", "never shrink the baseline file (so does CI=true)")
    .option("--fix", "first put right what is certain: units, words, quotes, order of keys")
    .option("--threads <number>", "share the work of a large archive between so many threads; by itself one")
    .option(
      "--shard <part>",
      "with --format json: only this part of the farms, such as 3/16; merge makes one of them",
    )
    .option("--no-cache", "look at every file anew, and keep nothing for the next run")
    .option("--dry-run", "with --fix: show the changes as a diff and write nothing")
    .option(
      "--changed [revision]",
      "only visits with a change since the last commit, or since a branch or commit",
    )
    .option("--staged", "only visits with a change that is going to be committed, as it will be committed")
    .option("--watch", "go on: lint again what changes, until Ctrl-C")
    .summary("what was skipped, contradictory or unsafe, at which line?")
    .description(
      "Checks cases: skipped systems and organs, missing sides and lobes, missing history, contradictions.",
    )
    .addHelpText("after", lintHelp)
    .hook("preAction", annotateInRunner)
    .action(call<LintCommandOptions>(async () => (await import("./lint.ts")).lint));
}

/** The log of a job on GitHub is read for annotations. A format that is asked for holds, and files stay as they are. */
function annotateInRunner(command: Command): void {
  const isLeft = command.getOptionValueSource("format") === "default" && command.opts().output === undefined;
  if (isLeft && process.env.GITHUB_ACTIONS === "true" && !isStandardFile())
    command.setOptionValue("format", "github");
}

const lintHelp = `
Examples:
  carcase lint                          all cases below the current folder
  carcase lint alder-farm/2026-03-14    one visit
  carcase lint --format json .          for scripts
  carcase lint --fix --dry-run .        what would be put right
  carcase lint --changed                what has changed since the last commit
  carcase lint --also sarif=carcase.sarif --also junit=carcase.xml .
Every name in brackets can be explained: carcase explain skipped-organ`;
