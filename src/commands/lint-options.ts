/** The options of `carcase lint`, beside those of every command. */
import type { Command } from "commander";
import type { BaselineOptions } from "./baseline.ts";
import type { FixOptions } from "./fix.ts";
import type { CommonOptions } from "./options.ts";
import type { RuleChoiceOptions } from "./rule-choice.ts";

export type LintCommandOptions = CommonOptions &
  BaselineOptions &
  FixOptions &
  RuleChoiceOptions & {
    readonly failOn: string;
    readonly maxWarnings?: string;
    readonly also?: readonly string[];
  };

export function addLintOptions(command: Command): Command {
  return command
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
    .option("--dry-run", "with --fix: show the changes as a diff and write nothing");
}

const collect = (value: string, before: readonly string[] = []): string[] => [...before, value];
