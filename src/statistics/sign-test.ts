import { requireWhole } from "./checks.ts";
import { regularisedBeta } from "./incomplete-beta.ts";

/**
 * Exact two-sided sign test: the probability, were both directions equally likely, of a split at least as uneven
 * as this one. `2 P(X <= smaller)` with X binomial(n, 1/2), at most 1; 1 when there is nothing on either side.
 *
 * @param positive differences in one direction, whole number from 0 to 5 000 000.
 * @param negative differences in the other; equal pairs are left out by the caller.
 * @throws RangeError when a count is outside its range.
 *
 * Source: Arbuthnott 1710 (the idea, from memory); Conover 1999, Practical Nonparametric Statistics, 3rd ed, ch 3 (from memory).
 */
export function signTest(positive: number, negative: number): number {
  requireWhole("positive", positive, 0, 5_000_000);
  requireWhole("negative", negative, 0, 5_000_000);
  const smaller = Math.min(positive, negative);
  const larger = Math.max(positive, negative);
  if (smaller === larger) return 1;
  return Math.min(1, 2 * regularisedBeta(0.5, larger, smaller + 1).lower);
}
