/** How far a value lies from the healthy end of its scale, for the picture only: direction and ends are data of the scale. */
import type { Scale } from "../knowledge/index.ts";

/** 0 at the healthy end, 1 at the worst; `no order` for a value that is neither better nor worse than another. */
export type MarkShare = number | "no order";

/**
 * The share of a value between the healthy and the worst end.
 *
 * Without `marks` the healthy end is the lowest value of the range and the worst the highest. Of a nominal scale the
 * lowest value is healthy and the others have no order.
 * @param value within the range of the scale
 */
export function markShare({ range, marks, nominal }: Scale, value: number): MarkShare {
  const [lowest, highest] = range;
  if (nominal) return value <= lowest ? 0 : "no order";
  if (marks === undefined) return between(value, lowest, highest);
  const { healthy, worst } = marks;
  if (healthy === undefined) return "no order";
  return between(value, healthy, worst ?? (value < healthy ? lowest : highest));
}

/** (value - from) / (to - from), held within 0 and 1; 0 where the two are the same. Works downwards as well. */
export const between = (value: number, from: number, to: number): number =>
  to === from ? 0 : Math.min(1, Math.max(0, (value - from) / (to - from)));
