import { ZERO } from "./beta-limits.ts";
import { atLeast } from "./binomial.ts";
import { betaQuantileLogOdds } from "./incomplete-beta.ts";
import { fromLogOdds, type Split, solveLogOdds } from "./log-odds.ts";

/**
 * Mid-P lower limit: the p at which `P(X > x) + P(X = x) / 2 = alpha / 2`; 0 when x = 0.
 *
 * The left side is the mean of P(X >= x) and P(X >= x + 1), so its root lies between the exact limits for
 * x and for x + 1. Coverage is near the level on average and may fall below it.
 * Source: Newcombe 1998, Stat Med 17:857-872, method 6.
 */
export function midPLower(x: number, n: number, alpha: number): Split {
  if (x === 0) return ZERO;
  if (x === n) {
    const logP = Math.log(alpha) / n;
    return { p: Math.exp(logP), q: -Math.expm1(logP) };
  }
  const logTarget = Math.log(alpha);
  const low = betaQuantileLogOdds(alpha / 2, x, n - x + 1, "lower");
  const high = betaQuantileLogOdds(alpha / 2, x + 1, n - x, "lower");
  const root = solveLogOdds(
    (logOdds) => {
      const at = fromLogOdds(logOdds);
      const including = atLeast(x, n, at);
      const beyond = atLeast(x + 1, n, at);
      const sum = including.probability + beyond.probability;
      return { value: Math.log(sum) - logTarget, slope: (including.slope + beyond.slope) / sum };
    },
    low,
    high,
  );
  return fromLogOdds(root);
}
