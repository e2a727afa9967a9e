/** How long a pig had been ill, and whether it was treated. */
import { type Case, moment, quantity } from "../cases/index.ts";

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
  const unit = quantity("age", (record.pig?.age ?? "").replace(/^[\d.]+/, "1"));
  if (ageDays === undefined || ill === undefined || unit === undefined) return false;
  return ill > (ageDays + Math.max(unit, fewestDays)) * 24;
}

function hoursOfSigns(one: Case): number | undefined {
  const onset = one.record.selection?.onset;
  const duration = quantity("duration", onset);
  if (duration !== undefined) return duration;
  const began = moment(onset);
  const ended = moment(one.record.death?.at ?? one.record.opened?.at);
  if (began === undefined || ended === undefined) return undefined;
  // Of a bare day, the last hour is meant: nothing is made longer than it was.
  return ended.written - began.written - (began.dayOnly ? 24 : 0);
}

export function isUntreated(one: Case): boolean {
  const treated = one.record.selection?.treated;
  return treated === "no" || treated === false;
}
