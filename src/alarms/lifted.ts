/** Where the authority stands on an alarm. Closed answers decide: no word beside them lifts anything. */
import { type AuthorityEntry, type Case, isAfter, type Moment, moment } from "../cases/index.ts";
import { selectionRules } from "../knowledge/index.ts";
import type { Evidence, Subject } from "../patterns/index.ts";

/** An entry so long after the visit is about something else, or its year is wrong; our own limit. */
const lateHours = selectionRules.authority_days * 24;

/** Whether an entry lies so long after the visit (selection-rules.yaml: authority_days) that it answers none of its alarms. */
export function isFarAfter(entry: string, date: string | undefined): boolean {
  const [at, day] = [moment(entry), moment(date)];
  return at !== undefined && day !== undefined && at.written - day.written > lateHours;
}

/** What was done with the authority about a file: by its own entries and those of its visit. */
export const entriesOf = (subject: Subject): readonly AuthorityEntry[] => [
  ...(subject.record.authority ?? []),
  ...("cases" in subject ? [] : (subject.visit?.record.authority ?? [])),
];

/** Whether an entry would let the examination go on, if it says all that it must. */
const lets = ({ stands }: AuthorityEntry): boolean => stands === "released" || stands === "excluded";

/** What an entry that lets the examination go on does not say, though it must: for which alarm, and why. */
export function unsaid(entry: AuthorityEntry): ("for" | "reached" | "ground" | "sample")[] {
  if (!lets(entry)) return [];
  const keys =
    entry.stands === "released" ? (["for", "reached", "ground"] as const) : (["for", "sample"] as const);
  return keys.filter((key) => entry[key] === undefined);
}

/** The entries about one alarm that can be about it: not before it was seen, and not long after the visit. */
function about(alarm: string, subject: Subject, from: Moment | undefined): Dated[] {
  const day = dayOf(subject);
  return entriesOf(subject).flatMap((entry) => {
    const at = moment(entry.at);
    if (at === undefined || (entry.for !== undefined && !entry.for.includes(alarm))) return [];
    if (day !== undefined && at.written - day.written > lateHours) return [];
    return isBefore(at, from) ? [] : [{ entry, at }];
  });
}

interface Dated {
  readonly entry: AuthorityEntry;
  readonly at: Moment;
}

/**
 * The entry that says where an alarm stands: the last that is about it. What was seen from outside can have been told
 * before the opening; what the knife showed cannot.
 */
export function standing(
  alarm: string,
  subject: Subject,
  evidence: readonly Evidence[],
): AuthorityEntry | undefined {
  const from = "cases" in subject ? moment(subject.record.date) : since(subject, evidence);
  if (from === undefined) return undefined;
  const found = about(alarm, subject, from).filter(({ entry }) => unsaid(entry).length === 0);
  // Of two at the same time the stricter counts.
  const last = found.filter(({ at }) => !found.some((other) => isAfter(other.at, at)));
  return (last.find(({ entry }) => !lets(entry)) ?? last[0])?.entry;
}

/**
 * The entries by which the authority released an alarm or excluded it; none while it stands. A visit answers with its own
 * entry, or when every pig of the alarm is answered.
 */
export function liftedBy(
  alarm: string,
  subject: Subject,
  evidence: readonly Evidence[],
): readonly AuthorityEntry[] {
  const stands = standing(alarm, subject, evidence);
  if (stands !== undefined || !("cases" in subject))
    return stands !== undefined && lets(stands) ? [stands] : [];
  const pigs = [...new Set(evidence.map((one) => one.subject))].filter((one) => one !== subject);
  const answers = pigs.map((one) =>
    liftedBy(
      alarm,
      one,
      evidence.filter((seen) => seen.subject === one),
    ),
  );
  return answers.every((answer) => answer.length > 0) ? answers.flat() : [];
}

/** The entry by which the authority's sample tested negative, where it is the last about an alarm. */
export function excludedBy(alarm: string, subject: Subject): AuthorityEntry | undefined {
  const last = standing(alarm, subject, []);
  return last?.stands === "excluded" ? last : undefined;
}

/** From when on the evidence was there to be told of. */
function since(one: Case, evidence: readonly Evidence[]): Moment | undefined {
  const opened = moment(one.record.opened?.at);
  const death = moment(one.record.death?.at);
  const known = evidence.every(({ beforeKnife }) => beforeKnife) ? death : (opened ?? death);
  return known ?? dayOf(one);
}

/** The day of the visit; of a pig without a visit, when it was opened or died. */
function dayOf(subject: Subject): Moment | undefined {
  if ("cases" in subject) return moment(subject.record.date);
  const { opened, death } = subject.record;
  return moment(subject.visit?.record.date) ?? moment(opened?.at) ?? moment(death?.at);
}

/** Where no day can be read at all, nothing says that the entry came after. */
const isBefore = (at: Moment, limit: Moment | undefined): boolean =>
  limit === undefined || isAfter(limit, at) || isUnsure(limit, at);

/** A time with a zone and one without: the entry counts only when it is later as written, too. */
const isUnsure = (limit: Moment, at: Moment): boolean =>
  (limit.utc === undefined) !== (at.utc === undefined) &&
  !limit.dayOnly &&
  !at.dayOnly &&
  limit.written > at.written;
