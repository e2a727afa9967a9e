import { type Limits, noLimits } from "./limits.ts";
import { studentTQuantile } from "./student-t.ts";

/** A coefficient of agreement without one of the subjects, and of how many subjects that is so. */
export interface LeftOut {
  readonly value: number;
  readonly subjects: number;
}

/**
 * Limits of kappa or an intraclass correlation r by the jackknife, on the scale `z = ln((1 + (k - 1) r) / (1 - r)) / 2`,
 * where r, near 1 above all, is more nearly normal: `z -+ t SE`, carried back, so that they stay below 1.
 *
 * t has as many degrees of freedom as the spread of the left-out values is good for: `2n / (b - 1)` with their kurtosis b,
 * at most n - 1, so that limits that hang on a few subjects are wider. Without limits where agreement but for one subject is
 * perfect. The readers are taken as they are: what varies is the subjects.
 *
 * @param value of all subjects @param without one entry a subject, or a group of equal ones @param readers k
 *
 * Source: Arvesen & Schmitz 1970, Biometrics 26:677-686; Fleiss & Davies 1982, Am J Epidemiol 115:841-845; degrees of
 * freedom: Hinkley 1977, Biometrika 64:21-28; z of k readers: Fisher 1925 (all from memory).
 */
export function jackknifeLimits(
  value: number,
  without: readonly LeftOut[],
  { level, readers }: { readonly level: number; readonly readers: number },
): Limits {
  const scaled = (r: number): number => Math.log((1 + (readers - 1) * r) / (1 - r)) / 2;
  const back = (z: number): number => 1 - readers / (Math.exp(2 * z) + readers - 1);
  const centre = scaled(value);
  const points = without.map((one) => ({ z: scaled(one.value), subjects: one.subjects }));
  if (without.some((one) => one.value >= 1)) return noLimits("but for one reading agreement is perfect");
  if (![centre, ...points.map(({ z }) => z)].every(Number.isFinite))
    return noLimits("the readers agree less than by chance");
  const sum = (of: (z: number) => number): number =>
    points.reduce((total, { z, subjects }) => total + subjects * of(z), 0);
  const n = sum(() => 1);
  const mean = sum((z) => z) / n;
  const squares = sum((z) => (z - mean) ** 2);
  const standardError = Math.sqrt((squares * (n - 1)) / n);
  // Rounding leaves a little of a spread that is 0.
  if (standardError < 1e-7) return noLimits("the readings are too few or too uniform");
  const kurtosis = (n * sum((z) => (z - mean) ** 4)) / squares ** 2;
  const df = Math.min(n - 1, Math.max(1, (2 * n) / (kurtosis - 1)));
  const margin = studentTQuantile((1 - level) / 2, df, "upper") * standardError;
  return { lower: back(centre - margin), upper: back(centre + margin), reason: null };
}
