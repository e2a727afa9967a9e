import { LARGEST_COUNT, requireLevel, requireWhole } from "./checks.ts";
import { firstTrue } from "./first-true.ts";
import { hypergeometricAtLeast, hypergeometricAtMost, hypergeometricProbability } from "./hypergeometric.ts";
import { largestMiss } from "./tail.ts";

/** A probability must exceed the error by more than this (relative) to count as above it: a tie is rejected. */
const TIE = 1e-9;

/** A confidence interval for the affected animals of a population of known size. */
export interface FiniteInterval {
  /** Fewest affected animals in the population that the sample does not contradict. */
  readonly lowerCount: number;
  /** Most affected animals in the population that the sample does not contradict. */
  readonly upperCount: number;
  /** `lowerCount / population`. */
  readonly lower: number;
  /** `upperCount / population`. */
  readonly upper: number;
  /** Proportion affected in the sample. */
  readonly proportion: number;
  readonly population: number;
  readonly level: number;
  readonly method: "hypergeometric";
}

function requireFinite(affected: number, examined: number, population: number, level: number): void {
  requireWhole("population", population, 1, LARGEST_COUNT);
  requireWhole("examined", examined, 1, population);
  requireWhole("affected", affected, 0, examined);
  requireLevel(level);
}

/**
 * Exact two-sided confidence interval for the affected animals of a finite population (a room, a batch, a
 * herd), from a simple random sample drawn without replacement.
 *
 * `lowerCount = min {D: P(X >= affected | D) > alpha/2}` and `upperCount = max {D: P(X <= affected | D) > alpha/2}`
 * over the possible D, from `affected` to `population - examined + affected`. When all are examined both are
 * `affected`. Source: the Clopper-Pearson argument with hypergeometric tails; an exact tie is rejected.
 *
 * @param affected whole number from 0 to `examined`.
 * @param examined whole number from 1 to `population`.
 * @param population whole number from 1 to 10 000 000.
 * @throws RangeError when a count or the level is out of its range (`examined` = 0 included).
 */
export function finiteInterval(
  affected: number,
  examined: number,
  population: number,
  { level = 0.95 }: { readonly level?: number } = {},
): FiniteInterval {
  requireFinite(affected, examined, population, level);
  const threshold = ((1 - level) / 2) * (1 + TIE);
  const fewest = affected;
  const most = population - examined + affected;
  const sample = (count: number) => ({ population, affected: count, drawn: examined });
  const lowerCount = firstTrue(fewest, most, (d) => hypergeometricAtLeast(affected, sample(d)) > threshold);
  const tooMany = firstTrue(fewest, most + 1, (d) =>
    d > most ? true : !(hypergeometricAtMost(affected, sample(d)) > threshold),
  );
  const upperCount = tooMany - 1;
  return {
    lowerCount,
    upperCount,
    lower: lowerCount / population,
    upper: upperCount / population,
    proportion: affected / examined,
    population,
    level,
    method: "hypergeometric",
  };
}

/**
 * One-sided upper limit when none of the examined animals of a finite population is affected: the most
 * affected animals the population can hold, `max {D: P(X = 0 | D) > 1 - level}`; a tie is rejected. One more is what
 * {@link detectionSampleSize} finds with as many animals or fewer, by the same rule of ties.
 * 0 when all are examined.
 *
 * @param examined whole number from 1 to `population`.
 * @param population whole number from 1 to 10 000 000.
 * @throws RangeError when a count or the level is out of its range (`examined` = 0 included).
 */
export function zeroUpperFinite(
  examined: number,
  population: number,
  level = 0.95,
): { upperCount: number; upper: number } {
  requireFinite(0, examined, population, level);
  const threshold = largestMiss(level);
  const most = population - examined;
  const tooMany = firstTrue(0, most + 1, (d) => {
    if (d > most) return true;
    return !(hypergeometricProbability(0, { population, affected: d, drawn: examined }) > threshold);
  });
  return { upperCount: tooMany - 1, upper: (tooMany - 1) / population };
}
