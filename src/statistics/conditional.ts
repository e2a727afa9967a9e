/** The distribution of x1 given x1 + x2: hypergeometric, tilted by the odds ratio (Fisher's noncentral one). */
import { firstTrue } from "./first-true.ts";
import { type Slope, solveLogOdds } from "./log-odds.ts";
import type { TwoGroups } from "./two-by-two.ts";

/** The possible counts of the first group with the logarithms of their weights at odds ratio 1. */
export interface Conditional {
  /** Smallest possible count. */
  readonly from: number;
  /** ln of the weight of `from`, `from + 1`, ...; the largest is 0. */
  readonly logWeights: Float64Array;
}

/**
 * Weights `C(n1, k) C(n2, t - k)` of every possible count k of the first group, t = x1 + x2, scaled so that the
 * largest is 1; built outwards from it by the ratio of neighbours.
 */
export function conditional({ x1, n1, x2, n2 }: TwoGroups): Conditional {
  const total = x1 + x2;
  const from = Math.max(0, total - n2);
  const to = Math.min(n1, total);
  const mode = Math.min(to, Math.max(from, Math.floor(((n1 + 1) * (total + 1)) / (n1 + n2 + 2))));
  const logWeights = new Float64Array(to - from + 1);
  const logRatio = (k: number): number =>
    Math.log(((n1 - k) / (k + 1)) * ((total - k) / (n2 - total + k + 1)));
  for (let k = mode; k < to; k++) {
    logWeights[k + 1 - from] = (logWeights[k - from] ?? 0) + logRatio(k);
  }
  for (let k = mode; k > from; k--) {
    logWeights[k - 1 - from] = (logWeights[k - from] ?? 0) - logRatio(k - 1);
  }
  return { from, logWeights };
}

/** Sum and mean of the tilted weights over a run of places, the sum as a logarithm. */
interface Part {
  readonly log: number;
  readonly mean: number;
}

/** Weights below e^-60 of the largest add nothing to a sum of ten million. */
const NOTHING = -60;

/**
 * The places of a run that matter, and the largest tilted log weight. The log weights are concave, so the largest is
 * found by halving, and the others fall away from it on both sides.
 */
function mattering(logWeights: Float64Array, logOdds: number, first: number, last: number) {
  const tilted = (i: number): number => (logWeights[i] ?? 0) + i * logOdds;
  const top = firstTrue(first, last, (i) => i === last || tilted(i + 1) <= tilted(i));
  const largest = tilted(top);
  const matters = (i: number): boolean => tilted(i) - largest >= NOTHING;
  const from = firstTrue(first, top, matters);
  const to = firstTrue(top, last, (i) => i === last || !matters(i + 1));
  return { from, to, largest };
}

function part(logWeights: Float64Array, logOdds: number, first: number, last: number): Part {
  const { from, to, largest } = mattering(logWeights, logOdds, first, last);
  let sum = 0;
  let moment = 0;
  for (let i = from; i <= to; i++) {
    const weight = Math.exp((logWeights[i] ?? 0) + i * logOdds - largest);
    sum += weight;
    moment += weight * i;
  }
  return { log: largest + Math.log(sum), mean: moment / sum };
}

/** ln P(k >= x) for the tilted distribution and its slope in the log odds ratio. */
export function logAtLeast({ from, logWeights }: Conditional, x: number, logOdds: number): Slope {
  const last = logWeights.length - 1;
  const all = part(logWeights, logOdds, 0, last);
  const upper = part(logWeights, logOdds, x - from, last);
  return { value: upper.log - all.log, slope: upper.mean - all.mean };
}

/** Mean of the tilted distribution less x, and its slope (the variance) in the log odds ratio. */
export function meanExcess({ from, logWeights }: Conditional, x: number, logOdds: number): Slope {
  const last = logWeights.length - 1;
  const { log, mean } = part(logWeights, logOdds, 0, last);
  const { from: start, to } = mattering(logWeights, logOdds, 0, last);
  let variance = 0;
  for (let i = start; i <= to; i++) {
    variance += Math.exp((logWeights[i] ?? 0) + i * logOdds - log) * (i - mean) ** 2;
  }
  return { value: mean - (x - from), slope: variance };
}

/**
 * The distribution of the sum over strata, each given its own total; `null` when it would take over two million steps.
 * Weights stay logarithms, so that no tail is lost.
 */
export function addedConditionals(first: Conditional, second: Conditional): Conditional | null {
  const a = first.logWeights;
  const b = second.logWeights;
  if (a.length * b.length > 2_000_000) return null;
  const logWeights = new Float64Array(a.length + b.length - 1);
  for (let sum = 0; sum < logWeights.length; sum++) {
    const from = Math.max(0, sum - b.length + 1);
    const to = Math.min(a.length - 1, sum);
    let largest = Number.NEGATIVE_INFINITY;
    for (let i = from; i <= to; i++) largest = Math.max(largest, (a[i] ?? 0) + (b[sum - i] ?? 0));
    let weight = 0;
    for (let i = from; i <= to; i++) weight += Math.exp((a[i] ?? 0) + (b[sum - i] ?? 0) - largest);
    logWeights[sum] = largest + Math.log(weight);
  }
  const top = logWeights.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY);
  return { from: first.from + second.from, logWeights: logWeights.map((one) => one - top) };
}

/** The distribution with the healthy counted in the first group instead: turns upper tails into lower ones. */
export function mirrored({ from, logWeights }: Conditional): Conditional {
  return { from: -(from + logWeights.length - 1), logWeights: logWeights.slice().reverse() };
}

/** Root of a function that rises with the log odds ratio, bracketed by doubling from 0. */
export function solveRising(f: (logOdds: number) => Slope): number {
  let low = 0;
  let high = 0;
  for (let step = 1; f(low).value > 0; step *= 2) low -= step;
  for (let step = 1; f(high).value < 0; step *= 2) high += step;
  return low === high ? low : solveLogOdds(f, low, high);
}
