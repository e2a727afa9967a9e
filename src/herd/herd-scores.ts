/** How bad it is in a stratum: the scores of one scale, described. */
import type { Case } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { type Confidence, scoreCase } from "../score/index.ts";
import { type BinomialMethod, type Summary, summarise } from "../statistics/index.ts";
import { herdIndices, type IndexResult } from "./herd-index.ts";
import { type SeverityIntervals, type SeverityOptions, severityIntervals, shareLimits } from "./severity.ts";
import type { Stratum, StratumOfCases } from "./strata.ts";

/** Pigs at a grade or a higher one. */
export interface GradeShare {
  readonly grade: number;
  readonly pigs: number;
  /** pigs / n, 0 to 1. */
  readonly share: number;
  /** Limits of the share, 0 to 1; only where intervals were asked for. */
  readonly lower?: number;
  readonly upper?: number;
  readonly method?: BinomialMethod;
}

/** With more grades than this the distribution says it better. */
const mostGrades = 6;

/** Mean, median, quartiles, least and greatest are in points of the scale (or its `unit`); null when n is 0. */
export interface HerdScores extends Summary, Partial<SeverityIntervals> {
  /** Id of the scale. */
  readonly scale: string;
  readonly title: string;
  readonly unit?: string;
  readonly stratum: Stratum;
  /** Selection basis; null when it is not recorded. */
  readonly basis: string | null;
  /** Pigs without a score, for whatever reason; they are not in n. */
  readonly not_examined: number;
  /** Pigs above the lowest score, and the mean of their scores alone; left out where a scale has no normal score. */
  readonly affected?: { readonly pigs: number; readonly mean: number | null };
  /** Of scales with few whole grades: the pigs at each grade or a higher one, from the second grade up. */
  readonly at_or_above?: readonly GradeShare[];
  readonly indices: readonly IndexResult[];
  readonly confidence: Confidence;
  /** Citation of the scale. */
  readonly source: string;
  readonly note?: string;
  /** Scales whose values look alike and must not be compared with these. */
  readonly not_comparable?: readonly string[];
}

/** Describes the scores of one scale over a stratum; with intervals where it is said how. */
export function herdScores(
  scale: Scale,
  { stratum, basis, cases }: StratumOfCases,
  intervals?: SeverityOptions,
): HerdScores {
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
    ...(intervals !== undefined && severityIntervals(values, scale.range, intervals)),
    ...affected(scale, values),
    ...atOrAbove(scale, values, intervals),
    indices: herdIndices(scale, values, { basis, slaughtered: cases.every(wasSlaughtered) }),
    confidence: source.confidence,
    source: source.cite,
    ...(source.note !== undefined && { note: source.note }),
    ...(not_comparable !== undefined && { not_comparable }),
  };
}

/** Severity among the affected: sum of the scores above the normal one / number of those pigs (common practice). */
function affected({ when_normal, range }: Scale, values: readonly number[]): Pick<HerdScores, "affected"> {
  if (when_normal === undefined) return {};
  const { n, mean } = summarise(values.filter((value) => value > Math.max(0, range[0])));
  return { affected: { pigs: n, mean } };
}

function atOrAbove(
  { whole, range: [lowest, highest] }: Scale,
  values: readonly number[],
  intervals: SeverityOptions | undefined,
): Pick<HerdScores, "at_or_above"> {
  const grades = highest - lowest;
  if (whole !== true || grades > mostGrades || values.length === 0) return {};
  return {
    at_or_above: Array.from({ length: grades }, (_, index) => {
      const grade = lowest + index + 1;
      const pigs = values.filter((value) => value >= grade).length;
      const share = { grade, pigs, share: pigs / values.length };
      return intervals === undefined ? share : { ...share, ...shareLimits(pigs, values.length, intervals) };
    }),
  };
}

const wasSlaughtered = (one: Case): boolean => one.record.death?.manner === "slaughtered";
