import { binomialMasses } from "./binomial-mass.ts";
import { requireLevel, requireProbability, requireWhole } from "./checks.ts";
import { conditional } from "./conditional.ts";

/** Largest number in one group for which the power is enumerated. */
export const LARGEST_GROUP = 1000;

/** As in Fisher's test: tables less than this (relative) more probable count as equally probable. */
const TIE = 1e-7;

/** Counts of this probability are left out: all of them together cannot move the power by 1e-14. */
const NEGLIGIBLE = 1e-18;

/** The tables that Fisher's exact test calls different at `alpha`: 1 at `x1 * (n2 + 1) + x2`. */
export interface Rejected {
  readonly n1: number;
  readonly n2: number;
  readonly tables: Uint8Array;
}

/**
 * Every table of two groups whose two-sided Fisher p is at most `alpha`.
 *
 * @param n1 animals in the first group, 1 to 1000.
 * @param n2 animals in the second group, 1 to 1000.
 * @param alpha significance level, strictly between 0 and 1.
 * @param totals affected animals of both groups together, to look at no other tables.
 * @throws RangeError when an argument is out of its range.
 */
export function rejectedTables(
  n1: number,
  n2: number,
  alpha: number,
  totals: { from: number; to: number } = { from: 0, to: n1 + n2 },
): Rejected {
  requireWhole("n1", n1, 1, LARGEST_GROUP);
  requireWhole("n2", n2, 1, LARGEST_GROUP);
  requireLevel(1 - alpha);
  const tables = new Uint8Array((n1 + 1) * (n2 + 1));
  for (let total = totals.from; total <= totals.to; total++) {
    const x1 = Math.max(0, total - n2);
    const { from, logWeights } = conditional({ x1, n1, x2: total - x1, n2 });
    for (const place of rejectedPlaces(logWeights, alpha)) {
      const k = from + place;
      tables[k * (n2 + 1) + total - k] = 1;
    }
  }
  return { n1, n2, tables };
}

/**
 * Places of the tables of one total whose p is at most alpha. The weights rise to one largest and fall, so the
 * least probable table left is always at one of the two ends; ties come in together.
 */
function rejectedPlaces(logWeights: Float64Array, alpha: number): number[] {
  const weights = logWeights.map(Math.exp);
  const limit = weights.reduce((sum, weight) => sum + weight, 0) * alpha * (1 + 1e-12);
  const places: number[] = [];
  let low = 0;
  let high = weights.length - 1;
  let sum = 0;
  while (low <= high) {
    const tied = Math.min(weights[low] ?? 0, weights[high] ?? 0) * (1 + TIE);
    const from = low;
    const to = high;
    for (; low <= high && (weights[low] ?? 0) <= tied; low++) sum += weights[low] ?? 0;
    for (; high >= low && (weights[high] ?? 0) <= tied; high--) sum += weights[high] ?? 0;
    if (sum > limit) break;
    for (let place = from; place < low; place++) places.push(place);
    for (let place = to; place > high; place--) places.push(place);
  }
  return places;
}

/** Probability that a table of the set comes up when the true shares affected are `p1` and `p2`. */
export function powerOf({ n1, n2, tables }: Rejected, p1: number, p2: number): number {
  const first = binomialMasses(n1, p1);
  const second = binomialMasses(n2, p2);
  let power = 0;
  for (const [x1, mass] of first.entries()) {
    if (mass < NEGLIGIBLE) continue;
    let row = 0;
    const start = x1 * (n2 + 1);
    for (const [x2, other] of second.entries()) if (tables[start + x2] === 1) row += other;
    power += mass * row;
  }
  return Math.min(1, power);
}

/** Two true shares affected that a comparison is to tell apart. */
export interface TwoShares {
  /** Share affected in the first group, 0 to 1. */
  readonly p1: number;
  /** Share affected in the second group, 0 to 1. */
  readonly p2: number;
}

/**
 * Exact power of Fisher's exact test: the probability, over all tables of two binomial samples, that the
 * two-sided p is at most `alpha`. Source: definition, by enumeration.
 *
 * @param n1 animals in the first group, 1 to 1000.
 * @param n2 animals in the second group, 1 to 1000.
 * @throws RangeError when an argument is out of its range.
 */
export function fisherPower(n1: number, n2: number, { p1, p2 }: TwoShares, alpha = 0.05): number {
  requireProbability("p1", p1);
  requireProbability("p2", p2);
  requireWhole("n1", n1, 1, LARGEST_GROUP);
  requireWhole("n2", n2, 1, LARGEST_GROUP);
  const first = likely(binomialMasses(n1, p1));
  const second = likely(binomialMasses(n2, p2));
  const totals = { from: first.from + second.from, to: first.to + second.to };
  return powerOf(rejectedTables(n1, n2, alpha, totals), p1, p2);
}

/** The counts outside which nothing is left that could matter. */
function likely(masses: Float64Array): { from: number; to: number } {
  const counts = [...masses.keys()].filter((x) => (masses[x] ?? 0) >= NEGLIGIBLE);
  return { from: counts[0] ?? 0, to: counts.at(-1) ?? 0 };
}
