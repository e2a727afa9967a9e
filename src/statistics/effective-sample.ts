import { requireBetween, requireCounts, requireLevel } from "./checks.ts";
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

/**
 * Design effect of examining whole groups: how many times wider the variance is than for as many animals drawn
 * singly, `1 + (m - 1) rho`.
 *
 * @param clusterSize m, animals examined in each group, 1 or more, need not be whole (a mean).
 * @param icc rho, intraclass correlation within groups, -1 to 1.
 * @throws RangeError when an argument is outside its range, or the two give a negative design effect.
 *
 * Source: Kish 1965, Survey Sampling, p 162 (from memory).
 */
export function designEffect(clusterSize: number, icc: number): number {
  requireBetween("clusterSize", clusterSize, 1, Number.MAX_VALUE);
  requireBetween("icc", icc, -1, 1);
  const effect = 1 + (clusterSize - 1) * icc;
  if (effect < 0) throw new RangeError(`icc ${icc} is not possible in groups of ${clusterSize}`);
  return effect;
}

/** An interval on an effective sample size. */
export interface EffectiveInterval {
  readonly proportion: number;
  readonly lower: number;
  readonly upper: number;
  /** `examined / designEffect`, not above `examined`. */
  readonly effectiveSize: number;
  readonly level: number;
  readonly method: "rao-scott";
}

/**
 * Interval for a proportion whose design effect is known or taken from elsewhere: both counts are divided by it
 * and the Clopper-Pearson limits taken of the quotients. A design effect below 1 counts as 1: a sample is never taken
 * for more animals than it has, because a design effect that small is mostly the chance of few clusters (a choice; the
 * same cap as in {@link clusterPrevalence}).
 *
 * @param affected whole number from 0 to `examined`.
 * @param examined whole number from 1 to 10 000 000.
 * @param effect design effect, above 0.
 * @throws RangeError when an argument is outside its range.
 *
 * Source: Rao & Scott 1992, Biometrics 48:577-585 (from memory).
 */
export function designEffectInterval(
  affected: number,
  examined: number,
  effect: number,
  { level = 0.95 }: { readonly level?: number } = {},
): EffectiveInterval {
  requireCounts(affected, examined);
  requireBetween("effect", effect, 1e-6, 1e9);
  requireLevel(level);
  const held = Math.max(1, effect);
  const effectiveSize = examined / held;
  const limits = fractionalLimits(affected / held, effectiveSize, 1 - level);
  return { proportion: affected / examined, ...limits, effectiveSize, level, method: "rao-scott" };
}
