/** The look for alarm signs: how each sign was answered. */
import { type Path, pathOf } from "../cases/index.ts";
import { alarmSigns } from "../knowledge/index.ts";
import type { Evidence, Subject } from "./evidence.ts";

type AlarmAnswer = "none" | "seen" | "not-looked-at";

/** A sign that was looked for. */
export interface AlarmLook {
  readonly name: string;
  readonly answer: AlarmAnswer;
  readonly path: Path;
}

/** The answers of a case, at both looks; of a visit, those about its live pigs. */
export function looksOf(subject: Subject): readonly AlarmLook[] {
  if ("cases" in subject) return looks(subject.record.alarm_check, "alarm_check");
  const { before_knife: before, at_knife: at } = subject.record.alarm_check ?? {};
  return [...looks(before, "alarm_check.before_knife"), ...looks(at, "alarm_check.at_knife")];
}

const looks = (answers: Partial<Record<string, AlarmAnswer>> | undefined, group: string): AlarmLook[] =>
  Object.entries(answers ?? {}).flatMap(([name, answer]) =>
    answer === undefined ? [] : [{ name, answer, path: pathOf(`${group}.${name}`) }],
  );

/** The signs among these that were seen; undefined when none was. */
export function alarmCheck(names: readonly string[], subject: Subject): Evidence[] | undefined {
  const seen = looksOf(subject).filter(({ name, answer }) => names.includes(name) && answer === "seen");
  if (seen.length === 0) return undefined;
  return seen.map(({ name, path }) => ({
    subject,
    path,
    text: `seen: ${alarmSigns.get(name)?.asks ?? name}`,
    beforeKnife: alarmSigns.get(name)?.look === "before_knife",
  }));
}
