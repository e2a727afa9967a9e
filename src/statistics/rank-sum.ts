import { normalCdf } from "./normal.ts";
import { rank, sumDistribution, tieSum } from "./ranks.ts";

/** Up to this many values of both groups together the exact distribution is counted. */
export const LARGEST_EXACT_RANKING = 100;

/** Two groups of scores compared by their ranks. */
export interface RankSumTest {
  /** Pairs (one of each group) in which the first group's value is larger, ties counted half. */
  readonly u: number;
  /** `u` over all pairs: how often a value of the first group exceeds one of the second, ties half. */
  readonly superiority: number;
  /** Two-sided p: the exact one where it was counted, else the normal one with continuity correction. */
  readonly p: number;
  readonly method: "exact" | "normal";
  /** Exact two-sided p given the ties; null for more than 100 values. */
  readonly exactP: number | null;
  /** Normal p with tie-corrected variance and continuity correction of one half. */
  readonly normalP: number;
  /** The same without continuity correction. */
  readonly uncorrectedP: number;
}

/**
 * Wilcoxon rank-sum (Mann-Whitney) test of two independent groups, ties allowed.
 *
 * The exact p counts all ways in which the values at hand, ties included, could have fallen to the two groups and
 * adds those whose rank sum is as far from its mean as the observed one, or farther.
 * Sources: Wilcoxon 1945, Biometrics Bull 1:80-83; Mann & Whitney 1947, Ann Math Stat 18:50-60 (from memory).
 *
 * @param first scores of the first group, one at least, in any order; scores of any unit.
 * @param second scores of the second group, one at least.
 * @throws RangeError when a group is empty or a value is no finite number.
 */
export function rankSumTest(first: readonly number[], second: readonly number[]): RankSumTest {
  return ranked(first, second, () => true);
}

/** Above this many values of both groups the normal p is near enough to tell when the exact one cannot be near alpha. */
const SURELY = 30;

/**
 * Whether the p of {@link rankSumTest} is below `alpha`, for simulations: where the normal p of more than 30 values is a
 * quarter of `alpha` or less, or twice it or more, the exact one is not counted (tests: the same answer either way).
 */
export function rankSumShows(first: readonly number[], second: readonly number[], alpha: number): boolean {
  const far = (p: number): boolean => p <= alpha / 4 || p >= 2 * alpha;
  return ranked(first, second, (total, p) => total <= SURELY || !far(p)).p < alpha;
}

/** @param counting whether the exact p is to be counted of so many values with such a normal p */
function ranked(
  first: readonly number[],
  second: readonly number[],
  counting: (total: number, normalP: number) => boolean,
): RankSumTest {
  const { doubled, ties, total } = rank([first, second]);
  const m = first.length;
  const n = second.length;
  const sum = (doubled[0] ?? []).reduce((a, b) => a + b, 0);
  const u = sum / 2 - (m * (m + 1)) / 2;
  const variance = ((m * n) / 12) * (total + 1 - tieSum(ties) / (total * (total - 1)));
  const away = u - (m * n) / 2;
  const normal = (correction: number): number =>
    variance > 0 ? 2 * normalCdf(Math.abs(Math.abs(away) - correction) / Math.sqrt(variance), "upper") : 1;
  const normalP = normal(away === 0 ? 0 : 0.5);
  const exactP =
    total <= LARGEST_EXACT_RANKING && counting(total, normalP) ? exactTwoSided(doubled.flat(), m, sum) : null;
  return {
    u,
    superiority: u / (m * n),
    p: exactP ?? normalP,
    method: exactP === null ? "normal" : "exact",
    exactP,
    normalP,
    uncorrectedP: normal(0),
  };
}

/** P(|T - E(T)| >= |observed - E(T)|) for the sum T of `drawn` of the doubled ranks; E(T) = drawn (N + 1). */
function exactTwoSided(doubled: readonly number[], drawn: number, observed: number): number {
  const mean = drawn * (doubled.length + 1);
  const far = Math.abs(observed - mean);
  let p = 0;
  for (const [sum, probability] of sumDistribution(doubled, drawn)) {
    if (Math.abs(sum - mean) >= far) p += probability;
  }
  return Math.min(1, p);
}
