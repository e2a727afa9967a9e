/**
 * Times that cannot be right, told by what stands around them: a year that was mistyped, an opening that lies behind
 * its samples, a step before the knife, the date of a visit that stands against all of its pigs. Rules that reckon with
 * such a time stay silent; the rule that names the cause speaks once.
 */
import { type Case, isAfter, type Moment, moment, type Path, quantity, type Visit } from "../cases/index.ts";
import { plausible, sampleRules, selectionRules } from "../knowledge/index.ts";
import { fact } from "./fact.ts";
import { isAmong, isFromOutside } from "./materials.ts";
import { isSentWhole, isTissueSample, samplesOf } from "./samples.ts";
import { diedAt, hoursBetween, openedAt, type Step, sampleAt, stepAt } from "./times.ts";

export interface DatedEvent {
  readonly path: Path;
  /** `death`, `opening`, `sample 01-A`, `step csf`. */
  readonly name: string;
  readonly text: string;
  readonly at: Moment;
}

export interface YearSlip extends DatedEvent {
  /** Days after the visit; below zero before it. */
  readonly days: number;
}

/** A slip of the year is at least so many days; what lies nearer is another slip or none. */
const farDays = 180;

/** What has a time of its own in a case and belongs to the days of the visit: death, opening, steps, samples. */
const datedEvents = fact((one: Case): readonly DatedEvent[] => {
  const { death, opened, steps = {}, samples = [] } = one.record;
  return [
    event(["death", "at"], "death", death?.at),
    event(["opened", "at"], "opening", opened?.at),
    ...Object.entries(steps).map(([step, at]) => event(["steps", step], `step ${step}`, at)),
    ...samples.map(({ id, at }, index) => event(["samples", index, "at"], `sample ${id}`, at)),
  ].filter((found) => found !== undefined);
});

function event(path: Path, name: string, text: string | undefined): DatedEvent | undefined {
  const at = moment(text);
  return at === undefined || text === undefined ? undefined : { path, name, text, at };
}

/** Times half a year or more from the visit that the year of the visit would bring back to its week. */
export const yearSlips = fact((one: Case): readonly YearSlip[] => {
  const date = one.visit?.record.date;
  const day = moment(date);
  if (date === undefined || day === undefined) return [];
  const apart = (at: Moment): number => Math.floor(at.written / 24) - Math.floor(day.written / 24);
  return datedEvents(one).flatMap((found) => {
    const days = apart(found.at);
    const intended = moment(date.slice(0, 4) + found.text.slice(4));
    const slipped =
      Math.abs(days) > farDays &&
      intended !== undefined &&
      Math.abs(apart(intended)) <= selectionRules.case_days;
    return slipped ? [{ ...found, days }] : [];
  });
});

/** So many samples and steps before the opening, and it is the opening that is wrong. */
const fewestTaken = 3;

/** Steps and samples that need an open carcass and were taken before it was opened. */
export const takenBeforeOpening = fact((one: Case): readonly DatedEvent[] => {
  const opened = openedAt(one);
  if (opened === undefined) return [];
  return datedEvents(one).filter((found) => needsKnife(one, found) && isAfter(opened, found.at));
});

function needsKnife(one: Case, { path: [key, index] }: DatedEvent): boolean {
  if (key === "steps") return !Object.hasOwn(sampleRules.apart.in_life, `${index}`);
  const from = key === "samples" ? one.record.samples?.[Number(index)]?.from : undefined;
  return from !== undefined && !isAmong(from, sampleRules.before_opening.from);
}

/** Whether steps and samples agree against the time of the opening. */
export const isOpeningTooLate = (one: Case): boolean => takenBeforeOpening(one).length >= fewestTaken;

/** Steps before the death, without those done in life that lie near it, and without those before the opening. */
export const stepsBeforeDeath = fact((one: Case): readonly DatedEvent[] => {
  const { opened } = one.record;
  const died = diedAt(one);
  if (died === undefined) return [];
  return datedEvents(one).filter((found) => {
    if (found.path[0] !== "steps") return false;
    if (needsKnife(one, found)) return opened?.at === undefined && isAfter(died, found.at);
    const inLife = hoursOf(sampleRules.apart.in_life[`${found.path[1]}`]);
    return isAfter(later(died, -inLife), found.at);
  });
});

/** Steps, and samples of the carcass, so long after the opening that the day or the month is wrong. */
export const takenTooLate = fact((one: Case): readonly DatedEvent[] => {
  const opened = openedAt(one);
  if (opened === undefined) return [];
  return datedEvents(one).filter(({ path: [key, index], at }) => {
    const from = key === "samples" ? one.record.samples?.[Number(index)]?.from : undefined;
    const isOfCarcass = key === "steps" || (from !== undefined && from !== "faeces" && !isFromOutside(from));
    const { blood, carcass } = sampleRules.apart;
    const isBlood = key === "steps" && index === "blood";
    return isOfCarcass && isAfter(at, later(opened, hoursOf(isBlood ? blood : carcass)));
  });
});

/** Whether the pig died so long before the opening that it would have rotted: the day or the month is wrong. */
export const isDeathTooEarly = fact((one: Case): boolean => {
  const [died, opened] = [diedAt(one), openedAt(one)];
  if (died === undefined || opened === undefined || one.record.death?.manner === "born-dead") return false;
  const { state } = one.record.opened ?? {};
  if (state === "frozen" || state === "advanced-autolysis") return false;
  return isAfter(opened, later(died, hoursOf(sampleRules.apart.carcass)));
});

