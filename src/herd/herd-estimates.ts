/** How common and how bad, by visit, group, age class, and always by how the pigs were chosen. */
import type { Archive, Case } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { casesOf, checkScales, scalesInUse, scalesOf } from "../score/index.ts";
import { checkChoices } from "./check-choices.ts";
import { type CombinedEstimate, combinedEstimates } from "./combine.ts";
import { type Estimate, estimate } from "./estimate.ts";
import { headCount } from "./head-count.ts";
import type { HerdOptions } from "./herd-options.ts";
import { type HerdScores, herdScores } from "./herd-scores.ts";
import { checkIndicators, questionsOf } from "./questions.ts";
import { dimensions, type StratumOfCases, strata } from "./strata.ts";

export interface HerdReport {
  readonly estimates: readonly Estimate[];
  readonly scores: readonly HerdScores[];
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
  checkChoices(options);
  checkIndicators(cases, indicators);
  checkScales(cases, options.scales);
  const cells = strata(cases, by);
  const inUse = scalesInUse(cases);
  const levelOf = (some: readonly Case[]): number => options.level ?? highestLevel(some);
  const choiceOf = (cell: StratumOfCases, some: readonly Case[]) => ({
    level: levelOf(some),
    method,
    ...(options.finite === true && { population: headCount(cell, cases, by) }),
    ...(options.cluster !== undefined && { cluster: options.cluster }),
  });
  return {
    estimates: cells.flatMap((cell) =>
      questionsOf(cell, indicators).map(({ id, indicator, cases: asked }) => {
        const stratum = { ...cell, cases: asked };
        return estimate(id, indicator, stratum, by, {
          ...choiceOf(cell, asked),
          ...(options.test !== undefined && { test: options.test }),
        });
      }),
    ),
    scores: cells.flatMap((cell) =>
      scalesIn(cell, inUse, options.scales).map(({ scale, cases: scored }) =>
        herdScores(
          scale,
          { ...cell, cases: scored },
          { ...choiceOf(cell, scored), ...(seed !== undefined && { seed }) },
        ),
      ),
    ),
    ...(options.combine === true && {
      combined: combinedEstimates(cases, { by, levelOf, ...(indicators !== undefined && { indicators }) }),
    }),
  };
}

/** The confidence level of the settings: the highest, should they differ; 0.95 when there are no cases. */
export const highestLevel = (cases: readonly Case[]): number =>
  cases.length === 0 ? 0.95 : Math.max(...cases.map((one) => one.settings.level));

/** The scales of a stratum, each with the cases that know it in the same form. */
export function scalesIn(
  { cases }: StratumOfCases,
  inUse: (one: Case) => readonly Scale[],
  asked: readonly string[] | undefined,
) {
  const used = new Map<Scale, Case[]>();
  for (const one of cases)
    for (const scale of scalesOf(one, inUse, asked)) used.set(scale, [...(used.get(scale) ?? []), one]);
  // A shipped scale that is in use for one pig is asked of all that name no scales, so that the others count as not examined.
  const optional = (scale: Scale): boolean => asked === undefined && scale.by_default === "when-recorded";
  return [...used].map(([scale, scored]) => ({
    scale,
    cases: optional(scale)
      ? cases.filter((one) => one.settings.scales === undefined || scored.includes(one))
      : scored,
  }));
}
