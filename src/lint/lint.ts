/** Runs the rules over an archive. The order of findings is that of files, lines, columns and rule ids. */
import {
  type Archive,
  type Case,
  type Fault,
  formatPath,
  type Path,
  pathsMeet,
  type Visit,
  writtenPath,
} from "../cases/index.ts";
import { type AcceptedFinding, accept } from "./accepted.ts";
import {
  addCounts,
  type Completeness,
  completeness,
  type OrganCounts,
  type VisitCompleteness,
} from "./completeness.ts";
import { type Finding, placeFinding } from "./finding.ts";
import { type GradeCheck, gradeCheckFor } from "./needs-scales.ts";
import type { Level, Rule } from "./rule.ts";
import { checkRuleNames } from "./rule-names.ts";
import { rules } from "./rules/index.ts";
import { type FindingCounts, findingCounts } from "./summary.ts";

export interface LintOptions {
  /** Only these rules, by id. */
  readonly only?: readonly string[];
  /** Levels that go before those of the settings. */
  readonly levels?: Readonly<Record<string, Level | "off">>;
}

export interface LintSummary extends OrganCounts, FindingCounts {
  readonly cases: number;
  /** Findings that a file accepts with a reason. */
  readonly accepted: number;
  /** Findings that a baseline already knows. */
  readonly baselined: number;
  readonly unreadable: number;
  /** Errors of the format that were found and not shown, because only other rules were asked. */
  readonly format_errors_not_shown: number;
}

export interface LintResult {
  readonly findings: readonly Finding[];
  /** What would be findings, but for an entry under `accepted:` in the file. */
  readonly accepted: readonly AcceptedFinding[];
  readonly completeness: readonly Completeness[];
  readonly visits: readonly VisitCompleteness[];
  readonly summary: LintSummary;
}

/** As `lintCases`; the scales are loaded only where there is a grade that they must be asked about. */
export const lintCasesLazily = async (archive: Archive, options: LintOptions = {}): Promise<LintResult> =>
  lintWith(archive, options, await gradeCheckFor(archive.cases));

/** @param gradeCheck what the scales say of the grades of a case */
export function lintWith(archive: Archive, options: LintOptions, gradeCheck: GradeCheck): LintResult {
  checkRuleNames(archive.cases, options);
  const findings: Finding[] = [];
  const chosen = rules.filter((rule) => options.only === undefined || options.only.includes(rule.id));
  const levelOf = (rule: Rule, subject: Subject): Level | "off" => levelFor(rule, subject, options);
  const add = (rule: Rule, subject: Subject, message: string, path: Path, points: "key" | "value"): void => {
    const level = levelOf(rule, subject);
    if (level !== "off") findings.push(placeFinding(rule.id, level, message, subject, path, points));
  };
  const reporter =
    (rule: Rule, subject: Subject) =>
    (message: string, inRecord: Path, points: "key" | "value" = "value") => {
      const path = writtenPath(subject, inRecord);
      // What the reader has already refused is not missing as well; an alarm rests on what could be read.
      if (
        rule.family === "alarm" ||
        !subject.faults.some((fault) => pathsMeet(fault.path, path) || pathsMeet(fault.intended, path))
      )
        add(rule, subject, message, path, points);
    };

  let notShown = 0;
  const { farms, visits, cases, scales } = archive;
  for (const subject of new Set<Subject>([...farms, ...visits, ...cases, ...scales]))
    for (const fault of subject.faults) {
      const rule = chosen.find((one) => one.id === ruleOfFault(fault));
      if (rule === undefined) {
        notShown++;
        continue;
      }
      const level = levelOf(rule, subject);
      if (level !== "off") findings.push(fromFault(rule, level, fault));
    }
  for (const rule of chosen) {
    if (rule.scope === "case")
      for (const one of archive.cases) if (isAnswerable(rule, one)) rule.check(one, reporter(rule, one));
    if (rule.scope === "visit")
      for (const visit of archive.visits)
        rule.check(visit, reporter(rule, visit), (one) => reporter(rule, one));
    if (rule.scope === "archive") rule.check(archive, (one) => reporter(rule, one));
  }
  const grading = chosen.find(({ id }) => id === gradeRule);
  if (grading !== undefined)
    for (const one of cases)
      for (const { message, path } of gradeCheck(one)) reporter(grading, one)(message, path);
  findings.sort(byPlace);
  const faults: Finding[] = [];
  const settled = accept({
    findings,
    archive,
    rules,
    asked: (rule, subject) => chosen.includes(rule) && levelOf(rule, subject) !== "off",
    report: (id, subject, message, path) => {
      const rule = chosen.find((one) => one.id === id);
      const level = rule === undefined ? "off" : levelOf(rule, subject);
      if (level !== "off") faults.push(placeFinding(id, level, message, subject, path, "value"));
    },
  });
  const staying = [...settled.findings, ...faults].sort(byPlace);
  const perCase = archive.cases.map(completeness);
  return {
    findings: staying,
    accepted: settled.accepted,
    completeness: perCase,
    visits: perVisit(archive, perCase),
    summary: summarise(archive, staying, { accepted: settled.accepted.length, notShown }, perCase),
  };
}

/** The rule that asks the scales. */
const gradeRule = "grade-contradicts-parts";

/** What a rule can report about. */
export type Subject = Case | Visit | Archive["farms"][number] | Archive["scales"][number];

/** How loud a rule speaks about a file: locked rules as they must, others as the command line or the settings say. */
export const levelFor = (
  rule: Rule,
  { settings }: Pick<Subject, "settings">,
  { levels }: Pick<LintOptions, "levels">,
): Level | "off" => (rule.locked ? rule.level : (levels?.[rule.id] ?? settings.rules[rule.id] ?? rule.level));

const ruleOfFault = (fault: Fault): string =>
  fault.rule ?? (fault.outOfRange ? "observation-out-of-range" : "case-format");

function fromFault(rule: Rule, level: Level, fault: Fault): Finding {
  const { message, file, line, column, length, excerpt } = fault;
  return { rule: rule.id, level, message, file, line, column, path: formatPath(fault.path), length, excerpt };
}

/** What is due under a protocol that does not exist cannot be told; one finding says so. */
const isAnswerable = (rule: Rule, one: Case): boolean =>
  one.unknownProtocol === undefined || (rule.family !== "completeness" && rule.family !== "history");

/** Code-unit order, the same on every machine. */
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function byPlace(a: Finding, b: Finding): number {
  return (
    compare(a.file, b.file) ||
    a.line - b.line ||
    a.column - b.column ||
    compare(a.rule, b.rule) ||
    compare(a.path, b.path)
  );
}

function perVisit(archive: Archive, perCase: readonly Completeness[]): VisitCompleteness[] {
  const byFile = new Map(perCase.map((one) => [one.file, one]));
  return archive.visits.map((visit) => {
    const counts = visit.cases.map((one) => byFile.get(one.file)).filter((one) => one !== undefined);
    return { visit: visit.id, file: visit.file, cases: visit.cases.length, ...addCounts(counts) };
  });
}

function summarise(
  archive: Archive,
  findings: readonly Finding[],
  { accepted, notShown }: { readonly accepted: number; readonly notShown: number },
  perCase: readonly Completeness[],
): LintSummary {
  return {
    cases: archive.cases.length,
    ...findingCounts(findings),
    accepted,
    baselined: 0,
    unreadable: new Set(archive.unreadable.map((fault) => fault.file)).size,
    format_errors_not_shown: notShown,
    ...addCounts(perCase),
  };
}
