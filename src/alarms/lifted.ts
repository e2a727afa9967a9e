/** Whether a dated call to the authority answers an alarm. */
import { type Case, isAfter, isNoDecision, type Moment, moment } from "../cases/index.ts";
import { selectionRules } from "../knowledge/index.ts";
import type { AlarmSubject, Evidence } from "./alarm.ts";

/** A call so long after the visit is about something else, or its year is wrong; our own limit. */
const lateHours = selectionRules.call_days * 24;

/** Whether a call lies so long after the visit (selection-rules.yaml: call_days) that it answers none of its alarms. */
export function isFarAfter(call: string | undefined, date: string | undefined): boolean {
  const [at, day] = [moment(call), moment(date)];
  return at !== undefined && day !== undefined && at.written - day.written > lateHours;
}

/** When the authority was reached, by the entries that hold for a file, its own and that of its visit, and say what was answered. */
export function contacts(subject: AlarmSubject): Moment[] {
  const entries = [
    subject.record.authority,
    "cases" in subject ? undefined : subject.visit?.record.authority,
  ];
  const day = dayOf(subject);
  return entries
    .filter((entry) => !isNoDecision(entry?.answer ?? ""))
    .map((entry) => moment(entry?.contacted))
    .filter((at) => at !== undefined)
    .filter((at) => day === undefined || at.written - day.written <= lateHours);
}

/**
 * A call answers what was known when it was made. What was seen from outside can have been told before the opening;
 * what the knife showed cannot. A visit answers with its own entry, or when every pig of the alarm is answered.
 */
export function isLifted(subject: AlarmSubject, evidence: readonly Evidence[]): boolean {
  if (!("cases" in subject)) return contacts(subject).some((at) => !isBefore(at, since(subject, evidence)));
  if (contacts(subject).some((at) => !isBefore(at, moment(subject.record.date)))) return true;
  const pigs = [...new Set(evidence.map((one) => one.subject))].filter((one) => one !== subject);
  return (
    pigs.length > 0 &&
    pigs.every((one) =>
      isLifted(
        one,
        evidence.filter((seen) => seen.subject === one),
      ),
    )
  );
}

/** From when on the evidence was there to be told of. */
export function since(one: Case, evidence: readonly Evidence[]): Moment | undefined {
  const opened = moment(one.record.opened?.at);
  const death = moment(one.record.death?.at);
  const known = evidence.every(({ beforeKnife }) => beforeKnife) ? death : (opened ?? death);
  return known ?? dayOf(one);
}

/** The day of the visit; of a pig without a visit, when it was opened or died. */
function dayOf(subject: AlarmSubject): Moment | undefined {
  if ("cases" in subject) return moment(subject.record.date);
  const { opened, death } = subject.record;
  return moment(subject.visit?.record.date) ?? moment(opened?.at) ?? moment(death?.at);
}

/** Where no day can be read at all, nothing says that the call came after. */
const isBefore = (at: Moment, limit: Moment | undefined): boolean =>
  limit === undefined || isAfter(limit, at) || isUnsure(limit, at);

/** A time with a zone and one without: the call counts only when it is later as written, too. */
const isUnsure = (limit: Moment, at: Moment): boolean =>
  (limit.utc === undefined) !== (at.utc === undefined) &&
  !limit.dayOnly &&
  !at.dayOnly &&
  limit.written > at.written;
