import { requireBetween, requireProbability } from "./checks.ts";
import { LARGEST_DEGREES } from "./chi-squared.ts";
import { betaQuantileLogOdds, betaTails } from "./incomplete-beta.ts";

/** Degrees of freedom of a ratio of two mean squares, each 1 to 20 000 000 and not necessarily whole. */
export interface FDegrees {
  /** Of the mean square above the line. */
  readonly numerator: number;
  /** Of the mean square below the line. */
  readonly denominator: number;
}

function requireDegrees({ numerator, denominator }: FDegrees): void {
  requireBetween("numerator", numerator, 1, LARGEST_DEGREES);
  requireBetween("denominator", denominator, 1, LARGEST_DEGREES);
}

/**
 * Distribution function of Fisher's F, the ratio of two mean squares: P(F <= f), or P(F > f) for the `upper` tail.
 *
 * @param f 0 or more; infinity gives the end.
 * @throws RangeError when an argument is outside its range or NaN.
 *
 * Source: DLMF 8.17; `d1 F / (d1 F + d2)` is Beta(d1/2, d2/2).
 */
export function fCdf(f: number, degrees: FDegrees, tail: "lower" | "upper" = "lower"): number {
  requireDegrees(degrees);
  requireBetween("f", f, 0, Number.POSITIVE_INFINITY);
  const odds = (degrees.numerator / degrees.denominator) * f;
  if (odds === 0) return tail === "lower" ? 0 : 1;
  if (odds > 1e300) return tail === "lower" ? 1 : 0;
  const at = { p: odds / (1 + odds), q: 1 / (1 + odds) };
  return betaTails(degrees.numerator / 2, degrees.denominator / 2, at)[tail];
}

/**
 * Quantile of Fisher's F: the f with `probability` in the named tail (0.05 in the `upper` tail, 2 and 10 df:
 * 4.102821015303607).
 *
 * @param probability 0 to 1; 0 and 1 give the ends of the range, 0 and infinity.
 * @throws RangeError when an argument is outside its range or NaN.
 */
export function fQuantile(probability: number, degrees: FDegrees, tail: "lower" | "upper" = "lower"): number {
  requireProbability("probability", probability);
  requireDegrees(degrees);
  if (probability === 0 || probability === 1) {
    return (probability === 0) === (tail === "lower") ? 0 : Number.POSITIVE_INFINITY;
  }
  const { numerator, denominator } = degrees;
  const logOdds = betaQuantileLogOdds(probability, numerator / 2, denominator / 2, tail);
  return (denominator / numerator) * Math.exp(logOdds);
}
