/** Times that a case records: of its steps and samples, how long after death, how long the pig had been ill. */
import { type Case, isAfter, type Moment, moment, onOneClock, quantity } from "../cases/index.ts";
import { autolysis, selectionRules } from "../knowledge/index.ts";
import { hasAny } from "../notes/index.ts";
import { fact } from "./fact.ts";
import type { Sample } from "./materials.ts";

export type Step = keyof NonNullable<Case["record"]["steps"]>;

const stepTimes = fact(
  ({ record: { steps = {} } }: Case): ReadonlyMap<string, Moment | undefined> =>
    new Map(Object.entries(steps).map(([step, at]) => [step, moment(at)])),
);

/** When a step of the examination was done, if that is recorded. */
export const stepAt = (one: Case, step: Step): Moment | undefined => stepTimes(one).get(step);

/** When the pig died. */
export const diedAt = fact((one: Case): Moment | undefined => moment(one.record.death?.at));

/** When the carcass was opened. */
export const openedAt = fact((one: Case): Moment | undefined => moment(one.record.opened?.at));

/** When the sample was taken: its own time; for a fixed piece of gut without one the step `gut_fixed`. */
export function sampleAt(one: Case, sample: Sample): Moment | undefined {
  const own = moment(sample.at);
  if (own !== undefined) return own;
  return sample.into === "formalin" && autolysis.gut.includes(sample.from)
    ? stepAt(one, "gut_fixed")
    : undefined;
}

/** Whether a sample was certainly taken after a step. */
export function isSampledAfter(one: Case, sample: Sample, step: Step): boolean {
  const [at, done] = [sampleAt(one, sample), stepAt(one, step)];
  return at !== undefined && done !== undefined && isAfter(at, done);
}

/**
 * Hours between two moments, to the minute.
 * @returns undefined when one of them is a bare day, or in universal time beside a time without zone
 */
export function hoursBetween(first: Moment | undefined, second: Moment | undefined): number | undefined {
  if (first === undefined || second === undefined || first.dayOnly || second.dayOnly) return undefined;
  if (!onOneClock(first, second)) return undefined;
  const zoned = first.utc !== undefined && second.utc !== undefined;
  const hours = zoned ? (second.utc ?? 0) - (first.utc ?? 0) : second.written - first.written;
  return Math.round(hours * 60) / 60;
}

/** Hours from death to the sample; from death to the opening when the sample has no time. Never below zero. */
export function hoursAfterDeath(one: Case, sample: Sample): number | undefined {
  const taken = sampleAt(one, sample) ?? openedAt(one);
  const hours = hoursBetween(diedAt(one), taken);
  return hours === undefined ? undefined : Math.max(0, hours);
}

/** `25 min`, `3 h`, `3 h 20 min`. */
export function spell(hours: number): string {
  const minutes = Math.round(hours * 60);
  const [whole, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (whole === 0) return `${rest} min`;
  return rest === 0 || whole >= 24 ? `${whole} h` : `${whole} h ${rest} min`;
}

/** Hours from the first signs to death, at least; undefined when not recorded, or longer than the pig lived. */
export function hoursIll(one: Case): number | undefined {
  return isIllBeforeBirth(one) ? undefined : hoursOfSigns(one);
}

/** A difference of fewer days is one of rounding. */
const fewestDays = 2;

/** Whether the signs began before the pig was born. An age in weeks or months may be almost one of them too short. */
export function isIllBeforeBirth(one: Case): boolean {
  const { ageDays, record } = one;
  const ill = hoursOfSigns(one);
  if (ageDays === undefined || ill === undefined) return false;
  const unit = quantity("age", (record.pig?.age ?? "").replace(/^[\d.]+/, "1"));
  if (unit === undefined) return false;
  return ill > (ageDays + Math.max(unit, fewestDays)) * 24;
}

function hoursOfSigns(one: Case): number | undefined {
  const onset = one.record.selection?.onset;
  if (onset === undefined) return undefined;
  const duration = quantity("duration", onset);
  if (duration !== undefined) return duration;
  const began = moment(onset);
  const ended = moment(one.record.death?.at ?? one.record.opened?.at);
  if (began === undefined || ended === undefined) return undefined;
  // Of a bare day, the last hour is meant: nothing is made longer than it was.
  return ended.written - began.written - (began.dayOnly ? 24 : 0);
}

/** A pig that was ill for longer is no longer acute. */
export const acuteHours = quantity("duration", selectionRules.acute_within) ?? 0;

/** Iron, electrolytes and painkillers are no treatment that a culture would show; the record says so, no word does. */
export function isUntreated(one: Case): boolean {
  const treated = one.record.selection?.treated;
  const answer = typeof treated === "object" ? treated.antimicrobial : treated;
  return answer === "no" || answer === false;
}

/** Whether the disease is of long standing: by its signs, or by the words of the history, the group or the visit. */
export function isLongStanding(one: Case): boolean {
  const { signs, record, visit } = one;
  const { after, signs: later } = selectionRules.chronic_later;
  const group = visit?.record.groups?.[record.pig?.group ?? ""];
  const told = [record.history, group?.note, visit?.record.complaint];
  return (
    signs.some((sign) => selectionRules.chronic_signs.includes(sign)) ||
    (signs.some((sign) => later.includes(sign)) &&
      (hoursIll(one) ?? 0) >= (quantity("duration", after) ?? Number.POSITIVE_INFINITY)) ||
    told.some((text) => text !== undefined && hasAny(text, selectionRules.told_long))
  );
}
