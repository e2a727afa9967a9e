import { requireBetween, requireProbability } from "./checks.ts";
import { LARGEST_DEGREES } from "./chi-squared.ts";
import { betaQuantileLogOdds, betaTails } from "./incomplete-beta.ts";

/** P(|T| > |t|): the lower tail of Beta(df/2, 1/2) at `df / (df + t^2)`. */
function bothTails(t: number, df: number): { outer: number; inner: number } {
  const square = (t / df) * t;
  if (square === 0) return { outer: 1, inner: 0 };
  if (square > 1e300) return { outer: 0, inner: 1 };
  const { lower, upper } = betaTails(df / 2, 0.5, { p: 1 / (1 + square), q: square / (1 + square) });
  return { outer: lower, inner: upper };
}

/**
 * Distribution function of Student's t: P(T <= t), or P(T > t) for the `upper` tail.
 *
 * @param t any number; infinite ends give 0 and 1, and so does a |t| beyond 1e150.
 * @param df degrees of freedom, 1 to 20 000 000, not necessarily whole.
 * @throws RangeError when an argument is outside its range or NaN.
 *
 * Source: DLMF 8.17; T^2 / (df + T^2) is Beta(1/2, df/2).
 */
export function studentTCdf(t: number, df: number, tail: "lower" | "upper" = "lower"): number {
  requireBetween("df", df, 1, LARGEST_DEGREES);
  requireBetween("t", t, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
  const { outer, inner } = bothTails(t, df);
  const far = t > 0 === (tail === "upper");
  return far ? outer / 2 : 0.5 + inner / 2;
}

/** P(|T| > |t|), the two-sided p-value of a t statistic. Arguments and errors as {@link studentTCdf}. */
export function studentTTwoSided(t: number, df: number): number {
  requireBetween("df", df, 1, LARGEST_DEGREES);
  requireBetween("t", t, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY);
  return bothTails(t, df).outer;
}

/**
 * Quantile of Student's t: the t with `probability` in the named tail (0.025 in the `upper` tail, 10 df:
 * 2.228138851964939).
 *
 * @param probability 0 to 1; 0 and 1 give the infinite ends.
 * @param df degrees of freedom, 1 to 20 000 000.
 * @throws RangeError when an argument is outside its range or NaN.
 */
export function studentTQuantile(probability: number, df: number, tail: "lower" | "upper" = "lower"): number {
  requireProbability("probability", probability);
  requireBetween("df", df, 1, LARGEST_DEGREES);
  if (probability === 0.5) return 0;
  const outer = probability > 0.5 ? 1 - probability : probability;
  const positive = probability < 0.5 === (tail === "upper");
  const distance =
    outer === 0
      ? Number.POSITIVE_INFINITY
      : Math.sqrt(df) * Math.exp(-betaQuantileLogOdds(2 * outer, df / 2, 0.5, "lower") / 2);
  return positive ? distance : -distance;
}
