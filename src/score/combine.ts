/** From the parts of a scale to its value. */
import type { Scale } from "../knowledge/index.ts";
import { withoutFloatError } from "./float-error.ts";

/**
 * The value of the scale. Parts of a weighted sum come weighted (see `readPart`), so both kinds of sum add up.
 * @param values of all parts, none missing
 * @returns in the range of the scale; undefined when the scale has rules and none fits
 */
export function combine(scale: Scale, values: readonly number[]): number | undefined {
  if (scale.combine !== "rules") return withoutFloatError(values.reduce((sum, value) => sum + value, 0));
  return scale.rules?.find((rule) => values.filter((value) => value >= rule.at_least).length >= rule.parts)
    ?.value;
}
