import { logFactorialRest } from "./hypergeometric.ts";

/** ln of n over k: the number of ways to choose k of n. Source: Stirling's series for each factorial. */
export function logBinomial(n: number, k: number): number {
  if (k <= 0 || k >= n) return 0;
  const left = n - k;
  const powers = -k * Math.log(k / n) - left * Math.log(left / n);
  return powers + logFactorialRest(n) - logFactorialRest(k) - logFactorialRest(left);
}
