/** The exact distribution of a sum over groups when the total affected is held fixed: what permutation tests count. */
import { binomialMasses } from "./binomial-mass.ts";

/** Affected of examined in one group. */
export interface CountedGroup {
  readonly affected: number;
  readonly examined: number;
}

/** More states, or steps from state to state, than these are not worked through: about a quarter of a second at most. */
const MOST_STATES = 200_000;
const MOST_STEPS = 1_500_000;

/** Probability of each sum. */
export type Sums = ReadonlyMap<number, number>;

/**
 * Distribution of `Σ value(group, x)` when all ways to share the affected out to the animals are equally likely, so
 * that the counts x are multivariate hypergeometric; `null` when that would take too many steps.
 *
 * Group after group is added; states with as many affected and the same sum are put together. The binomial masses
 * at the pooled share stand in for the numbers of ways: the share cancels, and nothing overflows.
 *
 * @param value a whole number for each group (from 0) and possible count, so that equal sums are found equal.
 */
export function conditionalSums(
  groups: readonly CountedGroup[],
  value: (group: number, count: number) => number,
): Sums | null {
  const affected = groups.reduce((sum, group) => sum + group.affected, 0);
  const total = groups.reduce((sum, group) => sum + group.examined, 0);
  let left = total;
  let steps = 0;
  let states = new Map<number, Map<number, number>>([[0, new Map([[0, 1]])]]);
  for (const [place, { examined }] of groups.entries()) {
    left -= examined;
    const masses = binomialMasses(examined, affected / total);
    const next = new Map<number, Map<number, number>>();
    let size = 0;
    for (const [used, sums] of states) {
      const least = Math.max(0, affected - used - left);
      const most = Math.min(examined, affected - used);
      steps += sums.size * Math.max(0, most - least + 1);
      if (steps > MOST_STEPS) return null;
      for (let count = least; count <= most; count++) {
        const to = next.get(used + count) ?? new Map<number, number>();
        const before = to.size;
        const mass = masses[count] ?? 0;
        const more = value(place, count);
        for (const [sum, weight] of sums) to.set(sum + more, (to.get(sum + more) ?? 0) + weight * mass);
        size += to.size - before;
        next.set(used + count, to);
      }
    }
    if (size > MOST_STATES) return null;
    states = next;
  }
  return scaled(states.get(affected) ?? new Map([[0, 1]]));
}

/** Distribution of the sum of two independent sums; `null` when it would take too many steps. */
export function addedSums(first: Sums | null, second: Sums | null): Sums | null {
  if (first === null || second === null || first.size * second.size > MOST_STEPS) return null;
  const sums = new Map<number, number>();
  for (const [a, weight] of first)
    for (const [b, other] of second) sums.set(a + b, (sums.get(a + b) ?? 0) + weight * other);
  return sums.size > MOST_STATES ? null : sums;
}

/** P(|sum - mean| >= |observed - mean|), sums within `tie` of the observed distance counted as equally far. */
export function farFromMean(sums: Sums, observed: number, tie: number): number {
  let mean = 0;
  for (const [sum, weight] of sums) mean += sum * weight;
  const far = Math.abs(observed - mean) - tie - 1e-9 * (Math.abs(observed) + Math.abs(mean));
  let p = 0;
  for (const [sum, weight] of sums) if (Math.abs(sum - mean) >= far) p += weight;
  return Math.min(1, p);
}

function scaled(sums: ReadonlyMap<number, number>): Sums {
  const all = [...sums.values()].reduce((sum, weight) => sum + weight, 0);
  return new Map([...sums].map(([sum, weight]) => [sum, weight / all]));
}
