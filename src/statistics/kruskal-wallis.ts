import { chiSquaredTail } from "./chi-squared.ts";
import { exactKruskalP } from "./kruskal-exact.ts";
import { rank, tieSum } from "./ranks.ts";

/** Several groups of scores compared by their ranks. */
export interface KruskalWallisTest {
  /** Tie-corrected H; null when all values are equal. */
  readonly h: number | null;
  /** Groups less one. */
  readonly df: number;
  /** From the chi-squared distribution, which is rough when a group has fewer than five values; 1 when H is null. */
  readonly p: number;
  /** All ways to share the values out to the groups, counted; null when not asked for or too many (about 20 values, more with ties). */
  readonly exactP: number | null;
}

/**
 * Kruskal-Wallis test of two or more independent groups, ties allowed.
 * Source: Kruskal & Wallis 1952, J Am Stat Assoc 47:583-621 (from memory).
 *
 * @param groups two or more lists of scores, none empty.
 * @param options.exact count the exact p too, which may take a second; false when left out.
 * @throws RangeError when there are fewer than two groups, a group is empty or a value is no finite number.
 */
export function kruskalWallis(
  groups: readonly (readonly number[])[],
  { exact = false }: { readonly exact?: boolean } = {},
): KruskalWallisTest {
  if (groups.length < 2) throw new RangeError(`at least two groups are needed, got ${groups.length}`);
  const ranking = rank(groups);
  const { doubled, ties, total } = ranking;
  const df = groups.length - 1;
  const tied = tieSum(ties) / (total * (total * total - 1));
  if (!(tied < 1)) return { h: null, df, p: 1, exactP: exact ? 1 : null };
  const between = doubled.reduce((sum, ranks) => {
    const away = ranks.reduce((a, b) => a + b - (total + 1), 0) / 2;
    return sum + (away * away) / ranks.length;
  }, 0);
  const h = (12 * between) / (total * (total + 1)) / (1 - tied);
  return { h, df, p: chiSquaredTail(h, df), exactP: exact ? exactKruskalP(ranking) : null };
}
