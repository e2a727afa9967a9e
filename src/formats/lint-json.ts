/** The linter's result for scripts. Field names are stable; docs/json.md describes them. */
import type { Fault } from "../cases/index.ts";
import type { LintResult } from "../lint/index.ts";

/** Files that could not be read stand among the findings as rule `unreadable`, so that no consumer overlooks them. */
export function lintJson(
  { findings, completeness, visits, summary }: LintResult,
  unreadable: readonly Fault[],
): string {
  const listed = [
    ...unreadable.map(({ message, file, line, column }) => ({
      rule: "unreadable",
      level: "error",
      message,
      file,
      line,
      column,
      path: "",
    })),
    ...findings.map(({ rule, level, message, file, line, column, path }) => ({
      rule,
      level,
      message,
      file,
      line,
      column,
      path,
    })),
  ];
  return `${JSON.stringify({ findings: listed, completeness, visits, summary }, null, 2)}\n`;
}
