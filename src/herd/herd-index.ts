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
  /** Null without classes or value, and for pigs whose choice does not allow to class a herd by them. */
  readonly class: string | null;
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
 * @param basis how these pigs were chosen; null when it is not recorded
 */
export function herdIndices(scale: Scale, values: readonly number[], basis: string | null): IndexResult[] {
  return (scale.indices ?? []).map((index) => {
    const value = indexValue(index, values);
    const reach = reachOf(basis);
    const withheld = index.classes !== undefined && !reach.prevalence;
    const notes = [index.note, withheld ? whyNoClass(index, reach.title) : undefined].filter(
      (note) => note !== undefined,
    );
    return {
      id: index.id,
      title: index.title,
      value,
      unit: index.statistic === "share" ? ("share" as const) : ("points" as const),
      class: withheld ? null : classOf(index.classes, value, index.round),
      ...(index.population !== undefined && { population: index.population }),
      confidence: index.source.confidence,
      source: index.source.cite,
      ...(notes.length > 0 && { note: notes.join(" ") }),
    };
  });
}

function whyNoClass({ population }: HerdIndex, chosen: string): string {
  const made = population === undefined ? "whole herds" : `other pigs (${population})`;
  return `No class: these pigs (${chosen}) do not stand for a herd, and the classes were made from ${made}.`;
}
