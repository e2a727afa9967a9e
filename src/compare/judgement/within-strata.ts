/** Like against like: each test within the strata of sides that are made up differently. */
import {
  oddsHomogeneity,
  type PlacedValues,
  permutedTrend,
  type SharesRule,
  stratifiedRankSum,
  stratifiedShares,
  stratifiedTrend,
  type TwoGroups,
} from "../../statistics/index.ts";
import { type Answered, countOf, valuesOf } from "../sides/outcomes.ts";
import type { Stratification, Stratum } from "../sides/stratification.ts";
import {
  ratio,
  type ScoresWithinStrata,
  type SharesWithinStrata,
  type TrendWithinStrata,
  type WithinStrata,
} from "./results.ts";

/** Affected of examined, the second side as the first group of the statistic. */
export function secondAgainstFirst(first: readonly Answered[], second: readonly Answered[]): TwoGroups {
  const [one, other] = [countOf(second), countOf(first)];
  return { x1: one.affected, n1: one.examined, x2: other.affected, n2: other.examined };
}

const common = ({ by, strata, outside }: Stratification) => ({
  by,
  strata: strata.length,
  pigs_outside: outside,
});

const opposite = (inStrata: number, plain: number): boolean => Math.sign(inStrata) * Math.sign(plain) < 0;

/** Two sides of an indicator. @returns null when no stratum has pigs of both sides */
export function sharesWithin(
  stratification: Stratification,
  level: number,
  rule: SharesRule,
): SharesWithinStrata | null {
  if (stratification.strata.length === 0) return null;
  const tables = stratification.strata.map(([first = [], second = []]) => secondAgainstFirst(first, second));
  const sum = (of: keyof TwoGroups): number => tables.reduce((total, table) => total + table[of], 0);
  const { oddsRatio, lower, upper, p, exact, midP } = stratifiedShares(tables, { level, rule });
  const homogeneity = oddsHomogeneity(tables);
  return {
    ...common(stratification),
    odds_ratio: ratio(oddsRatio, lower, upper),
    opposite: oddsRatio !== null && opposite(oddsRatio - 1, sum("x1") / sum("n1") - sum("x2") / sum("n2")),
    p,
    mid_p: midP,
    exact,
    p_homogeneity: homogeneity.chiSquared === null ? null : homogeneity.p,
  };
}

/** Two sides of a scale: van Elteren's test. @param plain superiority over all pigs together */
export function scoresWithin(stratification: Stratification, plain: number): ScoresWithinStrata | null {
  if (stratification.strata.length === 0) return null;
  const { p, method, superiority } = stratifiedRankSum(
    stratification.strata.map(([first = [], second = []]) => ({
      first: valuesOf(second),
      second: valuesOf(first),
    })),
  );
  return {
    ...common(stratification),
    superiority,
    opposite: opposite(superiority - 0.5, plain - 0.5),
    p,
    exact: method === "exact",
  };
}

/** Three visits or more. @param places of the visits on the axis of time; @param plain z over all pigs together */
export function trendWithin(
  stratification: Stratification,
  places: readonly number[],
  plain: number | null,
): TrendWithinStrata | null {
  if (stratification.strata.length === 0) return null;
  const { z, p, exactP } = stratifiedTrend(
    stratification.strata.map((stratum) =>
      stratum
        .map((answers, place) => ({ ...countOf(answers), score: places[place] ?? place }))
        .filter(({ examined }) => examined > 0),
    ),
    { exact: true },
  );
  return {
    ...common(stratification),
    z,
    opposite: opposite(z ?? 0, plain ?? 0),
    p: exactP ?? p,
    exact: exactP !== null,
  };
}

/** Scores of three visits or more: Cuzick's test within strata. Parameters as {@link trendWithin}. */
export function rankTrendWithin(
  stratification: Stratification,
  places: readonly number[],
  plain: number | null,
  seed: number,
): TrendWithinStrata | null {
  if (stratification.strata.length === 0) return null;
  const { z, p, method } = permutedTrend(
    stratification.strata.map((stratum) => placedScores(stratum, places)),
    { ranked: true, seed },
  );
  return {
    ...common(stratification),
    z,
    opposite: opposite(z ?? 0, plain ?? 0),
    p,
    exact: method === "exact",
  };
}

/** The scores at each place that has any. */
export const placedScores = (sides: Stratum, places: readonly number[]): PlacedValues[] =>
  sides
    .map((answers, side) => ({ place: places[side] ?? side, values: valuesOf(answers) }))
    .filter(({ values }) => values.length > 0);

/** Which way it points within strata: above 0 more or higher. */
export function wayOf(inStrata: WithinStrata): number {
  if ("odds_ratio" in inStrata) {
    const { value, unbounded } = inStrata.odds_ratio;
    return unbounded ? 1 : (value ?? 1) - 1;
  }
  return "superiority" in inStrata ? inStrata.superiority - 0.5 : (inStrata.z ?? 0);
}
