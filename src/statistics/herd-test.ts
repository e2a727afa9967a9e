import { atLeast } from "./binomial.ts";
import { binomialMass } from "./binomial-mass.ts";
import { requireLevel, requireProbability, requireWhole } from "./checks.ts";
import { type AffectedHerd, requireAccuracy, requireAffectedHerd } from "./detection-formulas.ts";
import { firstTrue } from "./first-true.ts";
import { hypergeometricProbability } from "./hypergeometric.ts";
import { splitOf } from "./log-odds.ts";
import { largestMiss } from "./tail.ts";

/** The largest cut-off that {@link herdTestSampleSize} tries. */
const LARGEST_CUTOFF = 100;

/** The test of one animal. */
export interface TestAccuracy {
  /** Share of affected animals that test positive, above 0 and at most 1. */
  readonly sensitivity: number;
  /** Share of healthy animals that test negative, above 0 and at most 1. */
  readonly specificity: number;
}

/** What a whole herd's result is worth. */
export interface HerdAccuracy {
  /** Probability that a herd with the given affected animals is called positive. */
  readonly herdSensitivity: number;
  /** Probability that a herd without affected animals is called negative. */
  readonly herdSpecificity: number;
}

/** P(X >= x) for X binomial(n, p), ends included. */
function tail(x: number, n: number, p: number): number {
  if (p === 0 || p === 1) return x <= (p === 0 ? 0 : n) ? 1 : 0;
  return atLeast(x, n, splitOf(p)).probability;
}

/** P(at least `cutoff` positives) with `affected` affected animals in a sample of `drawn`. */
function positives(cutoff: number, affected: number, drawn: number, test: TestAccuracy): number {
  let sum = tail(cutoff, affected, test.sensitivity);
  for (let found = 0; found < Math.min(cutoff, affected + 1); found++) {
    sum +=
      binomialMass(found, affected, test.sensitivity) *
      tail(cutoff - found, drawn - affected, 1 - test.specificity);
  }
  return sum;
}

/** P(fewer than `cutoff` positives), the complement with its own digits. */
function tooFewPositives(cutoff: number, affected: number, drawn: number, test: TestAccuracy): number {
  let sum = 0;
  for (let found = 0; found < Math.min(cutoff, affected + 1); found++) {
    const most = cutoff - found - 1;
    const healthy = drawn - affected;
    // At most so many false positives is at least so many true negatives.
    sum += binomialMass(found, affected, test.sensitivity) * tail(healthy - most, healthy, test.specificity);
  }
  return sum;
}

/**
 * Herd sensitivity and specificity when `drawn` animals are tested, without replacement, and the herd is called
 * positive at `cutoff` or more positive animals.
 *
 * Affected animals in the sample are hypergeometric, true and false positives among them binomial:
 * `HSe = Σ P(Y = y) P(Bin(y, Se) + Bin(n - y, 1 - Sp) >= c)`, `HSp = P(Bin(n, 1 - Sp) < c)`.
 * Source: Cameron & Baldock 1998, Prev Vet Med 34:1-17. There the herd is positive at c or *more*; software that
 * prints the number still accepted in a negative herd prints c - 1.
 *
 * @param drawn animals tested, 1 to the population.
 * @param cutoff positive animals that make the herd positive, 1 to `drawn`.
 * @throws RangeError when an argument is out of its range.
 */
export function herdAccuracy(
  herd: AffectedHerd,
  drawn: number,
  cutoff: number,
  test: TestAccuracy,
): HerdAccuracy {
  requireAffectedHerd(herd);
  requireWhole("drawn", drawn, 1, herd.population);
  requireWhole("cutoff", cutoff, 1, drawn);
  requireAccuracy("sensitivity", test.sensitivity);
  requireAccuracy("specificity", test.specificity);
  return {
    herdSensitivity: herdSensitivity(herd, drawn, cutoff, test),
    herdSpecificity: herdSpecificity(drawn, cutoff, test.specificity),
  };
}

const herdSensitivity = (herd: AffectedHerd, drawn: number, cutoff: number, test: TestAccuracy): number =>
  Math.min(
    1,
    overDraws(herd, drawn, (y) => positives(cutoff, y, drawn, test)),
  );

/** P(an affected herd is called negative): 1 less the herd sensitivity, with its own digits. */
const herdMissed = (herd: AffectedHerd, drawn: number, cutoff: number, test: TestAccuracy): number =>
  overDraws(herd, drawn, (y) => tooFewPositives(cutoff, y, drawn, test));

/** Mean of a probability over the affected animals y in the sample. */
function overDraws(herd: AffectedHerd, drawn: number, probability: (y: number) => number): number {
  const fewest = Math.max(0, drawn - (herd.population - herd.affected));
  let sum = 0;
  for (let y = fewest; y <= Math.min(drawn, herd.affected); y++) {
    const mass = hypergeometricProbability(y, { ...herd, drawn });
    if (mass > 1e-30) sum += mass * probability(y);
  }
  return sum;
}

/** P(fewer than c false positives) among n healthy animals: P(at least n - c + 1 true negatives). */
const herdSpecificity = (drawn: number, cutoff: number, specificity: number): number =>
  tail(drawn - cutoff + 1, drawn, specificity);

/** P(a free herd is called positive): 1 less the herd specificity, with its own digits. */
const falseAlarm = (drawn: number, cutoff: number, specificity: number): number =>
  tail(cutoff, drawn, 1 - specificity);

/** A number to test with the cut-off to read it by. */
export interface HerdTestSampleSize extends HerdAccuracy {
  readonly n: number;
  /** Positive animals from which the herd is called positive. */
  readonly cutoff: number;
}

/** Herd sensitivity and specificity that are wanted, each strictly between 0 and 1; 0.95 when left out. */
export interface HerdTestTargets {
  readonly herdSensitivity?: number;
  readonly herdSpecificity?: number;
}

/**
 * Smallest number of animals to test, with its cut-off, that reaches both a herd sensitivity and a herd
 * specificity; null when none does with a cut-off up to 100.
 *
 * Exact search. For a cut-off c the herd specificity falls with n and the herd sensitivity rises, so the largest
 * n that the specificity allows is found first; if the sensitivity is reached there, the smallest n that reaches
 * it is the answer, and a larger c would need more animals.
 * Source: Cameron & Baldock 1998, Prev Vet Med 34:1-17.
 *
 * @throws RangeError when an argument is out of its range.
 */
export function herdTestSampleSize(
  herd: AffectedHerd,
  test: TestAccuracy,
  { herdSensitivity: wantedSe = 0.95, herdSpecificity: wantedSp = 0.95 }: HerdTestTargets = {},
): HerdTestSampleSize | null {
  requireAffectedHerd(herd);
  requireAccuracy("sensitivity", test.sensitivity);
  requireAccuracy("specificity", test.specificity);
  requireLevel(wantedSe);
  requireProbability("herdSpecificity", wantedSp);
  const { population } = herd;
  for (let cutoff = 1; cutoff <= Math.min(population, LARGEST_CUTOFF); cutoff++) {
    const specific = (n: number): boolean => falseAlarm(n, cutoff, test.specificity) <= largestMiss(wantedSp);
    const sensitive = (n: number): boolean => herdMissed(herd, n, cutoff, test) <= largestMiss(wantedSe);
    const most = firstTrue(cutoff, population + 1, (n) => n > population || !specific(n)) - 1;
    if (most >= cutoff && sensitive(most)) {
      const n = firstTrue(cutoff, most, sensitive);
      return { n, cutoff, ...herdAccuracy(herd, n, cutoff, test) };
    }
    if (most >= population) return null;
  }
  return null;
}
