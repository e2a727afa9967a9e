/** Runs the rules over an archive, part by part: what was looked at can be let go, and only what was found is kept. */

import { isUntold } from "../alarms/index.ts";
import {
  type Archive,
  byFile,
  type Case,
  type Farm,
  type Fault,
  type HouseScale,
  type Moment,
  moment,
  notShown,
  type Path,
  pathsMeet,
  type Results,
  type Settings,
  standsIn,
  type Visit,
  writtenPath,
} from "../cases/index.ts";
import { ownCopy } from "../words/own-copy.ts";
import { visible } from "../words/visible.ts";
import { type AcceptedFinding, accept } from "./accepted.ts";
import {
  addCounts,
  type Completeness,
  completeness,
  type OrganCounts,
  type VisitCompleteness,
} from "./completeness.ts";
import { type Finding, placeFinding, shownPath } from "./finding.ts";
import type { GradeCheck } from "./needs-scales.ts";
import type { FileRule, Level, Points, Report, ResultsRule, Rule, VisitRule } from "./rule.ts";
import { checkRulesOf, type NamedRules, ruleNamed } from "./rule-names.ts";
import { textsOf } from "./rule-texts.ts";
import { rules } from "./rules/index.ts";
import { isSilent, type Stop, stopped } from "./silence.ts";
import { type FindingCounts, findingCounts } from "./summary.ts";

export interface LintOptions {
  /** Only these rules, by id. */
  readonly only?: readonly string[];
  /** Levels that go before those of the settings. */
  readonly levels?: Readonly<Record<string, Level | "off">>;
  /** The day of the run, for what is asked after some days; without it that is not asked. */
  readonly today?: string;
}

interface LintSummary extends OrganCounts, FindingCounts {
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

/** What must be known of a file when the file itself was let go. */
export interface LintedFile {
  /** The levels that its settings give to rules. */
  readonly rules: Settings["rules"];
  /** A value of it, or of a file that rules about it read as well, could not be read. */
  readonly unsound: boolean;
  /** Errors of the format that were found and not shown, because only other rules were asked. */
  readonly formatErrorsNotShown: number;
  /** It belongs to no single part: a farm, or a scale of the practice. */
  readonly shared: boolean;
}

/** What was found in some parts of an archive: plain data. */
export interface LintedParts extends Omit<LintResult, "summary"> {
  /** Every file that was looked at. */
  readonly files: readonly (readonly [file: string, LintedFile])[];
  /** The files of each case id. */
  readonly ids: readonly (readonly [id: string, files: readonly string[]])[];
  /** The settings of the cases, as far as they speak of rules. */
  readonly settings: readonly NamedRules[];
}

/** What a rule can report about. */
export type Subject = Case | Visit | Farm | Results | HouseScale;

/** The rule that asks the scales. */
const gradeRule = "grade-contradicts-parts";

export class Linter {
  /** What the scales say of the grades of a case. */
  gradeCheck: GradeCheck = () => [];
  readonly #options: LintOptions;
  readonly #chosen: readonly Rule[];
  readonly #ofCases: readonly { readonly rule: Rule; check(one: Case, report: Report): void }[];
  readonly #ofVisits: readonly VisitRule[];
  readonly #ofResults: readonly ResultsRule[];
  readonly #ofFiles: readonly FileRule[];
  readonly #grading: Rule | undefined;
  readonly #findings: Finding[] = [];
  readonly #accepted: AcceptedFinding[] = [];
  readonly #completeness: Completeness[] = [];
  readonly #visits: VisitCompleteness[] = [];
  readonly #files = new Map<string, LintedFile>();
  readonly #settings = new Set<Settings>();
  readonly #ids = new Map<string, string[]>();
  #isOfDay = false;
  /** Of the part that is being looked at. */
  #found: Finding[] = [];
  /** What was found of defaults of its visits. */
  readonly #ofDefaults = new Map<string, { readonly finding: Finding; readonly heirs: Set<string> }>();
  /** The files of the part for which a stop stands. */
  #stopped: ReadonlyMap<object, Stop> = new Map();

