/** A record at fault as it was probably meant: a slip in the word of a lesion must not silence its alarm. */
import type { Case } from "../cases/index.ts";
import type { AlarmSubject } from "./alarm.ts";

export interface IntendedReading {
  readonly subject: AlarmSubject;
  /** The record as written of each one as meant. */
  readonly written: ReadonlyMap<AlarmSubject, AlarmSubject>;
}

/** @returns undefined when everything fits the format, so that there is nothing to guess */
export function intendedReading(subject: AlarmSubject): IntendedReading | undefined {
  const cases = "cases" in subject ? subject.cases : [subject];
  const visit = "cases" in subject ? subject : subject.visit;
  if (visit?.asIntended === undefined && cases.every((one) => one.asIntended === undefined)) return undefined;
  const record = visit?.asIntended ?? visit?.record;
  const read = cases.map((one) => caseAsIntended(one, record));
  const written = new Map<AlarmSubject, AlarmSubject>(
    read.flatMap((one, index) => cases.slice(index, index + 1).map((other) => [one, other] as const)),
  );
  if (!("cases" in subject)) return read[0] && { subject: read[0], written };
  const whole = { ...subject, record: record ?? subject.record, cases: read };
  return { subject: whole, written: written.set(whole, subject) };
}

function caseAsIntended(one: Case, record: NonNullable<Case["visit"]>["record"] | undefined): Case {
  const visit = one.visit && { ...one.visit, record: record ?? one.visit.record };
  return { ...(one.asIntended ?? one), visit };
}
