import { max, mean, min } from "simple-statistics";
import { requireLevel, requireValues } from "./checks.ts";
import { type Limits, noLimits } from "./limits.ts";
import { studentTQuantile } from "./student-t.ts";

/** A mean with its standard error and interval, in the unit of the values. */
export type MeanInterval = {
  readonly n: number;
  /** Null when there are no values. */
  readonly mean: number | null;
  /** Standard deviation (n - 1) over the root of n; null below two values. */
  readonly standardError: number | null;
  readonly level: number;
  readonly method: "t";
} & Limits;

/**
 * Mean with its t interval, `mean -+ t(1 - alpha/2; n - 1) s / sqrt(n)`.
 *
 * Without limits, and with the reason, when there are fewer than two values, or when all are equal: their
 * spread is then unknown, not nil.
 *
 * @param values numbers of at most 1e150 in size; meant as a simple random sample.
 * @throws RangeError when a value or the level is outside its range.
 *
 * Source: Student 1908, Biometrika 6:1-25.
 */
export function meanInterval(
  values: readonly number[],
  { level = 0.95 }: { readonly level?: number } = {},
): MeanInterval {
  requireLevel(level);
  requireValues("values", values);
  const n = values.length;
  const common = { n, level, method: "t" } as const;
  if (n === 0) return { ...common, mean: null, standardError: null, ...noLimits("no values") };
  // Rounding of the sum must not carry the mean of equal values off them.
  const centre = Math.min(max([...values]), Math.max(min([...values]), mean([...values])));
  if (n === 1) return { ...common, mean: centre, standardError: null, ...noLimits("only one value") };
  const squares = values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
  const standardError = Math.sqrt(squares / (n - 1) / n);
  if (values.every((value) => value === values[0])) {
    return { ...common, mean: centre, standardError: 0, ...noLimits("all values are equal") };
  }
  const margin = studentTQuantile((1 - level) / 2, n - 1, "upper") * standardError;
  return {
    ...common,
    mean: centre,
    standardError,
    lower: centre - margin,
    upper: centre + margin,
    reason: null,
  };
}
