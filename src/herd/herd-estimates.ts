/** How common and how bad, by visit, group, age class, and always by how the pigs were chosen. */
import { type Archive, type Case, unknownName } from "../cases/index.ts";
import type { Indicator, Scale } from "../knowledge/index.ts";
import { casesOf, checkScales, scalesInUse, scalesOf } from "../score/index.ts";
import { type Estimate, estimate } from "./estimate.ts";
import { type HerdScores, herdScores } from "./herd-scores.ts";
import { type Dimension, dimensions, type StratumOfCases, strata } from "./strata.ts";

export interface HerdOptions {
  /** What to split by. Default: visit, group and age class. Selection basis always splits. */
  readonly by?: readonly Dimension[];
  /** Confidence level, between 0 and 1. Default: that of the settings (the highest, should they differ). */
  readonly level?: number;
  /** Ids of the indicators. Default: all of the settings. */
  readonly indicators?: readonly string[];
  /** Ids of the scales. Default: those of the settings. */
  readonly scales?: readonly string[];
}

export interface HerdReport {
  readonly estimates: readonly Estimate[];
  readonly scores: readonly HerdScores[];
}

/**
 * Estimates and scores of every stratum, stratum by stratum.
 * @throws RangeError when an id names no indicator or scale, or the level is not between 0 and 1
 */
export function herdEstimates(from: Archive | readonly Case[], options: HerdOptions = {}): HerdReport {
  const cases = casesOf(from);
  const { by = dimensions, level } = options;
  if (level !== undefined && !(level > 0 && level < 1))
    throw new RangeError(`level must lie strictly between 0 and 1 (0.95 for 95 %), got ${level}`);
  checkIndicators(cases, options.indicators);
  checkScales(cases, options.scales);
  const cells = strata(cases, by);
  const inUse = scalesInUse(cases);
  return {
    estimates: cells.flatMap((cell) =>
      questionsOf(cell, options.indicators).map(({ id, indicator, cases: asked }) =>
        estimate(id, indicator, { ...cell, cases: asked }, by, level ?? levelOf(asked)),
      ),
    ),
    scores: cells.flatMap((cell) =>
      scalesIn(cell, inUse, options.scales).map(({ scale, cases: scored }) =>
        herdScores(scale, { ...cell, cases: scored }),
      ),
    ),
  };
}

const levelOf = (cases: readonly Case[]): number => Math.max(...cases.map((one) => one.settings.level));

function checkIndicators(cases: readonly Case[], asked: readonly string[] | undefined): void {
  const known = new Set(cases.flatMap((one) => [...one.settings.indicators.keys()]));
  const unknown = asked?.find((id) => !known.has(id));
  if (unknown !== undefined && cases.length > 0)
    throw new RangeError(unknownName(unknown, [...known], "indicator"));
}

/** The indicators of a stratum, each with the cases whose settings have it in the same form. */
function questionsOf({ cases }: StratumOfCases, asked: readonly string[] | undefined) {
  const questions = new Map<string, { id: string; indicator: Indicator; cases: Case[] }>();
  for (const one of cases)
    for (const [id, indicator] of one.settings.indicators) {
      if (asked !== undefined && !asked.includes(id)) continue;
      const own = indicator.score && one.settings.houseScales.get(indicator.score.scale);
      const key = JSON.stringify([id, indicator, own]);
      const known = questions.get(key);
      if (known === undefined) questions.set(key, { id, indicator, cases: [one] });
      else known.cases.push(one);
    }
  const found = [...questions.values()];
  return asked === undefined ? found : asked.flatMap((id) => found.filter((question) => question.id === id));
}

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