const later = ({ written, utc, dayOnly }: Moment, hours: number): Moment => ({
  written: written + hours,
  utc: utc === undefined ? undefined : utc + hours,
  dayOnly,
});

const hoursOf = (text: string | undefined): number => quantity("duration", text) ?? 0;

const doubtfulSteps = fact(
  (one: Case): ReadonlySet<unknown> =>
    new Set(
      [yearSlips, takenBeforeOpening, stepsBeforeDeath, takenTooLate]
        .flatMap((found) => found(one))
        .flatMap(({ path: [key, step] }) => (key === "steps" ? [step] : [])),
    ),
);

/** When a step was done; undefined where that time cannot be right, so that nothing is reckoned from it. */
export function soundStepAt(one: Case, step: Step): Moment | undefined {
  const at = stepAt(one, step);
  return at === undefined || doubtfulSteps(one).has(step) ? undefined : at;
}

/** Indices of the samples whose year or month cannot be right, so that they are not told to be late. */
export const doubtfulSamples = fact((one: Case): readonly number[] => {
  const wrong = [...yearSlips(one), ...takenTooLate(one)];
  return wrong.flatMap(({ path: [key, index] }) => (key === "samples" ? [Number(index)] : []));
});

/** Whether times of the case contradict each other so that no span between them means anything. */
export const hasDoubtfulTimes = fact((one: Case): boolean => {
  const slips = yearSlips(one).length;
  return (
    (slips > 0 && slips < datedEvents(one).length) ||
    isOpeningTooLate(one) ||
    isDeathTooEarly(one) ||
    (one.record.steps?.gut_fixed !== undefined && soundStepAt(one, "gut_fixed") === undefined)
  );
});

/** So many pigs, and it is the date of the visit that is wrong. */
const fewestPigs = 3;

export interface OpenedPig {
  readonly one: Case;
  readonly at: Moment;
  /** Whole days after the visit; below zero before it. */
  readonly days: number;
}

/** The pigs with a time of opening, without those whose year or month was mistyped; none where the visit has no date. */
export const openedPigs = fact((visit: Visit): readonly OpenedPig[] => {
  const day = moment(visit.record.date);
  if (day === undefined) return [];
  return visit.cases.flatMap((one) => {
    const at = openedAt(one);
    if (at === undefined || yearSlips(one).length > 0 || isDeathTooEarly(one)) return [];
    return [{ one, at, days: Math.floor(at.written / 24) - Math.floor(day.written / 24) }];
  });
});

/** Whether all pigs were opened before the date of the visit. */
export const areAllBefore = (visit: Visit): boolean => {
  const day = moment(visit.record.date);
  const pigs = openedPigs(visit);
  return pigs.length >= fewestPigs && pigs.every(({ at }) => day !== undefined && isAfter(day, at));
};

/** Whether all pigs were opened so long after the date that they are of another visit. */
export const areAllAfter = (visit: Visit): boolean => {
  const pigs = openedPigs(visit);
  return pigs.length >= fewestPigs && pigs.every(({ days }) => days > selectionRules.case_days);
};

/** Whether all times of all pigs lie in another year. */
export function areAllOfAnotherYear(visit: Visit): boolean {
  const dated = visit.cases.filter((one) => datedEvents(one).length > 0);
  return (
    dated.length >= fewestPigs && dated.every((one) => yearSlips(one).length === datedEvents(one).length)
  );
}

/** Whether the date of the visit stands against all of its pigs. */
export const isVisitDateDoubtful = fact(
  (visit: Visit): boolean => areAllBefore(visit) || areAllAfter(visit) || areAllOfAnotherYear(visit),
);

interface BrainOut {
  readonly at: Moment;
  /** `the brain was out (2026-04-20T10:30)`, `01-D of the brain was taken (…)`. */
  readonly told: string;
}

/** When the brain had left the skull: by its step, or by the first of its samples. */
export const brainOut = fact((one: Case): BrainOut | undefined => {
  const step = soundStepAt(one, "brain_out");
  if (step !== undefined) return { at: step, told: `the brain was out (${one.record.steps?.brain_out})` };
  return samplesOf(one).reduce<BrainOut | undefined>((first, { sample }) => {
    const at = sampleAt(one, sample);
    const isBrain = sample.from === "nervous.brain" && isTissueSample(sample) && !isSentWhole(one, sample);
    if (!isBrain || at === undefined) return first;
    if (first !== undefined && !isAfter(first.at, at)) return first;
    return { at, told: `${sample.id} of the brain was taken (${sample.at})` };
  }, undefined);
});

/** Hours from death to the opening of a carcass that is called frozen too soon; undefined when it may well have been. */
export function frozenTooSoon(one: Case): number | undefined {
  const { death, opened } = one.record;
  // A pig that was found dead had died before; when a stillborn piglet died is seldom known.
  if (opened?.state !== "frozen" || death?.manner === "found-dead" || death?.manner === "born-dead")
    return undefined;
  const hours = hoursBetween(diedAt(one), openedAt(one));
  return hours !== undefined && hours < (quantity("duration", plausible.frozen_from) ?? 0)
    ? hours
    : undefined;
}
