import { LARGEST_COUNT, requireWhole } from "./checks.ts";

/** How a share of a herd becomes a whole number of animals. */
export type Rounding = "ceil" | "round" | "floor";

/** The rules of {@link affectedCount}, the default first. */
export const ROUNDINGS: readonly Rounding[] = ["ceil", "round", "floor"];

/** A product this near (relative) to a whole number is that number: 0.07 of 100 is 7, not 7.000000000000001. */
const DUST = 1e-9;

/**
 * Affected animals D that a prevalence means in a herd of known size: `population * prevalence`, made whole.
 * At least 1: a herd in which the disease is present has one affected animal. The rule changes the number to be
 * examined (50 animals, 5 %: D = 3 upwards, 2 downwards), so D belongs in every answer.
 *
 * @param population animals in the herd, 1 to 10 000 000.
 * @param prevalence share affected, above 0 and at most 1.
 * @throws RangeError when an argument is out of its range.
 */
export function affectedCount(population: number, prevalence: number, rounding: Rounding = "ceil"): number {
  requireWhole("population", population, 1, LARGEST_COUNT);
  if (!(prevalence > 0 && prevalence <= 1)) {
    throw new RangeError(`prevalence must lie above 0 and not above 1, got ${prevalence}`);
  }
  if (!ROUNDINGS.includes(rounding)) {
    throw new RangeError(`rounding must be one of ${ROUNDINGS.join(", ")}, got ${rounding}`);
  }
  const exact = population * prevalence;
  const nearest = Math.round(exact);
  const whole = Math.abs(exact - nearest) <= DUST * exact ? nearest : Math[rounding](exact);
  return Math.max(1, whole);
}
