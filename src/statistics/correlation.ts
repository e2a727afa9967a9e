import { mean } from "simple-statistics";
import { requireLevel, requireValues } from "./checks.ts";
import { type Limits, noLimits } from "./limits.ts";
import { normalQuantile } from "./normal.ts";
import { rank } from "./ranks.ts";
import { studentTTwoSided } from "./student-t.ts";

/** Pearson's correlation of the values, or Spearman's of their ranks. */
export type CorrelationMethod = "pearson" | "spearman";

/** A correlation with its p-value and interval. */
export type Correlation = {
  /** Number of pairs. */
  readonly n: number;
  /** -1 to 1; null when there are fewer than two pairs or one side does not vary. */
  readonly correlation: number | null;
  /** Two-sided p-value against no correlation; null below three pairs. */
  readonly p: number | null;
  readonly level: number;
  readonly method: CorrelationMethod;
} & Limits;

/**
 * Correlation of paired values, with the two-sided p of the t test on n - 2 degrees of freedom and an interval
 * by Fisher's z.
 *
 * - `pearson` (default): the interval has variance `1/(n - 3)`. Fisher 1921, Metron 1:3-32.
 * - `spearman`: of the ranks, equal values sharing theirs; variance `(1 + r^2/2)/(n - 3)`. Bonett & Wright 2000 (citation from memory),
 *   Psychometrika 65:23-28. The t test is an approximation there, rough below ten pairs.
 *
 * Without limits, and with the reason, below four pairs, when one side does not vary, or when the pairs lie
 * exactly on a line.
 *
 * @param a first value of each pair, numbers of at most 1e150 in size.
 * @param b second value of each pair, as many.
 * @throws RangeError when the lists differ in length, or a value or the level is outside its range.
 */
export function correlation(
  a: readonly number[],
  b: readonly number[],
  { level = 0.95, method = "pearson" }: { readonly level?: number; readonly method?: CorrelationMethod } = {},
): Correlation {
  requirePairs(a, b);
  requireLevel(level);
  if (method !== "pearson" && method !== "spearman") {
    throw new RangeError(`method must be one of pearson, spearman, got ${method}`);
  }
  const n = a.length;
  const r = method === "pearson" ? product(a, b) : product(ranksOf(a), ranksOf(b));
  const common = { n, correlation: r, level, method } as const;
  if (r === null) {
    return { ...common, p: null, ...noLimits(n < 2 ? "fewer than two pairs" : "one side does not vary") };
  }
  const p = n < 3 ? null : studentTTwoSided(r * Math.sqrt((n - 2) / ((1 - r) * (1 + r))), n - 2);
  if (n < 4) return { ...common, p, ...noLimits("fewer than four pairs") };
  if (Math.abs(r) === 1) return { ...common, p, ...noLimits("all pairs lie on one line") };
  const variance = (method === "pearson" ? 1 : 1 + (r * r) / 2) / (n - 3);
  const margin = normalQuantile((1 - level) / 2, "upper") * Math.sqrt(variance);
  const z = Math.atanh(r);
  return { ...common, p, lower: Math.tanh(z - margin), upper: Math.tanh(z + margin), reason: null };
}

function requirePairs(a: readonly number[], b: readonly number[]): void {
  requireValues("a", a);
  requireValues("b", b);
  if (a.length !== b.length) {
    throw new RangeError(`a and b must have as many values, got ${a.length} and ${b.length}`);
  }
}

/** Twice the rank of each value; the factor does not matter here. */
function ranksOf(values: readonly number[]): readonly number[] {
  return values.length === 0 ? [] : (rank([values]).doubled[0] ?? []);
}

/** The product-moment correlation, held within -1 to 1; null when it is not defined. */
function product(a: readonly number[], b: readonly number[]): number | null {
  const varies = (values: readonly number[]) => values.some((value) => value !== values[0]);
  if (!varies(a) || !varies(b)) return null;
  const [centreA, centreB] = [mean([...a]), mean([...b])];
  let [squaresA, squaresB, products] = [0, 0, 0];
  for (const [place, value] of a.entries()) {
    const [da, db] = [value - centreA, (b[place] ?? Number.NaN) - centreB];
    squaresA += da * da;
    squaresB += db * db;
    products += da * db;
  }
  const r = products / Math.sqrt(squaresA) / Math.sqrt(squaresB);
  // Rounding alone must not keep points on a line from being seen as such.
  return Math.abs(r) > 1 - 1e-15 ? Math.sign(r) : r;
}

/**
 * Kendall's tau-b, the excess of pairs of pairs in the same order over those in the opposite order, corrected
 * for ties: -1 to 1, null when one side does not vary. Arguments and errors as {@link correlation}; the time
 * grows with the square of the number of pairs.
 *
 * Source: Kendall 1945, Biometrika 33:239-251.
 */
export function kendallTauB(a: readonly number[], b: readonly number[]): number | null {
  requirePairs(a, b);
  let [excess, untiedA, untiedB] = [0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    for (let j = 0; j < i; j++) {
      const orderA = Math.sign((a[i] ?? Number.NaN) - (a[j] ?? Number.NaN));
      const orderB = Math.sign((b[i] ?? Number.NaN) - (b[j] ?? Number.NaN));
      excess += orderA * orderB;
      untiedA += Math.abs(orderA);
      untiedB += Math.abs(orderB);
    }
  }
  return untiedA === 0 || untiedB === 0 ? null : excess / Math.sqrt(untiedA * untiedB);
}
