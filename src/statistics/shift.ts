import { requireLevel } from "./checks.ts";
import { normalQuantile } from "./normal.ts";
import { LARGEST_EXACT_RANKING } from "./rank-sum.ts";
import { rank, sumDistribution } from "./ranks.ts";

/** Most differences that are put in order. */
const LARGEST_PAIRS = 4_000_000;

/** How far two groups lie apart, in the unit of the scores. */
export interface Shift {
  /** Median of all differences, first less second (Hodges-Lehmann estimate). */
  readonly shift: number;
  /** Lower limit; null when there is none, and `reason` says why. */
  readonly lower: number | null;
  readonly upper: number | null;
  /** `too few values` for any limit at this level; `ties` when both limits would be one number; null with limits. */
  readonly reason: "too few values" | "ties" | null;
  readonly level: number;
}

/**
 * Hodges-Lehmann shift between two independent groups with the interval that belongs to the rank-sum test.
 *
 * The limits are the k-th smallest and k-th largest of the `m n` differences, k the largest for which
 * P(U <= k - 1) is at most `(1 - level) / 2` without ties: counted exactly up to 100 values, normal above. With
 * ties the interval, ends included, covers at least as often as without (Noether 1967, from memory); the limits
 * are then differences that occur, such as 0 or 1 grade. Where most pairs share one difference both limits would be
 * that number, as if the shift were known without doubt; there are then none.
 * Sources: Hodges & Lehmann 1963, Ann Math Stat 34:598-611; interval Moses 1965 (both from memory).
 *
 * @throws RangeError when a group is empty, a value is no finite number, or there are over 4 000 000 pairs.
 */
export function hodgesLehmann(
  first: readonly number[],
  second: readonly number[],
  { level = 0.95 }: { readonly level?: number } = {},
): Shift {
  rank([first, second]);
  requireLevel(level);
  const pairs = first.length * second.length;
  if (pairs > LARGEST_PAIRS) throw new RangeError(`at most ${LARGEST_PAIRS} pairs, got ${pairs}`);
  const differences = Float64Array.from({ length: pairs });
  for (const [i, a] of first.entries()) {
    for (const [j, b] of second.entries()) differences[i * second.length + j] = a - b;
  }
  differences.sort();
  const middle = (pairs - 1) / 2;
  const shift = ((differences[Math.floor(middle)] ?? 0) + (differences[Math.ceil(middle)] ?? 0)) / 2;
  const k = innerPlace(first.length, second.length, (1 - level) / 2);
  const none = { shift, lower: null, upper: null, level };
  if (k < 1) return { ...none, reason: "too few values" };
  const lower = differences[k - 1] ?? null;
  const upper = differences[pairs - k] ?? null;
  return lower === upper ? { ...none, reason: "ties" } : { shift, lower, upper, reason: null, level };
}

/** The largest k with P(U <= k - 1) <= error when there are no ties; 0 when there is none. */
function innerPlace(m: number, n: number, error: number): number {
  if (m + n > LARGEST_EXACT_RANKING) {
    const sd = Math.sqrt((m * n * (m + n + 1)) / 12);
    return Math.floor((m * n) / 2 - normalQuantile(error, "upper") * sd);
  }
  const ranks = Array.from({ length: m + n }, (_, i) => i + 1);
  const distribution = sumDistribution(ranks, m);
  let sum = 0;
  for (let k = 0; k <= m * n; k++) {
    sum += distribution.get((m * (m + 1)) / 2 + k) ?? 0;
    if (sum > error * (1 + 1e-12)) return k;
  }
  return 0;
}
