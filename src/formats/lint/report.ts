/** What the linter found, and what its formats need to know beside. */
import type { Fault } from "../../cases/index.ts";
import type { Level, LintResult } from "../../lint/index.ts";

export interface LintReport {
  readonly result: LintResult;
  readonly unreadable: readonly Fault[];
  /** Levels that make the exit code 1. */
  readonly failing: readonly Level[];
  /** Of this program. */
  readonly version: string;
  /** When it ran. */
  readonly at: Date;
  readonly quiet: boolean;
  /** The rules that were asked beside the alarms, where not all were. */
  readonly only?: readonly string[];
}
