/** Parts of a scale to its value. */
import type { Scale } from "../knowledge/index.ts";
import { lastReached } from "./classify.ts";
import { withoutFloatError } from "./float-error.ts";

/**
 * The value of the scale. Parts of a weighted sum or a linear formula come weighted (see `readPart`).
 *
 * First the parts are combined: by the first rule that fits, as the worst part, as their mean, or as their sum (of a linear
 * formula with its offset). Then each bonus is added whose part lies above its limit. Last, the cut points of the total
 * turn the result into a grade, where the scale has them.
 * @param parts value of each part by its name, none missing
 * @returns the value; a text says why there is none
 */
export function combine(scale: Scale, parts: ReadonlyMap<string, number>): number | string {
  const plain = combined(scale, [...parts.values()]);
  if (plain === undefined) return "no rule of this scale fits these parts";
  const bonus = (scale.bonus ?? []).filter(({ part, above }) => (parts.get(part) ?? Number.NaN) > above);
  const total = withoutFloatError(bonus.reduce((sum, { add }) => sum + add, plain));
  if (scale.total_steps === undefined) return total;
  const reached = lastReached(scale.total_steps, total);
  return reached?.value ?? `the parts make ${total}, for which this scale gives no grade`;
}

/**
 * The parts together, before bonus and cut points of the total.
 * @returns undefined when no rule fits
 */
export function combined(scale: Scale, values: readonly number[]): number | undefined {
  const sum = values.reduce((total, value) => total + value, 0);
  switch (scale.combine) {
    case "rules":
      return scale.rules?.find(
        (rule) => values.filter((value) => value >= rule.at_least).length >= rule.parts,
      )?.value;
    case "max":
      return Math.max(...values);
    case "mean":
      return sum / values.length;
    case "linear":
      return (scale.offset ?? 0) + sum;
    case "sum":
    case "weighted-sum":
      return sum;
  }
}
