/** What a rule is: one thing a record must not lack or contradict, said once, with who says so. */
import type { Case, Farm, Moment, Path, Results, Visit } from "../cases/index.ts";
import type { Source } from "../knowledge/index.ts";
import type { Parcel } from "../record/index.ts";

export const levels = ["error", "warning", "note"] as const;
export type Level = (typeof levels)[number];

export const families = [
  "completeness",
  "selection",
  "history",
  "timing",
  "description",
  "consistency",
  "scoring",
  "sampling",
  "packaging",
  "safety",
  "alarm",
  "diagnosis",
  "results",
  "visit",
  "photographs",
  "format",
] as const;
export type Family = (typeof families)[number];

/** What of a path is meant: its key, its value, or of the whole file the comment that names its schema. */
export type Points = "key" | "value" | "schema line";

/**
 * Families whose rules ask for more: organs, words, pigs, samples. While an alarm is open they say nothing, so that it is
 * heard: alarms, what contradicts itself, what endangers people and what cannot be read still speak.
 */
export const asking: ReadonlySet<Family> = new Set<Family>([
  "completeness",
  "selection",
  "history",
  "timing",
  "scoring",
  "sampling",
  "diagnosis",
  "visit",
  "photographs",
]);

/** A finding of a rule, before it has a place in a file. */
export type Report = (message: string, path: Path, points?: Points) => void;

/**
 * An example: YAML laid over a complete base case (a blank key takes an entry out). `others` are further cases of
 * the same visit. The test-suite runs every example: the bad one gives this rule's finding and no other rule's, the
 * good one gives none.
 */
export interface Example {
  readonly case?: string;
  readonly visit?: string;
  readonly others?: readonly string[];
  /** Results beside the visit, laid over a file that has no entries. */
  readonly results?: string;
  /** The day of the run. */
  readonly today?: string;
  /** Laid over plain settings. */
  readonly settings?: string;
  /** A scale file of the practice, named in the settings. */
  readonly scale?: string;
  /** Empty files that lie beside the cases, such as photographs. */
  readonly files?: readonly string[];
  /** The schema that a comment at the top of the case names. */
  readonly schema?: string;
}

interface RuleText {
  /** Stable for ever, explains itself. */
  readonly id: string;
  readonly family: Family;
  readonly level: Level;
  /** Guards the alarms or the format: settings cannot lower its level or switch it off. */
  readonly locked?: true;
  /**
   * Says nothing while an alarm is open; `authority`: nor after the call, since the samples are then its own. Rules of the
   * asking families say nothing while an alarm is open unless this says `never`.
   */
  readonly silent?: "alarm" | "authority" | "never";
  /** Reckons with the times of a case: says nothing where they cannot be right. */
  readonly trustsTimes?: true;
  /** One sentence: what the rule asks for. */
  readonly summary: string;
  /** What goes wrong without it. */
  readonly protects: string;
  /** What else looks like its finding and is none, and how the two are told apart in the record. */
  readonly lookAlike: string;
  readonly source: Source;
  readonly bad: Example;
  readonly good: Example;
}

/** A source that was read. */
export const verified = (cite: string): Source => ({ cite, confidence: "verified" });

/** A source that is what people of the trade do. */
export const practice = (cite: string): Source => ({ cite, confidence: "common-practice" });

/** A source that was not opened again. */
export const fromMemory = (cite: string): Source => ({ cite, confidence: "from-memory" });

/** What a row of a table of rules says of itself; its table gives it family, scope and check. */
export type RuleRow = Omit<RuleText, "family">;

/** A rule that looks at one case. */
export interface CaseRule extends RuleText {
  readonly scope: "case";
  check(one: Case, report: Report): void;
}

/** A rule that looks at the cases of one visit together; reports go to the visit or to one of its cases. */
export interface VisitRule extends RuleText {
  readonly scope: "visit";
  /** Of a rule about one entry of parcels: that entry, and whether such a parcel has to keep the rule. */
  readonly asks?: keyof Parcel;
  readonly concerns?: (parcel: Parcel) => boolean;
  check(
    visit: Visit,
    reportVisit: Report,
    reportCase: (one: Case) => Report,
    /** The day of the run: whoever asks finds something else on another day. */
    today: () => Moment | undefined,
  ): void;
}

/** A rule that looks at the results of a laboratory with the visit that they are of. */
export interface ResultsRule extends RuleText {
  readonly scope: "results";
  check(results: Results, visit: Visit, report: Report): void;
}

/** A rule that looks at any one file: a case, a visit or a farm. */
export interface FileRule extends RuleText {
  readonly scope: "file";
  check(one: Case | Visit | Farm, report: Report): void;
}

/** A rule that looks across folders, at one case after the other, and keeps no more of each than it needs. */
export interface ArchiveRule extends RuleText {
  readonly scope: "archive";
  /** Begins a run; what it gives back is shown every case in turn. */
  begin(): (one: Case, report: Report) => void;
}

/**
 * A rule whose findings come from the reader, while it fits the file to the format, from its accepted entries, or from
 * the scales.
 */
export interface FormatRule extends RuleText {
  readonly scope: "format";
}

export type Rule = CaseRule | VisitRule | ResultsRule | FileRule | ArchiveRule | FormatRule;
