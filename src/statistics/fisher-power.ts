import { binomialMasses } from "./binomial-mass.ts";
import { boschlooP, boschlooTables, LARGEST_UNCONDITIONAL } from "./boschloo.ts";
import { requireLevel, requireProbability, requireWhole } from "./checks.ts";
import { fisherExact } from "./fisher.ts";
import type { TwoGroups } from "./two-by-two.ts";

/** Largest number in one group for which the power is enumerated. */
export const LARGEST_GROUP = 1000;

/** As in Fisher's test: tables less than this (relative) more probable count as equally probable. */
const TIE = 1e-7;

/** Counts of this probability are left out: all of them together cannot move the power by 1e-14. */
const NEGLIGIBLE = 1e-18;

/** How two shares are tested, to be chosen before the data: the first holds at any number, the others waste less of the level. */
export const SHARES_RULES = ["fisher", "mid-p", "boschloo"] as const;
export type SharesRule = (typeof SHARES_RULES)[number];

/** Two-sided p by a rule. @throws RangeError when a count is out of its range, or over 300 for Boschloo's test */
export function sharesP(groups: TwoGroups, rule: SharesRule): number {
  if (rule === "boschloo") return boschlooP(groups);
  const { p, midP } = fisherExact(groups);
  return rule === "mid-p" ? midP : p;
}

/** The largest group for which a rule's power is enumerated. */
export const largestGroup = (rule: SharesRule): number =>
  rule === "boschloo" ? LARGEST_UNCONDITIONAL : LARGEST_GROUP;

/** The rule by which groups of at most `size` animals are tested: Fisher's where they are too large for the other. */
export const ruleFor = (size: number, rule: SharesRule): SharesRule =>
  size > largestGroup(rule) ? "fisher" : rule;

/** The tables that a test calls different at `alpha`: 1 at `x1 * (n2 + 1) + x2`. */
export interface Rejected {
  readonly n1: number;
  readonly n2: number;
  readonly tables: Uint8Array;
}

/**
 * Every table of two groups whose two-sided p is at most `alpha`, Fisher's unless another rule is named.
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
  rule: SharesRule = "fisher",
): Rejected {
  requireWhole("n1", n1, 1, LARGEST_GROUP);
  requireWhole("n2", n2, 1, LARGEST_GROUP);
  requireLevel(1 - alpha);
  if (rule === "boschloo") return { n1, n2, tables: boschlooTables(n1, n2, alpha) };
  const accepted = rule === "mid-p" ? acceptedByMidP : acceptedPlaces;
  const tables = new Uint8Array((n1 + 1) * (n2 + 1));
  for (let total = totals.from; total <= totals.to; total++) {
    const from = Math.max(0, total - n2);
    const weights = conditionalWeights(n1, n2, total);
    const { low, high } = accepted(weights, alpha);
    for (let place = 0; place < weights.length; place++) {
      if (place >= low && place <= high) continue;
      const k = from + place;
      tables[k * (n2 + 1) + total - k] = 1;
    }
  }
  return { n1, n2, tables };
}

/**
 * Weights of the possible counts of the first group, from the least, scaled so that the largest is 1: built outwards
 * from it by the ratio of neighbours. Those that underflow to 0 are rejected at any level.
 */
function conditionalWeights(n1: number, n2: number, total: number): Float64Array {
  const from = Math.max(0, total - n2);
  const to = Math.min(n1, total);
  const mode = Math.min(to, Math.max(from, Math.floor(((n1 + 1) * (total + 1)) / (n1 + n2 + 2))));
  const weights = new Float64Array(to - from + 1);
  weights[mode - from] = 1;
  for (let k = mode, weight = 1; k < to; k++) {
    weight *= ((n1 - k) * (total - k)) / ((k + 1) * (n2 - total + k + 1));
    weights[k + 1 - from] = weight;
  }
  for (let k = mode, weight = 1; k > from; k--) {
    weight *= (k * (n2 - total + k)) / ((n1 - k + 1) * (total - k + 1));
    weights[k - 1 - from] = weight;
  }
  return weights;
}

/**
 * First and last place of the tables of one total whose p is above alpha. The weights rise to one largest and fall,
 * so the least probable table left is always at one of the two ends; ties come in together.
 */
