import { betaTails } from "./incomplete-beta.ts";
import { reflect, type Split } from "./log-odds.ts";

/** A tail probability of the binomial distribution with its rate of change in the log-odds of p. */
export interface Tail {
  readonly probability: number;
  /** ln of `probability`, finite where it underflows. */
  readonly log: number;
  /** d probability / d log-odds. */
  readonly slope: number;
}

/**
 * P(X >= x) for X binomial(n, p), 0 < p < 1; x may be anything from 0 to n + 1.
 * Source: DLMF 8.17.5, `P(X >= x) = I_p(x, n - x + 1)`.
 */
export function atLeast(x: number, n: number, at: Split): Tail {
  if (x <= 0) return { probability: 1, log: 0, slope: 0 };
  if (x > n) return { probability: 0, log: Number.NEGATIVE_INFINITY, slope: 0 };
  const { lower, logLower, logDensity } = betaTails(x, n - x + 1, at);
  return { probability: lower, log: logLower, slope: Math.exp(logDensity) };
}

/** P(X <= x) for X binomial(n, p), 0 < p < 1; x may be anything from -1 to n. */
export function atMost(x: number, n: number, at: Split): Tail {
  const { probability, log, slope } = atLeast(n - x, n, reflect(at));
  return { probability, log, slope: -slope };
}
