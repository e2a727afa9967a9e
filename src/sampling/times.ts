/** When a sample was taken, and how long after death. */
import { type Case, isAfter, type Moment, moment, onOneClock } from "../cases/index.ts";
import { autolysis } from "../knowledge/index.ts";
import type { Sample } from "./material.ts";

export type Step = keyof NonNullable<Case["record"]["steps"]>;

/** When a step of the examination was done, if that is recorded. */
export const stepAt = (one: Case, step: Step): Moment | undefined => moment(one.record.steps?.[step]);

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
  const taken = sampleAt(one, sample) ?? moment(one.record.opened?.at);
  const hours = hoursBetween(moment(one.record.death?.at), taken);
  return hours === undefined ? undefined : Math.max(0, hours);
}

/** `25 min`, `3 h`, `3 h 20 min`. */
export function spell(hours: number): string {
  const minutes = Math.round(hours * 60);
  const [whole, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (whole === 0) return `${rest} min`;
  return rest === 0 || whole >= 24 ? `${whole} h` : `${whole} h ${rest} min`;
}