function acceptedPlaces(weights: Float64Array, alpha: number): { low: number; high: number } {
  const limit = weights.reduce((sum, weight) => sum + weight, 0) * alpha * (1 + 1e-12);
  let low = 0;
  let high = weights.length - 1;
  let sum = 0;
  for (;;) {
    const tied = Math.min(weights[low] ?? 0, weights[high] ?? 0) * (1 + TIE);
    let nextLow = low;
    let nextHigh = high;
    for (; nextLow <= nextHigh && (weights[nextLow] ?? 0) <= tied; nextLow++) sum += weights[nextLow] ?? 0;
    for (; nextHigh >= nextLow && (weights[nextHigh] ?? 0) <= tied; nextHigh--) sum += weights[nextHigh] ?? 0;
    // With all tables in, p is 1: the last ones are never rejected.
    if (sum > limit || nextLow > nextHigh) return { low, high };
    low = nextLow;
    high = nextHigh;
  }
}

/** The same where p is twice the smaller tail with half of the table itself in it. */
function acceptedByMidP(weights: Float64Array, alpha: number): { low: number; high: number } {
  const limit = (weights.reduce((sum, weight) => sum + weight, 0) * alpha * (1 + 1e-12)) / 2;
  const firstKept = (values: Float64Array): number => {
    let below = 0;
    for (const [place, weight] of values.entries()) {
      if (below + weight / 2 > limit) return place;
      below += weight;
    }
    return values.length;
  };
  return { low: firstKept(weights), high: weights.length - 1 - firstKept(weights.slice().reverse()) };
}

/** Probability that a table of the set comes up when the true shares affected are `p1` and `p2`. */
export const powerOf = (rejected: Rejected, p1: number, p2: number): number =>
  rejectedMass(rejected, binomialMasses(rejected.n1, p1), binomialMasses(rejected.n2, p2));

/** @param first probabilities of 0, 1, ... affected in the first group */
function rejectedMass({ n2, tables }: Rejected, first: Float64Array, second: Float64Array): number {
  const { from, to } = likely(second);
  let power = 0;
  for (const [x1, mass] of first.entries()) {
    if (mass < NEGLIGIBLE) continue;
    const start = x1 * (n2 + 1);
    let row = 0;
    for (let x2 = from; x2 <= to; x2++) if (tables[start + x2] === 1) row += second[x2] ?? 0;
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
 * Exact power of Fisher's exact test, or of another rule: the probability, over all tables of two binomial samples, that
 * the two-sided p is at most `alpha`. Source: definition, by enumeration.
 *
 * @param n1 animals in the first group, 1 to 1000.
 * @param n2 animals in the second group, 1 to 1000.
 * @throws RangeError when an argument is out of its range.
 */
export function fisherPower(
  n1: number,
  n2: number,
  { p1, p2 }: TwoShares,
  alpha = 0.05,
  rule: SharesRule = "fisher",
): number {
  requireProbability("p1", p1);
  requireProbability("p2", p2);
  requireWhole("n1", n1, 1, LARGEST_GROUP);
  requireWhole("n2", n2, 1, LARGEST_GROUP);
  const first = likely(binomialMasses(n1, p1));
  const second = likely(binomialMasses(n2, p2));
  const totals = { from: first.from + second.from, to: first.to + second.to };
  return powerOf(rejectedTables(n1, n2, alpha, totals, rule), p1, p2);
}

/** A part of both groups, such as a room, with its own shares affected. */
export interface MixedPart extends TwoShares {
  readonly n1: number;
  readonly n2: number;
}

/**
 * As {@link fisherPower}, of groups made up of parts with shares of their own, which the test takes together. Source:
 * definition; the counts of the parts are added up by convolution.
 *
 * @throws RangeError when an argument is out of its range, or a group has over 1000 animals.
 */
export function mixedPower(parts: readonly MixedPart[], alpha = 0.05, rule: SharesRule = "fisher"): number {
  const n1 = parts.reduce((sum, part) => sum + part.n1, 0);
  const n2 = parts.reduce((sum, part) => sum + part.n2, 0);
  const rejected = rejectedTables(n1, n2, alpha, undefined, rule);
  const added = (masses: readonly Float64Array[]): Float64Array =>
    masses.reduce((sums, one) => convolved(sums, one), Float64Array.of(1));
  return rejectedMass(
    rejected,
    added(parts.map((part) => binomialMasses(part.n1, part.p1))),
    added(parts.map((part) => binomialMasses(part.n2, part.p2))),
  );
}

function convolved(first: Float64Array, second: Float64Array): Float64Array {
  const sums = new Float64Array(first.length + second.length - 1);
  for (const [i, mass] of first.entries())
    for (const [j, other] of second.entries()) sums[i + j] = (sums[i + j] ?? 0) + mass * other;
  return sums;
}

/** The counts outside which nothing is left that could matter. */
function likely(masses: Float64Array): { from: number; to: number } {
  const counts = [...masses.keys()].filter((x) => (masses[x] ?? 0) >= NEGLIGIBLE);
  return { from: counts[0] ?? 0, to: counts.at(-1) ?? 0 };
}
