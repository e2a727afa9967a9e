import { type Split, splitOf } from "./log-odds.ts";
import { cellDeviance, stirlingError } from "./stirling.ts";

/**
 * P(X = x) for X binomial(n, p); 0 where x is impossible.
 * Source: Loader 2000, Fast and Accurate Computation of Binomial Probabilities (saddle-point form).
 */
export function binomialMass(x: number, n: number, at: number | Split): number {
  const { p, q } = typeof at === "number" ? splitOf(at) : at;
  if (x < 0 || x > n) return 0;
  if (p === 0) return x === 0 ? 1 : 0;
  if (q === 0) return x === n ? 1 : 0;
  if (x === 0) return Math.exp(n * (p < 0.5 ? Math.log1p(-p) : Math.log(q)));
  if (x === n) return Math.exp(n * (p < 0.5 ? Math.log(p) : Math.log1p(-q)));
  const difference = x - n * p;
  const deviance = cellDeviance(x, n * p, difference) + cellDeviance(n - x, n * q, -difference);
  const rest = stirlingError(n) - stirlingError(x) - stirlingError(n - x);
  return Math.exp(rest - deviance) * Math.sqrt(n / (2 * Math.PI * x * (n - x)));
}

/** P(X = 0), ..., P(X = n) for X binomial(n, p). */
export function binomialMasses(n: number, p: number): Float64Array {
  const at = splitOf(p);
  return Float64Array.from({ length: n + 1 }, (_, x) => binomialMass(x, n, at));
}
