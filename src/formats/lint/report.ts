/** What the linter found, and what its formats need to know beside. */
import type { Fault } from "../../cases/index.ts";
import type { Finding, Level, LintResult } from "../../lint/index.ts";

export interface LintReport {
  readonly result: LintResult;
  readonly unreadable: readonly Fault[];
  /** YAML files of other tools. */
  readonly passedOver: readonly string[];
  /** Levels that make the exit code 1. */
  readonly failing: readonly Level[];
  /** Of this program. */
  readonly version: string;
  /** When it ran. */
  readonly at: Date;
  readonly quiet: boolean;
  /** Where the pages of rules are, with {rule} for the name of one. */
  readonly rulePages?: string;
  /** The rules that were asked beside the alarms, where not all were. */
  readonly only?: readonly string[];
}

export const unreadableRule = "unreadable";

/** What a script is told: files that could not be read, so that nobody overlooks them, then the findings. */
export function reported(result: LintResult, unreadable: readonly Fault[]): Finding[] {
  const notRead = unreadable.map(({ message, file, line, column, length, excerpt }): Finding => {
    return { rule: unreadableRule, level: "error", message, file, line, column, path: "", length, excerpt };
  });
  return [...notRead, ...result.findings];
}
