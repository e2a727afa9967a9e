import { requireLevel } from "./checks.ts";
import { addedConditionals, type Conditional, conditional } from "./conditional.ts";
import { conditionalTest, type FisherOptions, type FisherTest } from "./fisher.ts";
import { requireTwoGroups, type TwoGroups } from "./two-by-two.ts";

/**
 * Fisher's exact test over strata: one odds ratio for all of them, given the total affected of each. Of one stratum it
 * is {@link fisherExact}. p and limits come from one distribution, the convolution of the strata's own, and hold for
 * any number of animals, unlike {@link mantelHaenszel}.
 *
 * Sources: Gart 1970, Biometrika 57:471-475; Mehta, Patel & Gray 1985, J Am Stat Assoc 80:969-973 (both from memory).
 *
 * @param strata affected of examined in both groups, stratum by stratum; one at least.
 * @param options confidence level, 0.95 when left out, and the tails of the limits.
 * @returns `null` when the strata are so large that it would take over two million steps.
 * @throws RangeError when a count or the level is out of its range or there is no stratum.
 */
export function exactMantelHaenszel(
  strata: readonly TwoGroups[],
  { level = 0.95, tails = "exact" }: FisherOptions = {},
): FisherTest | null {
  if (strata.length === 0) throw new RangeError("at least one stratum is needed");
  for (const stratum of strata) requireTwoGroups(stratum);
  requireLevel(level);
  const none: Conditional = { from: 0, logWeights: new Float64Array(1) };
  let distribution: Conditional | null = none;
  for (const stratum of strata) {
    distribution = addedConditionals(distribution, conditional(stratum));
    if (distribution === null) return null;
  }
  const observed = strata.reduce((sum, { x1 }) => sum + x1, 0);
  return conditionalTest(distribution, observed, level, tails);
}
