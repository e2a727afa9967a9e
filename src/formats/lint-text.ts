/** The linter's result for people: findings by file, then completeness, then one line that sums it up. */
import type { Finding, LintResult, OrganCounts } from "../lint/index.ts";
import { count } from "../words/listing.ts";
import { visible } from "../words/visible.ts";
import { excerpt } from "./excerpt.ts";
import type { Style } from "./style.ts";

export interface LintTextOptions {
  readonly style: Style;
  /** Leave out the completeness of cases in which nothing was skipped. */
  readonly quiet: boolean;
}

export function lintText(result: LintResult, { style, quiet }: LintTextOptions): string {
  return [
    ...findingLines(result.findings, style),
    ...completenessLines(result, style, quiet),
    lastLine(result, style),
  ]
    .map((line) => `${line}\n`)
    .join("");
}

function findingLines(findings: readonly Finding[], style: Style): string[] {
  const files = new Map<string, Finding[]>();
  for (const finding of findings) files.set(finding.file, [...(files.get(finding.file) ?? []), finding]);
  return [...files].flatMap(([file, inFile]) => [
    style.heading(visible(file)),
    ...inFile.flatMap((finding) => [
      `  ${finding.line}:${finding.column} ${style.level(finding.level)} ${visible(finding.message)} ${style.quiet(`[${finding.rule}]`)}`,
      ...excerpt(finding).map((line) => `      ${style.quiet(line)}`),
    ]),
    "",
  ]);
}

function completenessLines(result: LintResult, style: Style, quiet: boolean): string[] {
  const shown = result.completeness.filter((one) => !quiet || one.skipped > 0);
  if (shown.length === 0) return [];
  const width = Math.max(...shown.map((one) => visible(one.case).length));
  return [
    style.heading("Completeness"),
    ...shown.map((one) => `  ${visible(one.case).padEnd(width)}  ${countLine(one)}`),
    ...result.visits.map(
      (visit) =>
        `  ${style.heading(`visit ${visible(visit.visit)}`)}, ${count(visit.cases, "case")}: ${countLine(visit)}`,
    ),
    "",
  ];
}

/** `47 of 52 organs due were examined (6 by system), 3 not examined with reason, 2 skipped` */
export function countLine(counts: OrganCounts): string {
  const parts = [
    `${counts.examined} of ${counts.due} organs due were examined${counts.by_system > 0 ? ` (${counts.by_system} by system)` : ""}`,
  ];
  if (counts.not_examined > 0) parts.push(`${counts.not_examined} not examined with reason`);
  if (counts.not_assessable > 0) parts.push(`${counts.not_assessable} not assessable`);
  if (counts.skipped > 0) parts.push(`${counts.skipped} skipped`);
  return parts.join(", ");
}

function lastLine({ summary }: LintResult, style: Style): string {
  const cases = count(summary.cases, "case");
  const unread = summary.unreadable > 0 ? `, ${count(summary.unreadable, "file")} could not be read` : "";
  const found = [
    summary.errors > 0 ? style.level("error", count(summary.errors, "error")) : "",
    summary.warnings > 0 ? style.level("warning", count(summary.warnings, "warning")) : "",
    summary.notes > 0 ? style.level("note", count(summary.notes, "note")) : "",
  ].filter((part) => part !== "");
  if (summary.cases === 0) return `no case was read${unread}`;
  if (found.length === 0) return `${cases}: ${style.good("nothing skipped, nothing contradictory")}${unread}`;
  return `${cases}: ${found.join(", ")} in ${count(summary.files_with_findings, "file")}${unread}`;
}
