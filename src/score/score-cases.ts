/** Scores of whole cases. */
import { type Archive, allShipped, type Case } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { scales as shippedScales } from "../knowledge/scales.ts";
import type { CaseScore, ScoredCase } from "./case-score.ts";
import { scalesInUse } from "./in-use.ts";
import { scoreOrgan } from "./score-organ.ts";
import { stateFor } from "./state-for.ts";
import { unknownScale } from "./unknown-scale.ts";

export interface ScoreOptions {
  /** Ids of the scales to compute. Default: those of the settings of each case, or those in use (see `scalesInUse`). */
  readonly scales?: readonly string[];
}

/**
 * Every score of every case, in the order of the cases and of the scales.
 * @throws RangeError when an id names no scale
 */
export function scoreCases(
  from: Archive | readonly Case[],
  options: ScoreOptions = {},
): { readonly cases: readonly ScoredCase[] } {
  const cases = casesOf(from);
  checkScales(cases, options.scales);
  const inUse = scalesInUse(cases);
  return {
    cases: cases.map((one) => ({
      case: one.id,
      file: one.file,
      scores: scalesOf(one, inUse, options.scales).map((scale) => scoreCase(one, scale)),
    })),
  };
}

/**
 * The score of one case on one scale.
 * @throws RangeError when the scale is for an organ that does not exist
 */
export const scoreCase = (one: Case, scale: Scale): CaseScore => scoreOrgan(scale, stateFor(one, scale));

/** The scale that a case means by a name: one that ships, or one of the practice's own. */
export const scaleNamed = (one: Case, id: string): Scale | undefined =>
  shippedScales.get(id) ?? one.settings.houseScales.get(id);

/** The scales of a case: those asked for that it knows, those that its settings name, or else those in use. */
export function scalesOf(
  one: Case,
  inUse: (one: Case) => readonly Scale[],
  asked?: readonly string[],
): readonly Scale[] {
  const ids = asked ?? one.settings.scales;
  if (ids === undefined) return inUse(one);
  return [...new Set(ids.flatMap((id) => (id === allShipped ? inUse(one) : (scaleNamed(one, id) ?? []))))];
}

/** @throws RangeError with the nearest known name when a name is no scale of any case */
export function checkScales(cases: readonly Case[], asked: readonly string[] | undefined): void {
  const known = new Set([...shippedScales.keys(), allShipped]);
  for (const { settings } of cases) for (const id of settings.houseScales.keys()) known.add(id);
  const unknown = asked?.find((id) => !known.has(id));
  if (unknown !== undefined) throw new RangeError(unknownScale(unknown, [...known]));
}

/** The cases of an archive, or the cases themselves. */
export const casesOf = (from: Archive | readonly Case[]): readonly Case[] =>
  "cases" in from ? from.cases : from;
