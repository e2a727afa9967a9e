/** The small language of patterns: one condition against a case or a visit, answered with its evidence. */
import { type Case, isUnborn, moment, type Path, quantity } from "../cases/index.ts";
import { type AgeClass, ageClasses, type Condition, familiesOfSign } from "../knowledge/index.ts";
import type { Evidence, Subject } from "./evidence.ts";
import { alarmCheck } from "./looks.ts";
import { finding, grade } from "./match-finding.ts";

/** What speaks for the condition; undefined when it is not met. An empty list is met without anything to show. */
export type Match = readonly Evidence[] | undefined;

type Matcher = (subject: Subject) => Match;

/** Whether a case or a visit meets a condition. What is not recorded meets nothing. */
export const matchCondition = (condition: Condition, subject: Subject): Match =>
  matcherOf(condition)(subject);

/** Every case is asked about every pattern, so a condition, which has one key, is looked at once. */
const matchers = new WeakMap<Condition, Matcher>();

function matcherOf(condition: Condition): Matcher {
  const known = matchers.get(condition) ?? ofGroup(condition) ?? ofHerd(condition) ?? ofPig(condition);
  matchers.set(condition, known);
  return known;
}

function ofGroup({ all, any, none, at_least: some }: Condition): Matcher | undefined {
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
function ofSome(conditions: readonly Condition[], count: number): Matcher {
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

function ofHerd({
  deaths: lost,
  ill,
  herd_signs: shown,
  several: told,
  dry,
  heat,
  pigs,
  alarm_check: looked,
}: Condition): Matcher | undefined {
  if (looked !== undefined) return (subject) => alarmCheck(looked, subject);
  if (lost !== undefined) return (subject) => deaths(lost, subject);
  if (ill !== undefined) return (subject) => illIn(ill, subject);
  if (shown !== undefined) return (subject) => herdSigns(shown, subject);
  if (told !== undefined) return (subject) => severalShow(told, subject);
  if (dry !== undefined) return (subject) => (isDry(visitOf(subject)) ? [] : undefined);
  if (heat !== undefined) return (subject) => (wasHot(heat, visitOf(subject)) ? [] : undefined);
  if (pigs === undefined) return undefined;
  const matches = matcherOf(pigs.with);
  return (subject) => {
    if (!("cases" in subject)) return undefined;
    const met = subject.cases
      .map((one) => ({ one, match: matches(one) }))
      .filter(({ match }) => match !== undefined);
    const classes = new Set(met.map(({ one }) => classOf(one)).filter((name) => name !== undefined));
    if (met.length < pigs.at_least || classes.size < (pigs.classes ?? 0)) return undefined;
    return met.flatMap(({ match }) => match ?? []);
  };
}

function ofPig(condition: Condition): Matcher {
  const matches = pigMatcher(condition);
  return (subject) => ("cases" in subject ? undefined : matches(subject));
}

function pigMatcher(condition: Condition): (one: Case) => Match {
  const { finding: described, grade: graded, signs: shown, fever: degrees } = condition;
  if (described !== undefined) return (one) => finding(described, one);
  if (graded !== undefined) return (one) => grade(graded, one);
  if (shown !== undefined) return (one) => signs(shown, one);
  if (degrees !== undefined) return (one) => fever(degrees, one);
  return (one) => (isSuchPig(condition, one) ? [] : undefined);
}

function isSuchPig(condition: Condition, one: Case): boolean {
  const { record } = one;
  const ageClass = condition.class && classOf(one);
  return (
    (ageClass !== undefined && condition.class?.includes(ageClass) === true) ||
    (condition.younger_than !== undefined && isYounger(one, condition.younger_than)) ||
    (record.death?.manner !== undefined && condition.manner?.includes(record.death.manner) === true) ||
    (record.pig?.sex !== undefined && condition.sex?.includes(record.pig.sex) === true) ||
    (record.death?.method !== undefined && condition.method?.includes(record.death.method) === true) ||
    (condition.affected !== undefined &&
      groupsOf(one).some(({ affected = 0 }) => affected >= Number(condition.affected)))
  );
}

/** The group of the pig; of one without a group, all of its visit. */
const groupsOf = ({ record, visit }: Case) =>
  Object.entries(visit?.record.groups ?? {}).flatMap(([name, group]) =>
    record.pig?.group === undefined || record.pig.group === name ? [group] : [],
  );

/** Where the age is unknown, the oldest pig of its class decides, and without a class of those of its weight; a fetus is young. */
function isYounger({ ageDays, ageClass, weightKg }: Case, days: number): boolean {
  if (ageDays !== undefined) return ageDays < days;
  const classes = ageClass === undefined ? classesOfWeight(weightKg) : [ageClasses.classes[ageClass]];
  return classes.length > 0 && classes.every((one) => one?.derive === undefined || one.derive[1] < days);
}

const classesOfWeight = (kg: number | undefined) =>
  kg === undefined
    ? []
    : Object.values(ageClasses.classes).filter(
        ({ weight }) => weight !== undefined && weight[0] <= kg && kg <= weight[1],
      );

/** The signs of the pig; undefined when it shows none of them. A name may be a sign or a family of signs. */
const signs = (names: readonly string[], one: Case): Evidence[] | undefined =>
  signsAt(names, one.record.selection?.signs ?? [], one, ["selection", "signs"]);

/** The signs of the groups: those of the visit, and for a visit those of its cases as well. */
function herdSigns(names: readonly string[], subject: Subject): Evidence[] | undefined {
  if ("cases" in subject) {
    const found = [
      ...(signsAt(names, subject.record.signs ?? [], subject, ["signs"]) ?? []),
      ...subject.cases.flatMap((one) => signs(names, one) ?? []),
    ];
    return found.length === 0 ? undefined : found;
  }
  // What the visit says lies in another file, so there is nothing to show in this one.
  const matching = (subject.visit?.record.signs ?? []).filter((sign) => isNamed(names, sign));
  return matching.length === 0 ? undefined : [];
}

/** Three pigs are several, and so are those of whom a visit tells. */
const several = 3;

function severalShow(names: readonly string[], subject: Subject): Evidence[] | undefined {
  if (!("cases" in subject)) return herdSigns(names, subject);
  const own = signsAt(names, subject.record.signs ?? [], subject, ["signs"]);
  const pigs = subject.cases.flatMap((one) => signs(names, one) ?? []);
  return own !== undefined || new Set(pigs.map((one) => one.subject)).size >= several
    ? [...(own ?? []), ...pigs]
    : undefined;
}

const visitOf = (subject: Subject) => ("cases" in subject ? subject : subject.visit);

const isDry = (visit: ReturnType<typeof visitOf>): boolean =>
  Object.values(visit?.record.groups ?? {}).some(({ water }) => water?.works === "no");

const wasHot = (degrees: number, visit: ReturnType<typeof visitOf>): boolean =>
  (visit?.record.environment ?? []).some(
    ({ temperature }) => (quantity("temperature", temperature) ?? 0) >= degrees,
  );

/** A temperature of so many degrees or more, or fever among the signs: a pig that dies grows cold. */
function fever(degrees: number, one: Case): Evidence[] | undefined {
  const text = one.record.pig?.temperature;
  const measured = quantity("temperature", text);
  if (measured === undefined || measured < degrees) return signs(["fever"], one);
  return [
    {
      subject: one,
      path: ["pig", "temperature"],
      text: `temperature ${text ?? ""}`,
      beforeKnife: true,
    },
  ];
}

const isNamed = (names: readonly string[], sign: string): boolean =>
  names.includes(sign) || familiesOfSign(sign).some((family) => names.includes(family));

function signsAt(
  names: readonly string[],
  recorded: readonly string[],
  subject: Subject,
  path: Path,
): Evidence[] | undefined {
  if (!recorded.some((sign) => isNamed(names, sign))) return undefined;
  return recorded.flatMap((sign, index) =>
    isNamed(names, sign)
      ? [{ subject, path: [...path, index], text: sign === "none" ? "no signs" : sign, beforeKnife: true }]
      : [],
  );
}

/**
 * The groups that lost so many of their pigs, with a share each alone and without one together; undefined when none did. A case asks its own group, a case without one
 * all groups of its visit. Where the days matter, a group without the onset of its signs counts only where it may be undated.
 */
function deaths(wanted: NonNullable<Condition["deaths"]>, subject: Subject): Evidence[] | undefined {
  const isVisit = "cases" in subject;
  const visit = visitOf(subject);
  const own = isVisit ? undefined : subject.record.pig?.group;
  const found = Object.entries(visit?.record.groups ?? {}).flatMap(([group, { at_risk, dead, onset }]) => {
    if (dead === undefined || (own !== undefined && own !== group)) return [];
    const lost = lostWithin(wanted, dead, daysBetween(onset, visit?.record.date));
    if (lost === undefined || lost === 0) return [];
    if (wanted.share !== undefined && (lost < wanted.at_least || !at_risk || lost / at_risk < wanted.share))
      return [];
    if (!isOfClass(wanted, classesIn(group, subject))) return [];
    const text =
      at_risk === undefined ? `${dead} dead in ${group}` : `${dead} of ${at_risk} dead in ${group}`;
    return [{ lost, evidence: { subject, path: ["groups", group, "dead"], text, beforeKnife: true } }];
  });
  if (found.reduce((sum, { lost }) => sum + lost, 0) < wanted.at_least) return undefined;
  return isVisit ? found.map(({ evidence }) => evidence) : [];
}

/** The groups of these classes of which pigs are ill or dead; undefined when there is none. */
function illIn(wanted: readonly AgeClass[], subject: Subject): Evidence[] | undefined {
  if (!("cases" in subject)) return undefined;
  const found = Object.entries(subject.record.groups ?? {}).flatMap(([group, { affected = 0, dead = 0 }]) =>
    affected + dead > 0 && classesIn(group, subject).some((one) => wanted.includes(one))
      ? [
          {
            subject,
            path: ["groups", group],
            text: `${affected || dead} ${affected ? "ill" : "dead"} in ${group}`,
            beforeKnife: true,
          },
        ]
      : [],
  );
  return found.length === 0 ? undefined : found;
}

/** What one stretch of so many days lost at least, when all that died are spread over as many as there were. */
function lostWithin(
  { within, undated }: NonNullable<Condition["deaths"]>,
  dead: number,
  days: number | undefined,
): number | undefined {
  if (within === undefined) return dead;
  if (days === undefined) return undated === true ? dead : undefined;
  return dead / Math.max(1, Math.ceil(days / within));
}

/** The class of a pig; of one without an age that of its group. */
const classOf = ({ ageClass, record, visit }: Case): AgeClass | undefined => {
  const group = record.pig?.group;
  if (ageClass !== undefined || group === undefined) return ageClass;
  return visit?.farm?.record.groups?.[group]?.class ?? classOfName(group);
};

/** Of which age classes a group is: as the farm says, or its pigs on the table, or, where none was born, its name. */
function classesIn(group: string, subject: Subject): readonly AgeClass[] {
  const kept = visitOf(subject)?.farm?.record.groups?.[group]?.class;
  if (kept !== undefined) return [kept];
  const classes = classesOfPigsIn(group, subject);
  const named = classes.every(isUnborn) ? classOfName(group) : undefined;
  return named === undefined ? classes : [named];
}

/** A name of two classes, such as `sows-and-piglets`, says none. */
function classOfName(group: string): AgeClass | undefined {
  const words = group.toLowerCase().split(/[^a-z]+/);
  const named = Object.entries(ageClasses.classes).flatMap(([id, { groups }]) =>
    groups?.some((start) => words.some((word) => word.startsWith(start))) ? [id as AgeClass] : [],
  );
  return named.length === 1 ? named[0] : undefined;
}

function classesOfPigsIn(group: string, subject: Subject): readonly AgeClass[] {
  const pigs = "cases" in subject ? subject.cases : [subject];
  const isOnly = Object.keys(visitOf(subject)?.record.groups ?? {}).length === 1;
  return pigs.flatMap(({ record, ageClass }) => {
    const isOfGroup = record.pig?.group === group || (isOnly && record.pig?.group === undefined);
    return isOfGroup && ageClass !== undefined ? [ageClass] : [];
  });
}

const isOfClass = (
  { of, not_of: not }: NonNullable<Condition["deaths"]>,
  classes: readonly AgeClass[],
): boolean =>
  (of === undefined || classes.some((one) => of.includes(one))) &&
  (not === undefined || classes.length === 0 || classes.some((one) => !not.includes(one)));

function daysBetween(from: string | undefined, to: string | undefined): number | undefined {
  const [first, last] = [moment(from), moment(to)];
  return first === undefined || last === undefined ? undefined : (last.written - first.written) / 24;
}
