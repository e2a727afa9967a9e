/** The small language of alarm patterns: one condition against a case or a visit, answered with its evidence. */
import { type Case, pathOf } from "../cases/index.ts";
import { type AlarmCondition, ageClasses } from "../knowledge/index.ts";
import type { AlarmSubject, Evidence } from "./alarm.ts";
import { deaths } from "./match-deaths.ts";
import { finding, grade } from "./match-finding.ts";
import { fever, herdSigns, signs } from "./match-signs.ts";

/** What speaks for the condition; undefined when it is not met. An empty list is met without anything to show. */
export type Match = readonly Evidence[] | undefined;

/** Whether a case or a visit meets a condition. What is not recorded meets nothing. */
export function matchCondition(condition: AlarmCondition, subject: AlarmSubject): Match {
  return matchGroup(condition, subject) ?? matchHerd(condition, subject) ?? matchPig(condition, subject);
}

function matchGroup({ all, any, none, at_least: some }: AlarmCondition, subject: AlarmSubject): Match {
  const matches = (list: readonly AlarmCondition[]): (readonly Evidence[])[] =>
    list.map((one) => matchCondition(one, subject)).filter((match) => match !== undefined);
  if (all !== undefined) return matches(all).length === all.length ? matches(all).flat() : undefined;
  if (any !== undefined) return matches(any).length > 0 ? matches(any).flat() : undefined;
  if (none !== undefined) return matches(none).length === 0 ? [] : undefined;
  if (some !== undefined) return matches(some.of).length >= some.count ? matches(some.of).flat() : undefined;
  return undefined;
}

function matchHerd(condition: AlarmCondition, subject: AlarmSubject): Match {
  if (condition.deaths !== undefined) return deaths(condition.deaths, subject);
  if (condition.herd_signs !== undefined) return herdSigns(condition.herd_signs, subject);
  const { pigs } = condition;
  if (pigs === undefined || !("cases" in subject)) return undefined;
  const met = subject.cases
    .map((one) => ({ one, match: matchCondition(pigs.with, one) }))
    .filter(({ match }) => match !== undefined);
  const classes = new Set(met.map(({ one }) => one.ageClass).filter((name) => name !== undefined));
  if (met.length < pigs.at_least || classes.size < (pigs.classes ?? 0)) return undefined;
  return met.flatMap(({ match }) => match ?? []);
}

function matchPig(condition: AlarmCondition, subject: AlarmSubject): Match {
  if ("cases" in subject) return undefined;
  const { record, ageClass } = subject;
  if (condition.finding !== undefined) return finding(condition.finding, subject);
  if (condition.grade !== undefined) return grade(condition.grade, subject);
  if (condition.signs !== undefined) return signs(condition.signs, subject);
  if (condition.fever !== undefined) return fever(condition.fever, subject);
  if (condition.alarm_check !== undefined) return alarmCheck(condition.alarm_check, subject);
  const met =
    (ageClass !== undefined && condition.class?.includes(ageClass)) ||
    (condition.younger_than !== undefined && isYounger(subject, condition.younger_than)) ||
    (record.death?.manner !== undefined && condition.manner?.includes(record.death.manner)) ||
    (record.pig?.sex !== undefined && condition.sex?.includes(record.pig.sex)) ||
    (condition.treated !== undefined && isTreated(subject));
  return met ? [] : undefined;
}

/** Looked for before the knife and found, or thought to be found. */
function alarmCheck(names: readonly string[], one: Case): Match {
  const found = Object.entries(one.record.alarm_check ?? {}).filter(
    ([name, answer]) => names.includes(name) && answer !== "none",
  );
  if (found.length === 0) return undefined;
  return found.map(([name, answer]) => ({
    subject: one,
    path: pathOf(`alarm_check.${name}`),
    text: `alarm_check.${name} ${answer}`,
    beforeKnife: true,
  }));
}

/** Where the age is unknown, the oldest pig of its class decides; a fetus is young. */
function isYounger({ ageDays, ageClass }: Case, days: number): boolean {
  if (ageDays !== undefined) return ageDays < days;
  if (ageClass === undefined) return false;
  const derive = ageClasses.classes[ageClass]?.derive;
  return derive === undefined || (derive[1] ?? Number.POSITIVE_INFINITY) < days;
}

function isTreated(one: Case): boolean {
  const treated = one.record.selection?.treated;
  return treated === "yes" || treated === true || typeof treated === "object";
}
