import { LARGEST_COUNT, requireLevel, requireWhole } from "./checks.ts";
import {
  type AffectedHerd,
  cannonRoe,
  requireAccuracy,
  requireAffectedHerd,
  roundedUp,
} from "./detection-formulas.ts";
import { firstTrue } from "./first-true.ts";
import { hypergeometricProbability } from "./hypergeometric.ts";
import { largestMiss } from "./tail.ts";

/** What may be chosen for a number to detect. */
export interface DetectionOptions {
  /** Share of affected animals that the examination finds, above 0 and at most 1; 1 when left out. */
  readonly sensitivity?: number;
  /** Wanted probability of finding at least one, strictly between 0 and 1; 0.95 when left out. */
  readonly level?: number;
}

/** How many animals to examine so that a disease present in a herd is found in at least one. */
export interface DetectionSampleSize {
  /** Smallest number that reaches the level; null when even the whole herd does not. */
  readonly n: number | null;
  /** Probability of finding at least one with `n` animals; with the whole herd when `n` is null. */
  readonly probability: number;
  /** The same with one animal fewer; null when `n` is null. */
  readonly probabilityBefore: number | null;
  /** Probability with the whole herd: `1 - (1 - Se)^D`. */
  readonly most: number;
  /** The approximation of Cannon & Roe 1982, not rounded; null when the sensitivity is below 1. */
  readonly cannonRoe: number | null;
}

/**
 * Probability that an examination of `drawn` animals, taken at random without replacement, finds at least one
 * affected: `1 - Σ P(Y = y) (1 - Se)^y` over the affected animals y in the sample (hypergeometric).
 *
 * The terms rise to one largest and fall; they are summed from there to both sides. Healthy animals are taken
 * to be told healthy (specificity 1).
 *
 * @param drawn whole number from 0 to the population.
 * @throws RangeError when an argument is out of its range.
 */
export function detectionProbability(herd: AffectedHerd, drawn: number, sensitivity = 1): number {
  requireAffectedHerd(herd);
  requireWhole("drawn", drawn, 0, herd.population);
  requireAccuracy("sensitivity", sensitivity);
  return 1 - missProbability(herd, drawn, 1 - sensitivity);
}

/** Probability that none is found when each affected animal in the sample is overlooked with this probability. */
function missProbability({ population, affected }: AffectedHerd, drawn: number, overlooked: number): number {
  const sample = { population, affected, drawn };
  const fewest = Math.max(0, drawn - (population - affected));
  if (overlooked === 0) return fewest > 0 ? 0 : hypergeometricProbability(0, sample);
  const most = Math.min(drawn, affected);
  const ratio = (y: number): number =>
    ((affected - y) / (y + 1)) * ((drawn - y) / (population - affected - drawn + y + 1)) * overlooked;
  const peak = firstTrue(fewest, most, (y) => ratio(y) < 1);
  const largest = hypergeometricProbability(peak, sample) * overlooked ** peak;
  let sum = largest;
  for (let y = peak, term = largest; y < most; y++) {
    term *= ratio(y);
    if (sum + term === sum) break;
    sum += term;
  }
  for (let y = peak, term = largest; y > fewest; y--) {
    term /= ratio(y - 1);
    if (sum + term === sum) break;
    sum += term;
  }
  return sum;
}

/**
 * Smallest number of animals, drawn at random without replacement from a herd of known size, that finds at
 * least one affected with probability `level` or more. Exact search on the probability of finding none, which keeps
 * its digits where the level is next to 1; a tie counts as reached.
 * Source: hypergeometric probability; Cannon & Roe 1982 for the formula printed beside it.
 *
 * @throws RangeError when an argument is out of its range.
 */
export function detectionSampleSize(
  herd: AffectedHerd,
  { sensitivity = 1, level = 0.95 }: DetectionOptions = {},
): DetectionSampleSize {
  requireLevel(level);
  const { population, affected } = herd;
  const found = (n: number): number => detectionProbability(herd, n, sensitivity);
  found(population);
  const missedByAll = sensitivity === 1 ? 0 : Math.exp(affected * Math.log1p(-sensitivity));
  const most = sensitivity === 1 ? 1 : -Math.expm1(affected * Math.log1p(-sensitivity));
  const formula = sensitivity === 1 ? cannonRoe(herd, level) : null;
  const allowed = largestMiss(level);
  if (missedByAll > allowed) {
    return { n: null, probability: most, probabilityBefore: null, most, cannonRoe: formula };
  }
  const n = firstTrue(1, population, (count) => missProbability(herd, count, 1 - sensitivity) <= allowed);
  return { n, probability: found(n), probabilityBefore: found(n - 1), most, cannonRoe: formula };
}

/**
 * The number to detect in a population without limit: `ln(1 - level) / ln(1 - p Se)`, raw and rounded up.
 *
 * @param prevalence share affected, above 0 and at most 1.
 * @throws RangeError when an argument is out of its range, or the number exceeds 10 000 000.
 */
export function detectionSampleSizeUnlimited(
  prevalence: number,
  { sensitivity = 1, level = 0.95 }: DetectionOptions = {},
): { n: number; raw: number } {
  requireAccuracy("prevalence", prevalence);
  requireAccuracy("sensitivity", sensitivity);
  requireLevel(level);
  const raw = Math.log(1 - level) / Math.log1p(-prevalence * sensitivity);
  const n = Math.max(1, roundedUp(raw));
  if (n > LARGEST_COUNT) throw new RangeError(`more than ${LARGEST_COUNT} animals would be needed`);
  return { n, raw };
}
