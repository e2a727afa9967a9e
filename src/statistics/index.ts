/** Statistics of proportions and scores: pure functions of numbers, usable on their own. */
export {
  BINOMIAL_METHODS,
  type BinomialInterval,
  type BinomialIntervalOptions,
  type BinomialMethod,
  binomialInterval,
} from "./binomial-interval.ts";
export { type FiniteInterval, finiteInterval, zeroUpperFinite } from "./finite-interval.ts";
export {
  type HypergeometricSample,
  hypergeometricAtLeast,
  hypergeometricAtMost,
  hypergeometricProbability,
} from "./hypergeometric.ts";
export { betaQuantile, regularisedBeta } from "./incomplete-beta.ts";
export { normalCdf, normalQuantile } from "./normal.ts";
export { oneSidedLower, oneSidedUpper } from "./one-sided.ts";
export { type Summary, summarise, type ValueCount } from "./summary.ts";
