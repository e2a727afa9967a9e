/** The herd that is searched, and the formula that stood in for the exact search; kept to compare with printed tables. */
import { LARGEST_COUNT, requireLevel, requireWhole } from "./checks.ts";

/** A herd of known size with its affected animals. */
export interface AffectedHerd {
  /** Animals in the herd, 1 to 10 000 000. */
  readonly population: number;
  /** Affected animals in it, 1 to `population`. */
  readonly affected: number;
}

/** Demand an {@link AffectedHerd}. @throws RangeError otherwise */
export function requireAffectedHerd({ population, affected }: AffectedHerd): void {
  requireWhole("population", population, 1, LARGEST_COUNT);
  requireWhole("affected", affected, 1, population);
}

/** Demand a sensitivity or specificity above 0 and at most 1. @throws RangeError otherwise */
export function requireAccuracy(name: string, value: number): void {
  if (!(value > 0 && value <= 1)) {
    throw new RangeError(`${name} must lie above 0 and not above 1, got ${value}`);
  }
}

/** A number of animals from a formula, up to the next whole one unless it is whole but for rounding. */
export const roundedUp = (raw: number): number => Math.ceil(raw - 1e-9);

/**
 * Number to examine, to find at least one affected with confidence `level`, by the usual approximation
 * `(1 - (1 - level)^(1/D)) (N - (D - 1)/2)`, not rounded. Never below the exact number in the table of the
 * reference and at most 1 above when rounded up. Source: Cannon & Roe 1982, Livestock disease surveys, Canberra.
 *
 * @throws RangeError when a count or the level is out of its range.
 */
export function cannonRoe(herd: AffectedHerd, level = 0.95): number {
  requireAffectedHerd(herd);
  requireLevel(level);
  const { population, affected } = herd;
  return -Math.expm1(Math.log(1 - level) / affected) * (population - (affected - 1) / 2);
}
