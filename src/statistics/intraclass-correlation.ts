import { mean } from "simple-statistics";
import { requireLevel, requireValues } from "./checks.ts";
import { fQuantile } from "./f-distribution.ts";
import { jackknifeLimits, type LeftOut } from "./jackknife.ts";
import type { AgreementLimits } from "./kappa.ts";
import { type Limits, noLimits } from "./limits.ts";

/** An intraclass correlation with its interval; null when there is no variance to divide. */
export type Icc = { readonly icc: number | null } & Limits;

/** Mean squares of the two-way table of subjects and readers. */
export interface MeanSquares {
  /** Between subjects, BMS. */
  readonly subjects: number;
  /** Between readers, JMS. */
  readonly readers: number;
  /** Residual, EMS. */
  readonly residual: number;
}

/** The intraclass correlations of Shrout & Fleiss for readers who all read the same: of one reading, and of the mean of all k. */
export interface IntraclassCorrelations {
  readonly subjects: number;
  readonly readers: number;
  readonly meanSquares: MeanSquares;
  /** ICC(2,1): the readers stand for all who might read; being higher counts as disagreement. */
  readonly agreement: Icc;
  /** ICC(3,1): these readers only; being higher throughout does not count. */
  readonly consistency: Icc;
  /** ICC(2,k), ICC(3,k): the same for the mean of the k readings. */
  readonly agreementMean: Icc;
  readonly consistencyMean: Icc;
  readonly level: number;
}

/**
 * Intraclass correlations of readings, with F intervals or those of the {@link jackknifeLimits}: F takes the readings as
 * normal, and ICC(2,1) has other readers in mind as well; the jackknife takes neither, and these readers.
 *
 * @param ratings one row a subject, one reading a reader in the same order, all present; at least 2 by 2.
 * @throws RangeError when the table is too small or ragged, or a value or the level is outside its range.
 *
 * Source: Shrout & Fleiss 1979, Psychol Bull 86:420-428. The interval of ICC(2,1) takes Satterthwaite's degrees
 * of freedom, with a negative estimate counted as 0 in them, so that they stay within those of the mean squares.
 */
export function intraclassCorrelations(
  ratings: readonly (readonly number[])[],
  { level = 0.95, limits = "formula" }: { readonly level?: number; readonly limits?: AgreementLimits } = {},
): IntraclassCorrelations {
  requireLevel(level);
  const n = ratings.length;
  const k = ratings[0]?.length ?? 0;
  if (n < 2 || k < 2)
    throw new RangeError(`ratings must be of at least 2 subjects by 2 readers, got ${n} by ${k}`);
  for (const [i, row] of ratings.entries()) {
    if (row.length !== k) throw new RangeError(`ratings[${i}] must have ${k} values, got ${row.length}`);
    requireValues(`ratings[${i}]`, row);
  }
  const meanSquares = meanSquaresOf(ratings, n, k);
  const { subjects: bms, readers: jms, residual: ems } = meanSquares;
  const half = (1 - level) / 2;
  const twoWay = ratio(bms, ems, { numerator: n - 1, denominator: (n - 1) * (k - 1) }, half);
  const single = (f: number) => (f - 1) / (f + k - 1);
  const without =
    limits === "jackknife" && bms > 0 && ems > 0
      ? withoutEach(ratings, n, k)
      : { agreement: null, consistency: null };
  const limited = (found: Icc, left: readonly LeftOut[] | null): Icc =>
    left === null || found.icc === null
      ? found
      : { icc: found.icc, ...jackknifeLimits(found.icc, left, { level, readers: k }) };
  const agreement = limited(agreementOf(meanSquares, n, k, half), without.agreement);
  const consistency = limited(
    carried(twoWay, (bms - ems) / (bms + (k - 1) * ems), single),
    without.consistency,
  );
  const stepUp = (value: number) => (k * value) / (1 + (k - 1) * value);
  const meanTotal = settled(bms + (jms - ems) / n, bms + (jms + ems) / n);
  return {
    subjects: n,
    readers: k,
    meanSquares,
    agreement,
    consistency,
    agreementMean: carried(agreement, (bms - ems) / meanTotal, stepUp),
    consistencyMean: carried(consistency, (bms - ems) / bms, stepUp),
    level,
  };
}

/** A sum that is nothing but the rounding of its terms is 0: at the pole of an estimate noise would decide its size. */
const settled = (sum: number, terms: number): number => (Math.abs(sum) <= 1e-12 * terms ? 0 : sum);

/** Why the limits of an estimate cannot be had from its formula. */
const unlimited = (icc: number): Limits =>
  noLimits(icc < 0 ? "the readers agree less than by chance" : "too few readings for an interval");

/** An estimate (null when it is 0 / 0 or infinite) with limits carried over from another scale. */
function carried(
  { lower: from, upper: to, reason }: Limits,
  icc: number,
  carry: (value: number) => number,
): Icc {
  if (!Number.isFinite(icc)) return { icc: null, ...noLimits("there is no variance between the subjects") };
  if (reason !== null) return { icc, ...noLimits(reason) };
  const lower = carry(from);
  const upper = carry(to);
  // Below -1 / (k - 1) for one reading, the mean of k readings has no limit; the formula runs past its pole to above 1.
  return lower <= upper && upper <= 1 ? { icc, lower, upper, reason: null } : { icc, ...unlimited(icc) };
}

