/** Classes and cut points: the last limit that fits counts. */
import type { ClassLimit } from "../knowledge/index.ts";
import { rounded, withoutFloatError } from "./float-error.ts";

/** A lower limit: `from` includes the value itself, `above` leaves it out. */
interface Limit {
  readonly from?: number;
  readonly above?: number;
}

/**
 * The last of the limits that the value reaches.
 * @returns undefined when it reaches none
 */
export function lastReached<L extends Limit>(limits: readonly L[], value: number): L | undefined {
  const exact = withoutFloatError(value);
  return limits.findLast(
    ({ from, above }) => (from === undefined || exact >= from) && (above === undefined || exact > above),
  );
}

/**
 * Name of the class of a value.
 * @param round decimals the value is rounded to first, half up
 * @returns null when there are no classes, the value is null or below the first class
 */
export function classOf(
  limits: readonly ClassLimit[] | undefined,
  value: number | null,
  round?: number,
): string | null {
  if (limits === undefined || value === null) return null;
  return lastReached(limits, round === undefined ? value : rounded(value, round))?.name ?? null;
}
