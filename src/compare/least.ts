/** The least p that a test could have given, so that sides too small to show anything are named as such. */
import { exactMantelHaenszel, leastRankP, leastSharesP, stratifiedTrend } from "../statistics/index.ts";
import type { Parted } from "./made-up.ts";
import { type Made, placesOf } from "./results.ts";
import type { ClaimOn, Result } from "./tests-made.ts";

/** With more pigs than this the least p lies far below any level in use, and is not worked out. */
const mostPigs = 60;

/**
 * Least p of the test that the claim rests on, over all that these pigs could have had: all affected on some sides and
 * none on the others, or scores one side above the other without ties; never above `p`, as ties can make it smaller.
 * @returns null where it was not worked out
 */
export function leastP(result: Result, made: Made, on: ClaimOn, p: number): number | null {
  const least = leastOf(result, made, on);
  return least === null ? null : Math.min(least, p);
}

function leastOf(result: Result, { sides, parted, penned }: Made, on: ClaimOn): number | null {
  const sizes = sides.map(({ answers }) => answers.length);
  const pigs = sizes.reduce((sum, size) => sum + size, 0);
  switch (result.test) {
    case "fisher-exact":
      if (on === "pigs") return leastSharesP(sizes);
      return on === "strata" && parted !== null && pigs <= mostPigs ? leastWithin(parted) : null;
    case "mann-whitney":
      if (on === "pigs") return leastRankP(sizes);
      if (on === "pens") return leastRankP(penned.map(({ clusters }) => clusters.length));
      return on === "strata" && parted !== null ? leastRanksWithin(parted) : null;
    case "cochran-armitage":
      return pigs > mostPigs ? null : leastTrend(sizes, placesOf(sides).places, parted);
    case "freeman-halton":
      return leastSharesP(sizes);
    case "kruskal-wallis":
      return leastRankP(sizes);
  }
}

const sizesOf = (cell: readonly (readonly unknown[])[]): [number, number] => [
  cell[0]?.length ?? 0,
  cell[1]?.length ?? 0,
];

/** All affected on one side of every stratum and none on the other, either way round. */
function leastWithin({ strata }: Parted): number | null {
  const tables = strata.map(sizesOf);
  const one = exactMantelHaenszel(tables.map(([n2, n1]) => ({ x1: n1, n1, x2: 0, n2 })));
  const other = exactMantelHaenszel(tables.map(([n2, n1]) => ({ x1: 0, n1, x2: n2, n2 })));
  return one === null || other === null ? null : Math.min(one.p, other.p);
}

/** Scores of one side above those of the other in every stratum: one way of all, and its mirror image. */
const leastRanksWithin = ({ strata }: Parted): number =>
  Math.min(1, 2 * strata.reduce((product, cell) => product * (leastRankP(sizesOf(cell)) / 2), 1));

/** None affected up to one visit and all after it. */
function leastTrend(sizes: readonly number[], places: readonly number[], parted: Parted | null): number {
  const cells = parted?.strata.map((cell) => cell.map(({ length }) => length)) ?? [sizes];
  const found = sizes.slice(1).map((_, split) => {
    const strata = cells.map((cell) =>
      cell.flatMap((examined, place) =>
        examined === 0
          ? []
          : [{ affected: place > split ? examined : 0, examined, score: places[place] ?? place }],
      ),
    );
    const { exactP } = stratifiedTrend(strata, { exact: true });
    return exactP ?? 0;
  });
  return Math.min(1, ...found);
}
