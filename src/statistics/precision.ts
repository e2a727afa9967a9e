import { bothLimits, clopperPearsonLower } from "./beta-limits.ts";
import { LARGEST_COUNT, requireLevel, requireWhole } from "./checks.ts";
import { finiteInterval } from "./finite-interval.ts";
import { firstTrue } from "./first-true.ts";
import { requireShare } from "./precision-formula.ts";

/** A half-width this near above the wanted one counts as reached. */
const TIE = 1e-12;

/** What an exact sample size is asked for. */
export interface PrecisionGoal {
  /** Expected share affected, 0 to 1. */
  readonly proportion: number;
  /** Wanted half-width, a share, strictly between 0 and 1. */
  readonly halfWidth: number;
  /** Confidence level; 0.95 when left out. */
  readonly level?: number;
  /** Animals in the herd, for sampling without replacement; without limit when left out. */
  readonly population?: number;
}

/** An exact sample size with what it gives. */
export interface PrecisionSampleSize {
  readonly n: number;
  /** Half the length of the wider interval of the two counts next to `n * proportion`. */
  readonly halfWidth: number;
  /** That count of affected animals. */
  readonly affected: number;
  /** Its interval. */
  readonly lower: number;
  readonly upper: number;
}

/**
 * Smallest number of animals whose exact interval is as narrow as wanted, if the sample shows what is expected.
 *
 * The expected share seldom gives a whole count, so the rule is: of the two whole counts next to
 * `n * proportion` the one with the longer interval decides; half its length must not exceed the wanted
 * half-width, at n *and at every larger n* (exact intervals are not monotone in n, and an animal more must not
 * spoil the plan). The interval is that of Clopper & Pearson 1934, or the hypergeometric one when the population
 * is given. A number is found above which a bound on the half-length (counts up to one further to the middle)
 * holds, and from there the last failing n is looked for downwards.
 *
 * @throws RangeError when an argument is out of its range, or more than 10 000 000 animals would be needed.
 */
export function precisionSampleSize(goal: PrecisionGoal): PrecisionSampleSize {
  const { proportion, halfWidth, level = 0.95, population } = goal;
  if (!(proportion >= 0 && proportion <= 1)) {
    throw new RangeError(`proportion must lie from 0 to 1, got ${proportion}`);
  }
  requireShare("halfWidth", halfWidth);
  requireLevel(level);
  if (population !== undefined) requireWhole("population", population, 1, LARGEST_COUNT);
  const most = population ?? LARGEST_COUNT;
  const wide = (n: number): boolean => worst(goal, n).halfWidth > halfWidth + TIE;
  const safe = (n: number): boolean => n >= most || bound(goal, n) <= halfWidth;
  const ceiling = firstTrue(1, most, safe);
  let n = ceiling;
  while (n < most && wide(n)) n++;
  if (wide(n)) throw new RangeError(`more than ${most} animals would be needed`);
  while (n > 1 && !wide(n - 1)) n--;
  return worst(goal, n);
}

/** The counts next to n p; one when n p is whole but for rounding. */
function counts({ proportion }: PrecisionGoal, n: number): number[] {
  const exact = n * proportion;
  const nearest = Math.round(exact);
  return Math.abs(exact - nearest) <= 1e-9 * n ? [nearest] : [Math.floor(exact), Math.ceil(exact)];
}

/** The wider of the intervals of the counts next to n p. */
function worst(goal: PrecisionGoal, n: number): PrecisionSampleSize {
  const found = counts(goal, n).map((affected) => {
    const { lower, upper } = limits(goal, affected, n);
    return { n, affected, lower, upper, halfWidth: (upper - lower) / 2 };
  });
  return found.reduce((a, b) => (b.halfWidth > a.halfWidth ? b : a));
}

function limits({ level = 0.95, population }: PrecisionGoal, affected: number, n: number) {
  if (population !== undefined) return finiteInterval(affected, n, population, { level });
  return bothLimits(clopperPearsonLower, affected, n, 1 - level);
}

/**
 * Half-length for the count nearest to n / 2 within one of n p (the length grows towards the middle), which falls
 * with n because that count comes nearer to n p. In a finite population the limits move in steps of one animal.
 */
function bound(goal: PrecisionGoal, n: number): number {
  const { proportion, population } = goal;
  const middle = n / 2;
  const inner = Math.min(Math.max(middle, n * proportion - 1), n * proportion + 1);
  if (population === undefined) {
    const { lower, upper } = limits(goal, inner, n);
    return (upper - lower) / 2;
  }
  const whole = inner <= middle ? Math.min(Math.ceil(inner), Math.ceil(middle)) : Math.floor(inner);
  const { lower, upper } = limits(goal, Math.min(n, Math.max(0, whole)), n);
  return (upper - lower) / 2 + 1 / population;
}
