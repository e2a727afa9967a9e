import { LARGEST_COUNT, requireLevel, requireWhole } from "./checks.ts";
import { roundedUp } from "./detection-formulas.ts";
import { normalQuantile } from "./normal.ts";

/** What a normal-formula sample size is asked for. */
export interface PrecisionQuestion {
  /** Expected share affected, strictly between 0 and 1. */
  readonly proportion: number;
  /** Wanted half-width of the interval, a share, strictly between 0 and 1. */
  readonly halfWidth: number;
  /** Confidence level; 0.95 when left out. */
  readonly level?: number;
  /** Animals in the herd, for the finite population correction; without limit when left out. */
  readonly population?: number;
  /** Animals examined in each pen, room or litter; 1 when left out. */
  readonly clusterSize?: number;
  /** How alike animals of one pen are (intracluster correlation), 0 to 1; 0 when left out. */
  readonly icc?: number;
}

/** The usual normal formulas for estimating a proportion. */
export interface PrecisionFormula {
  /** `z² p (1 - p) / d²`, not rounded. */
  readonly n0: number;
  /** Design effect `1 + (m - 1) ρ`. */
  readonly designEffect: number;
  /** `n0`, rounded up. */
  readonly n: number;
  /** `n0` times the design effect, rounded up. */
  readonly nClustered: number;
  /** `n0 / (1 + n0 / N)`, not rounded; without the design effect. Null for a population without limit. */
  readonly finiteRaw: number | null;
  /** `finiteRaw`, rounded up. */
  readonly finite: number | null;
  /**
   * `n0` times the design effect, then the finite population correction, rounded up. In this order: the design effect
   * is of the variance, which the correction then shrinks; the other way round more than the herd could be asked for.
   */
  readonly finiteClustered: number | null;
  /** `n0 / (1 + (n0 - 1) / N)`, not rounded. Source: Cochran 1977, Sampling techniques (from memory). */
  readonly finiteCochranRaw: number | null;
}

/** Demand a share strictly between 0 and 1. @throws RangeError otherwise */
export function requireShare(name: string, value: number): void {
  if (!(value > 0 && value < 1)) {
    throw new RangeError(`${name} must lie strictly between 0 and 1, got ${value}`);
  }
}

/**
 * Number to estimate a proportion by the normal formula, with design effect and finite population correction.
 * Too small when few are affected: {@link precisionSampleSize} searches exactly.
 * Source: textbook formulas (common practice); the design effect as in Kish 1965 (from memory).
 *
 * @throws RangeError when an argument is out of its range.
 */
export function precisionFormula(question: PrecisionQuestion): PrecisionFormula {
  const { proportion, halfWidth, level = 0.95, population, clusterSize = 1, icc = 0 } = question;
  requireShare("proportion", proportion);
  requireShare("halfWidth", halfWidth);
  requireLevel(level);
  requireWhole("clusterSize", clusterSize, 1, LARGEST_COUNT);
  if (!(icc >= 0 && icc <= 1)) throw new RangeError(`icc must lie from 0 to 1, got ${icc}`);
  const z = normalQuantile((1 - level) / 2, "upper");
  const n0 = (z / halfWidth) * (z / halfWidth) * proportion * (1 - proportion);
  const designEffect = 1 + (clusterSize - 1) * icc;
  const unlimited = {
    n0,
    designEffect,
    n: roundedUp(n0),
    nClustered: roundedUp(n0 * designEffect),
  };
  if (population === undefined) {
    return { ...unlimited, finiteRaw: null, finite: null, finiteClustered: null, finiteCochranRaw: null };
  }
  requireWhole("population", population, 1, LARGEST_COUNT);
  const finiteRaw = finiteCorrected(n0, population);
  const finiteCochranRaw = n0 / (1 + (n0 - 1) / population);
  const finiteClustered = roundedUp(finiteCorrected(n0 * designEffect, population));
  return { ...unlimited, finiteRaw, finite: roundedUp(finiteRaw), finiteClustered, finiteCochranRaw };
}

/** A number for a population without limit, in one of `population` animals: `n / (1 + n / N)`, not rounded. */
const finiteCorrected = (n: number, population: number): number => n / (1 + n / population);
