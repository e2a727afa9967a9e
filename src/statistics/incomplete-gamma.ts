import { LARGEST_COUNT, requireBetween } from "./checks.ts";
import { cellDeviance, stirlingError } from "./stirling.ts";

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
  const logDensity = Math.log(a / (2 * Math.PI)) / 2 - stirlingError(a) - cellDeviance(a, x, a - x);
  if (x <= a + 1) {
    const lower = Math.exp(logDensity + Math.log(lowerSeries(a, x) / a));
    return { lower, upper: 1 - lower };
  }
  const upper = Math.exp(logDensity - Math.log(upperFraction(a, x)));
  return { lower: 1 - upper, upper };
}
