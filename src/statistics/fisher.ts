import { requireLevel } from "./checks.ts";
import {
  type Conditional,
  conditional,
  logAtLeast,
  meanExcess,
  mirrored,
  solveRising,
} from "./conditional.ts";
import { requireTwoGroups, type TwoGroups } from "./two-by-two.ts";

/** Tables less than this (relative) more probable than the observed one count as equally probable. */
const TIE = 1e-7;

/** Fisher's exact test with the odds ratio that belongs to it. */
export interface FisherTest {
  /** Two-sided exact p: all tables with these margins that are not more probable than the observed one. */
  readonly p: number;
  /** Two-sided mid-P: twice the smaller tail with half of the observed table in it; at most 1. */
  readonly midP: number;
  /** Conditional maximum likelihood estimate; null when the margins leave one table only. */
  readonly oddsRatio: number | null;
  /** Lower limit of the odds ratio, 0 when it has none. */
  readonly lower: number;
  /** Upper limit of the odds ratio, infinite when it has none. */
  readonly upper: number;
  readonly level: number;
}

/** What may be chosen for {@link fisherExact}. */
export interface FisherOptions {
  /** Confidence level of the odds ratio; 0.95 when left out. */
  readonly level?: number;
  /** Tails of the interval: `exact`, or `mid-p` with half of the observed table; `exact` when left out. */
  readonly tails?: "exact" | "mid-p";
}

/**
 * Fisher's exact test for affected of examined in two groups.
 *
 * The two-sided p adds the tables not more probable than the observed one. The interval puts `(1 - level) / 2` in
 * each tail of the conditional distribution (noncentral hypergeometric) and is another rule than the p, so the two
 * may disagree near the level. The odds ratio is the one whose conditional mean is `x1`, not the cross product.
 * Sources: Fisher 1935; interval Cornfield 1956; mid-P Lancaster 1961 (the last two from memory).
 *
 * @throws RangeError when a count or the level is out of its range.
 */
export function fisherExact(
  groups: TwoGroups,
  { level = 0.95, tails = "exact" }: FisherOptions = {},
): FisherTest {
  requireTwoGroups(groups);
  requireLevel(level);
  return conditionalTest(conditional(groups), groups.x1, level, tails);
}

/** Test, odds ratio and limits for an observed count of a conditional distribution. Checks nothing. */
export function conditionalTest(
  distribution: Conditional,
  observed: number,
  level: number,
  tails: "exact" | "mid-p" = "exact",
): FisherTest {
  return {
    ...pValues(distribution, observed),
    oddsRatio: oddsRatio(distribution, observed),
    ...oddsLimits(distribution, observed, (1 - level) / 2, tails === "mid-p"),
    level,
  };
}

function pValues({ from, logWeights }: Conditional, x: number): { p: number; midP: number } {
  const observed = logWeights[x - from] ?? 0;
  let all = 0;
  let extreme = 0;
  let below = 0;
  for (const [i, log] of logWeights.entries()) {
    const weight = Math.exp(log);
    all += weight;
    if (log <= observed + Math.log1p(TIE)) extreme += weight;
    if (i < x - from) below += weight;
  }
  const half = Math.exp(observed) / 2;
  let above = 0;
  for (let i = x - from + 1; i < logWeights.length; i++) above += Math.exp(logWeights[i] ?? 0);
  return {
    p: Math.min(1, extreme / all),
    midP: Math.min(1, (2 * (Math.min(below, above) + half)) / all),
  };
}

function oddsRatio(distribution: Conditional, x: number): number | null {
  const { from, logWeights } = distribution;
  if (logWeights.length === 1) return null;
  if (x === from) return 0;
  if (x === from + logWeights.length - 1) return Number.POSITIVE_INFINITY;
  return Math.exp(solveRising((logOdds) => meanExcess(distribution, x, logOdds)));
}

function oddsLimits(
  distribution: Conditional,
  x: number,
  error: number,
  middle: boolean,
): { lower: number; upper: number } {
  return {
    lower: lowerLimit(distribution, x, error, middle),
    upper: 1 / lowerLimit(mirrored(distribution), -x, error, middle),
  };
}

/** The odds ratio at which P(k >= x) equals `error` (with half of P(k = x) left out for mid-P); 0 when x is the least. */
function lowerLimit(distribution: Conditional, x: number, error: number, middle: boolean): number {
  const { from, logWeights } = distribution;
  if (x === from) return 0;
  const target = Math.log(error);
  const last = from + logWeights.length - 1;
  return Math.exp(
    solveRising((logOdds) => {
      const including = logAtLeast(distribution, x, logOdds);
      if (!middle) return { value: including.value - target, slope: including.slope };
      if (x === last) return { value: including.value - Math.LN2 - target, slope: including.slope };
      const beyond = logAtLeast(distribution, x + 1, logOdds);
      const share = Math.exp(beyond.value - including.value);
      return {
        value: including.value + Math.log1p(share) - Math.LN2 - target,
        slope: (including.slope + share * beyond.slope) / (1 + share),
      };
    }),
  );
}
