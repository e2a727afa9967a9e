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
  type TwoGroups,
  trendTest,
} from "../statistics/index.ts";
import type { AnsweredSide } from "./comparability.ts";
import type {
  Between,
  RanksCompared,
  Result,
  ScoresCompared,
  SharesCompared,
  TrendCompared,
} from "./comparison.ts";
import { limited, secondAgainstFirst, stratified, unevenFacets } from "./made-up.ts";

/** Below this many pigs on a side the chi-squared form of Kruskal & Wallis is rough, and the ways are counted. */
const roughBelow = 5;
/** Power of `could_show`. */
const power = 0.8;
const mostPairs = 4_000_000;
const dayMs = 86_400_000;

/** The comparison of two sides or more, each with at least one pig. @param level between 0 and 1 */
export function resultOf(
  kind: "indicator" | "scale",
  sides: readonly AnsweredSide[],
  between: Between,
  level: number,
): Result {
  const [first, second, third] = sides;
  if (first === undefined || second === undefined) throw new RangeError("two sides are needed");
  if (third === undefined)
    return kind === "indicator"
      ? sharesOf(first, second, between, level)
      : scoresOf(valuesOf(first), valuesOf(second), level);
  return kind === "indicator" && between === "visits" ? trendOf(sides) : ranksOf(sides);
}

export const valuesOf = ({ answers }: AnsweredSide): number[] => answers.flatMap(({ value }) => value ?? []);

function sharesOf(
  first: AnsweredSide,
  second: AnsweredSide,
  between: Between,
  level: number,
): SharesCompared {
  const groups = secondAgainstFirst(first.answers, second.answers);
  const fisher = fisherExact(groups, { level });
  const difference = riskDifference(groups, { level });
  const score = riskDifference(groups, { level, method: "miettinen-nurminen" });
  const ratio = riskRatio(groups, { level });
  const by = unevenFacets([first, second], between);
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
    risk_ratio: limited(ratio.ratio, ratio.lower, ratio.upper),
    odds_ratio: limited(fisher.oddsRatio, fisher.lower, fisher.upper),
    stratified: by.length === 0 ? null : stratified(first.answers, second.answers, by, level),
    could_show: couldShow(groups, level),
  };
}

/** From the share of the first side, how far away the second must be to be shown. */
function couldShow({ x2, n1, n2 }: TwoGroups, level: number): SharesCompared["could_show"] {
  if (Math.max(n1, n2) > LARGEST_GROUP) return null;
  return detectableShares(n2, n1, x2 / n2, { power, alpha: 1 - level });
}

function scoresOf(first: readonly number[], second: readonly number[], level: number): ScoresCompared {
  const { p, method, superiority } = rankSumTest(second, first);
  const shift = first.length * second.length > mostPairs ? null : hodgesLehmann(second, first, { level });
  return {
    test: "mann-whitney",
    exact: method === "exact",
    p,
    superiority,
    shift: shift && { ...limited(shift.shift, shift.lower, shift.upper), method: "hodges-lehmann" },
  };
}

function trendOf(sides: readonly AnsweredSide[]): TrendCompared {
  const dates = sides.map(({ side }) => Date.parse(side.date ?? ""));
  const dated = dates.every(Number.isFinite) && new Set(dates).size === dates.length;
  const places = dated ? dates.map((date) => (date - (dates[0] ?? 0)) / dayMs) : sides.map((_, i) => i + 1);
  const { p, z } = trendTest(
    sides.map(({ answers }, index) => ({
      affected: answers.filter(({ value }) => value === 1).length,
      examined: answers.length,
      score: places[index] ?? index,
    })),
  );
  return { test: "cochran-armitage", p, z, places, unit: dated ? "days" : "order" };
}

function ranksOf(sides: readonly AnsweredSide[]): RanksCompared {
  const exact = sides.some(({ answers }) => answers.length < roughBelow);
  const { h, df, p, exactP } = kruskalWallis(sides.map(valuesOf), { exact });
  return { test: "kruskal-wallis", exact: exactP !== null, p: exactP ?? p, h, df };
}
