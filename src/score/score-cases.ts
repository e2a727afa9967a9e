/** Scores of whole cases. */
import { type Archive, type Case, unknownName } from "../cases/index.ts";
import { organById, type Scale, scales as shippedScales } from "../knowledge/index.ts";
import type { CaseScore, ScoredCase } from "./case-score.ts";
import { scoreOrgan } from "./score-organ.ts";

export interface ScoreOptions {
  /** Ids of the scales to compute. Default: those of the settings of each case. */
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
  const chosen = options.scales?.map(scaleOf);
  return {
    cases: casesOf(from).map((one) => ({
      case: one.id,
      file: one.file,
      scores: (chosen ?? one.settings.scales).map((scale) => scoreCase(one, scale)),
    })),
  };
}

/**
 * The score of one case on one scale.
 * @throws RangeError when the scale is for an organ that does not exist
 */
export function scoreCase(one: Case, scale: Scale): CaseScore {
  const organ = organById(scale.organ);
  if (organ === undefined) throw new RangeError(`scale ${scale.id}: ${unknownOrgan(scale.organ)}`);
  return scoreOrgan(scale, one.organ(organ));
}

const unknownOrgan = (id: string): string => `there is no organ "${id}"; write it as system.organ`;

/**
 * The scale with this id.
 * @throws RangeError with the nearest known id when there is none
 */
export function scaleOf(id: string): Scale {
  const scale = shippedScales.get(id);
  if (scale === undefined) throw new RangeError(unknownName(id, [...shippedScales.keys()], "scale"));
  return scale;
}

/** The cases of an archive, or the cases themselves. */
export const casesOf = (from: Archive | readonly Case[]): readonly Case[] =>
  "cases" in from ? from.cases : from;
