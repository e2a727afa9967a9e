/** Cleans a computed score of binary rounding error, so that a value that lies on a limit stays on it. */

/**
 * The number to ten significant digits.
 *
 * Sums such as 20 x 5 + 5 x 34 over 100 can miss their decimal value in the 16th digit (0.1 + 0.2 is not 0.3), and a
 * class that begins exactly there would then be missed. Recorded percentages and weights have far fewer than ten
 * digits between them, so that nothing that was observed is lost.
 * @param value any finite number
 */
export const withoutFloatError = (value: number): number =>
  Number.isSafeInteger(value) && Math.abs(value) < 1e9 ? value : Number(value.toPrecision(10));

/**
 * The number rounded half up to some decimals: 0.305 to two decimals is 0.31; below 0 half down, -0.305 is -0.31.
 * Never -0.
 * @param value any finite number; @param decimals whole, 0 to 10
 */
export function rounded(value: number, decimals: number): number {
  const shift = 10 ** decimals;
  return (Math.sign(value) * Math.round(withoutFloatError(Math.abs(value) * shift))) / shift + 0;
}
