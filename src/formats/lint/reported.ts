/** What a machine-readable format reports: files that could not be read first, as rule `unreadable`, then findings. */
import type { Fault } from "../../cases/index.ts";
import type { Finding, LintResult } from "../../lint/index.ts";

export const unreadableRule = "unreadable";

/** No consumer may overlook a file that was not read, so it stands among the findings. */
export function reported(result: LintResult, unreadable: readonly Fault[]): Finding[] {
  const notRead = unreadable.map(({ message, file, line, column, length, excerpt }): Finding => {
    return { rule: unreadableRule, level: "error", message, file, line, column, path: "", length, excerpt };
  });
  return [...notRead, ...result.findings];
}
