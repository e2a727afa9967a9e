/** Two sides whose pigs share pens, set against each other so that a pen is not taken for many pigs. */
import { clusteredShares, rankSumTest, stratifiedRankSum } from "../../statistics/index.ts";
import { type Answered, countOf, valuesOf } from "../sides/outcomes.ts";
import type { SidePens } from "../sides/pens.ts";
import type { Stratification } from "../sides/stratification.ts";
import { limited, type ScoresByPens, type SharesByPens } from "./results.ts";
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
  const means = stratification.strata.map((stratum) =>
    stratum.map((answers, place) => (sides[place]?.pens ?? []).flatMap((pigs) => partMean(pigs, answers))),
  );
  const ranked = means.map(([first = [], second = []]) => ({ first: second, second: first }));
  const { p, method, superiority } = stratifiedRankSum(ranked);
  return { ...counted, within: true, superiority, p, exact: method === "exact" };
}

const pensCounted = ([first, second]: readonly [SidePens, SidePens]) =>
  ({
    clusters: [first.pens.length, second.pens.length],
    alone: [first.pens.length - first.known, second.pens.length - second.known],
  }) as const;

const meanOf = (pigs: readonly Answered[]): number =>
  valuesOf(pigs).reduce((sum, value) => sum + value, 0) / pigs.length;

/** The mean of those pigs of a pen that are in a stratum; none when it has no pig there. */
function partMean(pigs: readonly Answered[], stratum: readonly Answered[]): number[] {
  const inside = pigs.filter((pig) => stratum.includes(pig));
  return inside.length === 0 ? [] : [meanOf(inside)];
}
