/** The interval of a stratum: for pigs drawn singly, of a group of known size, or of pens, as was asked for. */
import {
  type BinomialMethod,
  binomialInterval,
  clusterPrevalence,
  finiteInterval,
  oneSidedLower,
  oneSidedUpper,
  zeroUpperFinite,
} from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import { type ClusterKind, clustersOf, sharePens, tooFewClusters } from "./clusters.ts";
import type { HeadCount, NoHeadCount } from "./head-count.ts";
import { type Answered, countOf } from "./indicator-answer.ts";

/** Intervals of a proportion that hold what they promise with few pigs, the default first; others may fall to 87 % for 95. */
export const herdIntervals = ["clopper-pearson", "blaker"] as const satisfies readonly BinomialMethod[];

export type HerdInterval = (typeof herdIntervals)[number];

export type IntervalMethod = HerdInterval | "hypergeometric" | "korn-graubard";

/** A limit, 0 to 1, that holds with the whole confidence on one side. */
export interface OneSided {
  readonly limit: "lower" | "upper";
  readonly value: number;
}

/** What the pens, rooms or litters of the pigs say. */
export interface ClusterResult {
  readonly by: ClusterKind;
  /** Clusters that are recorded. */
  readonly number: number;
  /** How many times the variance is that of as many pigs drawn singly; null where it cannot be told. */
  readonly design_effect: number | null;
  /** Pigs drawn singly that these are counted as; null where it cannot be told. */
  readonly effective_size: number | null;
  /** Intraclass correlation by analysis of variance, may be negative; null where it cannot be told. */
  readonly icc: number | null;
  /** Whether there are too few clusters for the interval to be relied on. */
  readonly too_few: boolean;
}

export interface Interval {
  /** 0 to 1. */
  readonly lower: number;
  readonly upper: number;
  readonly method: IntervalMethod;
  readonly one_sided: OneSided | null;
  readonly population?: HeadCount;
  readonly clusters?: ClusterResult;
  /** What must be known to read the interval, each a clause. */
  readonly notes: readonly string[];
}

export interface IntervalChoice {
  readonly level: number;
  /** For pigs drawn singly from a large group. */
  readonly method: HerdInterval;
  /** The head count, or why there is none; only when the interval is to be that of a group of known size. */
  readonly population?: HeadCount | NoHeadCount;
  /** Only when clusters are to be counted. */
  readonly cluster?: ClusterKind;
}

/** @param answered the pigs that answered, drawn at random from one group, 1 or more */
export function intervalOf(answered: readonly Answered[], choice: IntervalChoice): Interval {
  if (choice.cluster !== undefined) return clustered(answered, choice.cluster, choice);
  const notes = sharedPens(answered);
  const { population } = choice;
  if (population === undefined) return { ...singly(answered, choice), notes };
  if ("reason" in population)
    return {
      ...singly(answered, choice),
      notes: [`the interval is that for a large group, because ${population.reason}`, ...notes],
    };
  return { ...finite(answered, population, choice), notes: [assumed(population), ...notes] };
}

function singly(answered: readonly Answered[], { level, method }: IntervalChoice) {
  const { affected: x, examined: n } = countOf(answered);
  const { lower, upper } = binomialInterval(x, n, { level, method });
  return { lower, upper, method, one_sided: oneSidedLimit(x, n, level) };
}

function finite(answered: readonly Answered[], population: HeadCount, { level }: IntervalChoice) {
  const { affected: x, examined: n } = countOf(answered);
  const { lower, upper } = finiteInterval(x, n, population.head, { level });
  const method = "hypergeometric" as const;
  return { lower, upper, method, one_sided: finiteOneSided(x, n, population.head, level), population };
}

/**
 * With confidence `level` the proportion is not above 1 - (1 - level)^(1/n) when none of n is affected, and not below
 * (1 - level)^(1/n) when all are (Clopper & Pearson 1934, one-sided).
 * @param examined 1 or more
 * @returns null when some but not all are affected
 */
function oneSidedLimit(affected: number, examined: number, level: number): OneSided | null {
  if (affected === 0) return { limit: "upper", value: oneSidedUpper(0, examined, level) };
  if (affected === examined) return { limit: "lower", value: oneSidedLower(examined, examined, level) };
  return null;
}

