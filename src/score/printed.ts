/** With how many decimals a value is printed, so that it never stands on the other side of a limit than it lies. */
import type { ClassLimit, Scale } from "../knowledge/index.ts";
import type { Bounds } from "./bounds.ts";
import { classOf } from "./classify.ts";
import { rounded } from "./float-error.ts";

/** More than this no observation holds, and `withoutFloatError` keeps no more. */
const mostDecimals = 10;

/**
 * Decimals that show a hundredth of a range at least, 0 to 3: three for a share from 0 to 1, two for 0-10, one for 0-28 and
 * 0-100, none above 1000. Zeros at the end are not printed, so that whole grades stay whole.
 * @param range least and greatest value
 */
export function rangeDecimals([lowest = 0, highest = 0]: readonly number[]): number {
  const span = highest - lowest;
  if (span <= 1) return 3;
  if (span <= 10) return 2;
  return span <= 1000 ? 1 : 0;
}

/**
 * The fewest decimals, from `least` upwards, with which the rounded value is in the class of the value.
 * @param limits classes, ascending; without them `least` is enough
 * @param round decimals to which the value is rounded before it is classed
 */
export function decimalsInClass(
  value: number,
  limits: readonly ClassLimit[] | undefined,
  least: number,
  round?: number,
): number {
  const named = classOf(limits, value, round);
  for (let decimals = least; decimals < mostDecimals; decimals += 1)
    if (classOf(limits, rounded(value, decimals), round) === named) return decimals;
  return mostDecimals;
}

/** A score of the scale with the decimals of its range, and as many more as its class asks for: `14.3`, `0.416`, `14.999`. */
export const printedScore = ({ range, classes }: Pick<Scale, "range" | "classes">, value: number): string =>
  String(rounded(value, decimalsInClass(value, classes, rangeDecimals(range))));

/** What is known of a score between bounds: `at least 3`, `at most 2`, `2 to 4`; short `≥3`, `≤2`, `2–4`. */
export function printedBounds(
  scale: Pick<Scale, "range" | "classes">,
  [least, greatest]: Bounds,
  short = false,
): string {
  const [lowest = least, highest = greatest] = scale.range;
  const [from, to] = [printedScore(scale, least), printedScore(scale, greatest)];
  if (greatest >= highest) return short ? `≥${from}` : `at least ${from}`;
  if (least <= lowest) return short ? `≤${to}` : `at most ${to}`;
  return short ? `${from}–${to}` : `${from} to ${to}`;
}
