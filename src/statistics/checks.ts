/** Largest sample or population the routines here accept: the range over which their accuracy was measured. */
export const LARGEST_COUNT = 10_000_000;

/**
 * Demand a whole number between two bounds.
 *
 * @throws RangeError naming the argument, what was given and what is allowed.
 */
export function requireWhole(name: string, value: number, lowest: number, highest: number): void {
  if (!Number.isInteger(value) || value < lowest || value > highest) {
    throw new RangeError(`${name} must be a whole number from ${lowest} to ${highest}, got ${value}`);
  }
}

/**
 * Demand `0 <= affected <= examined` and `1 <= examined <= 10 000 000`, both whole.
 *
 * @throws RangeError also for `examined` = 0: with nothing examined there is no proportion to estimate.
 */
export function requireCounts(affected: number, examined: number): void {
  requireWhole("examined", examined, 1, LARGEST_COUNT);
  requireWhole("affected", affected, 0, examined);
}

/** Whether this is a confidence level: strictly between 0 and 1, and not so near 0 that 1 - level is 1. */
export const isLevel = (level: number): boolean => level > 0 && level < 1 && 1 - level < 1;

/**
 * Demand a confidence level strictly between 0 and 1 (0.95, not 95).
 *
 * @throws RangeError otherwise, NaN included.
 */
export function requireLevel(level: number): void {
  if (!isLevel(level)) {
    throw new RangeError(`level must lie strictly between 0 and 1 (0.95 for 95 %), got ${level}`);
  }
}

/**
 * Demand a probability from 0 to 1, both allowed.
 *
 * @throws RangeError otherwise, NaN included.
 */
export function requireProbability(name: string, value: number): void {
  if (!(value >= 0 && value <= 1)) {
    throw new RangeError(`${name} must lie from 0 to 1, got ${value}`);
  }
}

/**
 * Demand a number between two bounds, both allowed.
 *
 * @throws RangeError otherwise, NaN included.
 */
export function requireBetween(name: string, value: number, lowest: number, highest: number): void {
  if (!(value >= lowest && value <= highest)) {
    throw new RangeError(`${name} must lie from ${lowest} to ${highest}, got ${value}`);
  }
}

/** Beyond this a sum of squares could overflow. */
const LARGEST_VALUE = 1e150;

/**
 * Demand numbers of at most 1e150 in size.
 *
 * @throws RangeError naming the place (from 0) of the first that is not, NaN included.
 */
export function requireValues(name: string, values: readonly number[]): void {
  for (const [place, value] of values.entries()) {
    if (!(Math.abs(value) <= LARGEST_VALUE)) {
      throw new RangeError(
        `${name}[${place}] must be a number of at most ${LARGEST_VALUE} in size, got ${value}`,
      );
    }
  }
}
