/** The small language of alarm patterns: one condition against a case or a visit, answered with its evidence. */
import { type Case, pathOf } from "../cases/index.ts";
import { type AlarmCondition, ageClasses } from "../knowledge/index.ts";
import type { AlarmSubject, Evidence } from "./alarm.ts";
import { deaths } from "./match-deaths.ts";
import { finding, grade } from "./match-finding.ts";
import { fever, herdSigns, signs } from "./match-signs.ts";

/** What speaks for the condition; undefined when it is not met. An empty list is met without anything to show. */
export type Match = readonly Evidence[] | undefined;

type Matcher = (subject: AlarmSubject) => Match;

/** Whether a case or a visit meets a condition. What is not recorded meets nothing. */
export const matchCondition = (condition: AlarmCondition, subject: AlarmSubject): Match =>
  matcherOf(condition)(subject);

/** Every case is asked about every pattern, so a condition, which has one key, is looked at once. */
const matchers = new WeakMap<AlarmCondition, Matcher>();

function matcherOf(condition: AlarmCondition): Matcher {
  const known = matchers.get(condition) ?? ofGroup(condition) ?? ofHerd(condition) ?? ofPig(condition);
  matchers.set(condition, known);
  return known;
}

function ofGroup({ all, any, none, at_least: some }: AlarmCondition): Matcher | undefined {
  if (all !== undefined) {
    const parts = all.map(matcherOf);
    return (subject) => {
      const found: Evidence[] = [];
      for (const part of parts) {
        const match = part(subject);
        if (match === undefined) return undefined;
        found.push(...match);
      }
      return found;
    };
  }
  if (any !== undefined) return ofSome(any, 1);
  if (none !== undefined) {
    const met = ofSome(none, 1);
    return (subject) => (met(subject) === undefined ? [] : undefined);
  }
  return some === undefined ? undefined : ofSome(some.of, some.count);
}

/** At least so many of the conditions; everything that speaks for any of them is shown. */
function ofSome(conditions: readonly AlarmCondition[], count: number): Matcher {
  const parts = conditions.map(matcherOf);
  return (subject) => {
    let met = 0;
    let found: readonly Evidence[] = [];
    for (const part of parts) {
      const match = part(subject);
      if (match === undefined) continue;
      met++;
      found = found.length === 0 ? match : [...found, ...match];
    }
    return met >= count ? found : undefined;
  };
}

function ofHerd({ deaths: lost, herd_signs: shown, pigs }: AlarmCondition): Matcher | undefined {
  if (lost !== undefined) return (subject) => deaths(lost, subject);
  if (shown !== undefined) return (subject) => herdSigns(shown, subject);
  if (pigs === undefined) return undefined;
  const matches = matcherOf(pigs.with);
  return (subject) => {
    if (!("cases" in subject)) return undefined;
    const met = subject.cases
      .map((one) => ({ one, match: matches(one) }))
      .filter(({ match }) => match !== undefined);
    const classes = new Set(met.map(({ one }) => one.ageClass).filter((name) => name !== undefined));
    if (met.length < pigs.at_least || classes.size < (pigs.classes ?? 0)) return undefined;
    return met.flatMap(({ match }) => match ?? []);
  };
}

function ofPig(condition: AlarmCondition): Matcher {
  const matches = pigMatcher(condition);
  return (subject) => ("cases" in subject ? undefined : matches(subject));
}

function pigMatcher(condition: AlarmCondition): (one: Case) => Match {
  const { finding: described, grade: graded, signs: shown, fever: degrees, alarm_check: looked } = condition;
  if (described !== undefined) return (one) => finding(described, one);
  if (graded !== undefined) return (one) => grade(graded, one);
  if (shown !== undefined) return (one) => signs(shown, one);
  if (degrees !== undefined) return (one) => fever(degrees, one);
  if (looked !== undefined) return (one) => alarmCheck(looked, one);
  return (one) => (isSuchPig(condition, one) ? [] : undefined);
}

function isSuchPig(condition: AlarmCondition, one: Case): boolean {
  const { record, ageClass } = one;
  return (
    (ageClass !== undefined && condition.class?.includes(ageClass) === true) ||
    (condition.younger_than !== undefined && isYounger(one, condition.younger_than)) ||
    (record.death?.manner !== undefined && condition.manner?.includes(record.death.manner) === true) ||
    (record.pig?.sex !== undefined && condition.sex?.includes(record.pig.sex) === true) ||
    (condition.treated !== undefined && isTreated(one))
  );
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