function finiteOneSided(x: number, n: number, head: number, level: number): OneSided | null {
  if (x === 0) return { limit: "upper", value: zeroUpperFinite(n, head, level).upper };
  if (x === n) return { limit: "lower", value: 1 - zeroUpperFinite(n, head, level).upper };
  return null;
}

const assumed = ({ head, from }: HeadCount): string =>
  `the interval is for the ${count(head, "pig")} of the group (${from}), as if each of them had the same chance to be drawn`;

/** Pigs that share pens are not drawn singly, whatever the interval says. */
export function sharedPens(answered: readonly Answered[]): string[] {
  const { counts, unrecorded } = clustersOf(answered, "pen");
  if (unrecorded > 0 || !sharePens(answered.length, counts.length)) return [];
  return [
    `${count(answered.length, "pig")} from ${count(counts.length, "pen")} are taken as drawn singly: pigs of one pen resemble each other, so the interval is too narrow`,
  ];
}

function clustered(answered: readonly Answered[], by: ClusterKind, choice: IntervalChoice): Interval {
  const { counts, unrecorded } = clustersOf(answered, by);
  const alone = singly(answered, choice);
  const number = counts.length;
  const nothing = {
    by,
    number,
    design_effect: null,
    effective_size: null,
    icc: null,
    too_few: tooFewClusters(number),
  };
  if (unrecorded > 0) {
    const where = answered.length === 1 ? "the pig" : `${unrecorded} of ${count(answered.length, "pig")}`;
    const note = `the interval is as for pigs drawn singly, because the ${by} of ${where} is not recorded`;
    return { ...alone, clusters: nothing, notes: [note] };
  }
  const found = clusterPrevalence(counts, { level: choice.level });
  const clusters = { ...nothing, design_effect: found.designEffect, icc: found.icc };
  if (answered.length > number && (found.reason === "none affected" || found.reason === "all affected"))
    return asOneEach(found.reason, number, by, clusters, choice);
  if (found.adjustedSize === null)
    return {
      ...alone,
      clusters,
      notes: answered.length < 2 ? [] : [cannotTell(found.reason, answered.length, by)],
    };
  const effective_size = Math.min(found.adjustedSize, answered.length);
  const { lower, upper } = found;
  return {
    lower,
    upper,
    method: "korn-graubard",
    one_sided: null,
    clusters: { ...clusters, effective_size },
    notes: [
      `${count(answered.length, "pig")} of ${count(number, by)} count as ${effective_size < 1 ? "fewer than 1" : Number(effective_size.toFixed(1))} drawn singly`,
      ...(tooFewClusters(number)
        ? [
            `${count(number, by)} are too few to tell how alike pigs of one ${by} are, so do not rely on the interval`,
          ]
        : []),
    ],
  };
}

/**
 * None or all affected: pigs of a pen may be as alike as can be, so each pen counts as one pig. With limits as for pigs
 * drawn singly 89 to 91 of 100 intervals held the truth where few pens are affected (docs/statistics.md).
 */
function asOneEach(
  reason: "none affected" | "all affected",
  number: number,
  by: ClusterKind,
  clusters: ClusterResult,
  { level, method }: IntervalChoice,
): Interval {
  const x = reason === "none affected" ? 0 : number;
  const { lower, upper } = binomialInterval(x, number, { level, method });
  return {
    lower,
    upper,
    method,
    one_sided: oneSidedLimit(x, number, level),
    clusters: { ...clusters, effective_size: number },
    notes: [
      `${reason}, so how alike pigs of one ${by} are cannot be told and each ${by} counts as one pig: ${count(number, by)}`,
    ],
  };
}

function cannotTell(reason: string | null, pigs: number, by: ClusterKind): string {
  if (reason === "only one cluster")
    return `all ${count(pigs, "pig")} are of one ${by}, so how much ${by}s differ cannot be told and the interval, as for pigs drawn singly, is too narrow`;
  const why =
    reason === "the clusters do not differ" ? `the ${by}s do not differ` : `${reason ?? "nothing known"}`;
  return `${why}, so how alike pigs of one ${by} are cannot be told and the interval is as for pigs drawn singly, too narrow if they are alike`;
}
