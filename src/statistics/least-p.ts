/** The least p that a test could have given for groups of these sizes, whatever was found: below it nothing can be shown. */
import { requireWhole } from "./checks.ts";
import { logBinomial } from "./log-binomial.ts";

/** Orders of more groups than this are not tried; so many groups have many animals. */
const MOST_GROUPS = 7;

/**
 * Least exact p of the rank test of two groups (Mann & Whitney) or more (Kruskal & Wallis): values without ties, one
 * group wholly above the next. H is convex in the rank sums, so only such orders reach the greatest; of two groups both
 * orders lie equally far, and the least p is two over the number of ways. Source: counting. With ties it may be less.
 *
 * @param sizes two or more, each 1 or more.
 * @returns 0 for more than seven groups.
 */
export function leastRankP(sizes: readonly number[]): number {
  check(sizes);
  if (sizes.length > MOST_GROUPS) return 0;
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const heights = orders(sizes).map((order) => {
    let below = 0;
    return order.reduce((height, size) => {
      const middle = below + (size + 1) / 2 - (total + 1) / 2;
      below += size;
      return height + size * middle * middle;
    }, 0);
  });
  const highest = Math.max(...heights);
  const equal = heights.filter((height) => height >= highest * (1 - 1e-9)).length;
  return Math.min(1, equal * Math.exp(-logWays(sizes)));
}

/**
 * Least p of Freeman & Halton's test (of two groups: Fisher's): all animals affected in some groups and none in the
 * others. Each such table can come in one way; those with the same total are equally probable. Source: counting.
 *
 * @param sizes two or more, each 1 or more.
 */
export function leastSharesP(sizes: readonly number[]): number {
  check(sizes);
  const total = sizes.reduce((sum, size) => sum + size, 0);
  let tables = new Map<number, number>([[0, 1]]);
  for (const size of sizes) {
    const next = new Map(tables);
    for (const [sum, ways] of tables) next.set(sum + size, (next.get(sum + size) ?? 0) + ways);
    tables = next;
  }
  let least = 1;
  for (const [sum, ways] of tables) least = Math.min(least, ways * Math.exp(-logBinomial(total, sum)));
  return least;
}

/**
 * Least exact p of a trend of ranks over places that all differ, within strata: values without ties, one place wholly above the
 * next, or the other way round. Source: counting. With ties it may be less.
 *
 * @param strata sizes of the groups in each; zeros allowed.
 * @param options.mirrored false where values of any kind, not ranks, may lie far from their mean on one side only.
 */
export function leastTrendP(
  strata: readonly (readonly number[])[],
  { mirrored = true }: { readonly mirrored?: boolean } = {},
): number {
  const farthest = mirrored ? 2 : 1;
  return Math.min(1, farthest * Math.exp(-strata.reduce((sum, sizes) => sum + logWays(sizes), 0)));
}

/** ln of the number of ways to share all animals out to groups of these sizes. */
function logWays(sizes: readonly number[]): number {
  let total = 0;
  let log = 0;
  for (const size of sizes) {
    total += size;
    log += logBinomial(total, size);
  }
  return log;
}

function orders(sizes: readonly number[]): number[][] {
  if (sizes.length < 2) return [[...sizes]];
  return sizes.flatMap((size, place) => orders(sizes.toSpliced(place, 1)).map((rest) => [size, ...rest]));
}

function check(sizes: readonly number[]): void {
  if (sizes.length < 2) throw new RangeError(`at least two groups are needed, got ${sizes.length}`);
  for (const [place, size] of sizes.entries()) requireWhole(`size of group ${place + 1}`, size, 1, 1e7);
}
