import { requireLevel, requireProbability } from "./checks.ts";
import {
  fisherPower,
  largestGroup,
  powerOf,
  type Rejected,
  rejectedTables,
  type SharesRule,
  type TwoShares,
} from "./fisher-power.ts";
import { normalQuantile } from "./normal.ts";

/** From 100 animals on, the steps of the power are lower than this; smaller groups are tried one by one. */
const STEP = 0.03;

/** What may be chosen for a comparison. */
export interface ComparisonOptions {
  /** Wanted power, strictly between 0 and 1; 0.8 when left out. */
  readonly power?: number;
  /** Significance level of the two-sided test; 0.05 when left out. */
  readonly alpha?: number;
  /** `fisher` when left out. */
  readonly rule?: SharesRule;
}

/** Number for each of two groups of the same size. */
export interface ComparisonSampleSize {
  /** Animals in each group; null when 1000 are not enough (300 for Boschloo's test). */
  readonly n: number | null;
  /** Exact power with `n`; with that many when `n` is null. */
  readonly power: number;
  /** Smallest number that reaches the power, though a larger one misses it; null when there is none. */
  readonly first: number | null;
}

/**
 * Number in each of two equal groups so that Fisher's exact test tells two shares apart with the wanted power.
 *
 * Exact power is not monotone in n (it drops whenever another table is no longer called different), so the answer
 * is the smallest n from which the power stays: at n and at each of the next `max(20, n / 5)` numbers, or
 * until it is 0.03 above the wanted one. The search
 * starts at 0.8 times the number that the normal formula without correction gives, which is below what Fisher's test
 * needs.
 *
 * @throws RangeError when an argument is out of its range or the shares are equal.
 */
export function fisherSampleSize(
  { p1, p2 }: TwoShares,
  { power = 0.8, alpha = 0.05, rule = "fisher" }: ComparisonOptions = {},
): ComparisonSampleSize {
  requireProbability("p1", p1);
  requireProbability("p2", p2);
  requireLevel(power);
  requireLevel(1 - alpha);
  if (p1 === p2) throw new RangeError("p1 and p2 must differ");
  const at = (n: number): number => fisherPower(n, n, { p1, p2 }, alpha, rule);
  const largest = largestGroup(rule);
  let first: number | null = null;
  let since: { n: number; power: number } | null = null;
  for (let n = Math.min(largest, startOfSearch(p1, p2, power, alpha)); n <= largest; ) {
    const reached = at(n);
    if (reached < power - 1e-12) {
      since = null;
      n += 1 + leap(n, power - reached);
      continue;
    }
    first ??= n;
    since ??= { n, power: reached };
    const sure = n >= 100 && reached > power + STEP;
    if (sure || n - since.n >= Math.max(20, since.n / 5)) return { ...since, first };
    n += 1;
  }
  return since === null ? { n: null, power: at(largest), first } : { ...since, first };
}

/** How many numbers cannot reach the power when it is missed by so much: it rises by less than 1 / n a number. */
const leap = (n: number, missed: number): number =>
  n >= 100 && missed > STEP ? Math.floor((missed - STEP) * n) : 0;

function startOfSearch(p1: number, p2: number, power: number, alpha: number): number {
  const z = normalQuantile(alpha / 2, "upper") + normalQuantile(1 - power, "upper");
  const guess = (z / (p1 - p2)) ** 2 * (p1 * (1 - p1) + p2 * (1 - p2)) * 0.8;
  return Math.max(1, Math.floor(power > 0.5 ? Math.min(guess, 1e6) : 1));
}

/**
 * The nearest share in the second group, above or below the first group's, that a comparison of `n1` and `n2`
 * animals would tell apart with the wanted power; null when not even all (or none) affected would be.
 * Found by halving to 1e-9 (the power rises as the shares move apart).
 *
 * @param p1 share affected in the first group, 0 to 1.
 * @throws RangeError when an argument is out of its range.
 */
export function detectableShares(
  n1: number,
  n2: number,
  p1: number,
  { power = 0.8, alpha = 0.05, rule = "fisher" }: ComparisonOptions = {},
): { below: number | null; above: number | null } {
  requireProbability("p1", p1);
  requireLevel(power);
  const rejected = rejectedTables(n1, n2, alpha, undefined, rule);
  return { below: nearest(rejected, p1, 0, power), above: nearest(rejected, p1, 1, power) };
}

function nearest(rejected: Rejected, p1: number, end: 0 | 1, power: number): number | null {
  if (p1 === end || powerOf(rejected, p1, end) < power) return null;
  let missed = p1;
  let reached: number = end;
  while (Math.abs(reached - missed) > 1e-9) {
    const middle = (missed + reached) / 2;
    if (powerOf(rejected, p1, middle) >= power) reached = middle;
    else missed = middle;
  }
  return reached;
}
