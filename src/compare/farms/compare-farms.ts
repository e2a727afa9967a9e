/** Which farm stands out? The latest visits of many farms, ranked, each against the spread of the others. */
import type { Archive, Case } from "../../cases/index.ts";
import {
  herdEstimates,
  highestLevel,
  type Share,
  shareOf,
  standingOf,
  tooFewClusters,
} from "../../herd/index.ts";
import { comparability } from "../../knowledge/index.ts";
import { casesOf } from "../../score/index.ts";
import {
  amongOthers,
  clusterPrevalence,
  holmAdjusted,
  type Place,
  requireLevel,
} from "../../statistics/index.ts";
import { type CompareOptions, clusterWord, type Reason } from "../comparison.ts";
import { agesText } from "../sentence/block-answer.ts";
import { check } from "../sides/comparability.ts";
import { narrowed } from "../sides/facets.ts";
import { type AnsweredSide, countOf, type Outcome, outcomesOf, readSide } from "../sides/outcomes.ts";
import { pensOf } from "../sides/pens.ts";
import { agesApart } from "../sides/whom.ts";
import type { FarmCount, FarmsReport, RankedFarm, Ranking, UnrankedFarm } from "./ranking.ts";
import { answerOf, reportAnswer } from "./sentence.ts";
import { type FarmSide, type FarmSides, farmSides } from "./sides.ts";

export interface FarmsOptions
  extends Pick<CompareOptions, "where" | "indicators" | "evenIf" | "cluster" | "level"> {}

/**
 * Ranks the farms by the share of affected pigs, indicator by indicator and age class by age class, and says which stand out.
 * Only pigs drawn at random, or of a whole group, are ranked; those of the latest visit that has them.
 * @throws RangeError when there are no two farms, a name does not exist, or the level is not between 0 and 1
 */
export function compareFarms(from: Archive | readonly Case[], options: FarmsOptions = {}): FarmsReport {
  const { where = {}, evenIf = [], cluster = "pen" } = options;
  const cases = narrowed(casesOf(from), where);
  const level = options.level ?? highestLevel(cases);
  requireLevel(level);
  const { ages, leftOut } = farmSides(cases);
  const indicators = options.indicators ?? herdEstimates(cases).told_first.indicators;
  const outcomes = outcomesOf(cases, { indicators });
  const asked = { all: cases, evenIf: [...evenIf, "reader" as const], cluster, level };
  const counted = outcomes.flatMap((outcome) => ages.map((age) => countedIn(age, outcome, asked)));
  const rankings = judged(counted, level);
  const tests = rankings.flatMap(({ farms }) => farms.flatMap(({ p }) => p ?? [])).length;
  const told = { tests, several: ages.length > 1 };
  const said = rankings.map((one) => ({ ...one, answer: answerOf(one, told) }));
  return {
    between: "farms",
    cluster,
    level,
    answer: reportAnswer(said),
    adjustment: { method: "holm", tests },
    rankings: said,
    left_out: leftOut,
  };
}

interface Asked extends Required<Pick<CompareOptions, "evenIf" | "cluster" | "level">> {
  readonly all: readonly Case[];
}

/** A farm that is ranked, with what its test works on. */
interface CountedFarm
  extends Omit<
    RankedFarm,
    "likely" | "p_together" | "p_spread" | "p" | "p_adjusted" | "stands_out" | "differs"
  > {
  readonly place: Place;
}

interface CountedRanking extends Omit<Ranking, "farms" | "answer"> {
  readonly farms: readonly CountedFarm[];
}

function countedIn(
  { ageClass, standing, others }: FarmSides,
  outcome: Outcome,
  asked: Asked,
): CountedRanking {
  const block = { farm: null, basis: null, mixed: false, pigs: "", prevalence: false };
  const { sides, found } =
    standing.length < 2
      ? { sides: [], found: [] }
      : check({ ...block, sides: standing }, outcome, asked.evenIf);
  const farms = standing.map((side) => {
    const answered = sides.find((one) => one.side === side) ?? readSide(side, outcome);
    return countedFarm(side, answered, asked);
  });
  const ranked = farms.flatMap((one) => ("place" in one ? one : []));
  const refused = found.filter((one) => "factor" in one);
  const reasons = ranked.length < 2 ? [tooFew(ranked)] : refused;
  const { question, title, organ, source, confidence } = outcome.label;
  return {
    question,
    title,
    organ,
    source,
    confidence,
    age_class: ageClass,
    farms: refused.length > 0 ? [] : ranked,
    others: [
      ...farms.flatMap((one) => ("place" in one ? [] : one)),
      ...others.map((side) => ({ ...countsOf(side, readSide(side, outcome)), why: null })),
    ],
    reasons,
    caveats: [
      ...found.filter((one) => !("factor" in one)),
      ...agesApart(
        sides.map(({ side }) => side),
        comparability.age_apart.days,
      ).map((ages) => ({ text: agesText(ages) })),
    ],
  };
}

