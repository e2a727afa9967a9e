/** Runs the rules over an archive, part by part: what was looked at can be let go, and only what was found is kept. */
import {
  type Archive,
  type Case,
  type Farm,
  type Fault,
  formatPath,
  type HouseScale,
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
import type { GradeCheck } from "./needs-scales.ts";
import type { FileRule, Level, Report, Rule, VisitRule } from "./rule.ts";
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

/** A part of an archive that can be looked at by itself: visits with all of their cases, and the farms around them. */
export type LintPart = Pick<Archive, "cases" | "visits" | "farms">;

/** What was found in some parts of an archive: plain data. */
export interface LintedParts extends Omit<LintResult, "summary"> {
  readonly formatErrorsNotShown: number;
  /** Farm files that were looked at. */
  readonly farms: readonly string[];
  /** The files of each case id. */
  readonly ids: ReadonlyMap<string, readonly string[]>;
}

/** What a rule can report about. */
export type Subject = Case | Visit | Farm | HouseScale;

/** The rule that asks the scales. */
const gradeRule = "grade-contradicts-parts";

export class Linter {
  /** What the scales say of the grades of a case. */
  gradeCheck: GradeCheck = () => [];
  readonly #options: LintOptions;
  readonly #chosen: readonly Rule[];
  readonly #ofCases: readonly { readonly rule: Rule; check(one: Case, report: Report): void }[];
  readonly #ofVisits: readonly VisitRule[];
  readonly #ofFiles: readonly FileRule[];
  readonly #grading: Rule | undefined;
  readonly #findings: Finding[] = [];
  readonly #accepted: AcceptedFinding[] = [];
  readonly #completeness: Completeness[] = [];
  readonly #visits: VisitCompleteness[] = [];
  readonly #farms = new Set<string>();
  readonly #ids = new Map<string, string[]>();
  #formatErrorsNotShown = 0;
  /** Of the part that is being looked at. */
  #found: Finding[] = [];

  constructor(options: LintOptions = {}) {
    const { only } = options;
    this.#options = options;
    this.#chosen = only === undefined ? rules : rules.filter(({ id }) => only.includes(id));
    this.#ofCases = this.#chosen.flatMap((rule): { rule: Rule; check(one: Case, report: Report): void }[] => {
      if (rule.scope === "case") return [{ rule, check: rule.check }];
      return rule.scope === "archive" ? [{ rule, check: rule.begin() }] : [];
    });
    this.#ofVisits = this.#chosen.filter((rule) => rule.scope === "visit");
    this.#ofFiles = this.#chosen.filter((rule) => rule.scope === "file");
    this.#grading = this.#chosen.find(({ id }) => id === gradeRule);
  }

  /** Looks at one more part. */
  add(part: LintPart): void {
    const { cases, visits, farms } = part;
    this.#found = [];
    for (const farm of farms) {
      // A farm comes with each of its visits.
      if (this.#farms.has(farm.file)) continue;
      this.#farms.add(farm.file);
      this.#file(farm);
    }
    for (const visit of visits) this.#visit(visit);
    const counts = new Map<string, Completeness>();
    for (const one of cases) {
      this.#case(one);
      counts.set(one.file, completeness(one));
      if (one.record.case !== undefined) this.#ids.set(one.id, [...(this.#ids.get(one.id) ?? []), one.file]);
    }
    this.#completeness.push(...counts.values());
    for (const { id, file, cases: ofVisit } of visits) {
      const examined = ofVisit.map((one) => counts.get(one.file)).filter((one) => one !== undefined);
      this.#visits.push({ visit: id, file, cases: ofVisit.length, ...addCounts(examined) });
    }
    this.#settle(part);
  }

  /** Looks at a scale file of the practice, which belongs to no part. */
  addScale(scale: HouseScale): void {
    this.#found = [];
    this.#faults(scale);
    this.#findings.push(...this.#found);
  }

  /** What was found so far. */
  parts(): LintedParts {
    return {
      findings: this.#findings,
      accepted: this.#accepted,
      completeness: this.#completeness,
      visits: this.#visits,
      formatErrorsNotShown: this.#formatErrorsNotShown,
      farms: [...this.#farms],
      ids: this.#ids,
    };
  }

  #file(subject: Case | Visit | Farm): void {
    this.#faults(subject);
    const reporter = new Reporter(subject, this.#add);
    for (const rule of this.#ofFiles) rule.check(subject, reporter.of(rule));
  }

  #visit(visit: Visit): void {
    this.#file(visit);
    const reporter = new Reporter(visit, this.#add);
    for (const rule of this.#ofVisits)
      rule.check(visit, reporter.of(rule), (one) => new Reporter(one, this.#add).of(rule));
  }

  #case(one: Case): void {
    this.#file(one);
    const reporter = new Reporter(one, this.#add);
    for (const { rule, check } of this.#ofCases) if (isAnswerable(rule, one)) check(one, reporter.of(rule));
    if (this.#grading === undefined) return;
    const report = reporter.of(this.#grading);
    for (const { message, path } of this.gradeCheck(one)) report(message, path);
  }

  /** Reports what the reader found wrong. */
  #faults(subject: Subject): void {
    for (const fault of subject.faults) {
      const rule = this.#chosen.find((one) => one.id === ruleOfFault(fault));
      if (rule === undefined) this.#formatErrorsNotShown++;
      else {
        const level = levelFor(rule, subject, this.#options);
        if (level !== "off") this.#found.push(fromFault(rule, level, fault));
      }
    }
  }

  readonly #add = (
    rule: Rule,
    subject: Subject,
    message: string,
    path: Path,
    points: "key" | "value",
  ): void => {
    const level = levelFor(rule, subject, this.#options);
    if (level !== "off") this.#found.push(placeFinding(rule.id, level, message, subject, path, points));
  };

  /** Takes out what the files accept, and reports entries that are wrong. */
  #settle({ cases, visits }: LintPart): void {
    const findings = this.#found.sort(byPlace);
    this.#found = [];
    const settled = accept({
      findings,
      subjects: [...visits, ...cases],
      visits,
      rules,
      asked: (rule, subject) =>
        this.#chosen.includes(rule) && levelFor(rule, subject, this.#options) !== "off",
      report: (id, subject, message, path) => {
        const rule = this.#chosen.find((one) => one.id === id);
        if (rule !== undefined) this.#add(rule, subject, message, path, "value");
      },
    });
    this.#findings.push(...settled.findings, ...this.#found);
    this.#accepted.push(...settled.accepted);
  }
}

/** Gives the reports of one rule after the other about a file to the linter. */
class Reporter {
  #rule: Rule | undefined;

  constructor(
    readonly subject: Subject,
    readonly add: (
      rule: Rule,
      subject: Subject,
      message: string,
      path: Path,
      points: "key" | "value",
    ) => void,
  ) {}

  of(rule: Rule): Report {
    this.#rule = rule;
    return this.#report;
  }

  readonly #report: Report = (message, inRecord, points = "value") => {
    const rule = this.#rule;
    if (rule === undefined) return;
    const path = writtenPath(this.subject, inRecord);
    // What the reader has already refused is not missing as well; an alarm rests on what could be read.
    if (
      rule.family === "alarm" ||
      !this.subject.faults.some((fault) => pathsMeet(fault.path, path) || pathsMeet(fault.intended, path))
    )
      this.add(rule, this.subject, message, path, points);
  };
}

/**
 * The result of a run.
 * @param parts in the order in which they were read
 * @param unreadable faults of files of which nothing could be made
 */
export function lintResult(parts: readonly LintedParts[], unreadable: readonly Fault[]): LintResult {
  const findings = parts.flatMap((part) => part.findings).sort(byPlace);
  const accepted = parts.flatMap((part) => part.accepted).sort(byPlace);
  const perCase = parts.flatMap((part) => part.completeness);
  return {
    findings,
    accepted,
    completeness: perCase,
    visits: parts.flatMap((part) => part.visits),
    summary: {
      cases: perCase.length,
      ...findingCounts(findings),
      accepted: accepted.length,
      baselined: 0,
      unreadable: new Set(unreadable.map(({ file }) => file)).size,
      format_errors_not_shown: parts.reduce((sum, { formatErrorsNotShown }) => sum + formatErrorsNotShown, 0),
      ...addCounts(perCase),
    },
  };
}

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
