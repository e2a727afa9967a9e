/** The linter's result for people: findings by file, then completeness, then what sums it up on one screen. */
import type { Completeness, Finding, LintResult, OrganCounts } from "../../lint/index.ts";
import { grouped } from "../../words/grouped.ts";
import { count, listing } from "../../words/listing.ts";
import { visible } from "../../words/visible.ts";
import type { Style } from "../page/style.ts";
import { displayWidth, wrapped } from "../page/width.ts";
import { passedOverLines } from "../passed-over.ts";
import { excerpt } from "./excerpt.ts";

export interface LintTextOptions {
  readonly style: Style;
  /** Characters a line may have. */
  readonly width: number;
  /** Only the findings and the last line. */
  readonly quiet: boolean;
  /** YAML files of other tools. */
  readonly passedOver: readonly string[];
  /** The rules that were asked beside the alarms, where not all were. */
  readonly only?: readonly string[];
}

/** With more findings than this they are counted by rule at the end. */
const manyFindings = 20;
/** Rules in that count; the others are summed up. */
const rulesShown = 15;
/** With more cases than this, only those in which something was skipped are listed. */
const manyCases = 30;

export function lintText(
  result: LintResult,
  { style, width, quiet, passedOver, only }: LintTextOptions,
): string {
  return [
    ...findingLines(result.findings, style, width),
    ...(quiet ? [] : completenessLines(result, style, width)),
    ...(quiet ? [] : ruleLines(result.findings, style)),
    ...fitting(summaryLine(result, style, only), width),
    ...(quiet ? [] : passedOverLines(passedOver).flatMap((line) => fitting(line, width))),
  ]
    .map((line) => `${line}\n`)
    .join("");
}

function findingLines(findings: readonly Finding[], style: Style, width: number): string[] {
  return [...grouped(findings, ({ file }) => file)].flatMap(([file, inFile]) => [
    style.heading(visible(file)),
    ...inFile.flatMap((finding) => [
      ...messageLines(finding, style, width),
      ...excerpt(finding, width - 6).map((line) => `      ${style.quiet(line)}`),
    ]),
    "",
  ]);
}

/** `14:68 error lymphoid.tonsil is blank ... [skipped-organ]`, coloured after it was brought into lines. */
function messageLines(
  { line, column, level, message, rule }: Finding,
  style: Style,
  width: number,
): string[] {
  const place = `  ${line}:${column} `;
  const name = `[${rule}]`;
  const lines = fitting(`${place}${level} ${visible(message)} ${name}`, width);
  return lines.map((text, at) => {
    const end = at === lines.length - 1 ? -name.length : undefined;
    const begin = at === 0 ? place.length + level.length : 0;
    return `${at === 0 ? place + style.level(level) : ""}${text.slice(begin, end)}${end === undefined ? "" : style.quiet(name)}`;
  });
}

/** A line as it is where it fits, else several, indented where it goes on. */
function fitting(line: string, width: number): string[] {
  if (displayWidth(line) <= width) return [line];
  const text = line.trimStart();
  const first = line.slice(0, line.length - text.length);
  return wrapped(text, first, width, `${first}  `);
}

function completenessLines({ completeness, visits }: LintResult, style: Style, width: number): string[] {
  if (completeness.length === 0) return [];
  const shown = completeness.filter((one) => completeness.length <= manyCases || one.skipped > 0);
  return [
    style.heading("Completeness"),
    ...caseLines(shown).flatMap((line) => fitting(line, width)),
    ...(shown.length < completeness.length
      ? [
          `  nothing was skipped in ${shown.length === 0 ? "any of the" : "the other"} ${count(completeness.length - shown.length, "case")}`,
        ]
      : []),
    ...visits.flatMap((visit) => {
      const name = `  visit ${visible(visit.visit)}`;
      const closed = visit.closed === undefined ? "" : `; ${visit.closed} closed on suspicion`;
      const line = `${name}, ${count(visit.cases, "case")}: ${countLine(visit)}${closed}`;
      const paint = (text: string): string => `  ${style.heading(name.slice(2))}${text.slice(name.length)}`;
      return fitting(line, width).map((text) => (text.startsWith(name) ? paint(text) : text));
    }),
    "",
  ];
}

