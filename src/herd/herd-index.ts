/** Published herd indices of a scale, classed only where the pigs can stand for a herd. */
import type { HerdIndex, Scale } from "../knowledge/index.ts";
import { type Confidence, classOf } from "../score/index.ts";
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
    return {
      id: index.id,
      title: index.title,
      value,
      unit: index.statistic === "share" ? ("share" as const) : ("points" as const),
      class: withheld === undefined ? classOf(index.classes, value, index.round) : null,
      ...(withheld !== undefined && { no_class: withheld }),
      ...(index.population !== undefined && { population: index.population }),
      confidence: index.source.confidence,
      source: index.source.cite,
      ...(index.note !== undefined && { note: index.note }),
    };
  });
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
