/** Limits of a confidence interval, or neither and why. */
export type Limits =
  | { readonly lower: number; readonly upper: number; readonly reason: null }
  | { readonly lower: null; readonly upper: null; readonly reason: string };

/** No interval, and why, in words that can be shown. */
export function noLimits(reason: string): Limits {
  return { lower: null, upper: null, reason };
}
