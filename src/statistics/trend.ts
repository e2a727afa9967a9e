import { LARGEST_COUNT, requireWhole } from "./checks.ts";
import { exactTrendP } from "./exact-trend.ts";
import { normalCdf } from "./normal.ts";
import type { OrderedGroup } from "./ordered-group.ts";

/** Test for a trend. */
export interface TrendTest {
  /** Above 0 when the proportion rises with the score; null when all or none are affected. */
  readonly z: number | null;
  readonly chiSquared: number | null;
  /** Two-sided, normal; 1 when there is nothing that could vary. Rough with few animals: at 3 groups of 2 it calls too much. */
  readonly p: number;
  /** Two-sided, all ways to share the affected out counted; null when they are too many, or were not asked for. */
  readonly exactP: number | null;
}

/** What may be chosen for a trend. */
export interface TrendOptions {
  /** Count the exact p too, which may take a quarter of a second; false when left out. */
  readonly exact?: boolean;
}

/**
 * Cochran-Armitage test for a linear trend of proportions over ordered groups, with the variance `p (1 - p)` (not
 * multiplied by N / (N - 1)). The exact p is that of the same statistic `Σ score x` given the total affected: the
 * share of all ways to share them out in which it lies as far from its mean, or farther.
 * Sources: Cochran 1954, Biometrics 10:417-451 (from memory); Armitage 1955, Biometrics 11:375-386; exact Agresti
 * 1992, Statistical Science 7:131-153 (from memory).
 *
 * @param groups two or more, with at least two different scores.
 * @throws RangeError when a count is out of its range or all scores are equal.
 */
export function trendTest(groups: readonly OrderedGroup[], options: TrendOptions = {}): TrendTest {
  if (new Set(groups.map(({ score }) => score)).size < 2 && groups.every(isGroup)) {
    throw new RangeError("a trend needs groups with at least two different scores");
  }
  return stratifiedTrend([groups], options);
}

/**
 * The same within strata: scores and deviations are taken within each stratum and added up, so that only like is set
 * against like; a stratum with one score, or with all or none affected, adds nothing.
 * Source: Mantel 1963, J Am Stat Assoc 58:690-700 (from memory), here with the variance of {@link trendTest}.
 *
 * @param strata one at least, each of one group or more.
 * @throws RangeError when there is no stratum or a count is out of its range.
 */
export function stratifiedTrend(
  strata: readonly (readonly OrderedGroup[])[],
  { exact = false }: TrendOptions = {},
): TrendTest {
  if (strata.length === 0) throw new RangeError("at least one stratum is needed");
  for (const stratum of strata) for (const [place, group] of stratum.entries()) requireGroup(group, place);
  let slope = 0;
  let variance = 0;
  for (const stratum of strata) {
    const one = slopeOf(stratum);
    slope += one.slope;
    variance += one.variance;
  }
  if (variance === 0) return { z: null, chiSquared: null, p: 1, exactP: exact ? 1 : null };
  const z = slope / Math.sqrt(variance);
  const p = 2 * normalCdf(Math.abs(z), "upper");
  return { z, chiSquared: z * z, p, exactP: exact ? exactTrendP(strata) : null };
}

function requireGroup({ affected, examined, score }: OrderedGroup, place: number): void {
  requireWhole(`examined of group ${place + 1}`, examined, 1, LARGEST_COUNT);
  requireWhole(`affected of group ${place + 1}`, affected, 0, examined);
  if (!(Math.abs(score) <= 1e100)) throw new RangeError(`score of group ${place + 1} is no number`);
}

const isGroup = (group: OrderedGroup, place: number): boolean => {
  requireGroup(group, place);
  return true;
};

function slopeOf(groups: readonly OrderedGroup[]): { slope: number; variance: number } {
  const total = groups.reduce((sum, { examined }) => sum + examined, 0);
  const share = groups.reduce((sum, { affected }) => sum + affected, 0) / total;
  const centre = groups.reduce((sum, { examined, score }) => sum + examined * score, 0) / total;
  let slope = 0;
  let spread = 0;
  for (const { affected, examined, score } of groups) {
    slope += (affected - examined * share) * (score - centre);
    spread += examined * (score - centre) ** 2;
  }
  if (share === 0 || share === 1) return { slope: 0, variance: 0 };
  return { slope, variance: share * (1 - share) * spread };
}