/** The limits of the true ratio of two mean squares. */
function ratio(
  above: number,
  below: number,
  { numerator, denominator }: { numerator: number; denominator: number },
  half: number,
): Limits {
  if (above === 0) return noLimits("the subjects do not differ");
  if (below === 0) return noLimits("the readings do not differ");
  const f = above / below;
  return {
    lower: f / fQuantile(half, { numerator, denominator }, "upper"),
    upper: f * fQuantile(half, { numerator: denominator, denominator: numerator }, "upper"),
    reason: null,
  };
}

/** ICC(2,1) and its interval. */
function agreementOf(
  { subjects: bms, readers: jms, residual: ems }: MeanSquares,
  n: number,
  k: number,
  half: number,
): Icc {
  const total = bms + (k - 1) * ems + (k * (jms - ems)) / n;
  const icc = (bms - ems) / settled(total, bms + (k - 1) * ems + (k * (jms + ems)) / n);
  if (!Number.isFinite(icc)) return { icc: null, ...noLimits("there is no variance at all") };
  if (bms === 0) return { icc, ...noLimits("the subjects do not differ") };
  if (ems === 0)
    return { icc, ...noLimits("the readers differ by the same amount on every subject, or not at all") };
  const held = Math.max(0, icc);
  const ratioOfReaders = jms / ems;
  const own = n * (1 + (k - 1) * held) - k * held;
  const numerator = (k - 1) * (n - 1) * (k * held * ratioOfReaders + own) ** 2;
  const denominator = (n - 1) * (k * held * ratioOfReaders) ** 2 + own ** 2;
  const df = numerator / denominator;
  const high = fQuantile(half, { numerator: n - 1, denominator: df }, "upper");
  const low = fQuantile(half, { numerator: df, denominator: n - 1 }, "upper");
  const spread = k * jms + (k * n - k - n) * ems;
  const lower = (n * (bms - high * ems)) / (high * spread + n * bms);
  const upper = (n * (low * bms - ems)) / (spread + n * low * bms);
  // Below -1 / (k - 1) for one reading, the mean of k readings has no limit; the formula runs past its pole to above 1.
  return lower <= upper && upper <= 1 ? { icc, lower, upper, reason: null } : { icc, ...unlimited(icc) };
}

function meanSquaresOf(ratings: readonly (readonly number[])[], n: number, k: number): MeanSquares {
  const rows = ratings.map((row) => mean([...row]));
  const columns = Array.from({ length: k }, (_, j) => mean(ratings.map((row) => row[j] ?? Number.NaN)));
  const centre = mean(rows);
  let [between, readers, residual] = [0, 0, 0];
  for (const [i, row] of ratings.entries()) {
    const own = rows[i] ?? Number.NaN;
    between += k * (own - centre) ** 2;
    for (const [j, value] of row.entries()) {
      residual += (value - own - (columns[j] ?? Number.NaN) + centre) ** 2;
    }
  }
  for (const column of columns) readers += n * (column - centre) ** 2;
  // What rounding leaves of equal readings is nothing.
  const dust = 1e-28 * ratings.flat().reduce((most, value) => Math.max(most, Math.abs(value)), 0) ** 2;
  const cleaned = (square: number) => (square <= dust ? 0 : square);
  return {
    subjects: cleaned(between / (n - 1)),
    readers: cleaned(readers / (k - 1)),
    residual: cleaned(residual / ((n - 1) * (k - 1))),
  };
}

/** ICC(2,1) and ICC(3,1) without each subject in turn, from sums about the mean of all. */
function withoutEach(
  ratings: readonly (readonly number[])[],
  n: number,
  k: number,
): { readonly agreement: readonly LeftOut[]; readonly consistency: readonly LeftOut[] } {
  const centre = mean(ratings.flat());
  const rows = ratings.map((row) => row.map((value) => value - centre));
  const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
  const squared = (values: readonly number[]): number => total(values.map((value) => value ** 2));
  const all = squared(rows.flat());
  const subjects = squared(rows.map(total));
  const columns = Array.from({ length: k }, (_, j) => total(rows.map((row) => row[j] ?? Number.NaN)));
  const left = n - 1;
  // What rounding leaves of nothing is nothing.
  const cleaned = (square: number): number => (square <= 1e-12 * all ? 0 : square);
  const found = rows.map((row) => {
    const sums = columns.map((sum, j) => sum - (row[j] ?? Number.NaN));
    const base = total(sums) ** 2 / (left * k);
    const between = (subjects - total(row) ** 2) / k - base;
    const readers = squared(sums) / left - base;
    const bms = cleaned(between) / (left - 1);
    const jms = cleaned(readers) / (k - 1);
    const ems = cleaned(all - squared(row) - base - between - readers) / ((left - 1) * (k - 1));
    const within = bms + (k - 1) * ems;
    return {
      agreement: (bms - ems) / (within + (k * (jms - ems)) / left),
      consistency: (bms - ems) / within,
    };
  });
  return {
    agreement: found.map(({ agreement: value }) => ({ value, subjects: 1 })),
    consistency: found.map(({ consistency: value }) => ({ value, subjects: 1 })),
  };
}
