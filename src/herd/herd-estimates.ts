/** How common and how bad, by visit, group, age class, and always by how the pigs were chosen. */
import type { Archive, Case } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { casesOf, checkScales, scalesInUse } from "../score/index.ts";
import { grouped } from "../words/grouped.ts";
import { type HerdAnswer, herdAnswers } from "./answers.ts";
import { type CombinedEstimate, combinedEstimates } from "./combined-estimates.ts";
import { type Estimate, type EstimateChoice, estimate } from "./estimate.ts";
import { headCount } from "./head-count.ts";
import { type HerdScores, herdScores } from "./herd-scores.ts";
import { checkIndicators, indicatorsIn, scalesIn } from "./indicators-and-scales.ts";
import { checkOptions, type HerdOptions } from "./options.ts";
import { type ResultCount, resultCounts } from "./result-counts.ts";
import { standingOf } from "./standing.ts";
import { type Dimension, dimensions, farmFolder, type StratumOfCases, strata } from "./strata.ts";
import { type ToldFirst, toldFirst } from "./told-first.ts";

export interface HerdReport {
  /** The answer in sentences: of what a visit asked, and of one indicator an organ. */
  readonly answers: readonly HerdAnswer[];
  readonly told_first: ToldFirst;
  readonly estimates: readonly Estimate[];
  readonly scores: readonly HerdScores[];
  /** Positive of tested, where laboratories answered. */
  readonly results?: readonly ResultCount[];
  /** Groups taken together with weights; only when asked for. */
  readonly combined?: readonly CombinedEstimate[];
}

/**
 * Estimates and scores of every stratum, stratum by stratum.
 * @throws RangeError when an id names no indicator or scale, the level is not between 0 and 1, or options do not go together
 */
export function herdEstimates(from: Archive | readonly Case[], options: HerdOptions = {}): HerdReport {
  const cases = casesOf(from);
  const { by = dimensions, indicators, interval: method = "clopper-pearson", seed } = options;
  checkOptions(options);
  checkIndicators(cases, indicators);
  checkScales(cases, options.scales);
  const cells = strata(cases, by);
  const inUse = scalesInUse(cases);
  const levelOf = (some: readonly Case[]): number => options.level ?? highestLevel(some);
  const choiceOf = (cell: StratumOfCases, split = by): EstimateChoice => ({
    level: levelOf(cell.cases),
    method,
    ...(options.finite === true && { population: headCount(cell, cases, split) }),
    ...(options.cluster !== undefined && { cluster: options.cluster }),
    ...(options.test !== undefined && { test: options.test }),
  });
  const estimates = cells.flatMap((whole) =>
    indicatorsIn(whole, indicators).map(({ id, indicator, cell }) =>
      estimate(id, indicator, cell, standingOf(cell, cases, by), choiceOf(cell)),
    ),
  );
  const pigs = new Map<Scale, number>();
  const scores = cells.flatMap((whole) =>
    scalesIn(whole, inUse, options.scales).map(({ scale, cell }) => {
      const found = herdScores(scale, cell, standingOf(cell, cases, by), {
        ...choiceOf(cell),
        ...(seed !== undefined && { seed }),
      });
      pigs.set(scale, (pigs.get(scale) ?? 0) + found.n);
      return found;
    }),
  );
  const first = toldFirst(
    cases,
    estimates,
    [...pigs].map(([scale, used]) => ({ scale, pigs: used })),
    options,
  );
  // Who names indicators asks for nothing else.
  const results =
    indicators === undefined ? resultCounts(cases, { by: options.by ?? ["visit"], choiceOf }) : [];
  return {
    answers: herdAnswers(cases, {
      by: options.by ?? ["visit"],
      indicators: first.indicators,
      choiceOf,
    }),
    told_first: first,
    estimates,
    scores,
    ...(results.length > 0 && { results }),
    ...(options.combine === true && {
      combined: combinedEstimates(cases, { by, choiceOf, ...(indicators !== undefined && { indicators }) }),
    }),
  };
}

/** The confidence level of the settings: the highest, should they differ; 0.95 when there are no cases. */
export const highestLevel = (cases: readonly Case[]): number =>
  cases.length === 0 ? 0.95 : Math.max(...cases.map((one) => one.settings.level));

export type GroupDimension = Dimension | "farm";
export const groupDimensions: readonly GroupDimension[] = ["group", "visit", "farm", "age_class"];

export interface GroupOptions {
  /** What to split by; selection basis always splits. */
  readonly by: readonly GroupDimension[];
  /** Ids of the scales. Default: as for `scoreCases`. */
  readonly scales?: readonly string[];
}

/**
 * Scores of every group on every scale, in the order of the groups. Pigs that were chosen in different ways are never
 * taken together.
 * @throws RangeError when an id names no scale
 */
export function groupScores(from: Archive | readonly Case[], options: GroupOptions): HerdScores[] {
  const cases = casesOf(from);
  checkScales(cases, options.scales);
  const inUse = scalesInUse(cases);
  const by = options.by.filter((one) => one !== "farm");
  const farms = options.by.includes("farm")
    ? [...grouped(cases, farmFolder).values()].map((some) => ({
        farm: { farm: some[0].farm?.id ?? null },
        cases: some,
      }))
    : [{ farm: {}, cases }];
  return farms.flatMap(({ farm, cases: ofFarm }) =>
    strata(ofFarm, by).flatMap((whole) =>
      scalesIn(whole, inUse, options.scales).map(({ scale, cell }) =>
        herdScores(scale, { ...cell, stratum: { ...farm, ...cell.stratum } }, standingOf(cell, cases, by)),
      ),
    ),
  );
}
