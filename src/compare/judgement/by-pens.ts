/** Two sides whose pigs share pens, set against each other so that a pen is not taken for many pigs. */
import {
  clusteredShares,
  permutedTrend,
  rankSumTest,
  slopeWithin,
  stratifiedRankSum,
} from "../../statistics/index.ts";
import type { Asked, Comparison } from "../comparison.ts";
import { type Answered, countOf, valuesOf } from "../sides/outcomes.ts";
import type { SidePens } from "../sides/pens.ts";
import type { Stratification } from "../sides/stratification.ts";
import { limited, type MeansByPens, type ScoresByPens, type SharesByPens } from "./results.ts";
import { secondAgainstFirst } from "./within-strata.ts";

/** Shares by Rao & Scott's adjusted counts, within strata where there are any. */
export function sharesByPens(
  sides: readonly [SidePens, SidePens],
  stratification: Stratification | null,
  level: number,
): SharesByPens | null {
  const strata = stratification?.strata.map(([one = [], other = []]) => secondAgainstFirst(one, other));
  if (strata?.length === 0) return null;
  const [first, second] = sides.map(({ pens }) => pens.map(countOf));
  const { p, difference, effective, designEffect } = clusteredShares([second ?? [], first ?? []], {
    level,
    ...(strata !== undefined && { strata }),
  });
  return {
    ...pensCounted(sides),
    within: stratification !== null,
    design_effect: [designEffect[1], designEffect[0]],
    effective: [effective[1], effective[0]],
    difference: { ...limited(difference.value, difference.lower, difference.upper), method: "newcombe" },
    p,
  };
}

/** Scores by the means of the pens, ranked; within strata where there are any. */
export function scoresByPens(
  sides: readonly [SidePens, SidePens],
  stratification: Stratification | null,
): ScoresByPens | null {
  const counted = pensCounted(sides);
  if (stratification === null) {
    const [first = [], second = []] = sides.map(({ pens }) => pens.map(meanOf));
    const { p, method, superiority } = rankSumTest(second, first);
    return { ...counted, within: false, superiority, p, exact: method === "exact" };
  }
  if (stratification.strata.length === 0) return null;
  const ranked = meansWithin(sides, stratification.strata).map(([first = [], second = []]) => ({
    first: second,
    second: first,
  }));
  const { p, method, superiority } = stratifiedRankSum(ranked);
  return { ...counted, within: true, superiority, p, exact: method === "exact" };
}

/**
 * Visits in their order, or arms, by the means of the pens, dealt out anew; within strata where there are any. Means and not ranks,
 * because the ranks of pens with few pigs lie elsewhere than those of pens with many even where nothing differs.
 * @param stratification with one stratum at least
 * @param places of the sides on the axis of time; of arms 0 and 1
 */
export function meansByPens(
  sides: readonly SidePens[],
  stratification: Stratification | null,
  places: readonly number[],
  kind: Comparison["kind"],
  { level, seed }: Pick<Asked, "level" | "seed">,
): MeansByPens {
  const strata = stratification?.strata ?? [sides.map(({ pens }) => pens.flat())];
  const shares = kind === "indicator";
  const placed = meansWithin(sides, strata).map((means, own) =>
    means
      .map((values, side) => ({
        place: places[side] ?? side,
        values,
        ...(shares && { animals: strata[own]?.[side]?.length ?? 0 }),
      }))
      .filter(({ values }) => values.length > 0),
  );
  const { z, p, method } = permutedTrend(placed, { seed });
  const { slope, lower, upper, method: limits } = slopeWithin(placed, { level });
  const span = Math.max(...places) - Math.min(...places);
  const most = shares ? 1 : Number.POSITIVE_INFINITY;
  const along = (limit: number | null): number | null =>
    limit === null ? null : Math.max(-most, Math.min(most, limit * span));
  return {
    ...pensCounted(sides),
    within: stratification !== null,
    z,
    p,
    exact: method === "exact",
    difference: { ...limited(along(slope), along(lower), along(upper)), method: limits },
  };
}

const pensCounted = (sides: readonly SidePens[]) => ({
  clusters: sides.map(({ pens }) => pens.length),
  alone: sides.map(({ pens, known }) => pens.length - known),
});

/** The means of the pens of each side in each stratum. */
export const meansWithin = (sides: readonly SidePens[], strata: Stratification["strata"]): number[][][] =>
  strata.map((stratum) =>
    stratum.map((answers, side) => (sides[side]?.pens ?? []).flatMap((pigs) => partMean(pigs, answers))),
  );

/** The score of a pen, or its share. */
export const meanOf = (pigs: readonly Answered[]): number =>
  valuesOf(pigs).reduce((sum, value) => sum + value, 0) / pigs.length;

/** The mean of those pigs of a pen that are in a stratum; none when it has no pig there. */
function partMean(pigs: readonly Answered[], stratum: readonly Answered[]): number[] {
  const inside = pigs.filter((pig) => stratum.includes(pig));
  return inside.length === 0 ? [] : [meanOf(inside)];
}
