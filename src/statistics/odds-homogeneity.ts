import { chiSquaredTail } from "./chi-squared.ts";
import { mantelHaenszel } from "./mantel-haenszel.ts";
import type { TwoGroups } from "./two-by-two.ts";

/** Do the strata share one odds ratio? */
export interface OddsHomogeneity {
  /** Breslow-Day statistic with Tarone's correction; null when it cannot be computed. */
  readonly chiSquared: number | null;
  /** Strata that count, less one. */
  readonly df: number;
  readonly p: number;
}

/**
 * Test that the odds ratio is the same in all strata. Rough with small strata: a large p does not show equality.
 * Strata in which all or none are affected say nothing and are left out.
 * Sources: Breslow & Day 1980, Statistical methods in cancer research I; Tarone 1985, Biometrika 72:91-95 (both from
 * memory).
 *
 * @throws RangeError when a count is out of its range or there is no stratum.
 */
export function oddsHomogeneity(strata: readonly TwoGroups[]): OddsHomogeneity {
  const { oddsRatio } = mantelHaenszel(strata);
  const telling = strata.filter(({ x1, n1, x2, n2 }) => x1 + x2 > 0 && x1 + x2 < n1 + n2);
  const df = Math.max(0, telling.length - 1);
  if (df === 0 || oddsRatio === null || oddsRatio === 0 || !Number.isFinite(oddsRatio)) {
    return { chiSquared: null, df, p: 1 };
  }
  let sum = 0;
  let excess = 0;
  let variance = 0;
  for (const stratum of telling) {
    const expected = fitted(stratum, oddsRatio);
    const { x1, n1, x2, n2 } = stratum;
    const affected = x1 + x2;
    const one =
      1 / (1 / expected + 1 / (n1 - expected) + 1 / (affected - expected) + 1 / (n2 - affected + expected));
    sum += (x1 - expected) ** 2 / one;
    excess += x1 - expected;
    variance += one;
  }
  const chiSquared = Math.max(0, sum - (excess * excess) / variance);
  return { chiSquared, df, p: chiSquaredTail(chiSquared, df) };
}

/** The count of the first group that gives the stratum exactly this odds ratio: the possible root of a quadratic. */
function fitted({ x1, n1, x2, n2 }: TwoGroups, oddsRatio: number): number {
  const affected = x1 + x2;
  const a = 1 - oddsRatio;
  const b = n2 - affected + oddsRatio * (n1 + affected);
  const c = -oddsRatio * n1 * affected;
  return (-2 * c) / (b + Math.sqrt(b * b - 4 * a * c));
}
