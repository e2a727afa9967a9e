/**
 * Times that cannot be right, told by what stands around them: a year that was mistyped, an opening that lies behind
 * its samples, a step before the knife. Rules that reckon with such a time stay silent; the rule that names the cause
 * speaks once.
 */
import { type Case, isAfter, type Moment, moment, type Path, quantity } from "../cases/index.ts";
import { sampleRules, selectionRules } from "../knowledge/index.ts";
import { isAmong, isFromOutside, type Step, stepAt } from "../sampling/index.ts";
import type { CaseRule } from "./rule.ts";

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
export function datedEvents(one: Case): DatedEvent[] {
  const { death, opened, steps = {}, samples = [] } = one.record;
  return [
    event(["death", "at"], "death", death?.at),
    event(["opened", "at"], "opening", opened?.at),
    ...Object.entries(steps).map(([step, at]) => event(["steps", step], `step ${step}`, at)),
    ...samples.map(({ id, at }, index) => event(["samples", index, "at"], `sample ${id}`, at)),
  ].filter((found) => found !== undefined);
}

function event(path: Path, name: string, text: string | undefined): DatedEvent | undefined {
  const at = moment(text);
  return at === undefined || text === undefined ? undefined : { path, name, text, at };
}

/** Times half a year or more from the visit that the year of the visit would bring back to its week. */
export function yearSlips(one: Case): YearSlip[] {
  const date = one.visit?.record.date;
  const day = moment(date);
  if (date === undefined || day === undefined) return [];
  const apart = (at: Moment): number => Math.floor(at.written / 24) - Math.floor(day.written / 24);
  return datedEvents(one).flatMap((found) => {
    const days = apart(found.at);
    const meant = moment(date.slice(0, 4) + found.text.slice(4));
    const slipped =
      Math.abs(days) > farDays && meant !== undefined && Math.abs(apart(meant)) <= selectionRules.case_days;
    return slipped ? [{ ...found, days }] : [];
  });
}

/** So many samples and steps before the opening, and it is the opening that is wrong. */
const fewest = 3;

/** Steps and samples that need an open carcass and were taken before it was opened. */
export function takenBeforeOpening(one: Case): DatedEvent[] {
  const opened = moment(one.record.opened?.at);
  if (opened === undefined) return [];
  return datedEvents(one).filter((found) => needsKnife(one, found) && isAfter(opened, found.at));
}

function needsKnife(one: Case, { path: [key, index] }: DatedEvent): boolean {
  if (key === "steps") return !Object.hasOwn(sampleRules.apart.in_life, `${index}`);
  const from = key === "samples" ? one.record.samples?.[Number(index)]?.from : undefined;
  return from !== undefined && !isAmong(from, sampleRules.before_opening.from);
}

/** Whether steps and samples agree against the time of the opening. */
export const isOpeningTooLate = (one: Case): boolean => takenBeforeOpening(one).length >= fewest;

/** Steps before the death, without those done in life that lie near it, and without those before the opening. */
export function stepsBeforeDeath(one: Case): DatedEvent[] {
  const { death, opened } = one.record;
  const died = moment(death?.at);
  if (died === undefined) return [];
  return datedEvents(one).filter((found) => {
    if (found.path[0] !== "steps") return false;
    if (needsKnife(one, found)) return opened?.at === undefined && isAfter(died, found.at);
    const inLife = hoursOf(sampleRules.apart.in_life[`${found.path[1]}`]);
    return isAfter(later(died, -inLife), found.at);
  });
}

/** Steps, and samples of the carcass, so long after the opening that the day or the month is wrong. */
export function takenTooLate(one: Case): DatedEvent[] {
  const opened = moment(one.record.opened?.at);
  if (opened === undefined) return [];
  return datedEvents(one).filter(({ path: [key, index], at }) => {
    const from = key === "samples" ? one.record.samples?.[Number(index)]?.from : undefined;
    const isOfCarcass = key === "steps" || (from !== undefined && from !== "faeces" && !isFromOutside(from));
    const { blood, carcass } = sampleRules.apart;
    const isBlood = key === "steps" && index === "blood";
    return isOfCarcass && isAfter(at, later(opened, hoursOf(isBlood ? blood : carcass)));
  });
}

/** Whether the pig died so long before the opening that it would have rotted: the day or the month is wrong. */
export function isDeathTooEarly(one: Case): boolean {
  const [died, opened] = [moment(one.record.death?.at), moment(one.record.opened?.at)];
  if (died === undefined || opened === undefined || one.record.death?.manner === "born-dead") return false;
  const { state } = one.record.opened ?? {};
  if (state === "frozen" || state === "advanced-autolysis") return false;
  return isAfter(opened, later(died, hoursOf(sampleRules.apart.carcass)));
}

const later = ({ written, utc, dayOnly }: Moment, hours: number): Moment => ({
  written: written + hours,
  utc: utc === undefined ? undefined : utc + hours,
  dayOnly,
});

const hoursOf = (text: string | undefined): number => quantity("duration", text) ?? 0;

const isSlip = (one: Case, step: Step): boolean =>
  [...yearSlips(one), ...takenBeforeOpening(one), ...stepsBeforeDeath(one), ...takenTooLate(one)].some(
    ({ path }) => path[0] === "steps" && path[1] === step,
  );

/** When a step was done; undefined where that time cannot be right, so that nothing is reckoned from it. */
export function soundStepAt(one: Case, step: Step): Moment | undefined {
  const at = stepAt(one, step);
  return at === undefined || isSlip(one, step) ? undefined : at;
}

/** Indices of the samples whose year or month cannot be right, so that they are not told to be late. */
export function misdatedSamples(one: Case): number[] {
  const wrong = [...yearSlips(one), ...takenTooLate(one)];
  return wrong.flatMap(({ path: [key, index] }) => (key === "samples" ? [Number(index)] : []));
}

/** Whether times of the case contradict each other so that no span between them means anything. */
function isMisdated(one: Case): boolean {
  const slips = yearSlips(one).length;
  return (
    (slips > 0 && slips < datedEvents(one).length) ||
    isOpeningTooLate(one) ||
    isDeathTooEarly(one) ||
    (one.record.steps?.gut_fixed !== undefined && soundStepAt(one, "gut_fixed") === undefined)
  );
}

/** Silent where the times of a case cannot be right. */
export const whileTimesHold = (rule: CaseRule): CaseRule => ({
  ...rule,
  check: (one, report) => (isMisdated(one) ? undefined : rule.check(one, report)),
});
