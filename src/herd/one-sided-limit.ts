/** What none or all of n may be said to mean: the exact one-sided limit. */
import { oneSidedLower, oneSidedUpper } from "../statistics/index.ts";

/** A limit, 0 to 1, that holds with the whole confidence on one side. */
export interface OneSided {
  readonly limit: "lower" | "upper";
  readonly value: number;
}

/**
 * With confidence `level` the proportion is not above 1 - (1 - level)^(1/n) when none of n is affected, and not below
 * (1 - level)^(1/n) when all are (Clopper & Pearson 1934, one-sided).
 * @param examined 1 or more
 * @returns null when some but not all are affected
 */
export function oneSidedLimit(affected: number, examined: number, level: number): OneSided | null {
  if (affected === 0) return { limit: "upper", value: oneSidedUpper(0, examined, level) };
  if (affected === examined) return { limit: "lower", value: oneSidedLower(examined, examined, level) };
  return null;
}
