import { exactMantelHaenszel } from "./exact-mantel-haenszel.ts";
import type { SharesRule } from "./fisher-power.ts";
import { mantelHaenszel } from "./mantel-haenszel.ts";
import type { TwoGroups } from "./two-by-two.ts";

/** Two shares within strata: one odds ratio for all of them, null where there is none. */
export interface StratifiedShares {
  readonly oddsRatio: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Two-sided. */
  readonly p: number;
  /** Whether all ways were counted. */
  readonly exact: boolean;
  /** Whether p and limits count the table itself half. */
  readonly midP: boolean;
}

/**
 * {@link exactMantelHaenszel} with the tails of a rule (Boschloo's has no strata: Fisher's) or, where the strata are too
 * large to be counted, {@link mantelHaenszel} with the correction of one half.
 *
 * @throws RangeError when a count or the level is out of its range or there is no stratum.
 */
export function stratifiedShares(
  strata: readonly TwoGroups[],
  { level = 0.95, rule = "fisher" }: { readonly level?: number; readonly rule?: SharesRule } = {},
): StratifiedShares {
  const midP = rule === "mid-p";
  const exact = exactMantelHaenszel(strata, { level, tails: midP ? "mid-p" : "exact" });
  const { oddsRatio, lower, upper } = exact ?? mantelHaenszel(strata, { level });
  const p = exact === null ? mantelHaenszel(strata, { level }).pCorrected : midP ? exact.midP : exact.p;
  return { oddsRatio, lower, upper, p, exact: exact !== null, midP: midP && exact !== null };
}
