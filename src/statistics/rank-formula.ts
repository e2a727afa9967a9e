import { requireLevel } from "./checks.ts";
import { normalQuantile } from "./normal.ts";

/** What a formula says of two distributions of grades. */
export interface RankFormula {
  /** How often a value of the second group exceeds one of the first, ties half. */
  readonly superiority: number;
  /** Animals in each of two equal groups, not rounded; infinite when neither group is the higher. */
  readonly n: number;
}

/**
 * Number in each group for the rank-sum test by the normal formula, `z² (1 - Σ q³) / (6 (P - 1/2)²)`: P the superiority,
 * q the mean chance of each value. Of two values it is the usual formula for two shares, `2 z² q (1 - q) / d²`.
 *
 * @param first chance of each value, in order; as many as `second`.
 * @throws RangeError when `power` or `alpha` is out of its range.
 *
 * Sources: Noether 1987, J Am Stat Assoc 82:645-647; with ties Zhao, Rahardja & Qu 2008, Stat Med 27:462-468 (both from
 * memory).
 */
export function rankFormula(
  first: readonly number[],
  second: readonly number[],
  { power = 0.8, alpha = 0.05 }: { readonly power?: number; readonly alpha?: number } = {},
): RankFormula {
  requireLevel(power);
  requireLevel(1 - alpha);
  let [superiority, below, cubes] = [0, 0, 0];
  for (const [value, one] of first.entries()) {
    const other = second[value] ?? 0;
    superiority += other * (below + one / 2);
    below += one;
    cubes += ((one + other) / 2) ** 3;
  }
  const z = normalQuantile(alpha / 2, "upper") + normalQuantile(1 - power, "upper");
  return { superiority, n: (z ** 2 * (1 - cubes)) / (6 * (superiority - 0.5) ** 2) };
}
