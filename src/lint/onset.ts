/** How long a pig had been ill, and whether it was treated. */
import { type Case, moment, quantity } from "../cases/index.ts";

/** Hours from the first signs to death, at least; undefined when not recorded. */
export function hoursIll(one: Case): number | undefined {
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
