import { ZERO } from "./beta-limits.ts";
import { atLeast, atMost } from "./binomial.ts";
import { betaQuantileLogOdds } from "./incomplete-beta.ts";
import { fromLogOdds, type Split, solveLogOdds } from "./log-odds.ts";

/** Two tails closer than this (relative) count as equal. */
const TIE = 1e-12;

/**
 * Blaker lower limit: the smallest p whose acceptability reaches alpha; 0 when x = 0.
 *
 * Below the median the acceptability of p is `U + L_k`: U = P(X >= x), plus L_k = P(X <= k) for the largest
 * k with L_k <= U. It cannot reach alpha before the Clopper-Pearson limit, where U = alpha/2. From there, as
 * p rises with k fixed, U + L_k falls and then rises (the ratio of the two densities is monotone), so it
 * crosses alpha upwards at most once. The piece ends where L_(k+1) has sunk to U; there the acceptability
 * jumps to 2U >= alpha. The limit is therefore the crossing inside that first piece or the jump at its end,
 * and no step search is needed.
 *
 * The interval is the hull of {p: acceptability >= alpha}; it lies inside the Clopper-Pearson interval and
 * its coverage is never below the level.
 * Source: Blaker 2000, Can J Stat 28:783-798 (corr. 29:681); hull: Klaschka 2010.
 */
export function blakerLower(x: number, n: number, alpha: number): Split {
  if (x === 0) return ZERO;
  const start = betaQuantileLogOdds(alpha / 2, x, n - x + 1, "lower");
  const k = largestSmallerTail(x, n, alpha / 2, fromLogOdds(start));
  const median = betaQuantileLogOdds(0.5, x, n - x + 1, "lower");
  const jump = solveLogOdds(
    (logOdds) => {
      const at = fromLogOdds(logOdds);
      const upper = atLeast(x, n, at);
      const opposite = atMost(k + 1, n, at);
      return {
        value: upper.log - opposite.log,
        slope: upper.slope / upper.probability - opposite.slope / opposite.probability,
      };
    },
    start,
    median,
  );
  const logAlpha = Math.log(alpha);
  const acceptability = (logOdds: number) => {
    const at = fromLogOdds(logOdds);
    const upper = atLeast(x, n, at);
    const opposite = atMost(k, n, at);
    const sum = upper.probability + opposite.probability;
    return { value: Math.log(sum) - logAlpha, slope: (upper.slope + opposite.slope) / sum };
  };
  const reachedBeforeJump = acceptability(jump).value >= 0;
  return fromLogOdds(reachedBeforeJump ? solveLogOdds(acceptability, start, jump) : jump);
}

/** The largest k from -1 to x - 2 with P(X <= k) below `tail` (a tie counts as not below). */
function largestSmallerTail(x: number, n: number, tail: number, at: Split): number {
  let below = -1;
  let notBelow = x - 1;
  while (notBelow - below > 1) {
    const middle = Math.floor((below + notBelow) / 2);
    if (atMost(middle, n, at).probability < tail * (1 - TIE)) below = middle;
    else notBelow = middle;
  }
  return below;
}
