import { LARGEST_COUNT, requireProbability } from "./checks.ts";
import { fromLogOdds, type Split, splitOf } from "./log-odds.ts";
import { cellDeviance, productMinus, stirlingError } from "./stirling.ts";

/** Both tails of a beta distribution at one point, with their logarithms (finite where the tail underflows). */
export interface BetaTails {
  /** P(B <= x), the regularised incomplete beta function I_x(a, b). */
  readonly lower: number;
  /** P(B > x) = 1 - I_x(a, b), computed without that subtraction when it is the small one. */
  readonly upper: number;
  readonly logLower: number;
  readonly logUpper: number;
  /** ln of x^a (1-x)^b / B(a, b): the density on the log-odds scale, the slope of `lower` there. */
  readonly logDensity: number;
}

/**
 * `(a+b) x - a` to full relative accuracy, from whichever of x and 1-x is the smaller and so the exact one.
 */
function excessOverMean(a: number, b: number, { p, q }: Split): number {
  return p <= q ? productMinus(a + b, p, a) : -productMinus(a + b, q, b);
}

/**
 * ln of `x^a (1-x)^b / B(a, b)`, by the saddle-point form of Loader (2000): two cell deviances, which lose
 * nothing when the point is near the mean, and three Stirling errors. `excess` is `(a+b) x - a`.
 */
function logPrefactor(a: number, b: number, { p, q }: Split, excess: number): number {
  const n = a + b;
  const deviance = cellDeviance(a, n * p, -excess) + cellDeviance(b, n * q, excess);
  const correction = stirlingError(a) + stirlingError(b) - stirlingError(n);
  return Math.log((a / n) * (b / (2 * Math.PI))) / 2 - correction - deviance;
}

/**
 * The continued fraction F in `I_x(a, b) = x^a (1-x)^b / (B(a, b) F)`, for x at or below the mean a/(a+b);
 * the even part of DLMF 8.17.22, by the modified Lentz method. `deficit` is `a - (a+b) x`, >= 0; entering it
 * as one number is what keeps the digits when x is close to 1. Counted at the mean, where it is slowest: 26 terms
 * for a = b = 100, 1212 for a = b = 1e7.
 */
function tailFraction(a: number, b: number, { p, q }: Split, deficit: number): number {
  let c = (a * (deficit + 1)) / (a + 1);
  let d = 0;
  let fraction = c;
  for (let m = 1; m < 1_000_000; m++) {
    const w = a + 2 * m - 1;
    const numerator = ((m * (a + m - 1)) / w) * ((a + b + m - 1) / w) * (b - m) * p * p;
    const denominator = m + (m * (b - m) * p) / w + ((a + m) * (deficit + 1 + m * (1 + q))) / (w + 2);
    d = 1 / (denominator + numerator * d);
    c = denominator + numerator / c;
    const change = c * d;
    fraction *= change;
    if (Math.abs(change - 1) < 2e-16) return fraction;
  }
  throw new RangeError(`the incomplete beta fraction did not converge at a=${a}, b=${b}, x=${p}`);
}

/** {@link regularisedBeta} at a point given with its complement (0 < p < 1), without checks. */
export function betaTails(a: number, b: number, at: Split): BetaTails {
  const excess = excessOverMean(a, b, at);
  const logDensity = logPrefactor(a, b, at, excess);
  if (excess <= 0) {
    const logLower = logDensity - Math.log(tailFraction(a, b, at, -excess));
    const lower = Math.exp(logLower);
    return { lower, upper: 1 - lower, logLower, logUpper: Math.log1p(-lower), logDensity };
  }
  const logUpper = logDensity - Math.log(tailFraction(b, a, { p: at.q, q: at.p }, excess));
  const upper = Math.exp(logUpper);
  return { lower: 1 - upper, upper, logLower: Math.log1p(-upper), logUpper, logDensity };
}

function requireShape(name: string, value: number): void {
  if (!(value >= 0.5 && value <= LARGEST_COUNT + 1)) {
    throw new RangeError(`${name} must lie from 0.5 to ${LARGEST_COUNT + 1}, got ${value}`);
  }
}

/**
 * Regularised incomplete beta function: both tails of the Beta(a, b) distribution at x.
 *
 * @param x 0 to 1.
 * @param a first shape, 0.5 to 10 000 001.
 * @param b second shape, 0.5 to 10 000 001.
 * @throws RangeError when an argument is outside its range or NaN.
 *
 * Relative error against 50-digit sums, on 1111 points with shapes from 0.5 to 1e7 and tails down to 1e-12:
 * at most 1.3e-14 in either tail.
 *
 * Source: DLMF 8.17 (definition and continued fraction); Loader 2000 (prefactor).
 */
export function regularisedBeta(x: number, a: number, b: number): { lower: number; upper: number } {
  requireProbability("x", x);
  requireShape("a", a);
  requireShape("b", b);
  if (x === 0) return { lower: 0, upper: 1 };
  if (x === 1) return { lower: 1, upper: 0 };
  const { lower, upper } = betaTails(a, b, splitOf(x));
  return { lower, upper };
}

/** Log-odds near the end of what a floating-point number can hold as a probability. */
const FAR = 700;

/**
 * Log-odds of the point that leaves `probability` (0 < probability < 1) in the named tail of Beta(a, b).
 *
 * Newton's method on the logarithm of the smaller tail as a function of the log-odds. The density is
 * log-concave on that scale, hence so is each tail, and Newton on a concave monotone function cannot
 * overshoot twice: it needs no bracket. Beyond {@link FAR} the logarithm is a straight line to the last bit,
 * so the step from there is the answer.
 */
export function betaQuantileLogOdds(
  probability: number,
  a: number,
  b: number,
  tail: "lower" | "upper",
): number {
  const flip = probability > 0.5;
  const target = Math.log(flip ? 1 - probability : probability);
  const lower = (tail === "lower") !== flip;
  const scale = Math.sqrt(1 / a + 1 / b);
  let logOdds = Math.log(a / b);
  for (let i = 0; i < 100; i++) {
    const tails = betaTails(a, b, fromLogOdds(logOdds));
    const logTail = lower ? tails.logLower : tails.logUpper;
    const slope = Math.exp(tails.logDensity - logTail);
    const step = (target - logTail) / (lower ? slope : -slope);
    const next = logOdds + step;
    if (Math.abs(logOdds) === FAR && Math.abs(next) > FAR) return next;
    logOdds = Math.max(-FAR, Math.min(FAR, next));
    if (Math.abs(step) < 1e-9 * scale) break;
  }
  return logOdds;
}

/**
 * Quantile of the Beta(a, b) distribution: the x with `probability` in the named tail
 * (`lower`, the default: I_x(a, b) = probability).
 *
 * @param probability 0 to 1; 0 and 1 give the ends of the range.
 * @param a first shape, 0.5 to 10 000 001.
 * @param b second shape, 0.5 to 10 000 001.
 * @throws RangeError when an argument is outside its range or NaN.
 *
 * Relative error on the 1111 points of {@link regularisedBeta}: at most 1.5e-14.
 */
export function betaQuantile(
  probability: number,
  a: number,
  b: number,
  tail: "lower" | "upper" = "lower",
): number {
  requireProbability("probability", probability);
  requireShape("a", a);
  requireShape("b", b);
  if (probability === 0 || probability === 1) return (probability === 0) === (tail === "lower") ? 0 : 1;
  return fromLogOdds(betaQuantileLogOdds(probability, a, b, tail)).p;
}
