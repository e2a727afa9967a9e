/** Published herd indices of a scale, classed only where the pigs can stand for a herd. */
import type { HerdIndex, Scale } from "../knowledge/index.ts";
import { type Confidence, classOf, decimalsInClass, rangeDecimals } from "../score/index.ts";
import { count } from "../words/listing.ts";
import { indexValue } from "./index-value.ts";
import { reachOf } from "./wording.ts";

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
  pigs: { readonly basis: string | null; readonly slaughtered: boolean },
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
  { basis, slaughtered }: { basis: string | null; slaughtered: boolean },
): string | undefined {
  const reach = reachOf(basis);
  if (!reach.prevalence) return `these pigs (${reach.title}) do not stand for a herd`;
  if (population !== undefined && !slaughtered) return `the classes were made from ${population}`;
  return undefined;
}
