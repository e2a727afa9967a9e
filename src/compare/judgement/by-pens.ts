/** Two sides whose pigs share pens, set against each other so that a pen is not taken for many pigs. */
import {
  adjustedShares,
  clusterPrevalence,
  permutedTrend,
  rankSumTest,
  slopeWithin,
  stratifiedRankSum,
} from "../../statistics/index.ts";
import type { Asked } from "../comparison.ts";
import { type Answered, countOf, valuesOf } from "../sides/outcomes.ts";
import type { SidePens } from "../sides/pens.ts";
import type { Stratification } from "../sides/stratification.ts";
import { limited, type MeansByPens, type ScoresByPens, type SharesByPens } from "./results.ts";
import { secondAgainstFirst } from "./within-strata.ts";

/**
 * Shares by Rao & Scott's adjusted counts, within strata where there are any. Both sides are divided by the larger of
 * their design effects: where few pens hold an affected pig a small one is mostly chance, and with each its own up to
 * 9 of 100 comparisons without a difference were called one in simulation (docs/statistics.md).
 */
export function sharesByPens(
  sides: readonly [SidePens, SidePens],
  stratification: Stratification | null,
  level: number,
): SharesByPens | null {
  const [first, second] = sides;
  const strata = stratification?.strata ?? [sides.map(({ pens }) => pens.flat())];
  if (strata.length === 0) return null;
  const [before, after] = designEffects(first, second);
  const whole = secondAgainstFirst(first.pens.flat(), second.pens.flat());
  const df = degrees([
    { part: before / whole.n2, pens: first.pens.length },
    { part: after / whole.n1, pens: second.pens.length },
  ]);
  const larger = Math.max(before, after);
  const effects = { first: larger, second: larger, df };
  const tables = strata.map(([one = [], other = []]) => secondAgainstFirst(one, other));
  const { p } = adjustedShares(tables, effects, { level });
  const { difference, effective } = adjustedShares([whole], effects, { level });
  return {
    ...pensCounted(sides),
    within: stratification !== null,
    design_effect: [before, after],
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
 * @param most the greatest difference there can be: 1 of shares
 */
export function meansByPens(
  sides: readonly SidePens[],
  stratification: Stratification | null,
  places: readonly number[],
  most: number,
  { level, seed }: Pick<Asked, "level" | "seed">,
): MeansByPens {
  const strata = stratification?.strata ?? [sides.map(({ pens }) => pens.flat())];
  const placed = meansWithin(sides, strata).map((means) =>
    means
      .map((values, side) => ({ place: places[side] ?? side, values }))
      .filter(({ values }) => values.length > 0),
  );
  const { z, p, method } = permutedTrend(placed, { seed });
  const { slope, lower, upper } = slopeWithin(placed, { level });
  const span = Math.max(...places) - Math.min(...places);
  const along = (limit: number | null): number | null =>
    limit === null ? null : Math.max(-most, Math.min(most, limit * span));
  return {
    ...pensCounted(sides),
    within: stratification !== null,
    z,
    p,
    exact: method === "exact",
    difference: { ...limited(along(slope), along(lower), along(upper)), method: "t" },
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

/**
 * Design effects of two sides, none below 1. Where all or no pig of a side is affected it cannot be estimated, and that
 * of the other side stands in; where neither can, each pen counts as one pig.
 */
function designEffects(first: SidePens, second: SidePens): [number, number] {
  const [one, other] = [first, second].map(({ pens }) => clusterPrevalence(pens.map(countOf)).designEffect);
  const pigsToAPen = ({ pens }: SidePens): number => pens.flat().length / pens.length;
  return [Math.max(1, one ?? other ?? pigsToAPen(first)), Math.max(1, other ?? one ?? pigsToAPen(second))];
}

/**
 * Degrees of freedom of a spread that two sides share, whole and 1 or more: their pens less two when both vary alike,
 * near those of the side that varies more when not (Satterthwaite 1946, Biometrics Bulletin 2:110-114, from memory).
 * @param parts variance of each side, up to one factor, with its pens
 */
function degrees(parts: readonly { readonly part: number; readonly pens: number }[]): number {
  const all = parts.reduce((sum, { part }) => sum + part, 0);
  const squares = parts.reduce((sum, { part, pens }) => sum + part ** 2 / (pens - 1), 0);
  return Math.max(1, Math.floor(all ** 2 / squares + 1e-9));
}

/** The score of a pen, or its share. */
export const meanOf = (pigs: readonly Answered[]): number =>
  valuesOf(pigs).reduce((sum, value) => sum + value, 0) / pigs.length;

/** The mean of those pigs of a pen that are in a stratum; none when it has no pig there. */
function partMean(pigs: readonly Answered[], stratum: readonly Answered[]): number[] {
  const inside = pigs.filter((pig) => stratum.includes(pig));
  return inside.length === 0 ? [] : [meanOf(inside)];
}
