/** The tests of all pigs together, each for itself, with their intervals; those within strata and by pens beside them. */
import {
  detectableShares,
  fisherExact,
  hodgesLehmann,
  kruskalWallis,
  largestGroup,
  permutedTrend,
  rankSumTest,
  riskDifference,
  riskRatio,
  ruleFor,
  type SharesRule,
  sharesP,
  sharesTest,
  type TwoGroups,
  trendTest,
} from "../../statistics/index.ts";
import type { Asked } from "../comparison.ts";
import { trialOf } from "../sides/arms.ts";
import type { ComparedSides } from "../sides/comparability.ts";
import { type AnsweredSide, countOf, valuesOf } from "../sides/outcomes.ts";
import type { SidePens } from "../sides/pens.ts";
import { meansByPens, scoresByPens, sharesByPens } from "./by-pens.ts";
import {
  type ArmsCompared,
  limited,
  type ManySharesCompared,
  type RanksCompared,
  type RankTrendCompared,
  type Result,
  ratio,
  type ScoresCompared,
  type SharesCompared,
  type TrendCompared,
} from "./results.ts";
import {
  placedScores,
  rankTrendWithin,
  scoresWithin,
  secondAgainstFirst,
  sharesWithin,
  trendWithin,
} from "./within-strata.ts";

/** Below this many pigs on a side the chi-squared form of Kruskal & Wallis is rough, and the ways are counted. */
const roughBelow = 5;
/** Power of `could_show`. */
const power = 0.8;
const mostPairs = 4_000_000;
const dayMs = 86_400_000;

/** The comparison of two sides or more, each with at least one pig. */
export function resultOf(compared: ComparedSides, asked: Asked): Result {
  const { between, level } = asked;
  const scored = compared.label.kind === "scale";
  if (between === "treatment") return armsOf(compared, asked);
  if (compared.sides.length < 3) return scored ? scoresOf(compared, level) : sharesOf(compared, asked);
  if (between === "visits") return scored ? rankTrendOf(compared, asked) : trendOf(compared, asked);
  return scored ? ranksOf(compared) : manySharesOf(compared);
}

/** Both sides with their pens, where at least one shares them. */
function sharing({ pens: [first, second] }: ComparedSides): [SidePens, SidePens] | null {
  if (first === undefined || second === undefined || !(first.shared || second.shared)) return null;
  return first.pens.length + second.pens.length > 2 ? [first, second] : null;
}

const answersOf = ({ sides: [first, second] }: ComparedSides) =>
  [first?.answers ?? [], second?.answers ?? []] as const;

function sharesOf(compared: ComparedSides, { level, sharesTest }: Asked): SharesCompared {
  const groups = secondAgainstFirst(...answersOf(compared));
  const rule = ruleFor(Math.max(groups.n1, groups.n2), sharesTest);
  const fisher = fisherExact(groups, { level, tails: rule === "mid-p" ? "mid-p" : "exact" });
  const difference = riskDifference(groups, { level });
  const risk = riskRatio(groups, { level });
  const { stratification } = compared;
  const pens = sharing(compared);
  return {
    test: "fisher-exact",
    rule,
    p: sharesP(groups, rule),
    p_fisher: fisher.p,
    difference: {
      ...limited(difference.difference, difference.lower, difference.upper),
      method: "zou-donner",
    },
    risk_ratio: ratio(risk.ratio, risk.lower, risk.upper),
    odds_ratio: ratio(fisher.oddsRatio, fisher.lower, fisher.upper),
    stratified: stratification && sharesWithin(stratification, level, rule),
    penned: pens && sharesByPens(pens, stratification, level),
    could_show: pens === null && stratification === null ? couldShow(groups, level, rule) : null,
  };
}

/** By what was allocated; of all of it together where arms have no stratum in common, and nothing is claimed. */
function armsOf({ label, sides, pens, stratification }: ComparedSides, asked: Asked): ArmsCompared {
  const { unit } = trialOf(sides.flatMap(({ side }) => side.cases));
  const strata = stratification?.strata.length === 0 ? null : stratification;
  return { test: "unit-means", unit, ...meansByPens(pens, strata, [0, 1], label.kind, asked) };
}

/** From the share of the first side, how far away the second must be to be shown. */
function couldShow({ x2, n1, n2 }: TwoGroups, level: number, rule: SharesRule): SharesCompared["could_show"] {
  if (Math.max(n1, n2) > largestGroup(rule)) return null;
  return detectableShares(n2, n1, x2 / n2, { power, alpha: 1 - level, rule });
}

