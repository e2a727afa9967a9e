/** The exact test for a trend: the permutation distribution of `Σ score x`, within strata. */
import { addedSums, conditionalSums, farFromMean, type Sums } from "./conditional-sums.ts";
import type { OrderedGroup } from "./ordered-group.ts";

/** Scores that are not whole become multiples of this part of their range. */
const PARTS = 1e9;

/**
 * Two-sided exact p of a trend, the total affected held in every stratum; `null` when too many steps are needed.
 * Checks nothing.
 */
export function exactTrendP(strata: readonly (readonly OrderedGroup[])[]): number | null {
  const place = wholePlaces(strata.flatMap((groups) => groups.map(({ score }) => score)));
  let sums: Sums | null = new Map([[0, 1]]);
  let observed = 0;
  for (const groups of strata) {
    const at = groups.map(({ score }) => place(score));
    sums = addedSums(
      sums,
      conditionalSums(groups, (group, count) => (at[group] ?? 0) * count),
    );
    observed += groups.reduce((sum, { affected }, group) => sum + affected * (at[group] ?? 0), 0);
  }
  return sums === null ? null : farFromMean(sums, observed, 0);
}

/** Scores as whole numbers from 0: as they are where all are whole, else in parts of their range. */
function wholePlaces(scores: readonly number[]): (score: number) => number {
  const least = Math.min(...scores);
  const range = Math.max(...scores) - least;
  if (scores.every(Number.isSafeInteger) && range < PARTS) return (score) => score - least;
  return (score) => Math.round(((score - least) / range) * PARTS);
}
