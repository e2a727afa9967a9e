/** The tests and their intervals, each from the room of statistics. */
import {
  detectableShares,
  fisherExact,
  hodgesLehmann,
  kruskalWallis,
  LARGEST_GROUP,
  rankSumTest,
  riskDifference,
  riskRatio,
  sharesTest,
  type TwoGroups,
  trendTest,
} from "../statistics/index.ts";
import type { AnsweredSide } from "./comparability.ts";
import type { Between } from "./comparison.ts";
import { limited, type Parted, ratio, secondAgainstFirst } from "./made-up.ts";
import { pennedScores, pennedShares } from "./penned.ts";
import type { Penned } from "./pens.ts";
import type {
  ManySharesCompared,
  RanksCompared,
  Result,
  ScoresCompared,
  SharesCompared,
  TrendCompared,
} from "./tests-made.ts";
import { numbers, scoresWithin, sharesWithin, trendWithin } from "./within.ts";

/** Below this many pigs on a side the chi-squared form of Kruskal & Wallis is rough, and the ways are counted. */
const roughBelow = 5;
/** Power of `could_show`. */
const power = 0.8;
const mostPairs = 4_000_000;
const dayMs = 86_400_000;

/** Sides of one question, with what they are made up of. */
export interface Made {
  readonly sides: readonly AnsweredSide[];
  /** Strata, when the sides are made up differently; else null. */
  readonly parted: Parted | null;
  readonly penned: readonly Penned[];
}

/** The comparison of two sides or more, each with at least one pig. @param level between 0 and 1 */
export function resultOf(kind: "indicator" | "scale", made: Made, between: Between, level: number): Result {
  const { sides } = made;
  const [first, second, third] = sides;
  if (first === undefined || second === undefined) throw new RangeError("two sides are needed");
  if (third === undefined)
    return kind === "indicator" ? sharesOf(first, second, made, level) : scoresOf(first, second, made, level);
  if (kind === "scale") return ranksOf(sides);
  return between === "visits" ? trendOf(made) : manySharesOf(sides);
}

export const valuesOf = ({ answers }: AnsweredSide): number[] => numbers(answers);

/** Both sides with their pens, where at least one shares them. */
function sharing({ penned }: Made): [Penned, Penned] | null {
  const [first, second] = penned;
  if (first === undefined || second === undefined) return null;
  const shared = first.shared || second.shared;
  return shared && first.clusters.length + second.clusters.length > 2 ? [first, second] : null;
}

function sharesOf(first: AnsweredSide, second: AnsweredSide, made: Made, level: number): SharesCompared {
  const groups = secondAgainstFirst(first.answers, second.answers);
  const fisher = fisherExact(groups, { level });
  const difference = riskDifference(groups, { level });
  const score = riskDifference(groups, { level, method: "miettinen-nurminen" });
  const risk = riskRatio(groups, { level });
  const pens = sharing(made);
  return {
    test: "fisher-exact",
    p: fisher.p,
    difference: {
      ...limited(difference.difference, difference.lower, difference.upper),
      method: "newcombe",
    },
    difference_score: {
      ...limited(score.difference, score.lower, score.upper),
      method: "miettinen-nurminen",
    },
    risk_ratio: ratio(risk.ratio, risk.lower, risk.upper),
    odds_ratio: ratio(fisher.oddsRatio, fisher.lower, fisher.upper),
    stratified: made.parted && sharesWithin(made.parted, level),
    penned: pens && pennedShares(pens, made.parted, level),
    could_show: couldShow(groups, level),
  };
}

/** From the share of the first side, how far away the second must be to be shown. */
function couldShow({ x2, n1, n2 }: TwoGroups, level: number): SharesCompared["could_show"] {
  if (Math.max(n1, n2) > LARGEST_GROUP) return null;
  return detectableShares(n2, n1, x2 / n2, { power, alpha: 1 - level });
}

function scoresOf(one: AnsweredSide, other: AnsweredSide, made: Made, level: number): ScoresCompared {
  const first = valuesOf(one);
  const second = valuesOf(other);
  const { p, method, superiority } = rankSumTest(second, first);
  const shift = first.length * second.length > mostPairs ? null : hodgesLehmann(second, first, { level });
  const pens = sharing(made);
  return {
    test: "mann-whitney",
    exact: method === "exact",
    p,
    superiority,
    shift: shift && {
      ...limited(shift.shift, shift.lower, shift.upper),
      method: "hodges-lehmann",
      reason: shift.reason,
    },
    stratified: made.parted && scoresWithin(made.parted, superiority),
    penned: pens && pennedScores(pens, made.parted),
  };
}

/** Places of visits on the axis of time: days since the first, or 1, 2, 3 where a date is missing or twice. */
export function placesOf(sides: readonly AnsweredSide[]): { places: number[]; unit: "days" | "order" } {
  const dates = sides.map(({ side }) => Date.parse(side.date ?? ""));
  const dated = dates.every(Number.isFinite) && new Set(dates).size === dates.length;
  return dated
    ? { places: dates.map((date) => (date - (dates[0] ?? 0)) / dayMs), unit: "days" }
    : { places: sides.map((_, i) => i + 1), unit: "order" };
}

function trendOf({ sides, parted }: Made): TrendCompared {
  const { places, unit } = placesOf(sides);
  const groups = countsOf(sides).map((side, index) => ({ ...side, score: places[index] ?? index }));
  const { p, exactP, z } = trendTest(groups, { exact: true });
  return {
    test: "cochran-armitage",
    exact: exactP !== null,
    p: exactP ?? p,
    z,
    places,
    unit,
    stratified: parted && trendWithin(parted, places, z),
  };
}

const countsOf = (sides: readonly AnsweredSide[]) =>
  sides.map(({ answers }) => ({
    affected: answers.filter(({ value }) => value === 1).length,
    examined: answers.length,
  }));

function manySharesOf(sides: readonly AnsweredSide[]): ManySharesCompared {
  const { chiSquared, df, p, exactP, leastExpected } = sharesTest(countsOf(sides));
  return {
    test: "freeman-halton",
    exact: exactP !== null,
    p: exactP ?? p,
    chi_squared: chiSquared,
    df,
    least_expected: leastExpected,
  };
}

function ranksOf(sides: readonly AnsweredSide[]): RanksCompared {
  const exact = sides.some(({ answers }) => answers.length < roughBelow);
  const { h, df, p, exactP } = kruskalWallis(sides.map(valuesOf), { exact });
  return { test: "kruskal-wallis", exact: exactP !== null, p: exactP ?? p, h, df };
}
