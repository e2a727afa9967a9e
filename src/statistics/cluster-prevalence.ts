import { requireCounts, requireLevel } from "./checks.ts";
import { fractionalLimits } from "./effective-sample.ts";
import { studentTQuantile } from "./student-t.ts";

/** What was seen in one cluster, such as a pen or a litter. */
export interface ClusterCount {
  readonly affected: number;
  readonly examined: number;
}

/** Two limits of a proportion. */
export interface ProportionLimits {
  readonly lower: number;
  readonly upper: number;
}

/** A proportion from clusters, with its interval. Values that cannot be had are null. */
export interface ClusterPrevalence {
  readonly proportion: number;
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
  /** `clopper-pearson` where the spread between clusters is not to be had; `reason` then says why. */
  readonly method: "korn-graubard" | "clopper-pearson";
  readonly reason: string | null;
  readonly clusters: number;
  readonly examined: number;
  /** Standard error by the linearised ratio; null with one cluster. */
  readonly standardError: number | null;
  /** Its square over the variance of as many animals drawn singly; null where that variance is 0 or unknown. */
  readonly designEffect: number | null;
  /** `examined` over the design effect. */
  readonly effectiveSize: number | null;
  /** The same with the t adjustment for few clusters, before it is capped at `examined`. */
  readonly adjustedSize: number | null;
  /** The interval when the adjusted size is not capped. */
  readonly uncapped: ProportionLimits | null;
  /** `p -+ t SE`, not cut off at 0 and 1. */
  readonly waldT: ProportionLimits | null;
  /** Intraclass correlation by one-way analysis of variance, may be negative; null where undefined. */
  readonly icc: number | null;
  /** Mean cluster size that goes with `icc`, n0. */
  readonly averageSize: number | null;
}

/**
 * Proportion affected among animals sampled by clusters, with the exact-type interval of Korn & Graubard.
 *
 * `p = sum x / sum n`; variance `m/(m-1) sum (x - p n)^2 / (sum n)^2` over m clusters; effective size
 * `n* = p (1-p) / variance (t(n-1) / t(m-1))^2`, not above n; Clopper-Pearson limits of p n* in n*.
 * Where p is 0 or 1, the clusters do not differ, or there is one cluster, no design effect can be estimated: the
 * limits are Clopper-Pearson's on the animals, as if drawn singly, and too narrow if animals of a cluster are alike.
 *
 * @param clusters at least one; each whole counts, 0 <= affected <= examined, examined 1 to 10 000 000.
 * @throws RangeError when there is no cluster or a count or the level is outside its range.
 *
 * Source: Korn & Graubard 1998, Survey Methodology 24:193-201.
 */
export function clusterPrevalence(
  clusters: readonly ClusterCount[],
  { level = 0.95 }: { readonly level?: number } = {},
): ClusterPrevalence {
  requireLevel(level);
  const alpha = 1 - level;
  const { m, affected, examined, p, variance, designEffect } = spreadOf(clusters);
  const standardError = variance === null ? null : Math.sqrt(variance);
  const common = {
    proportion: p,
    level,
    clusters: m,
    examined,
    standardError,
    ...anova(clusters, p, examined),
  };
  const reason = fallback(affected, examined, variance);
  if (variance === null || standardError === null || reason !== null) {
    return {
      ...common,
      ...fractionalLimits(affected, examined, alpha),
      method: "clopper-pearson",
      reason,
      designEffect,
      effectiveSize: null,
      adjustedSize: null,
      uncapped: null,
      waldT: null,
    };
  }
  const t = studentTQuantile(alpha / 2, m - 1, "upper");
  const effectiveSize = (p * (1 - p)) / variance;
  const adjustedSize = effectiveSize * (studentTQuantile(alpha / 2, examined - 1, "upper") / t) ** 2;
  const size = Math.min(adjustedSize, examined);
  return {
    ...common,
    ...fractionalLimits(p * size, size, alpha),
    method: "korn-graubard",
    reason: null,
    designEffect,
    effectiveSize,
    adjustedSize,
    uncapped: fractionalLimits(p * adjustedSize, adjustedSize, alpha),
    waldT: { lower: p - t * standardError, upper: p + t * standardError },
  };
}

/** Design effect of a proportion from clusters, as {@link clusterPrevalence} has it; null where it cannot be had. */
export const designEffectOf = (clusters: readonly ClusterCount[]): number | null =>
  spreadOf(clusters).designEffect;

/** The proportion, its variance by the linearised ratio, and that over the variance of as many animals drawn singly. */
function spreadOf(clusters: readonly ClusterCount[]) {
  if (clusters.length === 0) throw new RangeError("clusters must not be empty");
  for (const { affected, examined } of clusters) requireCounts(affected, examined);
  const m = clusters.length;
  const affected = clusters.reduce((sum, cluster) => sum + cluster.affected, 0);
  const examined = clusters.reduce((sum, cluster) => sum + cluster.examined, 0);
  requireCounts(affected, examined);
  const p = affected / examined;
  // x - p n as one fraction, so that equal proportions leave exactly 0.
  const squares = clusters.reduce(
    (sum, cluster) => sum + ((cluster.affected * examined - affected * cluster.examined) / examined) ** 2,
    0,
  );
  const variance = m < 2 ? null : ((m / (m - 1)) * squares) / examined ** 2;
  const single = (p * (1 - p)) / examined;
  const designEffect = variance === null || single === 0 ? null : variance / single;
  return { m, affected, examined, p, variance, designEffect };
}

function fallback(affected: number, examined: number, variance: number | null): string | null {
  if (variance === null) return "only one cluster";
  if (affected === 0) return "none affected";
  if (affected === examined) return "all affected";
  return variance === 0 ? "the clusters do not differ" : null;
}

/** Intraclass correlation by one-way analysis of variance of 0s and 1s (Donner & Koval 1980, Biometrics 36:19-25; citation from memory). */
function anova(
  clusters: readonly ClusterCount[],
  p: number,
  examined: number,
): { icc: number | null; averageSize: number | null } {
  const m = clusters.length;
  if (m < 2 || examined === m) return { icc: null, averageSize: null };
  let [between, within, sizes] = [0, 0, 0];
  for (const { affected, examined: n } of clusters) {
    between += n * (affected / n - p) ** 2;
    within += affected * (1 - affected / n);
    sizes += n * n;
  }
  between /= m - 1;
  within /= examined - m;
  const averageSize = (examined - sizes / examined) / (m - 1);
  const total = between + (averageSize - 1) * within;
  return { icc: total === 0 ? null : (between - within) / total, averageSize };
}
