/** Results of the laboratory as yes/no questions of pigs, and pools beside them: positive of tested, by agent and test. */
import type { Case } from "../cases/index.ts";
import { agentName } from "../knowledge/agents.ts";
import type { Indicator } from "../knowledge/index.ts";
import { fact, type PlacedResult, resultsOf, samplesOf } from "../record/index.ts";
import { pooledPrevalence } from "../statistics/index.ts";
import { type Estimate, type EstimateChoice, estimate } from "./estimate.ts";
import type { ResultQuestion } from "./result-answer.ts";
import { standingOf } from "./standing.ts";
import { type Dimension, type StratumOfCases, strata } from "./strata.ts";

/** `pcr:mycoplasma-hyopneumoniae` */
const idOf = (test: string, agent: string): string => `${test}:${agent}`;

/** Positive and negative say something of an agent; nothing else counts as tested. */
const isAnswer = ({ entry }: PlacedResult): boolean =>
  entry.agent !== undefined && (entry.interpretation === "positive" || entry.interpretation === "negative");

/** A question for each agent and test that the visit of a case has a clear result of, by its id. */
export const resultIndicators = ({ visit }: Case): ReadonlyMap<string, Indicator> =>
  visit === undefined || visit.results.length === 0 ? none : ofVisit(visit);

const none: ReadonlyMap<string, Indicator> = new Map();
const ofVisit = fact(
  (visit: NonNullable<Case["visit"]>): ReadonlyMap<string, Indicator> =>
    new Map(
      resultsOf(visit)
        .filter(isAnswer)
        .flatMap(({ entry: { test, agent } }) =>
          agent === undefined
            ? []
            : [
                [
                  idOf(test, agent),
                  { title: `${agentName(agent)}, ${test}`, result: { agent, test } },
                ] as const,
              ],
        )
        .sort(([a], [b]) => (a < b ? -1 : 1)),
    ),
);

/** The question of this name: of the settings, or of the results of the visit. */
export const indicatorNamed = (one: Case, id: string): Indicator | undefined =>
  one.settings.indicators.get(id) ?? resultIndicators(one).get(id);

/** Pools of one agent and test. */
export interface PoolCount {
  readonly pools: number;
  readonly positive: number;
  /** Pigs in each; null where the pools are not of one size. */
  readonly size: number | null;
  /** Share of pigs, maximum likelihood; null where it is withheld. */
  readonly prevalence: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Why the share is withheld, a clause; null when it is not. */
  readonly withheld: string | null;
}

export interface ResultCount extends Estimate {
  readonly test: string;
  readonly agent: string;
  /** Left out where no pool was tested. */
  readonly pools?: PoolCount;
}

interface CountOptions {
  readonly by: readonly Dimension[];
  readonly choiceOf: (cell: StratumOfCases, by: readonly Dimension[]) => EstimateChoice;
}

/** In the order of the strata, then by test and agent; only what was tested in the stratum. */
export const resultCounts = (all: readonly Case[], { by, choiceOf }: CountOptions): ResultCount[] =>
  strata(all, by).flatMap((cell) => {
    const asked = new Map(cell.cases.flatMap((one) => [...resultIndicators(one)]));
    return [...asked]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .flatMap(([id, indicator]) => {
        const { result } = indicator;
        if (result?.test === undefined) return [];
        const { agent, test } = result;
        const { test: _ofEye, ...choice } = choiceOf(cell, by);
        const accuracy = accuracyOf(cell.cases, test, agent);
        const isPlain = choice.population === undefined && choice.cluster === undefined;
        const standing = standingOf(cell, all, by);
        const counted = estimate(id, indicator, cell, standing, {
          ...choice,
          ...(accuracy !== undefined && isPlain && { test: accuracy }),
        });
        const pools = poolsIn(cell, result, {
          level: choice.level,
          withheld:
            standing.for === "group" ? null : "it is known for pigs drawn at random from one group only",
          accuracy,
        });
        if (counted.examined + counted.not_graded === 0 && pools === undefined) return [];
        return [{ ...counted, test, agent, ...(pools !== undefined && { pools }) }];
      });
  });

/** How the test errs, where the settings of all these pigs say the same. */
function accuracyOf(cases: readonly Case[], test: string, agent: string) {
  const [first, ...others] = new Set(cases.map(({ settings }) => settings.tests[test]?.[agent]));
  return others.length === 0 ? first : undefined;
}

interface PoolReading {
  readonly level: number;
  readonly withheld: string | null;
  readonly accuracy: { readonly sensitivity: number; readonly specificity: number } | undefined;
}

/** Pools of which every pig is in the stratum. */
function poolsIn(
  { cases }: StratumOfCases,
  { agent, test }: ResultQuestion,
  { level, withheld, accuracy }: PoolReading,
): PoolCount | undefined {
  const owners = new Map(
    cases.flatMap((one) =>
      samplesOf(one).map(({ sample }) => [`${one.visit?.folder} ${sample.id}`, { one, sample }] as const),
    ),
  );
  const visits = new Set(cases.flatMap(({ visit }) => visit ?? []));
  const found = [...visits].flatMap((visit) =>
    resultsOf(visit)
      .filter((result) => result.isPool && result.entry.agent === agent && result.entry.test === test)
      .filter(isAnswer)
      .flatMap(({ entry, samples }) => {
        const of = samples.map((id) => owners.get(`${visit.folder} ${id}`));
        const pigs = new Set(
          of.flatMap((own) => (own === undefined ? [] : [own.one.id, ...(own.sample.pooled_with ?? [])])),
        );
        const areHere = of.every((own) => own !== undefined);
        return areHere ? [{ isPositive: entry.interpretation === "positive", size: pigs.size }] : [];
      }),
  );
  if (found.length === 0) return undefined;
  const positive = found.filter(({ isPositive }) => isPositive).length;
  const sizes = new Set(found.map(({ size }) => size));
  const [size = 1] = sizes;
  const counts = { pools: found.length, positive, size: sizes.size === 1 ? size : null };
  const why =
    withheld ??
    (sizes.size > 1 ? "the pools are not of one size" : found.length < 2 ? "one pool gives no share" : null);
  if (why !== null) return { ...counts, prevalence: null, lower: null, upper: null, withheld: why };
  const { prevalence, lower, upper } = pooledPrevalence(positive, found.length, size, { level, ...accuracy });
  return { ...counts, prevalence, lower, upper, withheld: null };
}
