import { betaQuantileLogOdds } from "./incomplete-beta.ts";
import { fromLogOdds, reflect, type Split } from "./log-odds.ts";

/** Function giving the lower confidence limit for x of n at the two-sided error `alpha`. */
export type LowerLimit = (x: number, n: number, alpha: number) => Split;

/** The limit nothing can lie below: the answer of the exact methods when x = 0. */
export const ZERO: Split = { p: 0, q: 1 };

/**
 * Exact one-sided lower limit: the p at which P(X >= x) equals `error`; 0 when x = 0.
 * It is the `error` quantile of Beta(x, n - x + 1). Source: Clopper & Pearson 1934, Biometrika 26:404-413.
 */
export function exactLowerLimit(x: number, n: number, error: number): Split {
  return x === 0 ? ZERO : fromLogOdds(betaQuantileLogOdds(error, x, n - x + 1, "lower"));
}

/** Clopper-Pearson lower limit: the exact one with half of alpha below it. */
export function clopperPearsonLower(x: number, n: number, alpha: number): Split {
  return exactLowerLimit(x, n, alpha / 2);
}

/**
 * Jeffreys lower limit: the alpha/2 quantile of Beta(x + 1/2, n - x + 1/2), but 0 when x = 0.
 * Source: Brown, Cai & DasGupta 2001, Stat Sci 16:101-133.
 */
export function jeffreysLower(x: number, n: number, alpha: number): Split {
  return x === 0 ? ZERO : fromLogOdds(betaQuantileLogOdds(alpha / 2, x + 0.5, n - x + 0.5, "lower"));
}

/** Both limits of an equivariant method: the upper one is the lower one of the unaffected, reflected. */
export function bothLimits(
  lowerLimit: LowerLimit,
  x: number,
  n: number,
  alpha: number,
): { lower: number; upper: number } {
  return { lower: lowerLimit(x, n, alpha).p, upper: reflect(lowerLimit(n - x, n, alpha)).p };
}
