import { LARGEST_COUNT, requireWhole } from "./checks.ts";
import { cellDeviance, stirlingError } from "./stirling.ts";

/** A sample drawn without replacement. */
export interface HypergeometricSample {
  /** Animals in the population, 1 to 10 000 000. */
  readonly population: number;
  /** Affected animals in the population, 0 to `population`. */
  readonly affected: number;
  /** Animals drawn, 0 to `population`. */
  readonly drawn: number;
}

/** ln k! without its `k ln k - k` part; the parts left out are gathered in the deviances. */
export function logFactorialRest(k: number): number {
  return k === 0 ? 0 : Math.log(2 * Math.PI * k) / 2 + stirlingError(k);
}

/** Probability of x without checks; 0 outside the possible range. */
function mass(x: number, { population, affected, drawn }: HypergeometricSample): number {
  if (x < 0 || x > drawn || x > affected || drawn - x > population - affected) return 0;
  const healthy = population - affected;
  const left = population - drawn;
  if (affected === 0 || healthy === 0 || drawn === 0 || left === 0) return 1;
  const difference = (x * population - drawn * affected) / population;
  const cells = [
    { count: x, expected: (drawn * affected) / population, difference },
    { count: drawn - x, expected: (drawn * healthy) / population, difference: -difference },
    { count: affected - x, expected: (left * affected) / population, difference: -difference },
    { count: left - affected + x, expected: (left * healthy) / population, difference },
  ];
  let log = -logFactorialRest(population);
  for (const margin of [affected, healthy, drawn, left]) log += logFactorialRest(margin);
  for (const cell of cells) {
    log -= logFactorialRest(cell.count) + cellDeviance(cell.count, cell.expected, cell.difference);
  }
  return Math.exp(log);
}

/** P(X > x), summed away from x while the terms matter; for x at or above the mean. */
function sumAbove(x: number, { population, affected, drawn }: HypergeometricSample): number {
  let term = mass(x + 1, { population, affected, drawn });
  let sum = 0;
  for (let k = x + 1; term > 0; k++) {
    const next = sum + term;
    if (next === sum) break;
    sum = next;
    term *= ((affected - k) / (k + 1)) * ((drawn - k) / (population - affected - drawn + k + 1));
  }
  return sum;
}

/** The same draw with healthy animals counted instead of affected ones. */
function healthyInstead({ population, affected, drawn }: HypergeometricSample): HypergeometricSample {
  return { population, affected: population - affected, drawn };
}

/** P(X <= x) without checks. */
function atMost(x: number, sample: HypergeometricSample): number {
  const { population, affected, drawn } = sample;
  if (x * population >= drawn * affected) return 1 - sumAbove(x, sample);
  return sumAbove(drawn - x - 1, healthyInstead(sample));
}

function requireDraw(x: number, { population, affected, drawn }: HypergeometricSample): void {
  requireWhole("population", population, 1, LARGEST_COUNT);
  requireWhole("affected", affected, 0, population);
  requireWhole("drawn", drawn, 0, population);
  requireWhole("x", x, -LARGEST_COUNT, LARGEST_COUNT);
}

/**
 * Probability that exactly x of the animals drawn without replacement are affected.
 *
 * @param x whole number; 0 is returned where x is impossible.
 * @throws RangeError when a count is not whole or out of its range.
 *
 * Source: the four-cell form of the hypergeometric probability with Stirling errors and deviances (Loader 2000).
 */
export function hypergeometricProbability(x: number, sample: HypergeometricSample): number {
  requireDraw(x, sample);
  return mass(x, sample);
}

/**
 * P(X <= x) for the number of affected animals among those drawn without replacement.
 * The tail on the far side of the mean is summed term by term; the other is its complement.
 *
 * @throws RangeError when a count is not whole or out of its range.
 */
export function hypergeometricAtMost(x: number, sample: HypergeometricSample): number {
  requireDraw(x, sample);
  return atMost(x, sample);
}

/**
 * P(X >= x) for the number of affected animals among those drawn without replacement.
 *
 * @throws RangeError when a count is not whole or out of its range.
 */
export function hypergeometricAtLeast(x: number, sample: HypergeometricSample): number {
  requireDraw(x, sample);
  return atMost(sample.drawn - x, healthyInstead(sample));
}
