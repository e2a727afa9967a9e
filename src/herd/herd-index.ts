/** Published herd indices of a scale, classed only where the pigs can stand for a herd. */
import { clinicalPredictors, type HerdIndex, type Scale } from "../knowledge/index.ts";
import {
  type Confidence,
  classOf,
  decimalsInClass,
  rangeDecimals,
  withoutFloatError,
} from "../score/index.ts";
import { summarise } from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import { reachOf } from "./selection-basis.ts";

export interface IndexResult {
  readonly id: string;
  readonly title: string;
  /** In `unit`; null when there is nothing to compute it from. */
  readonly value: number | null;
  /** Points of the scale, or a share of the pigs from 0 to 1. */
  readonly unit: "points" | "share";
  /** Null without classes or value, and where the classes do not apply to these pigs. */
  readonly class: string | null;
  /** Why the classes do not apply. */
  readonly no_class?: string;
  /** What to know before the class is believed: it rests on fewer pigs than the method asks for. */
  readonly caution?: string;
  /** Decimals that the value is printed with, enough that it does not seem to be of another class; of a share in per cent two less. */
  readonly decimals: number;
  /** The pigs that the classes were made from. */
  readonly population?: string;
  readonly confidence: Confidence;
  /** Citation of the index and its classes. */
  readonly source: string;
  readonly note?: string;
}

/**
 * All indices of a scale.
 * @param values scores of the pigs that have one
 * @param pigs how these pigs were chosen (null when it is not recorded), and whether all of them were slaughtered
 */
export function herdIndices(
  scale: Scale,
  values: readonly number[],
  pigs: {
    readonly basis: string | null;
    readonly slaughtered: boolean;
    /** Why the pigs stand for themselves only; empty where their basis says it, null where they stand for a group. */
    readonly alone?: string | null;
  },
): IndexResult[] {
  return (scale.indices ?? []).map((index) => {
    const value = indexValue(index, values);
    const withheld = index.classes === undefined ? undefined : whyNoClass(index, pigs);
    const named = withheld === undefined ? classOf(index.classes, value, index.round) : null;
    const caution = named === null ? undefined : fewPigs(scale, values.length);
    return {
      id: index.id,
      title: index.title,
      value,
      unit: index.statistic === "share" ? ("share" as const) : ("points" as const),
      class: named,
      decimals: indexDecimals(scale, index, value),
      ...(withheld !== undefined && { no_class: withheld }),
      ...(caution !== undefined && { caution }),
      ...(index.population !== undefined && { population: index.population }),
      confidence: index.source.confidence,
      source: index.source.cite,
      ...(index.note !== undefined && { note: index.note }),
    };
  });
}

/**
 * Two decimals for a mean, one for per cent, and more where the class or the range of the scale asks for them; where the
 * value is rounded before it is classed, as it is rounded.
 */
function indexDecimals(
  { range }: Scale,
  { classes, round, statistic }: HerdIndex,
  value: number | null,
): number {
  const least = round ?? (statistic === "share" ? 3 : Math.max(2, rangeDecimals(range)));
  return value === null ? least : decimalsInClass(value, classes, least, round);
}

/** A class from fewer pigs than the scale asks for stands, but says so. */
function fewPigs({ fewest_pigs: fewest }: Scale, pigs: number): string | undefined {
  if (fewest === undefined || pigs >= fewest.value) return undefined;
  return `from ${count(pigs, "pig")}; the method asks for ${fewest.words} (${fewest.source.cite})`;
}

/** Classes speak of herds, and those made from slaughter batches of slaughtered pigs. */
function whyNoClass(
  { population }: HerdIndex,
  {
    basis,
    slaughtered,
    alone = null,
  }: { readonly basis: string | null; readonly slaughtered: boolean; readonly alone?: string | null },
): string | undefined {
  const reach = reachOf(basis);
  if (!reach.prevalence) return `these pigs (${reach.title}) do not stand for a herd`;
  if (alone !== null) return `these pigs do not stand for a herd: ${alone}`;
  if (population !== undefined && !slaughtered) return `the classes were made from ${population}`;
  return undefined;
}

/**
 * The value of an index over the scores of a stratum; all in points of the scale but `share`, which is 0 to 1.
 *
 * - mean: sum of all / n, those at the lowest value included
 * - share: pigs at `at_least` or more, or above `above` / n
 * - severity: sum of the scores of those pigs / number of those pigs
 * - sum-at-least-over-n: sum of the scores of those pigs / n. With f = share of such pigs and m their mean this is
 *   f x m (Dottori et al. 2007), and 0 when there are none
 * @param values scores of the pigs that have one
 * @returns null when there are none; for severity also when no pig reaches the limit, for a share when there is one pig
 */
export function indexValue(
  { statistic, at_least, above }: HerdIndex,
  values: readonly number[],
): number | null {
  const counts = (value: number): boolean =>
    (at_least === undefined || value >= at_least) && (above === undefined || value > above);
  const all = summarise(values);
  const reached = summarise(values.filter(counts));
  if (all.n === 0 || (statistic === "share" && all.n === 1)) return null;
  switch (statistic) {
    case "mean":
      return all.mean;
    case "share":
      return reached.n / all.n;
    case "severity":
      return reached.mean;
    case "sum-at-least-over-n":
      return summarise(values.map((value) => (counts(value) ? value : 0))).mean;
  }
}

/**
 * The herd index that farms with this much sneezing or coughing had on average: intercept + slope x per cent.
 *
 * The lines are those of Morés et al. 2001 (64 farms; R2 0.36 for sneezing, 0.45 for coughing), so that a single farm can lie
 * far from its line.
 * @param index `embrapa-index` (from sneezes) or `pneumonia-index` (from coughs)
 * @param percent sneezes or coughs in two minutes as per cent of the pigs of the batch, 0 or more; mean of three counts
 * @returns the index, in points
 * @throws RangeError when there is no line for the index, or the percentage is no number of 0 or more
 */
export function predictedIndex(index: string, percent: number): number {
  const line = clinicalPredictors.get(index);
  if (line === undefined)
    throw new RangeError(
      `there is no line for the index "${index}"; there are ${[...clinicalPredictors.keys()].join(" and ")}`,
    );
  if (!(percent >= 0 && Number.isFinite(percent)))
    throw new RangeError(`percent must be 0 or more, got ${percent}`);
  return withoutFloatError(line.intercept + line.slope * percent);
}
