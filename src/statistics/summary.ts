import { mean, quantile } from "simple-statistics";

/** How often one value occurs. */
export interface ValueCount {
  readonly value: number;
  readonly count: number;
}

/** Summary of a list of scores; everything but `n` and `distribution` is null when the list is empty. */
export interface Summary {
  readonly n: number;
  readonly mean: number | null;
  readonly median: number | null;
  /** First quartile. */
  readonly q1: number | null;
  /** Third quartile. */
  readonly q3: number | null;
  readonly min: number | null;
  readonly max: number | null;
  /** Each value that occurs, ascending, with its count. */
  readonly distribution: readonly ValueCount[];
}

/** Beyond this a sum of values could overflow. */
const LARGEST = 1e300;

const EMPTY: Summary = {
  n: 0,
  mean: null,
  median: null,
  q1: null,
  q3: null,
  min: null,
  max: null,
  distribution: [],
};

/**
 * Number, mean, median, quartiles, range and frequency of each value; in the unit of the values.
 *
 * The mean is a compensated sum (Kahan-Babuška) over n, held within the range of the values. The quartiles
 * interpolate linearly between the order statistics at (n - 1) p, definition 7 of Hyndman & Fan 1996,
 * Am Stat 50:361-365: the quartiles of 1, 2, 3, 4 are 1.75 and 3.25.
 *
 * @param values numbers of at most 1e300 in size, in any order, left unchanged; none gives n = 0 and nulls.
 * @throws RangeError when a value is NaN, infinite or too large, naming its place (from 0).
 */
export function summarise(values: readonly number[]): Summary {
  const counts = new Map<number, number>();
  for (const [place, value] of values.entries()) {
    if (!(Math.abs(value) <= LARGEST)) {
      throw new RangeError(`values[${place}] must be a number of at most ${LARGEST} in size, got ${value}`);
    }
    counts.set(value, (counts.get(value) ?? 0) + 1);
  }
  const distribution = [...counts]
    .map(([value, count]) => ({ value, count }))
    .sort((a, b) => a.value - b.value);
  const min = distribution[0]?.value;
  const max = distribution.at(-1)?.value;
  if (min === undefined || max === undefined) return EMPTY;
  const copy = [...values];
  return {
    n: copy.length,
    mean: Math.min(max, Math.max(min, mean(copy))),
    median: quantile(copy, 0.5),
    q1: quantile(copy, 0.25),
    q3: quantile(copy, 0.75),
    min,
    max,
    distribution,
  };
}
