import { requireLevel, requireProbability, requireWhole } from "./checks.ts";
import { jackknifeLimits } from "./jackknife.ts";
import { type Limits, noLimits } from "./limits.ts";
import { normalQuantile } from "./normal.ts";

/** How much a disagreement between two categories still counts as agreement. */
export type KappaWeights = "unweighted" | "linear" | "quadratic" | readonly (readonly number[])[];

/** How the limits of an agreement are had: by its formula, or by leaving out one subject at a time. */
export type AgreementLimits = "formula" | "jackknife";

/** What may be chosen for {@link cohenKappa}. */
export interface KappaOptions {
  readonly level?: number;
  readonly weights?: KappaWeights;
  /** `formula` when left out. */
  readonly limits?: AgreementLimits;
}

/** Chance-corrected agreement of two readers. */
export type Kappa = {
  /** Subjects rated. */
  readonly n: number;
  /** At most 1, 0 where agreement is as by chance; null when chance agreement is complete. */
  readonly kappa: number | null;
  /** 0 when agreement is perfect; null with `kappa`. */
  readonly standardError: number | null;
  /** Weighted proportion of agreement seen. */
  readonly observed: number;
  /** Weighted proportion of agreement to be expected by chance. */
  readonly expected: number;
  readonly level: number;
} & Limits;

/**
 * Cohen's kappa of two readers who put the same subjects into the same ordered categories.
 *
 * `kappa = (observed - expected) / (1 - expected)`. Weights: `unweighted` (default) counts equal categories only;
 * `linear` is `1 - |i - j| / (k - 1)`, `quadratic` `1 - ((i - j) / (k - 1))^2`; or a table of agreement weights
 * from 0 to 1, 1 on the diagonal (disagreement weights v become `1 - v / max v`).
 * The interval is kappa -+ z standard errors, not cut off at 1 and too narrow for few subjects, or that of the
 * {@link jackknifeLimits}; without limits when agreement is perfect (the standard error is then 0, which claims too much),
 * the standard error is 0 otherwise, or kappa is undefined.
 *
 * @param table k by k counts, row = category of the first reader, column = of the second; k at least 2, at least
 *   one subject.
 * @throws RangeError when the table is not square, a count is not whole, all are 0, or a weight does not fit.
 *
 * Source: Cohen 1960, Educ Psychol Meas 20:37-46; 1968, Psychol Bull 70:213-220; standard error: Fleiss, Cohen &
 * Everitt 1969, Psychol Bull 72:323-327.
 */
export function cohenKappa(
  table: readonly (readonly number[])[],
  { level = 0.95, weights = "unweighted", limits = "formula" }: KappaOptions = {},
): Kappa {
  requireLevel(level);
  const n = requireTable(table);
  const weight = weightsOf(weights, table.length);
  const cells = cellsOf(table, weight, n);
  const columns = table.map((_, j) => table.reduce((sum, row) => sum + (row[j] ?? 0) / n, 0));
  const rows = table.map((row) => row.reduce((sum, count) => sum + count / n, 0));
  const rowMean = rows.map((_, i) => columns.reduce((sum, share, j) => sum + share * weight(i, j), 0));
  const columnMean = columns.map((_, j) => rows.reduce((sum, share, i) => sum + share * weight(i, j), 0));
  const observed = cells.reduce((sum, cell) => sum + cell.share * cell.weight, 0);
  const expected = rows.reduce((sum, share, i) => sum + share * (rowMean[i] ?? 0), 0);
  const common = { n, observed, expected, level } as const;
  if (cells.every((cell) => cell.i === cells[0]?.i && cell.j === cell.i)) {
    const reason = "both readers used one category only";
    return { ...common, kappa: null, standardError: null, ...noLimits(reason) };
  }
  if (cells.every((cell) => cell.weight === 1)) {
    return { ...common, kappa: 1, standardError: 0, ...noLimits("agreement is perfect") };
  }
  const kappa = (observed - expected) / (1 - expected);
  const spread = cells.reduce((sum, { i, j, share, weight: w }) => {
    const centre = ((rowMean[i] ?? 0) + (columnMean[j] ?? 0)) * (1 - kappa);
    return sum + share * (w - centre) ** 2;
  }, 0);
  const variance = (spread - (kappa - expected * (1 - kappa)) ** 2) / (n * (1 - expected) ** 2);
  const standardError = Math.sqrt(Math.max(0, variance));
  // Rounding leaves a little of a variance that is 0, as with one subject.
  if (standardError < 1e-7) {
    const never = cells.every(({ i, j }) => i !== j);
    const reason = never ? "the readers never agree" : "the readings are too few or too uniform";
    return { ...common, kappa, standardError: 0, ...noLimits(reason) };
  }
  const estimate = { ...common, kappa, standardError };
  if (limits === "formula") {
    const margin = normalQuantile((1 - level) / 2, "upper") * standardError;
    return { ...estimate, lower: kappa - margin, upper: kappa + margin, reason: null };
  }
  const without = cells.map(({ i, j, count, weight: w }) => {
    const apart = (n * (1 - observed) - (1 - w)) / (n - 1);
    const means = (rowMean[i] ?? 0) + (columnMean[j] ?? 0);
    const byChance = (n ** 2 * (1 - expected) - n * (2 - means) + (1 - w)) / (n - 1) ** 2;
    return { value: apart < 1e-12 ? 1 : 1 - apart / byChance, subjects: count };
  });
  return { ...estimate, ...jackknifeLimits(kappa, without, { level, readers: 2 }) };
}

interface Cell {
  readonly i: number;
  readonly j: number;
  readonly count: number;
  readonly share: number;
  readonly weight: number;
}

/** The cells that hold subjects. */
function cellsOf(
  table: readonly (readonly number[])[],
  weight: (i: number, j: number) => number,
  n: number,
): Cell[] {
  return table.flatMap((row, i) =>
    row.flatMap((count, j) => (count === 0 ? [] : [{ i, j, count, share: count / n, weight: weight(i, j) }])),
  );
}

/** Demand a square table of counts; gives their sum. */
export function requireTable(table: readonly (readonly number[])[]): number {
  if (table.length < 2) throw new RangeError(`table must have at least 2 categories, got ${table.length}`);
  let n = 0;
  for (const [i, row] of table.entries()) {
    if (row.length !== table.length) {
      throw new RangeError(`table[${i}] must have ${table.length} counts, got ${row.length}`);
    }
    for (const [j, count] of row.entries()) {
      requireWhole(`table[${i}][${j}]`, count, 0, 1_000_000_000);
      n += count;
    }
  }
  if (n === 0) throw new RangeError("table must hold at least one subject");
  return n;
}

function weightsOf(weights: KappaWeights, k: number): (i: number, j: number) => number {
  if (weights === "unweighted") return (i, j) => (i === j ? 1 : 0);
  if (weights === "linear") return (i, j) => 1 - Math.abs(i - j) / (k - 1);
  if (weights === "quadratic") return (i, j) => 1 - ((i - j) / (k - 1)) ** 2;
  if (typeof weights === "string") {
    throw new RangeError(`weights must be one of unweighted, linear, quadratic or a table, got ${weights}`);
  }
  for (let i = 0; i < k; i++) {
    for (let j = 0; j < k; j++) requireProbability(`weights[${i}][${j}]`, weights[i]?.[j] ?? Number.NaN);
    if (weights[i]?.[i] !== 1) throw new RangeError(`weights[${i}][${i}] must be 1, got ${weights[i]?.[i]}`);
  }
  return (i, j) => weights[i]?.[j] ?? 0;
}
