import { requireProbability } from "./checks.ts";

/**
 * Holm's step-down adjustment of several p values, in the order given: the smallest times m, the next times m - 1,
 * and so on, none smaller than one before it, none above 1. Source: Holm 1979, Scand J Stat 6:65-70 (from memory).
 *
 * @param pValues each from 0 to 1.
 * @throws RangeError when one is outside 0 to 1.
 */
export function holm(pValues: readonly number[]): number[] {
  for (const p of pValues) requireProbability("p", p);
  const order = [...pValues.keys()].sort((a, b) => (pValues[a] ?? 0) - (pValues[b] ?? 0));
  const adjusted = new Array<number>(pValues.length).fill(1);
  let largest = 0;
  for (const [step, place] of order.entries()) {
    largest = Math.max(largest, Math.min(1, (pValues.length - step) * (pValues[place] ?? 1)));
    adjusted[place] = largest;
  }
  return adjusted;
}
