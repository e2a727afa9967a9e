import { mean } from "simple-statistics";
import { requireLevel, requireValues, requireWhole } from "./checks.ts";
import { type Limits, noLimits } from "./limits.ts";
import { normalCdf, normalQuantile } from "./normal.ts";
import { seededRandom } from "./random.ts";

/** What the bootstrap is asked about. */
export type BootstrapMeasure = "mean" | "median";

/** A mean or median with its bootstrap interval, in the unit of the values. */
export type BootstrapInterval = {
  readonly n: number;
  readonly measure: BootstrapMeasure;
  /** Null when there are no values. */
  readonly estimate: number | null;
  readonly level: number;
  readonly resamples: number;
  readonly seed: number;
  readonly method: "bca-bootstrap";
} & Limits;

/** What may be chosen for a {@link bootstrapInterval}. */
export interface BootstrapOptions {
  readonly level?: number;
  /** Number of resamples, 999 to 999 999; 9999 when left out. */
  readonly resamples?: number;
  /** 1 when left out. */
  readonly seed?: number;
}

/** Below this many values the resamples are too few kinds to trust (common practice). */
const FEWEST = 10;

/** A measure of ascending values, each taken as often as its count says; `total` is the sum of the counts. */
const MEASURES = {
  mean: (sorted: readonly number[], counts: Uint32Array, total: number) =>
    sorted.reduce((sum, value, place) => sum + value * (counts[place] ?? 0), 0) / total,
  median: (sorted: readonly number[], counts: Uint32Array, total: number) => {
    let passed = 0;
    let lower: number | null = null;
    for (const [place, value] of sorted.entries()) {
      passed += counts[place] ?? 0;
      if (lower === null && 2 * passed >= total) lower = value;
      if (lower !== null && 2 * passed > total) return (lower + value) / 2;
    }
    return Number.NaN;
  },
} as const;

/**
 * Bias-corrected and accelerated (BCa) bootstrap interval of a mean or median, the same for the same seed.
 *
 * The bias correction counts resamples equal to the estimate as half below it; the acceleration comes from
 * leaving out one value at a time. The limits are order statistics of the resamples, interpolated at
 * `(resamples + 1) p`. Not exact: for a median of few different scores prefer the interval from order statistics.
 *
 * Without limits, and with the reason, when there are fewer than ten values, when all are equal, or when the
 * resamples give no spread about the estimate.
 *
 * @param values numbers of at most 1e150 in size; meant as a simple random sample.
 * @throws RangeError when a value or an option is outside its range.
 *
 * Source: Efron 1987, J Am Stat Assoc 82:171-185; Efron & Tibshirani 1993, An Introduction to the Bootstrap, ch 14.
 */
export function bootstrapInterval(
  values: readonly number[],
  measure: BootstrapMeasure,
  { level = 0.95, resamples = 9999, seed = 1 }: BootstrapOptions = {},
): BootstrapInterval {
  requireLevel(level);
  requireValues("values", values);
  requireWhole("resamples", resamples, 999, 999_999);
  if (!Object.hasOwn(MEASURES, measure)) {
    throw new RangeError(`measure must be one of mean, median, got ${measure}`);
  }
  const n = values.length;
  const sorted = values.toSorted((a, b) => a - b);
  const estimate = n === 0 ? null : MEASURES[measure](sorted, new Uint32Array(n).fill(1), n);
  const common = { n, measure, estimate, level, resamples, seed, method: "bca-bootstrap" } as const;
  if (estimate === null) return { ...common, ...noLimits("no values") };
  if (sorted[0] === sorted[n - 1]) return { ...common, ...noLimits("all values are equal") };
  if (n < FEWEST) return { ...common, ...noLimits(`fewer than ${FEWEST} values`) };
  const drawn = resample(sorted, measure, resamples, seed);
  return { ...common, ...bcaLimits(drawn, estimate, acceleration(sorted, measure), level) };
}

/** The measure in each resample, ascending. */
function resample(
  sorted: number[],
  measure: BootstrapMeasure,
  resamples: number,
  seed: number,
): Float64Array {
  const random = seededRandom(seed);
  const n = sorted.length;
  const drawn = new Float64Array(resamples);
  const counts = new Uint32Array(n);
  for (let i = 0; i < resamples; i++) {
    counts.fill(0);
    for (let k = 0; k < n; k++) {
      const place = random.below(n);
      counts[place] = (counts[place] ?? 0) + 1;
    }
    drawn[i] = MEASURES[measure](sorted, counts, n);
  }
  return drawn.sort();
}

/** The acceleration from the jackknife; 0 when leaving out one value never changes the measure. */
function acceleration(sorted: number[], measure: BootstrapMeasure): number {
  const left = sorted.map((_, place) => {
    const counts = new Uint32Array(sorted.length).fill(1);
    counts[place] = 0;
    return MEASURES[measure](sorted, counts, sorted.length - 1);
  });
  const centre = mean(left);
  const squares = left.reduce((sum, value) => sum + (centre - value) ** 2, 0);
  const cubes = left.reduce((sum, value) => sum + (centre - value) ** 3, 0);
  return squares === 0 ? 0 : cubes / (6 * squares ** 1.5);
}

function bcaLimits(drawn: Float64Array, estimate: number, a: number, level: number): Limits {
  const rounding = 1e-12 * Math.max(Math.abs(drawn[0] ?? 0), Math.abs(drawn.at(-1) ?? 0));
  let below = 0;
  for (const value of drawn) {
    if (value < estimate - rounding) below += 1;
    else if (value <= estimate + rounding) below += 0.5;
  }
  if (below === 0 || below === drawn.length || drawn[0] === drawn.at(-1)) {
    return noLimits("the resamples give no spread about the estimate");
  }
  const bias = normalQuantile(below / drawn.length);
  const at = (z: number) => normalCdf(bias + (bias + z) / (1 - a * (bias + z)));
  const z = normalQuantile((1 - level) / 2, "upper");
  return { lower: orderStatistic(drawn, at(-z)), upper: orderStatistic(drawn, at(z)), reason: null };
}

/** The value at rank `(n + 1) p` of an ascending list, interpolated, held within the list. */
function orderStatistic(sorted: Float64Array, p: number): number {
  const rank = Math.min(sorted.length, Math.max(1, (sorted.length + 1) * p));
  const below = sorted[Math.floor(rank) - 1] ?? Number.NaN;
  const above = sorted[Math.ceil(rank) - 1] ?? Number.NaN;
  return below + (rank - Math.floor(rank)) * (above - below);
}