/** Fewer than two farms have pigs that stand for their group. */
const tooFew = ([only]: readonly FarmCount[]): Reason => ({
  factor: "examined",
  text: `${only === undefined ? "none has" : `only ${only.farm} has`} pigs drawn at random, or a whole group, in which it was read`,
});

function countsOf({ side, date, cell }: FarmSide, { answers, not_examined }: AnsweredSide): FarmCount {
  return {
    farm: side,
    visit: cell.stratum.visit ?? null,
    date,
    basis: cell.basis,
    ...countOf(answers),
    not_examined,
  };
}

function countedFarm(
  side: FarmSide,
  answered: AnsweredSide,
  { all, cluster, level }: Asked,
): CountedFarm | UnrankedFarm {
  const { answers } = answered;
  const counts = countsOf(side, answered);
  const { pens, known, shared } = pensOf(answers, { cluster });
  const share = shareOf(
    answers.map(({ one, value }) => ({ one, yes: value === 1 })),
    side.cases.length,
    standingOf(side.cell, all, ["visit", "age_class"]),
    { level, method: "clopper-pearson", ...(shared && cluster !== "none" && { cluster }) },
  );
  const { proportion, lower, upper, method } = share;
  if (share.reach !== "prevalence" || proportion === null)
    return {
      ...counts,
      why: share.why ?? (counts.examined === 1 ? "one pig is no share" : "it was read in no pig"),
    };
  const place = shared ? penned(counts, pens.map(countOf)) : singly(counts, share);
  return {
    ...counts,
    share: proportion,
    lower,
    upper,
    method,
    counted_as: place.examined / place.effect,
    notes: share.notes,
    not_judged: shared && tooFewClusters(known) ? `${known} ${clusterWord(cluster)}s are too few` : null,
    place,
  };
}

/** Where all or none are affected it cannot be told how alike pigs of a pen are, and each pen counts as one pig. */
function penned({ affected, examined }: FarmCount, pens: readonly ReturnType<typeof countOf>[]): Place {
  const effect = clusterPrevalence(pens).designEffect ?? examined / pens.length;
  return { affected, examined, effect: Math.max(1, effect), clusters: pens.length };
}

/** Groups that were weighted count as so many pigs drawn singly, as in herd. */
function singly({ affected, examined }: FarmCount, { proportion, effective_size: size }: Share): Place {
  if (size == null || proportion === null) return { affected, examined, effect: 1, clusters: examined };
  const n = Math.max(1, Math.floor(size + 1e-9));
  return { affected: Math.round(proportion * n), examined: n, effect: 1, clusters: n };
}

/** Each farm against the others, allowing for all that were judged (Holm). */
function judged(counted: readonly CountedRanking[], level: number): Omit<Ranking, "answer">[] {
  const tested = counted.flatMap(({ farms }) => {
    if (farms.length < comparability.farms.fewest) return [];
    const found = amongOthers(farms.map(({ place }) => place));
    return farms.flatMap((farm, at) => found.slice(at, at + 1).map((one) => ({ farm, ...one })));
  });
  const tried = tested.filter(({ farm }) => farm.not_judged === null);
  const [larger, together] = [
    holmAdjusted(tried.map(({ p }) => p ?? 1)),
    holmAdjusted(tried.map(({ pTogether }) => pTogether)),
  ];
  const found = new Map(tested.map((one) => [one.farm, one]));
  const places = new Map(tried.map(({ farm }, at) => [farm, at]));
  const ranked = (counts: CountedFarm): RankedFarm => {
    const { place: _, ...farm } = counts;
    const { drawn = null, pTogether = null, pSpread = null, p = null, above } = found.get(counts) ?? {};
    const at = places.get(counts);
    const [adjusted, other] = at === undefined ? [null, null] : [larger[at] ?? 1, together[at] ?? 1];
    const said = (one: number | null) => (one === null || one >= 1 - level ? null : above ? "more" : "fewer");
    return {
      ...farm,
      likely: drawn,
      p_together: pTogether,
      p_spread: pSpread,
      p: at === undefined ? null : p,
      p_adjusted: adjusted,
      stands_out: said(adjusted),
      differs: said(other),
    };
  };
  return counted.map((ranking) => ({
    ...ranking,
    farms: ranking.farms
      .map(ranked)
      .sort((a, b) => b.share - a.share || a.farm.localeCompare(b.farm, "en", { numeric: true })),
  }));
}
