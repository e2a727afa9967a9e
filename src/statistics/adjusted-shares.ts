import { LARGEST_COUNT, requireBetween, requireLevel, requireWhole } from "./checks.ts";
import { wilsonLimitsAt } from "./closed-form-limits.ts";
import { type ClusterCount, designEffectOf } from "./cluster-prevalence.ts";
import { studentTQuantile, studentTTwoSided } from "./student-t.ts";
import { requireTwoGroups, type TwoGroups } from "./two-by-two.ts";

/** Two shares from clusters such as pens. */
export interface AdjustedShares {
  /** Two-sided. */
  readonly p: number;
  /** `x1 / n1 - x2 / n2` over all strata together, with limits on the effective numbers. */
  readonly difference: { readonly value: number; readonly lower: number; readonly upper: number };
  /** Animals of the two groups over their design effects: as many drawn singly say as much. */
  readonly effective: readonly [number, number];
}

/** Design effects of the two groups, each 1 or more, and degrees of freedom of the spread between clusters. */
export interface ClusterEffects {
  readonly first: number;
  readonly second: number;
  /** Clusters of both groups less two, or fewer where one group varies more than the other (Satterthwaite); 1 or more. */
  readonly df: number;
}

/**
 * Two shares of animals that come in clusters: counts are divided by the design effect of their group and set against
 * each other within strata (Mantel & Haenszel), here by Student's t and not by chi-squared,
 * because few clusters make the design effect itself uncertain. The limits are Newcombe's on the divided counts of all
 * strata together, with the same t. Sources: Rao & Scott 1992, Biometrics 48:577-585 (from memory); Newcombe 1998, method 10. The t in
 * place of chi-squared is common practice in surveys.
 *
 * @param strata affected of examined in both groups; one stratum at least.
 * @throws RangeError when a count, an effect or the level is out of its range or there is no stratum.
 */
export function adjustedShares(
  strata: readonly TwoGroups[],
  { first, second, df }: ClusterEffects,
  { level = 0.95 }: { readonly level?: number } = {},
): AdjustedShares {
  if (strata.length === 0) throw new RangeError("at least one stratum is needed");
  for (const stratum of strata) requireTwoGroups(stratum);
  requireBetween("first", first, 1, 1e9);
  requireBetween("second", second, 1, 1e9);
  requireWhole("df", df, 1, LARGEST_COUNT);
  requireLevel(level);
  const all = { x1: 0, n1: 0, x2: 0, n2: 0 };
  let [excess, variance] = [0, 0];
  for (const stratum of strata) {
    const x1 = stratum.x1 / first;
    const n1 = stratum.n1 / first;
    const x2 = stratum.x2 / second;
    const n2 = stratum.n2 / second;
    const total = n1 + n2;
    excess += (x1 * n2 - x2 * n1) / total;
    variance += ((n1 / total) * (n2 / total) * (x1 + x2) * (total - x1 - x2)) / total;
    all.x1 += x1;
    all.n1 += n1;
    all.x2 += x2;
    all.n2 += n2;
  }
  const p = variance > 0 ? studentTTwoSided(excess / Math.sqrt(variance), df) : 1;
  const t = studentTQuantile((1 - level) / 2, df, "upper");
  const one = wilsonLimitsAt(all.x1, all.n1, t);
  const other = wilsonLimitsAt(all.x2, all.n2, t);
  const p1 = all.x1 / all.n1;
  const p2 = all.x2 / all.n2;
  const value = p1 - p2;
  return {
    p,
    difference: {
      value,
      lower: Math.max(-1, value - Math.hypot(p1 - one.lower, other.upper - p2)),
      upper: Math.min(1, value + Math.hypot(one.upper - p1, p2 - other.lower)),
    },
    effective: [all.n1, all.n2],
  };
}

/** Two shares from clusters, with the design effects that were estimated from them. */
export interface ClusteredShares extends AdjustedShares {
  /** Of each group for itself, none below 1; both are divided by the larger. */
  readonly designEffect: readonly [number, number];
}

/**
 * {@link adjustedShares} of two groups of clusters. Both are divided by the larger of their design effects: where few
 * clusters hold an affected animal a small one is mostly chance, and with each its own up to 9 of 100 comparisons without
 * a difference were called one in simulation (docs/statistics.md).
 *
 * @param strata affected of examined within strata, for p; all animals together when left out.
 * @throws RangeError when a group has no cluster, or both have one only.
 */
export function clusteredShares(
  [first, second]: readonly [readonly ClusterCount[], readonly ClusterCount[]],
  { level = 0.95, strata }: { readonly level?: number; readonly strata?: readonly TwoGroups[] } = {},
): ClusteredShares {
  const [one, other] = [first, second].map(designEffectOf);
  // Where all or no animal of a group is affected, that of the other stands in; else each cluster counts as one animal.
  const each = (clusters: readonly ClusterCount[]): number => total(clusters, "examined") / clusters.length;
  const designEffect = [
    Math.max(1, one ?? other ?? each(first)),
    Math.max(1, other ?? one ?? each(second)),
  ] as const;
  const all = {
    x1: total(first, "affected"),
    n1: total(first, "examined"),
    x2: total(second, "affected"),
    n2: total(second, "examined"),
  };
  const df = degreesOfSum([
    { part: designEffect[0] / all.n1, df: first.length - 1 },
    { part: designEffect[1] / all.n2, df: second.length - 1 },
  ]);
  const larger = Math.max(...designEffect);
  const effects = { first: larger, second: larger, df };
  const together = adjustedShares([all], effects, { level });
  return {
    ...together,
    p: strata === undefined ? together.p : adjustedShares(strata, effects, { level }).p,
    designEffect,
  };
}

const total = (clusters: readonly ClusterCount[], of: keyof ClusterCount): number =>
  clusters.reduce((sum, cluster) => sum + cluster[of], 0);

/**
 * Degrees of freedom of a spread that several groups share, whole and 1 or more: the sum of theirs when all vary alike,
 * near those of the group that varies most when not (Satterthwaite 1946, Biometrics Bulletin 2:110-114, from memory).
 * @param parts variance of each group, up to one factor, with its degrees of freedom
 */
export function degreesOfSum(parts: readonly { readonly part: number; readonly df: number }[]): number {
  const all = parts.reduce((sum, { part }) => sum + part, 0);
  const squares = parts.reduce((sum, { part, df }) => sum + part ** 2 / df, 0);
  return Math.max(1, Math.floor(all ** 2 / squares + 1e-9));
}
