/** Where a rule says nothing: while an alarm is open one voice is heard, and after the call the samples are the authority's. */
import { openAlarms } from "../alarms/index.ts";
import type { Case, Farm, Visit } from "../cases/index.ts";
import { asking, type Rule } from "./rule.ts";

/** When a rule says nothing, where it does not say so itself: whoever asks for more is silent while an alarm is open. */
const silenceOf = ({ silent, family }: Pick<Rule, "silent" | "family">): NonNullable<Rule["silent"]> =>
  silent ?? (asking.has(family) ? "alarm" : "never");

/**
 * The visits and cases for which a stop stands. Of a visit it is enough that one of its pigs is alarmed; the other pigs,
 * which lie open already, are silent only where the alarm is one of the visit as a whole.
 */
export function stopped({
  visits,
  cases,
}: {
  readonly visits: readonly Visit[];
  readonly cases: readonly Case[];
}): ReadonlySet<Case | Visit> {
  const alarmed = visits.filter((visit) => openAlarms(visit).length > 0);
  const whole = alarmed.filter((visit) => openAlarms(visit).some(({ subject }) => subject === visit));
  return new Set<Case | Visit>([
    ...alarmed,
    ...whole.flatMap((visit) => visit.cases),
    ...cases.filter((one) => openAlarms(one).length > 0),
  ]);
}

/** Whether the rule says nothing about this file. A rule across the archive must see every case, and speaks. */
export function isSilent(rule: Rule, subject: Case | Visit | Farm, stop: ReadonlySet<object>): boolean {
  const silent = silenceOf(rule);
  if (silent === "never" || rule.scope === "archive") return false;
  if ("closed" in subject.record && subject.record.closed !== undefined && isLater(rule)) return true;
  return stop.has(subject) || (silent === "authority" && wasCalled(subject));
}

/** Whether the rule asks for what comes after a carcass was closed: organs, sets of samples, a diagnosis. */
const isLater = ({ family, silent }: Rule): boolean =>
  ["completeness", "scoring", "diagnosis", "photographs"].includes(family) ||
  (silent !== undefined && silent !== "never");

const wasCalled = (subject: Case | Visit | Farm): boolean =>
  isCalled(subject) ||
  ("cases" in subject ? subject.cases.some(isCalled) : "visit" in subject && isCalled(subject.visit));

const isCalled = (subject: Case | Farm | Case["visit"]): boolean =>
  subject !== undefined && "authority" in subject.record && subject.record.authority !== undefined;