  /** @throws UnknownRule when the options name a rule that does not exist */
  constructor(options: LintOptions = {}) {
    const { only, levels = {} } = options;
    for (const id of [...(only ?? []), ...Object.keys(levels)]) ruleNamed(id);
    this.#options = options;
    this.#chosen = only === undefined ? rules : rules.filter(({ id }) => only.includes(id));
    this.#ofCases = this.#chosen.flatMap((rule): { rule: Rule; check(one: Case, report: Report): void }[] => {
      if (rule.scope === "case") return [{ rule, check: rule.check }];
      return rule.scope === "archive" ? [{ rule, check: rule.begin() }] : [];
    });
    this.#ofVisits = this.#chosen.filter((rule) => rule.scope === "visit");
    this.#ofResults = this.#chosen.filter((rule) => rule.scope === "results");
    this.#ofFiles = this.#chosen.filter((rule) => rule.scope === "file");
    this.#grading = this.#chosen.find(({ id }) => id === gradeRule);
  }

  /** Looks at one more part. */
  add(part: LintPart): void {
    const { cases, visits, farms } = part;
    this.#found = [];
    this.#stopped = stopped(part);
    for (const farm of farms) {
      // A farm comes with each of its visits.
      if (!this.#files.has(farm.file)) this.#file(farm, { shared: true });
    }
    for (const visit of visits) this.#visit(visit);
    const counts = new Map<Case, Completeness>();
    for (const one of cases) {
      this.#settings.add(one.settings);
      this.#case(one);
      counts.set(one, completeness(one));
      if (one.record.case === undefined) continue;
      const files = this.#ids.get(one.id);
      // What is spread into a new list takes room for more.
      if (files === undefined) this.#ids.set(ownCopy(one.id), [one.file]);
      else files.push(one.file);
    }
    this.#completeness.push(...counts.values());
    for (const { id, file, cases: ofVisit } of visits) {
      const examined = ofVisit.map((one) => counts.get(one)).filter((one) => one !== undefined);
      const closed = examined.filter((one) => one.closed).length;
      this.#visits.push({
        visit: ownCopy(id),
        file,
        cases: ofVisit.length,
        ...addCounts(examined),
        ...(closed > 0 && { closed }),
      });
    }
    this.#settle(part);
  }

  /** Looks at a scale file of the practice, which belongs to no part. */
  addScale(scale: HouseScale): void {
    if (this.#files.has(scale.file)) return;
    this.#found = [];
    this.#faults(scale, { shared: true });
    this.#findings.push(...this.#found);
  }

  /** Whether another day may find something else. */
  get isOfDay(): boolean {
    return this.#isOfDay;
  }

  readonly #today = (): Moment | undefined => {
    this.#isOfDay = true;
    return moment(this.#options.today);
  };

  /** What was found so far. */
  parts(): LintedParts {
    return {
      findings: this.#findings,
      accepted: this.#accepted,
      completeness: this.#completeness,
      visits: this.#visits,
      files: [...this.#files],
      ids: [...this.#ids],
      settings: [...this.#settings].map(({ file, rules: named }) => ({ file, rules: named })),
    };
  }

  #file(subject: Case | Visit | Farm, about: { readonly shared?: true } = {}): void {
    this.#faults(subject, about);
    const reporter = new Reporter(subject, this.#add);
    for (const rule of this.#ofFiles)
      if (!isSilent(rule, subject, this.#stopped)) rule.check(subject, reporter.of(rule));
  }

  #visit(visit: Visit): void {
    this.#file(visit);
    const reporter = new Reporter(visit, this.#add);
    for (const rule of this.#ofVisits)
      if (!isSilent(rule, visit, this.#stopped))
        rule.check(visit, reporter.of(rule), (one) => new Reporter(one, this.#add).of(rule), this.#today);
    for (const results of visit.results) this.#results(results, visit);
  }

  #results(results: Results, visit: Visit): void {
    this.#faults(results, {});
    const reporter = new Reporter(results, this.#add);
    for (const rule of this.#ofResults)
      if (!isSilent(rule, visit, this.#stopped)) rule.check(results, visit, reporter.of(rule));
  }

  #case(one: Case): void {
    this.#file(one);
    const reporter = new Reporter(one, this.#add);
    for (const { rule, check } of this.#ofCases)
      if (isAnswerable(rule, one) && !isSilent(rule, one, this.#stopped)) check(one, reporter.of(rule));
    if (this.#grading === undefined) return;
    const report = reporter.of(this.#grading);
    for (const { message, path } of this.gradeCheck(one)) report(message, path);
  }

  /** Reports what the reader found wrong. */
  #faults(subject: Subject, { shared = false }: { readonly shared?: boolean }): void {
    let formatErrorsNotShown = 0;
    for (const fault of subject.faults) {
      const rule = this.#chosen.find((one) => one.id === ruleOfFault(fault));
      if (rule === undefined) formatErrorsNotShown++;
      else {
        const level = levelFor(rule, subject.settings, this.#options);
        if (level !== "off") this.#found.push(fromFault(rule, level, fault, subject));
      }
    }
    const { rules: named } = subject.settings;
    // Of a file for which a stop stands nothing can be concluded from what is not found.
    const unsound = around(subject).some(isUnsound) || this.#stopped.has(subject);
    this.#files.set(subject.file, { rules: named, unsound, formatErrorsNotShown, shared });
  }

  readonly #add: Add = (rule, subject, message, path, points, heir) => {
    const level = levelFor(rule, subject.settings, this.#options);
    if (level === "off") return;
    // What a rule says of a file may quote it; what the rule asks does not.
    const said = subject.document.isHidden ? `${textsOf(rule).summary} (${notShown})` : message;
    const finding = placeFinding(rule.id, level, said, subject, path, points);
    if (heir === undefined) {
      this.#found.push(finding);
      return;
    }
    const key = JSON.stringify(finding);
    const heirs = this.#ofDefaults.get(key)?.heirs ?? new Set();
    this.#ofDefaults.set(key, { finding, heirs: heirs.add(heir.id) });
  };

  /** What is wrong with a default is told once, with the cases that inherit it. */
  #tellDefaults(): void {
    for (const { finding, heirs } of this.#ofDefaults.values()) {
      const [first = ""] = heirs;
      const heir = heirs.size === 1 ? visible(first) : `${heirs.size} cases`;
      this.#found.push({ ...finding, message: `${finding.message} Inherited by ${heir}.` });
    }
    this.#ofDefaults.clear();
  }

  /** Takes out what the files accept, and reports entries that are wrong. */
  #settle({ cases, visits }: LintPart): void {
    this.#tellDefaults();
    const findings = this.#found.sort(byPlace);
    this.#found = [];
    const settled = accept({
      findings,
      subjects: [...visits, ...visits.flatMap(({ results }) => results), ...cases],
      visits,
      rules,
      asked: (rule, subject) =>
        this.#chosen.includes(rule) &&
        !isSilent(rule, subject, this.#stopped) &&
        levelFor(rule, subject.settings, this.#options) !== "off",
      report: (id, subject, message, path) => {
        const rule = this.#chosen.find((one) => one.id === id);
        if (rule !== undefined) this.#add(rule, subject, message, path, "value");
      },
    });
    this.#findings.push(...settled.findings, ...this.#found);
    this.#accepted.push(...settled.accepted);
  }
}

/** Takes what a rule reports; of a value that the visit gives, with the case that inherits it. */
type Add = (
  rule: Rule,
  subject: Pick<Subject, "file" | "document" | "settings">,
  message: string,
  path: Path,
  points: Points,
  heir?: Case,
) => void;

/** Gives the reports of one rule after the other about a file to the linter. */
class Reporter {
  #rule: Rule | undefined;

  constructor(
    readonly subject: Subject,
    readonly add: Add,
  ) {}

  of(rule: Rule): Report {
    this.#rule = rule;
    return this.#report;
  }

  readonly #report: Report = (message, inRecord, points = "value") => {
    const rule = this.#rule;
    if (rule === undefined) return;
    const stands = standsIn(this.subject, inRecord);
    // What the reader has already refused is not missing as well; an alarm rests on what could be read.
    if (rule.family !== "alarm" && isRefused(this.subject, inRecord)) return;
    const heir = stands.subject !== this.subject && "inherited" in this.subject ? this.subject : undefined;
    this.add(rule, stands.subject, message, stands.path, points, heir);
  };
}

/** Whether a value could not be read: in the file, or in the visit that gives it. */
function isRefused(subject: Subject, inRecord: Path): boolean {
  const path = writtenPath(subject, inRecord);
  const visit = "visit" in subject ? subject.visit : undefined;
  const meets = (intended: Path): boolean =>
    intended.length > 1 && intended[0] === "defaults" && pathsMeet(intended.slice(1), inRecord);
  return (
    subject.faults.some((fault) => pathsMeet(fault.path, path) || pathsMeet(fault.intended, path)) ||
    visit?.faults.some(({ intended }) => meets(intended)) === true
  );
}

/**
 * The result of a run.
 * @param parts in the order in which they were read; what is shared counts once
 * @param unreadable faults of files of which nothing could be made
 * @throws UnknownRule when the settings of a case name a rule that does not exist: not before everything was read, so
 *   that no alarm is missed for it
 */
export function lintResult(
  parts: readonly LintedParts[],
  unreadable: readonly Pick<Fault, "file">[],
): LintResult {
  for (const { settings } of parts) for (const one of settings) checkRulesOf(one);
  const files = new Map<string, LintedFile>();
  const partOf = new Map<string, LintedParts>();
  const isOf = (part: LintedParts): ((finding: Finding) => boolean) => {
    const own = new Set(part.files.map(([file]) => file));
    return ({ file }) => !own.has(file) || partOf.get(file) === part;
  };
  for (const part of parts)
    for (const [file, linted] of part.files) {
      // The first that met what is shared says what is wrong with it, unless somebody asked about it by itself.
      if (linted.shared && files.has(file)) continue;
      files.set(file, linted);
      partOf.set(file, part);
    }
  const findings = parts
    .flatMap((part) => (part.findings.length === 0 ? [] : part.findings.filter(isOf(part))))
    .sort(byPlace);
  const accepted = parts.flatMap((part) => part.accepted).sort(byPlace);
  const perCase = parts.flatMap((part) => part.completeness).sort(byFile);
  return {
    findings,
    accepted,
    completeness: perCase,
    visits: parts.flatMap((part) => part.visits).sort(byFile),
    summary: {
      cases: perCase.length,
      ...findingCounts(findings),
      accepted: accepted.length,
      baselined: 0,
      unreadable: new Set(unreadable.map(({ file }) => file)).size,
      format_errors_not_shown: [...files.values()].reduce((sum, one) => sum + one.formatErrorsNotShown, 0),
      ...addCounts(perCase),
    },
  };
}

/** How loud a rule speaks about a file: locked rules as they must, others as the command line or the settings say. */
export const levelFor = (
  rule: Rule,
  { rules: named }: Pick<Settings, "rules">,
  { levels }: Pick<LintOptions, "levels">,
): Level | "off" => (rule.locked ? rule.level : (levels?.[rule.id] ?? named[rule.id] ?? rule.level));

/** A file with those that a rule about it may read as well. */
function around(subject: Subject): readonly Unsound[] {
  if ("cases" in subject) return [subject, ...subject.cases];
  return "visit" in subject && subject.visit !== undefined ? [subject, subject.visit] : [subject];
}

type Unsound = Pick<Subject, "faults"> & { readonly unknownProtocol?: unknown };

const isUnsound = ({ faults, unknownProtocol }: Unsound): boolean =>
  faults.length > 0 || unknownProtocol !== undefined;

const ruleOfFault = (fault: Fault): string =>
  fault.rule ??
  (fault.outOfRange ? "observation-out-of-range" : isUntold(fault) ? untoldRule : "case-format");

const untoldRule = "alarm-cannot-be-told";

function fromFault(rule: Rule, level: Level, fault: Fault, { document }: Subject): Finding {
  const { file, line, column, length, excerpt } = fault;
  const path = shownPath(document, fault.path);
  const message =
    rule.id === untoldRule
      ? `${fault.message} An alarm looks here and cannot be told: put this right before you go on.`
      : fault.message;
  return { rule: rule.id, level, message, file, line, column, path, length, excerpt };
}

/** What is due under a protocol that does not exist, or of a class that cannot be read, cannot be told; one finding says so. */
const isAnswerable = (rule: Rule, one: Case): boolean =>
  (rule.family !== "completeness" && rule.family !== "history") ||
  (one.unknownProtocol === undefined && !isClassUnread(one));

const isClassUnread = ({ ageClass, faults }: Case): boolean =>
  ageClass === undefined &&
  faults.some(({ intended }) => intended.length > 0 && pathsMeet(intended, ["pig", "class"]));

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
