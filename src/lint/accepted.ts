/** Findings that a file accepts under `accepted:`, each for one rule at one place, with the reason. */
import { type Case, type Path, type Results, saysNothing, unknownName, type Visit } from "../cases/index.ts";
import type { Finding } from "./finding.ts";
import type { Rule } from "./rule.ts";

/** A finding that somebody looked at and accepted. */
export interface AcceptedFinding extends Finding {
  readonly because: string;
}

/** A file that can accept findings about itself. */
type Accepting = Case | Visit | Results;

/** What came of the entries. */
export interface Acceptance {
  /** The findings that stay. */
  readonly findings: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
}

export interface AcceptanceQuestion {
  readonly findings: readonly Finding[];
  /** The files whose entries are asked. */
  readonly subjects: readonly Accepting[];
  readonly visits: readonly Visit[];
  readonly rules: readonly Rule[];
  /** Whether a rule was asked about a file at all; a rule that was not may still have something to say. */
  asked(rule: Rule, subject: Accepting): boolean;
  /** Takes what is wrong with an entry. */
  report(rule: string, subject: Accepting, message: string, path: Path): void;
}

type Entry = NonNullable<Accepting["record"]["accepted"]>[number];

/** Parts the findings into those that stay and those that an entry accepts, and reports entries that are wrong. */
export function accept(question: AcceptanceQuestion): Acceptance {
  const accepted = new Map<Finding, string>();
  for (const subject of question.subjects) {
    if (subject.record.accepted === undefined) continue;
    const inFile = question.findings.filter((finding) => finding.file === subject.file);
    for (const [index, entry] of subject.record.accepted.entries()) {
      const met = inFile.filter(
        (finding) => finding.rule === entry.rule && meets(finding.path, entry.at, subject),
      );
      const fault = entryFault(entry, met, subject, question);
      if (fault === undefined)
        for (const finding of met) accepted.set(finding, accepted.get(finding) ?? (entry.because as string));
      else question.report(fault.rule, subject, fault.message, ["accepted", index, ...fault.path]);
    }
  }
  if (accepted.size === 0) return { findings: question.findings, accepted: [] };
  return {
    findings: question.findings.filter((finding) => !accepted.has(finding)),
    accepted: question.findings.flatMap((finding) => {
      const because = accepted.get(finding);
      return because === undefined ? [] : [{ ...finding, because }];
    }),
  };
}

/** Whether a path lies at a place or below it; without a place the whole file is meant. */
function meets(path: string, at: string | undefined, subject: Accepting): boolean {
  if (at === undefined) return true;
  const place = counted(at.trim(), subject);
  return path === place || path.startsWith(`${place}.`) || path.startsWith(`${place}[`);
}

/** `samples[01-B]` is the sample of that id wherever it stands in its list, so that the place stays true. */
function counted(place: string, { record }: Accepting): string {
  const [, id, rest] = /^samples\[([^\]]*)\](.*)$/s.exec(place) ?? [];
  const samples = "samples" in record ? (record.samples ?? []) : [];
  const index = samples.findIndex((sample) => sample.id === id);
  return index < 0 ? place : `samples[${index}]${rest}`;
}

interface EntryFault {
  readonly rule: string;
  readonly message: string;
  readonly path: Path;
}

function entryFault(
  entry: Entry,
  met: readonly Finding[],
  subject: Accepting,
  { rules, visits, asked }: AcceptanceQuestion,
): EntryFault | undefined {
  const rule = rules.find(({ id }) => id === entry.rule);
  if (rule === undefined)
    return {
      rule: "accepted-unknown-rule",
      message: `accepted: ${unknownName(
        entry.rule,
        rules.map(({ id }) => id),
        "rule",
      )}`,
      path: ["rule"],
    };
  if (rule.locked)
    return {
      rule: "accepted-locked-rule",
      message: `accepted: ${rule.id} guards the alarms or the format and cannot be accepted; its findings stay. Take this entry out and do what the finding says.`,
      path: ["rule"],
    };
  if (entry.because === undefined || saysNothing(entry.because))
    return {
      rule: "accepted-without-reason",
      message: `accepted: ${rule.id} is accepted without a reason, so the finding stays. Write because: and why it may stay so, for whoever reads the case next year.`,
      path: ["because"],
    };
  if (met.length > 0 || !asked(rule, subject) || !isWhole(rule, subject, visits)) return undefined;
  const where = entry.at === undefined ? "in this file" : `at ${entry.at}`;
  return {
    rule: "accepted-unused",
    message: `accepted: ${rule.id} finds nothing ${where}. Take this entry out, or correct the place it names.`,
    path: entry.at === undefined ? ["rule"] : ["at"],
  };
}

/** Whether everything that the rule looks at was read, so that its silence means something. */
function isWhole(rule: Rule, subject: Accepting, visits: readonly Visit[]): boolean {
  if (subject.faults.length > 0 || ("unknownProtocol" in subject && subject.unknownProtocol !== undefined))
    return false;
  // The other half of a pair may lie in a folder that was not asked about.
  if (rule.scope === "archive") return false;
  if (rule.scope !== "visit" && rule.scope !== "results") return true;
  return visits.some(
    (visit) =>
      visit.complete && [visit, ...visit.cases, ...visit.results].some(({ file }) => file === subject.file),
  );
}
