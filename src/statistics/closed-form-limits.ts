import { normalQuantile } from "./normal.ts";

export interface ClosedLimits {
  readonly lower: number;
  readonly upper: number;
}

/**
 * Wilson score interval without continuity correction: the roots of `(p - x/n)^2 = z^2 p (1-p) / n`.
 *
 * The smaller root is taken from the product of the two, so that it keeps its digits near 0.
 * Exactly 0 at x = 0 and exactly 1 at x = n. Source: Wilson 1927; Newcombe 1998, Stat Med 17:857-872, method 3.
 */
export const wilsonLimits = (x: number, n: number, alpha: number): ClosedLimits =>
  wilsonLimitsAt(x, n, normalQuantile(alpha / 2, "upper"));

/** The same at a given distance, such as a quantile of Student's t in place of z. */
export const wilsonLimitsAt = (x: number, n: number, z: number): ClosedLimits => ({
  lower: wilsonLower(x, n, z),
  upper: wilsonUpper(x, n, z),
});

function wilsonUpper(x: number, n: number, z: number): number {
  if (x === n) return 1;
  const square = z * z;
  return (x + square / 2 + z * Math.sqrt((x * (n - x)) / n + square / 4)) / (n + square);
}

function wilsonLower(x: number, n: number, z: number): number {
  return x === 0 ? 0 : ((x / n) * x) / ((n + z * z) * wilsonUpper(x, n, z));
}

/**
 * Agresti-Coull interval: Wald limits about `(x + z^2/2) / (n + z^2)`, cut off at 0 and 1.
 * Source: Agresti & Coull 1998, Am Stat 52:119-126.
 */
export function agrestiCoullLimits(x: number, n: number, alpha: number): ClosedLimits {
  const z = normalQuantile(alpha / 2, "upper");
  const total = n + z * z;
  const centre = (x + (z * z) / 2) / total;
  const margin = z * Math.sqrt((centre * (1 - centre)) / total);
  return { lower: Math.max(0, centre - margin), upper: Math.min(1, centre + margin) };
}
