/** How bad it is in a stratum: the scores of one scale, described. */
import type { Case } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { type CaseScore, type Confidence, scoreCase } from "../score/index.ts";
import { type Summary, summarise } from "../statistics/index.ts";
import { type SeverityIntervals, type SeverityOptions, severityIntervals } from "./centre-intervals.ts";
import { herdIndices, type IndexResult } from "./herd-index.ts";
import { type IntervalChoice, type IntervalMethod, intervalOf } from "./interval.ts";
import { reachOf } from "./selection-basis.ts";
import type { Stratum, StratumOfCases } from "./strata.ts";

/** Pigs at a grade or a higher one. */
interface GradeShare {
  readonly grade: number;
  readonly pigs: number;
  /** pigs / n, 0 to 1. */
  readonly share: number;
  /** Limits of the share, 0 to 1; only where intervals were asked for. */
  readonly lower?: number;
  readonly upper?: number;
  readonly method?: IntervalMethod;
  /** What must be known to read the limits, each a clause; left out when there is nothing. */
  readonly notes?: readonly string[];
}

/** How intervals are made: of the middle for pigs drawn singly, of the shares as of any other share of these pigs. */
type ScoreIntervals = SeverityOptions & Omit<IntervalChoice, "prevalence">;

/** With more grades than this the distribution says it better. */
const mostGrades = 6;

/** Mean, median, quartiles, least and greatest are in points of the scale (or its `unit`); null when n is 0 or the scale is nominal. */
export interface HerdScores extends Summary, Partial<SeverityIntervals> {
  /** Id of the scale. */
  readonly scale: string;
  readonly title: string;
  readonly unit?: string;
  /** Least and greatest value of the scale. */
  readonly range: readonly [number, number];
  /** The grades are names without an order, so that pigs are counted by grade only. */
  readonly nominal?: true;
  readonly stratum: Stratum;
  /** Selection basis; null when it is not recorded. */
  readonly basis: string | null;
  /** Pigs without a score, for whatever reason; they are not in n. */
  readonly not_examined: number;
  /** Those of them whose record leaves a range of scores and no single one; left out when there are none. */
  readonly range_only?: number;
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
  intervals?: ScoreIntervals,
): HerdScores {
  const read = cases.map((one) => ({ one, score: scoreCase(one, scale) }));
  const scored = read.flatMap(({ score }) => (score.value === null ? [] : [score]));
  const pigs = read.flatMap(({ one, score: { value } }) => (value === null ? [] : [{ one, value }]));
  const values = pigs.map(({ value }) => value);
  const rangeOnly = read.filter(({ score }) => score.bounds !== undefined).length;
  const { n, distribution, ...centre } = summarise(values);
  const { unit, not_comparable } = scale;
  const source = sourceOf(scale, scored);
  return {
    scale: scale.id,
    title: scale.title,
    ...(unit !== undefined && { unit }),
    range: [scale.range[0], scale.range[1]],
    ...(scale.nominal && { nominal: true }),
    stratum,
    basis,
    n,
    not_examined: cases.length - n,
    ...(rangeOnly > 0 && { range_only: rangeOnly }),
    ...(scale.nominal ? noCentre : centre),
    distribution,
    ...(intervals !== undefined && !scale.nominal && severityIntervals(values, scale.range, intervals)),
    ...affected(scale, values),
    ...atOrAbove(scale, pigs, intervals && { ...intervals, prevalence: reachOf(basis).prevalence }),
    indices: herdIndices(scale, values, { basis, slaughtered: cases.every(wasSlaughtered) }),
    confidence: source.confidence,
    source: source.cite,
    ...(source.note !== undefined && { note: source.note }),
    ...(not_comparable !== undefined && { not_comparable }),
  };
}

const noCentre = { mean: null, median: null, q1: null, q3: null, min: null, max: null };

/** Who says so: of scores that all were written down as grades, who says so of the grade. */
function sourceOf({ source, grade_source: ofGrade }: Scale, scored: readonly CaseScore[]): Scale["source"] {
  const allGraded = scored.length > 0 && scored.every((score) => score.from_grade);
  return allGraded && ofGrade !== undefined ? ofGrade : source;
}

/** Severity among the affected: sum of the scores above the normal one / number of those pigs (common practice). */
function affected(
  { when_normal, range, nominal }: Scale,
  values: readonly number[],
): Pick<HerdScores, "affected"> {
  if (when_normal === undefined) return {};
  const { n, mean } = summarise(values.filter((value) => value > Math.max(0, range[0])));
  return { affected: { pigs: n, mean: nominal ? null : mean } };
}

interface Scored {
  readonly one: Case;
  readonly value: number;
}

function atOrAbove(
  { whole, nominal, range: [lowest, highest] }: Scale,
  scored: readonly Scored[],
  choice: IntervalChoice | undefined,
): Pick<HerdScores, "at_or_above"> {
  const grades = highest - lowest;
  if (whole !== true || nominal || grades > mostGrades || scored.length === 0) return {};
  return {
    at_or_above: Array.from({ length: grades }, (_, index) => gradeShare(lowest + index + 1, scored, choice)),
  };
}

function gradeShare(
  grade: number,
  scored: readonly Scored[],
  choice: IntervalChoice | undefined,
): GradeShare {
  const answered = scored.map(({ one, value }) => ({ one, yes: value >= grade }));
  const pigs = answered.filter(({ yes }) => yes).length;
  const share = { grade, pigs, share: pigs / scored.length };
  if (choice === undefined) return share;
  const { lower, upper, method, notes } = intervalOf(answered, choice);
  return { ...share, lower, upper, method, ...(notes.length > 0 && { notes }) };
}

const wasSlaughtered = (one: Case): boolean => one.record.death?.manner === "slaughtered";
