import { requireBetween } from "./checks.ts";
import { regularisedGamma } from "./incomplete-gamma.ts";

/** Most degrees of freedom the routines here accept. */
export const LARGEST_DEGREES = 20_000_000;

/**
 * Chi-squared distribution: P(X > x), the p-value of a statistic, or P(X <= x) for the `lower` tail.
 *
 * @param x 0 or more; infinity gives the end.
 * @param df degrees of freedom, 1 to 20 000 000, not necessarily whole.
 * @throws RangeError when an argument is outside its range or NaN.
 *
 * Source: DLMF 8.2; X/2 is gamma with shape df/2.
 */
export function chiSquaredTail(x: number, df: number, tail: "lower" | "upper" = "upper"): number {
  requireBetween("df", df, 1, LARGEST_DEGREES);
  requireBetween("x", x, 0, Number.POSITIVE_INFINITY);
  return regularisedGamma(df / 2, x / 2)[tail];
}
