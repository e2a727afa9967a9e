/** The alarms of a case or a visit, from recorded findings and facts; a diagnosis is never asked. */
import type { Archive, AuthorityEntry, Case } from "../cases/index.ts";
import { type AlarmPattern, alarmPatterns } from "../knowledge/index.ts";
import { fact } from "../record/index.ts";
import { ownCopy } from "../words/own-copy.ts";
import type { Alarm, AlarmSubject, OpenAlarm, Said } from "./alarm.ts";
import { liftedBy, standing } from "./lifted.ts";
import { type Match, matchCondition } from "./match-condition.ts";
import { callWhom } from "./notice.ts";

const ownAlarms = fact((subject: AlarmSubject): readonly Alarm[] =>
  alarmPatterns.flatMap((pattern) => findAlarm(pattern, subject) ?? []),
);

/** Every alarm of a case, or of a visit and then of its cases; those that the authority lifted say by which entry. */
export const findAlarms = (subject: AlarmSubject): readonly Alarm[] =>
  "cases" in subject ? [...ownAlarms(subject), ...subject.cases.flatMap(ownAlarms)] : ownAlarms(subject);

/** The alarms that the authority neither released nor excluded. */
export const openAlarms = (subject: AlarmSubject): Alarm[] => findAlarms(subject).filter(isOpen);

const isOpen = ({ liftedBy: entries }: Alarm): boolean => entries.length === 0;

/** The open alarms of everything that was read, visits before cases. */
export const openAlarmsOf = ({ visits, cases }: Pick<Archive, "visits" | "cases">): OpenAlarm[] =>
  [...visits, ...cases]
    .flatMap(ownAlarms)
    .filter(isOpen)
    .map(({ pattern, subject, evidence }) => ({
      pattern,
      of: "cases" in subject ? "visit" : "case",
      id: ownCopy(subject.id),
      file: subject.file,
      said: saidOf(standing(pattern.id, subject, evidence)),
      whom: callWhom(subject.settings),
    }));

const saidOf = (entry: AuthorityEntry | undefined): Said | undefined =>
  entry && { stands: entry.stands, at: ownCopy(entry.at) };

function findAlarm(pattern: AlarmPattern, subject: AlarmSubject): Alarm | undefined {
  if (pattern.scope !== ("cases" in subject ? "visit" : "case")) return undefined;
  if (pattern.fires === "when-listed" && !subject.settings.notifiable.includes(pattern.id)) return undefined;
  const intended = intendedReading(subject);
  const found = (intended && matchIntended(pattern, intended)) ?? matchCondition(pattern.pattern, subject);
  if (found === undefined) return undefined;
  const seen = new Set<string>();
  const evidence = found.filter((one) => {
    const place = `${one.subject.file} ${one.path.join(".")}`;
    return !seen.has(place) && seen.add(place);
  });
  return { pattern, subject, evidence, liftedBy: liftedBy(pattern.id, subject, evidence) };
}

/** The evidence of what was meant stands in the files as they were written. */
const matchIntended = ({ pattern }: AlarmPattern, { subject, written }: IntendedReading): Match =>
  matchCondition(pattern, subject)?.map((one) => ({
    ...one,
    subject: written.get(one.subject) ?? one.subject,
  }));

/** A record at fault as it was probably meant: a slip in the word of a lesion must not silence its alarm. */
interface IntendedReading {
  readonly subject: AlarmSubject;
  /** The record as written of each one as meant. */
  readonly written: ReadonlyMap<AlarmSubject, AlarmSubject>;
}

/** @returns undefined when everything fits the format, so that there is nothing to guess */
function intendedReading(subject: AlarmSubject): IntendedReading | undefined {
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
