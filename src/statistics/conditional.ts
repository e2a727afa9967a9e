/** The distribution of x1 given x1 + x2: hypergeometric, tilted by the odds ratio (Fisher's noncentral one). */
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

function part(logWeights: Float64Array, logOdds: number, first: number, last: number): Part {
  let largest = Number.NEGATIVE_INFINITY;
  for (let i = first; i <= last; i++) {
    largest = Math.max(largest, (logWeights[i] ?? 0) + i * logOdds);
  }
  let sum = 0;
  let moment = 0;
  for (let i = first; i <= last; i++) {
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
  let variance = 0;
  for (let i = 0; i <= last; i++) {
    variance += Math.exp((logWeights[i] ?? 0) + i * logOdds - log) * (i - mean) ** 2;
  }
  return { value: mean - (x - from), slope: variance };
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
