/** The tail that a confidence level leaves, and when a probability counts as not above it. */

/** A probability this near above the tail (relative) is a tie: so many digits are lost on the way to it. */
const TIE = 1e-9;

/** Half the step between numbers just below 1: a level that near 1 is not known better. */
const LEVEL_ROUNDING = 2 ** -54;

/**
 * The largest probability of missing that still counts as `1 - level`: ties included.
 *
 * The allowance is relative to the tail, so that a level of 0.999999999999 is not met by twice the tail that it
 * asks for; to it comes the rounding of the level itself, which is all that is lost in `1 - level`.
 *
 * @param level strictly between 0 and 1.
 */
export const largestMiss = (level: number): number => (1 - level) * (1 + TIE) + LEVEL_ROUNDING;
