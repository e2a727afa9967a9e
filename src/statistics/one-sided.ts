import { exactLowerLimit } from "./beta-limits.ts";
import { requireCounts, requireLevel } from "./checks.ts";
import { reflect } from "./log-odds.ts";

/**
 * Exact one-sided upper limit of a proportion: with confidence `level` the true proportion is not above it.
 * The p at which P(X <= affected) = 1 - level; 1 when all are affected. With none affected it is
 * `1 - (1 - level)^(1 / examined)`. Source: Clopper & Pearson 1934, Biometrika 26:404-413.
 *
 * @param affected whole number from 0 to `examined`.
 * @param examined whole number from 1 to 10 000 000.
 * @param level confidence level, strictly between 0 and 1; 0.95 when left out.
 * @returns a proportion from 0 to 1.
 * @throws RangeError when an argument is out of its range (`examined` = 0 included).
 */
export function oneSidedUpper(affected: number, examined: number, level = 0.95): number {
  requireCounts(affected, examined);
  requireLevel(level);
  return reflect(exactLowerLimit(examined - affected, examined, 1 - level)).p;
}

/**
 * Exact one-sided lower limit of a proportion: with confidence `level` the true proportion is not below it.
 * The p at which P(X >= affected) = 1 - level; 0 when none is affected. Arguments, errors and source as
 * {@link oneSidedUpper}.
 */
export function oneSidedLower(affected: number, examined: number, level = 0.95): number {
  requireCounts(affected, examined);
  requireLevel(level);
  return exactLowerLimit(affected, examined, 1 - level).p;
}
