import { median } from "simple-statistics";
import { requireLevel, requireValues } from "./checks.ts";
import { regularisedBeta } from "./incomplete-beta.ts";
import { type Limits, noLimits } from "./limits.ts";

/** A median with its interval, in the unit of the values. */
export type MedianInterval = {
  readonly n: number;
  /** Null when there are no values. */
  readonly median: number | null;
  /** Ranks (from 1) of the values that are the limits; null without limits. */
  readonly ranks: readonly [number, number] | null;
  /** Least probability that such an interval holds the median, at or above the level; null without limits. */
  readonly coverage: number | null;
  readonly level: number;
  readonly method: "order-statistics";
} & Limits;

/** P(X <= x) for X binomial(n, 1/2). */
function coinAtMost(x: number, n: number): number {
  if (x < 0) return 0;
  return x >= n ? 1 : regularisedBeta(0.5, n - x, x + 1).lower;
}

/**
 * Median with an exact interval from two of the values: the k-th from either end, for the largest k with
 * `P(X < k) <= alpha/2`, X binomial(n, 1/2). Equal values make it hold the median more often, never less.
 *
 * Without limits, and with the reason, when no pair of values reaches the level: fewer than six at 95 %.
 *
 * @param values numbers of at most 1e150 in size; meant as a simple random sample.
 * @throws RangeError when a value or the level is outside its range.
 *
 * Source: Thompson 1936, Ann Math Stat 7:122-128 (the binomial argument; citation from memory).
 */
export function medianInterval(
  values: readonly number[],
  { level = 0.95 }: { readonly level?: number } = {},
): MedianInterval {
  requireLevel(level);
  requireValues("values", values);
  const n = values.length;
  const sorted = values.toSorted((a, b) => a - b);
  const half = (1 - level) / 2;
  let k = 0;
  while (coinAtMost(k, n) <= half) k += 1;
  const common = { n, median: n === 0 ? null : median(sorted), level, method: "order-statistics" } as const;
  const lower = sorted[k - 1];
  const upper = sorted[n - k];
  if (lower === undefined || upper === undefined) {
    const reason = n === 0 ? "no values" : `too few values for an interval at level ${level}`;
    return { ...common, ranks: null, coverage: null, ...noLimits(reason) };
  }
  const coverage = 1 - 2 * coinAtMost(k - 1, n);
  return { ...common, ranks: [k, n + 1 - k], coverage, lower, upper, reason: null };
}
