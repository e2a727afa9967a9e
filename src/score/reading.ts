/** What could be read of one thing that a scale needs. */
import type { Scale } from "../knowledge/index.ts";
import { listing } from "../words/listing.ts";

export interface Reading {
  readonly value: number | null;
  /** The path that is missing. */
  readonly missing?: string;
  /** Why what is written cannot be used. */
  readonly reason?: string;
}

/** Full path of an observation of the scale's organ. */
export const pathIn = (scale: Scale, below: string): string => `${scale.organ}.${below}`;

/** A written value, as the sentences show it. */
export const shown = (raw: unknown): string =>
  Array.isArray(raw)
    ? listing(raw.map(String))
    : typeof raw === "object"
      ? "not a single value"
      : String(raw);

/**
 * Why a value does not fit a scale, or undefined when it does.
 * @param lowest lowest value allowed; @param highest highest value allowed; @param whole only whole numbers are
 */
export function misfit(value: number, lowest: number, highest: number, whole: boolean): string | undefined {
  if (!(value >= lowest && value <= highest)) return `out of range for this scale (${lowest} to ${highest})`;
  if (whole && !Number.isInteger(value)) return "a fraction, and this scale has whole grades only";
  return undefined;
}
