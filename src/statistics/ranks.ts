/** Midranks, doubled so that they are whole, and the exact distribution of their sum. */

/** Largest value that is taken. */
const LARGEST = 1e300;

/** Values of all groups put in order. */
export interface Ranking {
  /** Twice the midrank of each value, group by group in the order given. */
  readonly doubled: readonly (readonly number[])[];
  /** How many values share each rank, in order. */
  readonly ties: readonly number[];
  /** All values together. */
  readonly total: number;
}

/**
 * Rank the values of several groups together; equal values share the mean of their ranks.
 *
 * @throws RangeError when a value is NaN, infinite or above 1e300 in size, or a group is empty.
 */
export function rank(groups: readonly (readonly number[])[]): Ranking {
  for (const [place, values] of groups.entries()) {
    if (values.length === 0) throw new RangeError(`group ${place + 1} has no values`);
    const odd = values.find((value) => !(Math.abs(value) <= LARGEST));
    if (odd !== undefined)
      throw new RangeError(`values must be numbers of at most ${LARGEST} in size, got ${odd}`);
  }
  const sorted = groups.flat().sort((a, b) => a - b);
  const rankOf = new Map<number, number>();
  const ties: number[] = [];
  for (let from = 0; from < sorted.length; ) {
    const value = sorted[from] ?? 0;
    let to = from;
    while (to < sorted.length && sorted[to] === value) to++;
    rankOf.set(value, from + 1 + to);
    ties.push(to - from);
    from = to;
  }
  const doubled = groups.map((values) => values.map((value) => rankOf.get(value) ?? 0));
  return { doubled, ties, total: sorted.length };
}

/** `Σ (t³ - t)` over the ties. */
export const tieSum = (ties: readonly number[]): number => ties.reduce((sum, t) => sum + (t * t * t - t), 0);

/**
 * Each sum that `drawn` of the doubled ranks can add up to, with its probability when every subset is equally likely, as
 * it is when the groups do not differ. Source: counting, one rank after the other; ranks are counted from the least, in
 * steps of their common divisor, and only sums are touched that so many of them can reach.
 */
export function sumDistribution(doubled: readonly number[], drawn: number): Map<number, number> {
  const sorted = [...doubled].sort((a, b) => a - b);
  const least = sorted[0] ?? 0;
  const step = sorted.reduce((divisor, one) => commonDivisor(divisor, one - least), 0) || 1;
  const ranks = sorted.map((one) => (one - least) / step);
  const below = [0];
  for (const [place, one] of ranks.entries()) below.push((below[place] ?? 0) + one);
  const most = (of: number, count: number): number => (below[of] ?? 0) - (below[of - count] ?? 0);
  const ways = Array.from(
    { length: drawn + 1 },
    (_, count) => new Float64Array(most(ranks.length, count) + 1),
  );
  ways[0]?.fill(1, 0, 1);
  for (const [used, one] of ranks.entries()) {
    const fewest = Math.max(1, drawn - (ranks.length - used - 1));
    for (let count = Math.min(drawn, used + 1); count >= fewest; count--) {
      const to = ways[count];
      const from = ways[count - 1];
      if (to === undefined || from === undefined) continue;
      const last = most(used + 1, count);
      for (let sum = (below[count - 1] ?? 0) + one; sum <= last; sum++)
        to[sum] = (to[sum] ?? 0) + (from[sum - one] ?? 0);
    }
  }
  const found = ways[drawn] ?? new Float64Array(1);
  const all = found.reduce((sum, way) => sum + way, 0);
  const sums = new Map<number, number>();
  for (const [sum, way] of found.entries()) if (way > 0) sums.set(sum * step + drawn * least, way / all);
  return sums;
}

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));
