/** The smallest p that a test could have given, so that sides too small to show anything are named as such. */
import {
  exactMantelHaenszel,
  leastRankP,
  leastSharesP,
  leastTrendP,
  type SharesRule,
  sharesP,
  stratifiedTrend,
} from "../../statistics/index.ts";
import type { ComparedSides } from "../sides/comparability.ts";
import type { Stratification, Stratum } from "../sides/stratification.ts";
import { meansWithin } from "./by-pens.ts";
import type { ClaimOn, Result } from "./results.ts";
import { placesOf } from "./tests.ts";

/** With more pigs than this the smallest p lies far below any level in use, and is not worked out. */
const mostPigs = 60;

/**
 * Smallest p of the test that the claim rests on, over all that these pigs could have had: all affected on some sides and
 * none on the others, or scores one side above the other without ties (with ties it can be smaller).
 * @returns null where it was not worked out
 */
export function smallestAttainableP(
  result: Result,
  { sides, stratification, pens }: ComparedSides,
  on: ClaimOn,
): number | null {
  const sizes = sides.map(({ answers }) => answers.length);
  const pigs = sizes.reduce((sum, size) => sum + size, 0);
  switch (result.test) {
    case "fisher-exact":
      if (on === "pigs") return leastOfShares(sizes, result.rule);
      return on === "strata" && stratification !== null && pigs <= mostPigs
        ? smallestWithin(stratification, result.rule)
        : null;
    case "mann-whitney":
      if (on === "pigs") return leastRankP(sizes);
      if (on === "pens") return leastRankP(pens.map((side) => side.pens.length));
      return on === "strata" && stratification !== null ? smallestOfRanksWithin(stratification) : null;
    case "cochran-armitage":
      return pigs > mostPigs || on.startsWith("pens")
        ? null
        : smallestOfTrend(sizes, placesOf(sides).places, stratification);
    case "cuzick":
      if (on.startsWith("pens")) return null;
      return leastTrendP(
        stratification?.strata.map((stratum) => stratum.map(({ length }) => length)) ?? [sizes],
      );
    case "unit-means": {
      const strata = stratification?.strata ?? [sides.map(({ answers }) => answers)];
      const units = meansWithin(pens, strata).map((means) => means.map(({ length }) => length));
      // Arms of one size can change places everywhere, and lie as far apart then.
      const mirrored = units.every(([control, treated]) => control === treated);
      return leastTrendP(units, { mirrored });
    }
    case "freeman-halton":
      return leastSharesP(sizes);
    case "kruskal-wallis":
      return leastRankP(sizes);
  }
}

/** All affected on one side and none on the other, either way round. */
function leastOfShares(sizes: readonly number[], rule: SharesRule): number {
  if (rule === "fisher") return leastSharesP(sizes);
  const [n1 = 1, n2 = 1] = sizes;
  return Math.min(sharesP({ x1: n1, n1, x2: 0, n2 }, rule), sharesP({ x1: 0, n1, x2: n2, n2 }, rule));
}

const sizesOf = ([first = [], second = []]: Stratum): [number, number] => [first.length, second.length];

/** All affected on one side of every stratum and none on the other, either way round. */
function smallestWithin({ strata }: Stratification, rule: SharesRule): number | null {
  const tables = strata.map(sizesOf);
  const one = exactMantelHaenszel(tables.map(([n2, n1]) => ({ x1: n1, n1, x2: 0, n2 })));
  const other = exactMantelHaenszel(tables.map(([n2, n1]) => ({ x1: 0, n1, x2: n2, n2 })));
  if (one === null || other === null) return null;
  return rule === "mid-p" ? Math.min(one.midP, other.midP) : Math.min(one.p, other.p);
}

/** Scores of one side above those of the other in every stratum: one way of all, and its mirror image. */
const smallestOfRanksWithin = ({ strata }: Stratification): number =>
  Math.min(1, 2 * strata.reduce((product, stratum) => product * (leastRankP(sizesOf(stratum)) / 2), 1));

/** None affected up to one visit and all after it. */
function smallestOfTrend(
  sizes: readonly number[],
  places: readonly number[],
  stratification: Stratification | null,
): number {
  const tables = stratification?.strata.map((stratum) => stratum.map(({ length }) => length)) ?? [sizes];
  const found = sizes.slice(1).map((_, split) => {
    const strata = tables.map((table) =>
      table
        .map((examined, place) => ({
          affected: place > split ? examined : 0,
          examined,
          score: places[place] ?? place,
        }))
        .filter(({ examined }) => examined > 0),
    );
    const { exactP } = stratifiedTrend(strata, { exact: true });
    return exactP ?? 0;
  });
  return Math.min(1, ...found);
}
