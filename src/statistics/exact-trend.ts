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
  const scores = strata.flatMap((groups) => groups.map(({ score }) => score));
  const place = wholePlaces(scores);
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
  if (sums === null) return null;
  // Half a part may be lost of each pig's score, in the sum and in the mean.
  const pigs = strata.flat().reduce((sum, { examined }) => sum + examined, 0);
  return farFromMean(sums, observed, areWhole(scores) ? 0 : pigs);
}

const areWhole = (scores: readonly number[]): boolean =>
  scores.every(Number.isSafeInteger) && Math.max(...scores) - Math.min(...scores) < PARTS;

/** Scores as whole numbers from 0: as they are where all are whole, else in parts of their range. */
function wholePlaces(scores: readonly number[]): (score: number) => number {
  const least = Math.min(...scores);
  const range = Math.max(...scores) - least;
  if (areWhole(scores)) return (score) => score - least;
  return (score) => Math.round(((score - least) / range) * PARTS);
}
