/** How bad it is in a stratum: the scores of one scale, described. */
import type { Case } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { type CaseScore, type Confidence, scoreCase } from "../score/index.ts";
import { type Summary, summarise } from "../statistics/index.ts";
import { type SeverityIntervals, type SeverityOptions, severityIntervals } from "./centre-intervals.ts";
import { herdIndices, type IndexResult } from "./herd-index.ts";
import { type Answered, withoutScore } from "./indicator-answer.ts";
import type { IntervalChoice } from "./interval.ts";
import { type Reach, type Share, type ShareMethod, shareOf } from "./share.ts";
import type { Standing } from "./standing.ts";
import type { Stratum, StratumOfCases } from "./strata.ts";

/** Pigs at a grade or a higher one. */
interface GradeShare {
  readonly grade: number;
  readonly pigs: number;
  /** 0 to 1, as that of an indicator: weighted where groups were; null of one pig. */
  readonly share: number | null;
  /** Limits of the share, 0 to 1; only where intervals were asked for, and null where the share is known exactly. */
  readonly lower?: number | null;
  readonly upper?: number | null;
  readonly method?: ShareMethod | null;
  /** What must be known to read the limits, each a clause; left out when there is nothing. */
  readonly notes?: readonly string[];
}

/** How intervals are made: of the middle for pigs drawn singly, of the shares as of any other share of these pigs. */
type ScoreIntervals = SeverityOptions & IntervalChoice;

/** With more grades than this the distribution says it better. */
const mostGrades = 6;

/** Mean, median, quartiles, least and greatest are in points of the scale (or its `unit`); null when n is 0 or the scale is nominal. */
export interface HerdScores extends Summary, Partial<SeverityIntervals> {
  /** Id of the scale. */
  readonly scale: string;
  readonly title: string;
  /** Id of the organ, or pig. */
  readonly organ: string;
  /** Two words for the head of a column. */
  readonly short: readonly string[];
  readonly unit?: string;
  /** Least and greatest value of the scale. */
  readonly range: readonly [number, number];
  /** The grades are names without an order, so that pigs are counted by grade only. */
  readonly nominal?: true;
  readonly stratum: Stratum;
  /** Selection basis; null when it is not recorded. */
  readonly basis: string | null;
  /** Whom mean and median are of: of groups taken together they are of these pigs, since they weigh none. */
  readonly reach: Reach;
  /** Pigs without a score, although the organ was looked at; they are not in n, nor are those in which it was not. */
  readonly not_graded: number;
  readonly not_examined: number;
  /** Pigs of `not_graded` whose record leaves a range of scores and no single one; left out when there are none. */
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
  standing: Standing,
  intervals?: ScoreIntervals,
): HerdScores {
  const read = cases.map((one) => ({ one, score: scoreCase(one, scale) }));
  const scored = read.flatMap(({ score }) => (score.value === null ? [] : [score]));
  const pigs = read.flatMap(({ one, score: { value } }) => (value === null ? [] : [{ one, value }]));
  const values = pigs.map(({ value }) => value);
  const ungraded = read.filter(
    ({ one, score }) => score.value === null && withoutScore(one, scale) === "not graded",
  ).length;
  const alone = aloneBecause(standing);
  const rangeOnly = read.filter(({ score }) => score.bounds !== undefined).length;
  const { n, distribution, ...centre } = summarise(values);
  const { unit, not_comparable } = scale;
  const source = sourceOf(scale, scored);
  return {
    scale: scale.id,
    title: scale.title,
    organ: scale.organ,
    short: scale.short,
    ...(unit !== undefined && { unit }),
    range: [scale.range[0], scale.range[1]],
    ...(scale.nominal && { nominal: true }),
    stratum,
    basis,
    reach: alone === null && n > 1 ? "prevalence" : "these-pigs",
    n,
    not_graded: ungraded,
    not_examined: cases.length - n - ungraded,
    ...(rangeOnly > 0 && { range_only: rangeOnly }),
    ...(scale.nominal ? noCentre : centre),
    distribution,
    ...(intervals !== undefined &&
      !scale.nominal &&
      severityIntervals(values, scale.range, intervals, known(standing, alone, cases.length - n))),
    ...affected(scale, values),
    ...atOrAbove(scale, pigs, (answered) => shareOf(answered, cases.length, standing, intervals ?? plain), {
      limits: intervals !== undefined,
    }),
    indices: herdIndices(scale, values, { basis, slaughtered: cases.every(wasSlaughtered), alone }),
    confidence: source.confidence,
    source: source.cite,
    ...(source.note !== undefined && { note: source.note }),
    ...(not_comparable !== undefined && { not_comparable }),
  };
}

/** Where no interval is asked for. */
const plain: IntervalChoice = { level: 0.95, method: "clopper-pearson" };

/** Why means are of these pigs alone, behind "because"; empty where how the pigs were chosen says it. */
function aloneBecause(standing: Standing): string | null {
  if (standing.for === "themselves") return standing.why ?? "";
  return standing.for === "groups" ? "several groups were taken together without weighting" : null;
}

/** Why a mean has no interval, though there are scores enough: it is known. */
function known(standing: Standing, alone: string | null, missing: number): string | null {
  if (standing.for === "whole")
    return missing === 0
      ? "all pigs of the group are in it"
      : "it is known of the pigs graded, and the others of the group may have any score";
  return alone === null ? null : "it is known of these pigs, and they stand for no others";
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
  share: (answered: readonly Answered[]) => Share,
  { limits }: { readonly limits: boolean },
): Pick<HerdScores, "at_or_above"> {
  const grades = highest - lowest;
  if (whole !== true || nominal || grades > mostGrades || scored.length === 0) return {};
  return {
    at_or_above: Array.from({ length: grades }, (_, index) => {
      const grade = lowest + index + 1;
      const answered = scored.map(({ one, value }) => ({ one, yes: value >= grade }));
      const pigs = answered.filter(({ yes }) => yes).length;
      const { proportion, lower, upper, method, notes } = share(answered);
      return {
        grade,
        pigs,
        share: proportion,
        ...(limits && { lower, upper, method, ...(notes.length > 0 && { notes }) }),
      };
    }),
  };
}

const wasSlaughtered = (one: Case): boolean => one.record.death?.manner === "slaughtered";
