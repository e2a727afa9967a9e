import { LARGEST_COUNT, requireBetween, requireLevel, requireWhole } from "./checks.ts";
import { gammaQuantile } from "./incomplete-gamma.ts";
import { normalQuantile } from "./normal.ts";

/** Name of a confidence interval for a rate: exact (Garwood) or by Byar's approximation. */
export type PoissonMethod = "garwood" | "byar";

/** A two-sided confidence interval for a rate, in events per unit of time. */
export interface PoissonInterval {
  /** `events / time`. */
  readonly rate: number;
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
  readonly method: PoissonMethod;
}

/**
 * Two-sided confidence interval for the rate of events that happen independently, such as deaths over pig-days.
 *
 * - `garwood` (default): exact, never covers less than the level. The limits of the expected number are gamma
 *   quantiles, `G(alpha/2; x)` and `G(1 - alpha/2; x + 1)`. Garwood 1936, Biometrika 28:437-442.
 * - `byar`: `x (1 - 1/(9x) - z/(3 sqrt x))^3` from x for the lower and from x + 1, with + z, for the upper
 *   limit. Breslow & Day 1987, Statistical Methods in Cancer Research II, p 69.
 *
 * @param events whole number from 0 to 10 000 000.
 * @param time time at risk, above 0, in any unit; 1 when left out (limits of the expected number).
 * @throws RangeError when an argument is outside its range.
 */
export function poissonInterval(
  events: number,
  time = 1,
  { level = 0.95, method = "garwood" }: { readonly level?: number; readonly method?: PoissonMethod } = {},
): PoissonInterval {
  requireWhole("events", events, 0, LARGEST_COUNT);
  requireBetween("time", time, Number.MIN_VALUE, Number.MAX_VALUE);
  requireLevel(level);
  if (method !== "garwood" && method !== "byar") {
    throw new RangeError(`method must be one of garwood, byar, got ${method}`);
  }
  const half = (1 - level) / 2;
  const { lower, upper } = method === "garwood" ? garwood(events, half) : byar(events, half);
  return { rate: events / time, lower: lower / time, upper: upper / time, level, method };
}

function garwood(x: number, half: number): { lower: number; upper: number } {
  return { lower: x === 0 ? 0 : gammaQuantile(half, x), upper: gammaQuantile(half, x + 1, "upper") };
}

function byar(x: number, half: number): { lower: number; upper: number } {
  const z = normalQuantile(half, "upper");
  const cube = (count: number, shift: number) =>
    count * Math.max(0, 1 - 1 / (9 * count) + shift / (3 * Math.sqrt(count))) ** 3;
  return { lower: x === 0 ? 0 : cube(x, -z), upper: cube(x + 1, z) };
}