function caseLines(shown: readonly Completeness[]): string[] {
  const width = Math.max(0, ...shown.map((one) => visible(one.case).length));
  return shown.map(
    (one) => `  ${visible(one.case).padEnd(width)}  ${one.closed ? "closed on suspicion" : countLine(one)}`,
  );
}

/** How often each rule spoke, the most frequent first; only where there are too many findings to overlook. */
function ruleLines(findings: readonly Finding[], style: Style): string[] {
  if (findings.length <= manyFindings) return [];
  const counts = new Map<string, number>();
  for (const { rule } of findings) counts.set(rule, (counts.get(rule) ?? 0) + 1);
  const ranked = [...counts].sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1));
  const others = ranked.slice(rulesShown);
  const inOthers = others.reduce((sum, [, number]) => sum + number, 0);
  const width = String(Math.max(ranked[0]?.[1] ?? 0, inOthers)).length;
  return [
    style.heading("By rule"),
    ...ranked.slice(0, rulesShown).map(([rule, number]) => `  ${String(number).padStart(width)}  ${rule}`),
    ...(others.length > 0
      ? [`  ${String(inOthers).padStart(width)}  of ${count(others.length, "other rule")}`]
      : []),
    "",
  ];
}

/** `47 of 52 organs due were examined (6 by system), 3 not examined with reason, 2 skipped, 3 wanted organs blank` */
function countLine(counts: OrganCounts): string {
  const parts = [
    `${counts.examined} of ${counts.due} organs due were examined${counts.by_system > 0 ? ` (${counts.by_system} by system)` : ""}`,
  ];
  if (counts.not_examined > 0) parts.push(`${counts.not_examined} not examined with reason`);
  if (counts.not_assessable > 0) parts.push(`${counts.not_assessable} not assessable`);
  if (counts.skipped > 0) parts.push(`${counts.skipped} skipped`);
  if (counts.wanted_blank > 0)
    parts.push(`${counts.wanted_blank} wanted ${counts.wanted_blank === 1 ? "organ" : "organs"} blank`);
  return parts.join(", ");
}

/** `; 2 findings accepted with reason, 31 known from the baseline` */
function setAside({ accepted, baselined }: LintResult["summary"]): string {
  const parts = [
    accepted > 0 ? `${count(accepted, "finding")} accepted with reason` : "",
    baselined > 0 ? `${baselined} known from the baseline` : "",
  ].filter((part) => part !== "");
  return parts.length === 0 ? "" : `; ${parts.join(", ")}`;
}

/** With more rules than this they are counted, not named. */
const rulesNamed = 3;

/** `; only lobe-missing and the alarms were asked; 2 errors of the format are not shown` */
function askedOnly(
  { format_errors_not_shown: hidden }: LintResult["summary"],
  only: readonly string[],
): string {
  const named = only.length > rulesNamed ? [count(only.length, "rule")] : only;
  const asked = `; only ${listing([...named, "the alarms"])} were asked`;
  if (hidden === 0) return asked;
  return `${asked}; ${count(hidden, "error")} of the format ${hidden === 1 ? "is" : "are"} not shown, so not every value was read: leave out --only`;
}

/**
 * `26 cases: 2 errors in 1 file`
 * @param only the rules that were asked beside the alarms, where not all were
 */
export function summaryLine({ summary }: LintResult, style: Style, only?: readonly string[]): string {
  const cases = count(summary.cases, "case");
  const unread = summary.unreadable > 0 ? `, ${count(summary.unreadable, "file")} could not be read` : "";
  const found = [
    summary.errors > 0 ? style.level("error", count(summary.errors, "error")) : "",
    summary.warnings > 0 ? style.level("warning", count(summary.warnings, "warning")) : "",
    summary.notes > 0 ? style.level("note", count(summary.notes, "note")) : "",
  ].filter((part) => part !== "");
  if (summary.cases === 0) return `no case was read${unread}`;
  const set = setAside(summary);
  const end = `${set}${unread}${only === undefined ? "" : askedOnly(summary, only)}`;
  const clean = only === undefined ? "nothing skipped, nothing contradictory" : "nothing found";
  if (found.length === 0) return `${cases}: ${style.good(set === "" ? clean : "nothing else")}${end}`;
  return `${cases}: ${found.join(", ")} in ${count(summary.files_with_findings, "file")}${end}`;
}
