import { betaQuantileLogOdds } from "./incomplete-beta.ts";
import { fromLogOdds } from "./log-odds.ts";

/**
 * Clopper-Pearson limits for counts that need not be whole: `affected` of `size`, 0 <= affected <= size, size > 0.
 * Beta quantiles as for whole counts; 0 when none and 1 when all are affected. Checks nothing.
 */
export function fractionalLimits(
  affected: number,
  size: number,
  alpha: number,
): { lower: number; upper: number } {
  const healthy = size - affected;
  const lower =
    affected <= 0 ? 0 : fromLogOdds(betaQuantileLogOdds(alpha / 2, affected, healthy + 1, "lower")).p;
  const upper =
    healthy <= 0 ? 1 : fromLogOdds(betaQuantileLogOdds(alpha / 2, affected + 1, healthy, "upper")).p;
  return { lower, upper };
}
