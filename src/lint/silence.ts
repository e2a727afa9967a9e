/** Where a rule says nothing: while an alarm is open one voice is heard, and after the call the samples are the authority's. */
import { openAlarms } from "../alarms/index.ts";
import type { Case, Farm, Results, Visit } from "../cases/index.ts";
import { asking, type Rule } from "./rule.ts";

/** When a rule says nothing, where it does not say so itself: whoever asks for more is silent while an alarm is open. */
const silenceOf = ({ silent, family }: Pick<Rule, "silent" | "family">): NonNullable<Rule["silent"]> =>
  silent ?? (asking.has(family) ? "alarm" : "never");

/** What the rules that ask for more say nothing of: anything, or only what would have to be cut. */
export type Stop = "all" | "cutting";

/**
 * The visits and cases for which a stop stands. While it stands in one pig nothing is cut on, so no other pig of the visit is
 * asked for organs or samples; what is wrong in their records is still said. An alarm that only asks to exclude a disease
 * stops nobody: the samples that exclude it are to be taken.
 */
export function stopped({
  visits,
  cases,
}: {
  readonly visits: readonly Visit[];
  readonly cases: readonly Case[];
}): ReadonlyMap<object, Stop> {
  const stops = (subject: Case | Visit) =>
    openAlarms(subject).filter(({ pattern }) => pattern.level !== "exclude");
  const found = new Map<object, Stop>();
  for (const visit of visits) {
    const open = stops(visit);
    if (open.length === 0) continue;
    const whole = open.some(({ subject }) => subject === visit);
    found.set(visit, "all");
    for (const one of visit.cases) found.set(one, whole ? "all" : "cutting");
  }
  for (const one of cases) if (stops(one).length > 0) found.set(one, "all");
  return found;
}

/** Whether the rule says nothing about this file. A rule across the archive must see every case, and speaks. */
export function isSilent(
  rule: Rule,
  subject: Case | Visit | Farm | Results,
  stop: ReadonlyMap<object, Stop>,
): boolean {
  const silent = silenceOf(rule);
  if (silent === "never" || rule.scope === "archive") return false;
  if ("closed" in subject.record && subject.record.closed !== undefined && isLater(rule)) return true;
  const stands = stop.get(subject);
  if (stands === "all" || (stands === "cutting" && isCutFor(rule))) return true;
  return silent === "authority" && wasCalled(subject);
}

/** Whether the rule asks for what only the knife gives. */
const isCutFor = ({ family }: Rule): boolean => family === "completeness" || family === "sampling";

/** Whether the rule asks for what comes after a carcass was closed: organs, sets of samples, a diagnosis. */
const isLater = ({ family, silent }: Rule): boolean =>
  ["completeness", "scoring", "diagnosis", "photographs"].includes(family) ||
  (silent !== undefined && silent !== "never");

const wasCalled = (subject: Case | Visit | Farm | Results): boolean =>
  isCalled(subject) ||
  ("cases" in subject ? subject.cases.some(isCalled) : "visit" in subject && isCalled(subject.visit));

const isCalled = (subject: Case | Farm | Results | Case["visit"]): boolean =>
  subject !== undefined && "authority" in subject.record && subject.record.authority !== undefined;
