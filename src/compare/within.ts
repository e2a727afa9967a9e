/** Like against like: each test within the strata of sides that are made up differently. */
import {
  exactMantelHaenszel,
  mantelHaenszel,
  oddsHomogeneity,
  stratifiedRankSum,
  stratifiedTrend,
} from "../statistics/index.ts";
import { type Parted, ratio, secondAgainstFirst } from "./made-up.ts";
import type { Answered } from "./questions.ts";
import type { Stratified, StratifiedScores, StratifiedTrend, Within } from "./tests-made.ts";

const common = ({ by, strata, outside }: Parted) => ({ by, strata: strata.length, pigs_outside: outside });

const opposite = (within: number, plain: number): boolean => Math.sign(within) * Math.sign(plain) < 0;

/**
 * Two sides of an indicator: Fisher's test over strata with its odds ratio or, where the strata are too large to be
 * counted, Mantel & Haenszel's with the interval of Robins, Breslow & Greenland.
 * @returns null when no stratum has pigs of both sides
 */
export function sharesWithin(parted: Parted, level: number): Stratified | null {
  if (parted.strata.length === 0) return null;
  const strata = parted.strata.map(([first = [], second = []]) => secondAgainstFirst(first, second));
  const sides = [0, 1].map((place) => parted.strata.flatMap((cell) => cell[place] ?? []));
  const { x1, n1, x2, n2 } = secondAgainstFirst(sides[0] ?? [], sides[1] ?? []);
  const exact = exactMantelHaenszel(strata, { level });
  const rough = mantelHaenszel(strata, { level });
  const { oddsRatio, lower, upper } = exact ?? rough;
  const homogeneity = oddsHomogeneity(strata);
  return {
    ...common(parted),
    odds_ratio: ratio(oddsRatio, lower, upper),
    opposite: oddsRatio !== null && opposite(oddsRatio - 1, x1 / n1 - x2 / n2),
    p: exact?.p ?? rough.pCorrected,
    exact: exact !== null,
    p_homogeneity: homogeneity.chiSquared === null ? null : homogeneity.p,
  };
}

/** Two sides of a scale: van Elteren's test. @param plain superiority over all pigs together */
export function scoresWithin(parted: Parted, plain: number): StratifiedScores | null {
  if (parted.strata.length === 0) return null;
  const { p, method, superiority } = stratifiedRankSum(
    parted.strata.map(([first = [], second = []]) => ({ first: numbers(second), second: numbers(first) })),
  );
  return {
    ...common(parted),
    superiority,
    opposite: opposite(superiority - 0.5, plain - 0.5),
    p,
    exact: method === "exact",
  };
}

/** Three visits or more. @param places of the visits on the axis of time; @param plain z over all pigs together */
export function trendWithin(
  parted: Parted,
  places: readonly number[],
  plain: number | null,
): StratifiedTrend | null {
  if (parted.strata.length === 0) return null;
  const { z, p, exactP } = stratifiedTrend(
    parted.strata.map((cell) =>
      cell.flatMap((answers, place) =>
        answers.length === 0
          ? []
          : [
              {
                affected: answers.filter(({ value }) => value === 1).length,
                examined: answers.length,
                score: places[place] ?? place,
              },
            ],
      ),
    ),
    { exact: true },
  );
  return {
    ...common(parted),
    z,
    opposite: opposite(z ?? 0, plain ?? 0),
    p: exactP ?? p,
    exact: exactP !== null,
  };
}

export const numbers = (answers: readonly Answered[]): number[] =>
  answers.flatMap(({ value }) => value ?? []);

/** Which way it points within strata: above 0 more or higher. */
export function wayOf(within: Within): number {
  if ("odds_ratio" in within) {
    const { value, unbounded } = within.odds_ratio;
    return unbounded ? 1 : (value ?? 1) - 1;
  }
  return "superiority" in within ? within.superiority - 0.5 : (within.z ?? 0);
}