function scoresOf(compared: ComparedSides, level: number): ScoresCompared {
  const [one, other] = answersOf(compared);
  const [first, second] = [valuesOf(one), valuesOf(other)];
  const { p, method, superiority } = rankSumTest(second, first);
  const { stratification } = compared;
  const pens = sharing(compared);
  return {
    test: "mann-whitney",
    exact: method === "exact",
    p,
    superiority,
    shift: shiftOf(first, second, level),
    stratified: stratification && scoresWithin(stratification, superiority),
    penned: pens && scoresByPens(pens, stratification),
  };
}

function shiftOf(
  first: readonly number[],
  second: readonly number[],
  level: number,
): ScoresCompared["shift"] {
  if (first.length * second.length > mostPairs) return null;
  const { shift, lower, upper, reason } = hodgesLehmann(second, first, { level });
  return { ...limited(shift, lower, upper), method: "hodges-lehmann", reason };
}

/** The first and the last of three sides or more. */
const ends = ({ sides, pens }: ComparedSides) => ({
  first: sides[0]?.answers ?? [],
  last: sides.at(-1)?.answers ?? [],
  pens: [pens[0], pens.at(-1)] as const,
});

/** How far the last visit lies from the first: by pens where pigs share them. */
function firstToLast(compared: ComparedSides, level: number): TrendCompared["first_to_last"] {
  const { first, last, pens } = ends(compared);
  const [before, after] = pens;
  const shared = before !== undefined && after !== undefined && (before.shared || after.shared);
  const byPens = shared ? sharesByPens([before, after], null, level) : null;
  if (byPens !== null) return byPens.difference;
  const { difference, lower, upper } = riskDifference(secondAgainstFirst(first, last), { level });
  return { ...limited(difference, lower, upper), method: "zou-donner" };
}

/** Places of visits on the axis of time: days since the first, or 1, 2, 3 where a date is missing or twice. */
export function placesOf(sides: readonly AnsweredSide[]): { places: number[]; unit: "days" | "order" } {
  const dates = sides.map(({ side }) => Date.parse(side.date ?? ""));
  const dated = dates.every(Number.isFinite) && new Set(dates).size === dates.length;
  return dated
    ? { places: dates.map((date) => (date - (dates[0] ?? 0)) / dayMs), unit: "days" }
    : { places: sides.map((_, i) => i + 1), unit: "order" };
}

/** Over visits by the pens, where at least one shares them. */
const trendByPens = (
  { label, pens, stratification }: ComparedSides,
  places: readonly number[],
  asked: Asked,
) =>
  pens.some(({ shared }) => shared) && stratification?.strata.length !== 0
    ? meansByPens(pens, stratification, places, label.kind, asked)
    : null;

function trendOf(compared: ComparedSides, asked: Asked): TrendCompared {
  const { sides, stratification } = compared;
  const { places, unit } = placesOf(sides);
  const groups = sides.map(({ answers }, place) => ({ ...countOf(answers), score: places[place] ?? place }));
  const { p, exactP, z } = trendTest(groups, { exact: true });
  return {
    test: "cochran-armitage",
    exact: exactP !== null,
    p: exactP ?? p,
    z,
    places,
    unit,
    first_to_last: firstToLast(compared, asked.level),
    stratified: stratification && trendWithin(stratification, places, z),
    penned: trendByPens(compared, places, asked),
  };
}

function rankTrendOf(compared: ComparedSides, asked: Asked): RankTrendCompared {
  const { sides, stratification } = compared;
  const { level, seed } = asked;
  const { places, unit } = placesOf(sides);
  const scores = placedScores(
    sides.map(({ answers }) => answers),
    places,
  );
  const { z, p, method } = permutedTrend([scores], { ranked: true, seed });
  const { first, last } = ends(compared);
  const penned = trendByPens(compared, places, asked);
  return {
    test: "cuzick",
    exact: method === "exact",
    p,
    z,
    places,
    unit,
    first_to_last: penned === null ? shiftOf(valuesOf(first), valuesOf(last), level) : null,
    stratified: stratification && rankTrendWithin(stratification, places, z, seed),
    penned,
  };
}

function manySharesOf({ sides }: ComparedSides): ManySharesCompared {
  const { chiSquared, df, p, exactP, leastExpected } = sharesTest(
    sides.map(({ answers }) => countOf(answers)),
  );
  return {
    test: "freeman-halton",
    exact: exactP !== null,
    p: exactP ?? p,
    chi_squared: chiSquared,
    df,
    least_expected: leastExpected,
  };
}

function ranksOf({ sides }: ComparedSides): RanksCompared {
  const exact = sides.some(({ answers }) => answers.length < roughBelow);
  const { h, df, p, exactP } = kruskalWallis(
    sides.map(({ answers }) => valuesOf(answers)),
    { exact },
  );
  return {
    test: "kruskal-wallis",
    exact: exactP !== null,
    p: exactP ?? p,
    h,
    df,
  };
}
