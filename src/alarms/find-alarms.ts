/** The alarms of a case or a visit, from recorded findings and facts; a diagnosis is never asked. */
import type { Archive, AuthorityEntry } from "../cases/index.ts";
import { type AlarmPattern, alarmPatterns } from "../knowledge/index.ts";
import { looksOf, matchCondition, type Subject } from "../patterns/index.ts";
import { fact } from "../record/index.ts";
import { ownCopy } from "../words/own-copy.ts";
import type { Alarm, OpenAlarm, Said } from "./alarm.ts";
import { liftedBy, standing } from "./lifted.ts";
import { callWhom } from "./notice.ts";
import { isUntold } from "./untold.ts";

const ownAlarms = fact((subject: Subject): readonly Alarm[] =>
  alarmPatterns.flatMap((pattern) => findAlarm(pattern, subject) ?? []),
);

/** Every alarm of a case, or of a visit and then of its cases; those that the authority lifted say by which entry. */
export const findAlarms = (subject: Subject): readonly Alarm[] =>
  "cases" in subject ? [...ownAlarms(subject), ...subject.cases.flatMap(ownAlarms)] : ownAlarms(subject);

/** The alarms that the authority neither released nor excluded. */
export const openAlarms = (subject: Subject): Alarm[] => findAlarms(subject).filter(isOpen);

const isOpen = ({ liftedBy: entries }: Alarm): boolean => entries.length === 0;

/** The open alarms of everything that was read, visits before cases, and the files of which none can be told. */
export const openAlarmsOf = ({ visits, cases }: Pick<Archive, "visits" | "cases">): OpenAlarm[] =>
  [...visits, ...cases].flatMap((subject) => {
    const told = (pattern: AlarmPattern | undefined, said: Said | undefined): OpenAlarm => ({
      pattern,
      of: "cases" in subject ? "visit" : "case",
      id: ownCopy(subject.id),
      file: subject.file,
      said,
      whom: callWhom(subject.settings),
    });
    return [
      ...ownAlarms(subject)
        .filter(isOpen)
        .map(({ pattern, evidence }) => told(pattern, saidOf(standing(pattern.id, subject, evidence)))),
      ...(subject.faults.some(isUntold) ? [told(undefined, undefined)] : []),
    ];
  });

const saidOf = (entry: AuthorityEntry | undefined): Said | undefined =>
  entry && { stands: entry.stands, at: ownCopy(entry.at) };

function findAlarm(pattern: AlarmPattern, subject: Subject): Alarm | undefined {
  // What was seen on the live pigs of a visit is a sign as it is on a carcass.
  if ("cases" in subject ? pattern.scope === "case" && !sawAny(subject) : pattern.scope === "visit")
    return undefined;
  if (pattern.fires === "when-listed" && !subject.settings.notifiable.includes(pattern.id)) return undefined;
  const found = matchCondition(pattern.pattern, subject);
  if (found === undefined) return undefined;
  const seen = new Set<string>();
  const evidence = found.filter((one) => {
    const place = `${one.subject.file} ${one.path.join(".")}`;
    return !seen.has(place) && seen.add(place);
  });
  return { pattern, subject, evidence, liftedBy: liftedBy(pattern.id, subject, evidence) };
}

const sawAny = (subject: Subject): boolean => looksOf(subject).some(({ answer }) => answer === "seen");
