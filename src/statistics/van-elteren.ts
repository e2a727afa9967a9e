import { addedSums, farFromMean, type Sums } from "./conditional-sums.ts";
import { normalCdf } from "./normal.ts";
import { LARGEST_EXACT_RANKING } from "./rank-sum.ts";
import { rank, sumDistribution, tieSum } from "./ranks.ts";

/** Two groups of scores compared by their ranks within strata. */
export interface StratifiedRanks {
  /** Pairs within strata in which the first group's value is larger, ties half, each stratum weighted; 0 to 1. */
  readonly superiority: number;
  /** Two-sided p: the exact one where it was counted, else the normal one (no continuity correction). */
  readonly p: number;
  readonly method: "exact" | "normal";
  readonly exactP: number | null;
  readonly normalP: number;
}

/** Values of both groups in one stratum, one at least in each. */
export interface RankedStratum {
  readonly first: readonly number[];
  readonly second: readonly number[];
}

/** Weighted rank sums are held in parts of this size. */
const PARTS = 1e9;

/**
 * Rank-sum test within strata: `Σ R / (N + 1)` over the strata, R the rank sum of the first group among the N values
 * of the stratum. The exact p counts all ways in which the values of each stratum, ties included, could have fallen to
 * its groups. Of one stratum it is {@link rankSumTest}. Source: van Elteren 1960, Bulletin of the International
 * Statistical Institute 37:351-361 (from memory).
 *
 * @throws RangeError when there is no stratum, a group is empty or a value is no finite number.
 */
export function stratifiedRankSum(strata: readonly RankedStratum[]): StratifiedRanks {
  if (strata.length === 0) throw new RangeError("at least one stratum is needed");
  let sums: Sums | null = new Map([[0, 1]]);
  let [observed, away, variance, wins, weights] = [0, 0, 0, 0, 0];
  for (const { first, second } of strata) {
    const { doubled, ties, total } = rank([first, second]);
    const m = first.length;
    const n = second.length;
    const sum = (doubled[0] ?? []).reduce((a, b) => a + b, 0);
    const u = sum / 2 - (m * (m + 1)) / 2;
    const part = (doubledSum: number): number => Math.round((doubledSum / (total + 1)) * PARTS);
    observed += part(sum);
    away += (u - (m * n) / 2) / (total + 1);
    variance += ((m * n) / 12) * (total + 1 - tieSum(ties) / (total * (total - 1))) * (total + 1) ** -2;
    wins += u / (total + 1);
    weights += (m * n) / (total + 1);
    sums = total > LARGEST_EXACT_RANKING ? null : addedSums(sums, sumsOf(doubled.flat(), m, part));
  }
  const normalP = variance > 1e-12 ? 2 * normalCdf(Math.abs(away) / Math.sqrt(variance), "upper") : 1;
  const exactP = sums === null ? null : farFromMean(sums, observed, 4 * strata.length);
  return {
    superiority: wins / weights,
    p: exactP ?? normalP,
    method: exactP === null ? "normal" : "exact",
    exactP,
    normalP,
  };
}

function sumsOf(doubled: readonly number[], drawn: number, part: (sum: number) => number): Sums {
  const sums = new Map<number, number>();
  for (const [sum, probability] of sumDistribution(doubled, drawn)) sums.set(part(sum), probability);
  return sums;
}
