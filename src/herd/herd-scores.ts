/** How bad it is in a stratum: the scores of one scale, described. */
import type { Case } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { type Confidence, scoreCase } from "../score/index.ts";
import { type Summary, summarise } from "../statistics/index.ts";
import { herdIndices, type IndexResult } from "./herd-index.ts";
import type { Stratum, StratumOfCases } from "./strata.ts";

/** Mean, median, quartiles, least and greatest are in points of the scale (or its `unit`); null when n is 0. */
export interface HerdScores extends Summary {
  /** Id of the scale. */
  readonly scale: string;
  readonly title: string;
  readonly unit?: string;
  readonly stratum: Stratum;
  /** Selection basis; null when it is not recorded. */
  readonly basis: string | null;
  /** Pigs without a score, for whatever reason; they are not in n. */
  readonly not_examined: number;
  readonly indices: readonly IndexResult[];
  readonly confidence: Confidence;
  /** Citation of the scale. */
  readonly source: string;
  readonly note?: string;
  /** Scales whose values look alike and must not be compared with these. */
  readonly not_comparable?: readonly string[];
}

/** Describes the scores of one scale over a stratum. */
export function herdScores(scale: Scale, { stratum, basis, cases }: StratumOfCases): HerdScores {
  const values = cases.flatMap((one) => scoreCase(one, scale).value ?? []);
  const { n, mean, median, q1, q3, min, max, distribution } = summarise(values);
  const { source, unit, not_comparable } = scale;
  return {
    scale: scale.id,
    title: scale.title,
    ...(unit !== undefined && { unit }),
    stratum,
    basis,
    n,
    not_examined: cases.length - n,
    mean,
    median,
    q1,
    q3,
    min,
    max,
    distribution,
    indices: herdIndices(scale, values, { basis, slaughtered: cases.every(wasSlaughtered) }),
    confidence: source.confidence,
    source: source.cite,
    ...(source.note !== undefined && { note: source.note }),
    ...(not_comparable !== undefined && { not_comparable }),
  };
}

const wasSlaughtered = (one: Case): boolean => one.record.death?.manner === "slaughtered";
