import { LARGEST_COUNT, requireWhole } from "./checks.ts";
import { normalCdf } from "./normal.ts";

/** Affected of examined in one group of an ordered series, such as a visit. */
export interface OrderedGroup {
  readonly affected: number;
  readonly examined: number;
  /** Place in the order: 1, 2, 3, or days since the first visit. */
  readonly score: number;
}

/** Test for a trend. */
export interface TrendTest {
  /** Above 0 when the proportion rises with the score; null when all or none are affected. */
  readonly z: number | null;
  readonly chiSquared: number | null;
  /** Two-sided; 1 when there is nothing that could vary. */
  readonly p: number;
}

/**
 * Cochran-Armitage test for a linear trend of proportions over ordered groups, with the variance `p (1 - p)` (not
 * multiplied by N / (N - 1)). Sources: Cochran 1954, Biometrics 10:417-451 (from memory); Armitage 1955,
 * Biometrics 11:375-386.
 *
 * @param groups two or more, with at least two different scores.
 * @throws RangeError when a count is out of its range or all scores are equal.
 */
export function trendTest(groups: readonly OrderedGroup[]): TrendTest {
  for (const [place, { affected, examined, score }] of groups.entries()) {
    requireWhole(`examined of group ${place + 1}`, examined, 1, LARGEST_COUNT);
    requireWhole(`affected of group ${place + 1}`, affected, 0, examined);
    if (!(Math.abs(score) <= 1e100)) throw new RangeError(`score of group ${place + 1} is no number`);
  }
  if (new Set(groups.map(({ score }) => score)).size < 2) {
    throw new RangeError("a trend needs groups with at least two different scores");
  }
  const total = groups.reduce((sum, { examined }) => sum + examined, 0);
  const share = groups.reduce((sum, { affected }) => sum + affected, 0) / total;
  const centre = groups.reduce((sum, { examined, score }) => sum + examined * score, 0) / total;
  let slope = 0;
  let spread = 0;
  for (const { affected, examined, score } of groups) {
    slope += (affected - examined * share) * (score - centre);
    spread += examined * (score - centre) ** 2;
  }
  if (share === 0 || share === 1) return { z: null, chiSquared: null, p: 1 };
  const z = slope / Math.sqrt(share * (1 - share) * spread);
  return { z, chiSquared: z * z, p: 2 * normalCdf(Math.abs(z), "upper") };
}
