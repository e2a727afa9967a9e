import { binomialMass } from "./binomial-mass.ts";
import { LARGEST_COUNT, requireLevel, requireWhole } from "./checks.ts";
import { type AffectedHerd, requireAccuracy, requireAffectedHerd, roundedUp } from "./detection-formulas.ts";
import { firstTrue } from "./first-true.ts";
import { hypergeometricProbability } from "./hypergeometric.ts";
import { largestMiss } from "./tail.ts";

/** Samples put together before the test. */
export interface Pools {
  /** Animals in one pool, 1 or more. */
  readonly poolSize: number;
  /**
   * Probability that a pool with at least one affected animal tests positive, however many they are and however
   * large the pool: dilution must be in this number. Above 0 and at most 1; 1 when left out.
   */
  readonly sensitivity?: number;
}

/** How many pools find a disease that is present. */
export interface PooledSampleSize {
  /** Smallest number of pools that reaches the level; null when all full pools of the herd do not. */
  readonly pools: number | null;
  /** Animals in them; null when `pools` is null. */
  readonly animals: number | null;
  /** Probability that at least one of the pools tests positive; with all full pools when `pools` is null. */
  readonly probability: number;
}

/**
 * Probability that at least one of `pools` pools of animals drawn without replacement tests positive.
 *
 * None does when every pool that would work (K of them, binomial with the sensitivity) holds healthy animals
 * only: `1 - Σ P(K = k) P(no affected among k m animals)`, exact. A pool without affected animals never tests
 * positive (specificity 1). Source: derived; the assumption about dilution is stated at {@link Pools}.
 *
 * @param pools whole number from 0; `pools * poolSize` animals must be in the herd.
 * @throws RangeError when an argument is out of its range.
 */
export const pooledDetectionProbability = (herd: AffectedHerd, pools: number, of: Pools): number =>
  1 - allNegative(herd, pools, of);

/** Probability that no pool tests positive. */
function allNegative(herd: AffectedHerd, pools: number, { poolSize, sensitivity = 1 }: Pools): number {
  requireAffectedHerd(herd);
  requireWhole("poolSize", poolSize, 1, herd.population);
  requireWhole("pools", pools, 0, Math.floor(herd.population / poolSize));
  requireAccuracy("sensitivity", sensitivity);
  // Farther from the mean than this the working pools have a probability below 1e-30 together.
  const reach = 12 * Math.sqrt(pools * sensitivity * (1 - sensitivity)) + 80;
  const first = Math.max(0, Math.floor(pools * sensitivity - reach));
  const last = Math.min(pools, Math.ceil(pools * sensitivity + reach));
  let none = 0;
  for (let working = first; working <= last; working++) {
    const mass = binomialMass(working, pools, sensitivity);
    if (mass > 0) none += mass * hypergeometricProbability(0, { ...herd, drawn: working * poolSize });
  }
  return none;
}

/**
 * Smallest number of full pools that finds the disease with probability `level` or more; a tie counts as reached.
 *
 * @throws RangeError when an argument is out of its range.
 */
export function pooledSampleSize(herd: AffectedHerd, pools: Pools, level = 0.95): PooledSampleSize {
  requireLevel(level);
  requireAffectedHerd(herd);
  requireWhole("poolSize", pools.poolSize, 1, herd.population);
  const most = Math.floor(herd.population / pools.poolSize);
  const found = (count: number): number => pooledDetectionProbability(herd, count, pools);
  const reached = (count: number): boolean => allNegative(herd, count, pools) <= largestMiss(level);
  if (!reached(most)) return { pools: null, animals: null, probability: found(most) };
  const count = firstTrue(1, most, reached);
  return { pools: count, animals: count * pools.poolSize, probability: found(count) };
}

/**
 * The number of pools for a population without limit: `ln(1 - level) / ln(1 - Se (1 - (1 - p)^m))`.
 * Source: Christensen & Gardner 2000, Prev Vet Med 45:83-106 (from memory, not read here).
 *
 * @param prevalence share affected, above 0 and at most 1.
 * @throws RangeError when an argument is out of its range, or more than 10 000 000 animals are needed.
 */
export function pooledSampleSizeUnlimited(
  prevalence: number,
  { poolSize, sensitivity = 1 }: Pools,
  level = 0.95,
): { pools: number; animals: number; raw: number } {
  requireAccuracy("prevalence", prevalence);
  requireWhole("poolSize", poolSize, 1, LARGEST_COUNT);
  requireAccuracy("sensitivity", sensitivity);
  requireLevel(level);
  const holdsOne = -Math.expm1(poolSize * Math.log1p(-prevalence));
  const raw = Math.log(1 - level) / Math.log1p(-sensitivity * holdsOne);
  const pools = Math.max(1, roundedUp(raw));
  if (pools * poolSize > LARGEST_COUNT) {
    throw new RangeError(`more than ${LARGEST_COUNT} animals would be needed`);
  }
  return { pools, animals: pools * poolSize, raw };
}
