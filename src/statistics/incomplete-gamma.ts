import { LARGEST_COUNT, requireBetween, requireProbability } from "./checks.ts";
import { cellDeviance, stirlingError } from "./stirling.ts";

/** Both tails of a gamma distribution (scale 1) at one point, with their logarithms. */
interface GammaTails {
  /** P(G <= x), the regularised lower incomplete gamma function P(a, x). */
  readonly lower: number;
  /** P(G > x) = Q(a, x). */
  readonly upper: number;
  readonly logLower: number;
  readonly logUpper: number;
  /** ln of x^a e^-x / Gamma(a): the density on the scale of ln x. */
  readonly logDensity: number;
}

/** `a P(a, x)` over the density: `1 + x/(a+1) + x^2/((a+1)(a+2)) + ...` (DLMF 8.7.1), all terms positive. */
function lowerSeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; ; k++) {
    term *= x / (a + k);
    const next = sum + term;
    if (!(next > sum)) return sum;
    sum = next;
  }
}

/** The density over Q(a, x): the continued fraction of DLMF 8.9.2 in its even part, by the modified Lentz method. */
function upperFraction(a: number, x: number): number {
  let c = x + 1 - a;
  let d = 0;
  let fraction = c;
  for (let k = 1; k < 1_000_000; k++) {
    const numerator = k * (a - k);
    const denominator = x + 2 * k + 1 - a;
    d = 1 / (denominator + numerator * d);
    c = denominator + numerator / c;
    const change = c * d;
    fraction *= change;
    if (Math.abs(change - 1) < 2e-16) return fraction;
  }
  throw new RangeError(`the incomplete gamma fraction did not converge at a=${a}, x=${x}`);
}

/** {@link regularisedGamma} for finite x > 0, without checks. */
function gammaTails(a: number, x: number): GammaTails {
  const logDensity = Math.log(a / (2 * Math.PI)) / 2 - stirlingError(a) - cellDeviance(a, x, a - x);
  if (x <= a + 1) {
    const logLower = logDensity + Math.log(lowerSeries(a, x) / a);
    const lower = Math.exp(logLower);
    return { lower, upper: 1 - lower, logLower, logUpper: Math.log1p(-lower), logDensity };
  }
  const logUpper = logDensity - Math.log(upperFraction(a, x));
  const upper = Math.exp(logUpper);
  return { lower: 1 - upper, upper, logLower: Math.log1p(-upper), logUpper, logDensity };
}

/**
 * Regularised incomplete gamma function: both tails, P(a, x) and Q(a, x), of the gamma distribution with
 * shape a and scale 1.
 *
 * @param a shape, 0.5 to 10 000 001.
 * @param x 0 or more; infinity gives the end.
 * @throws RangeError when an argument is outside its range or NaN.
 *
 * Source: DLMF 8.7.1 (series, x <= a + 1) and 8.9.2 (continued fraction); Loader 2000 (prefactor).
 */
export function regularisedGamma(a: number, x: number): { lower: number; upper: number } {
  requireBetween("a", a, 0.5, LARGEST_COUNT + 1);
  requireBetween("x", x, 0, Number.POSITIVE_INFINITY);
  if (x === 0) return { lower: 0, upper: 1 };
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  const { lower, upper } = gammaTails(a, x);
  return { lower, upper };
}

/**
 * Quantile of the gamma distribution with shape a and scale 1: the x with `probability` in the named tail.
 *
 * @param probability 0 to 1; 0 and 1 give the ends of the range, 0 and infinity.
 * @param a shape, 0.5 to 10 000 001.
 * @throws RangeError when an argument is outside its range or NaN.
 */
export function gammaQuantile(probability: number, a: number, tail: "lower" | "upper" = "lower"): number {
  requireProbability("probability", probability);
  requireBetween("a", a, 0.5, LARGEST_COUNT + 1);
  if (probability === 0 || probability === 1) {
    return (probability === 0) === (tail === "lower") ? 0 : Number.POSITIVE_INFINITY;
  }
  const flip = probability > 0.5;
  const target = Math.log(flip ? 1 - probability : probability);
  return (tail === "lower") !== flip ? lowerPoint(target, a) : upperPoint(target, a);
}

/**
 * Newton's method on ln P as a function of ln x, which is concave: it cannot overshoot twice. Below e^-700
 * ln P is a straight line to the last bit, so the step from there is the answer.
 */
function lowerPoint(target: number, a: number): number {
  let logX = Math.log(a);
  for (let i = 0; i < 100; i++) {
    const { logLower, logDensity } = gammaTails(a, Math.exp(logX));
    const step = (target - logLower) * Math.exp(logLower - logDensity);
    if (logX === -700 && step < 0) return Math.exp(logX + step);
    logX = Math.max(-700, logX + step);
    if (Math.abs(step) < 1e-9 / Math.sqrt(a)) break;
  }
  return Math.exp(logX);
}

/** Newton's method on ln Q as a function of x, which is concave for a >= 1 and convex below; never more than halved. */
function upperPoint(target: number, a: number): number {
  let x = a;
  for (let i = 0; i < 100; i++) {
    const { logUpper, logDensity } = gammaTails(a, x);
    const step = (logUpper - target) * x * Math.exp(logUpper - logDensity);
    x = Math.max(x / 2, x + step);
    if (Math.abs(step) < 1e-9 * Math.sqrt(a)) break;
  }
  return x;
}
