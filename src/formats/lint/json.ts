/** The linter's result for scripts. Field names are stable; docs/json.md describes them. */
import { outputJson } from "../page/json.ts";
import { type LintReport, reported } from "./report.ts";

/** Files that could not be read stand among the findings as rule `unreadable`, so that no consumer overlooks them. */
export function lintJson({
  result,
  unreadable,
  passedOver,
}: Pick<LintReport, "result" | "unreadable" | "passedOver">): string {
  const { accepted, completeness, visits, summary } = result;
  const findings = reported(result, unreadable).map(({ rule, level, message, file, line, column, path }) => ({
    rule,
    level,
    message,
    file,
    line,
    column,
    path,
  }));
  const set = accepted.map(({ rule, file, line, path, because }) => ({ rule, file, line, path, because }));
  return outputJson("lint", 1, {
    findings,
    accepted: set,
    completeness,
    visits,
    passed_over: passedOver,
    summary,
  });
}
