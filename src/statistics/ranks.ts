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
 * Number of ways in which `drawn` of the doubled ranks add up to each sum (place in the array), relative to all
 * ways. Every subset is equally likely when the groups do not differ. Source: counting, one rank after the other.
 */
export function sumDistribution(doubled: readonly number[], drawn: number): Float64Array {
  const largest = [...doubled].sort((a, b) => b - a).slice(0, drawn);
  const width = largest.reduce((sum, one) => sum + one, 0) + 1;
  const ways = Array.from({ length: drawn + 1 }, () => new Float64Array(width));
  const none = ways[0];
  if (none !== undefined) none[0] = 1;
  for (const [used, one] of doubled.entries()) {
    for (let count = Math.min(drawn, used + 1); count > 0; count--) {
      const to = ways[count];
      const from = ways[count - 1];
      if (to === undefined || from === undefined) continue;
      for (let sum = width - 1; sum >= one; sum--) to[sum] = (to[sum] ?? 0) + (from[sum - one] ?? 0);
    }
  }
  const found = ways[drawn] ?? new Float64Array(width);
  const all = found.reduce((sum, way) => sum + way, 0);
  return found.map((way) => way / all);
}
