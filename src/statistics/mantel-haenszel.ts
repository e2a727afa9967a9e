import { requireLevel } from "./checks.ts";
import { normalCdf, normalQuantile } from "./normal.ts";
import { requireTwoGroups, type TwoGroups } from "./two-by-two.ts";

/** One odds ratio over several strata. */
export interface MantelHaenszel {
  /** Common odds ratio; infinite or null (0 / 0) when no stratum gives one. */
  readonly oddsRatio: number | null;
  /** Limits from the variance of ln OR; null when it cannot be computed (a sum of products is 0). */
  readonly lower: number | null;
  readonly upper: number | null;
  /** `(Σ (a - E(a)))² / Σ Var(a)`; null when no stratum can vary. */
  readonly chiSquared: number | null;
  readonly p: number;
  /** With the correction of one half, which is left out when `|Σ (a - E(a))|` is below one half. */
  readonly chiSquaredCorrected: number | null;
  readonly pCorrected: number;
  readonly level: number;
}

/**
 * Mantel-Haenszel odds ratio and test of two groups compared within strata (age class, room, visit).
 *
 * A stratum with one animal, or with all or none affected, adds nothing. Sources: Mantel & Haenszel 1959, J Natl
 * Cancer Inst 22:719-748; variance Robins, Breslow & Greenland 1986, Biometrics 42:311-323 (both from memory).
 *
 * @param strata affected of examined in both groups, stratum by stratum; one at least.
 * @param options.level confidence level; 0.95 when left out.
 * @throws RangeError when a count or the level is out of its range or there is no stratum.
 */
export function mantelHaenszel(
  strata: readonly TwoGroups[],
  { level = 0.95 }: { readonly level?: number } = {},
): MantelHaenszel {
  if (strata.length === 0) throw new RangeError("at least one stratum is needed");
  for (const stratum of strata) requireTwoGroups(stratum);
  requireLevel(level);
  return { ...commonOdds(strata, level), ...differenceTest(strata), level };
}

function commonOdds(strata: readonly TwoGroups[], level: number) {
  let r = 0;
  let s = 0;
  let pr = 0;
  let mixed = 0;
  let qs = 0;
  for (const { x1: a, n1, x2: c, n2 } of strata) {
    const total = n1 + n2;
    const ad = (a / total) * (n2 - c);
    const bc = ((n1 - a) / total) * c;
    const p = (a + n2 - c) / total;
    const q = (n1 - a + c) / total;
    r += ad;
    s += bc;
    pr += p * ad;
    mixed += p * bc + q * ad;
    qs += q * bc;
  }
  const oddsRatio = r === 0 && s === 0 ? null : r / s;
  if (r === 0 || s === 0) return { oddsRatio, lower: null, upper: null };
  const variance = pr / (2 * r * r) + mixed / (2 * r * s) + qs / (2 * s * s);
  const reach = normalQuantile((1 - level) / 2, "upper") * Math.sqrt(variance);
  return { oddsRatio, lower: (r / s) * Math.exp(-reach), upper: (r / s) * Math.exp(reach) };
}

function differenceTest(strata: readonly TwoGroups[]) {
  let excess = 0;
  let variance = 0;
  for (const { x1, n1, x2, n2 } of strata) {
    const total = n1 + n2;
    const affected = x1 + x2;
    excess += (x1 * n2 - x2 * n1) / total;
    if (total > 1) variance += ((n1 / total) * (n2 / total) * affected * (total - affected)) / (total - 1);
  }
  if (variance === 0) return { chiSquared: null, p: 1, chiSquaredCorrected: null, pCorrected: 1 };
  const away = Math.abs(excess);
  const corrected = away < 0.5 ? away : away - 0.5;
  const p = (gap: number): number => 2 * normalCdf(gap / Math.sqrt(variance), "upper");
  return {
    chiSquared: (away * away) / variance,
    p: p(away),
    chiSquaredCorrected: (corrected * corrected) / variance,
    pCorrected: p(corrected),
  };
}
