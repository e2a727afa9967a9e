import { chiSquaredTail } from "./chi-squared.ts";
import { dealtSums } from "./dealt-sums.ts";
import { type Ranking, rank, tieSum } from "./ranks.ts";

/** Sums of squares this near (relative) to the observed one count as equal. */
const TIE = 1e-9;

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

/** P(the rank sums lie as far apart as observed, or farther), by `Σ R² / n` as in H, over all ways to deal the ranks out. */
function exactKruskalP({ doubled, ties }: Ranking): number | null {
  const sizes = doubled.map((ranks) => ranks.length);
  const apart = (sums: readonly number[]): number =>
    sums.reduce((total, sum, group) => total + (sum * sum) / (sizes[group] ?? 1), 0);
  const observed = apart(doubled.map((ranks) => ranks.reduce((a, b) => a + b, 0)));
  let seen = 0;
  const tied = ties.map((count) => {
    seen += count;
    return { value: 2 * seen + 1 - count, count };
  });
  const all = dealtSums(
    tied,
    sizes,
    sizes.map((_, group) => sizes.map((__, other) => (other === group ? 1 : 0))),
  );
  if (all === null) return null;
  const ways = (some: typeof all): number => some.reduce((sum, one) => sum + one.ways, 0);
  return ways(all.filter(({ sums }) => apart(sums) >= observed * (1 - TIE))) / ways(all);
}
