/** What must be known to read all numbers of a block. */
import { comparability } from "../knowledge/index.ts";
import { penCounts } from "./pens.ts";
import type { Made, Setting } from "./sentences.ts";
import type { Block } from "./sides.ts";

/** Cautions of the comparisons made; none when there are none. */
export function cautionsOf(block: Block, made: readonly Made[], setting: Setting): string[] {
  const { cautions } = comparability;
  if (made.length === 0) return [];
  const pens = penCounts(block.sides);
  const alpha = 1 - setting.level;
  const counted = made.some(({ claim_on }) => claim_on === "pens" || claim_on === "pens-in-strata");
  const hint =
    !setting.tooFew &&
    made.some((one) => !one.shown && one.p !== null && (one.p < alpha || withoutNone(one)));
  return [
    cautions[setting.between],
    ...(setting.prevalence ? [] : [cautions["not-random"]]),
    ...(pens === undefined ? [] : [`${pens}. ${counted ? cautions["pens-counted"] : cautions.pens}`]),
    ...(setting.comparisons > 1 && !setting.tooFew ? [cautions.holm] : []),
    ...(hint ? [cautions.hint] : []),
    ...(!setting.tooFew && made.some(couldShowMore) ? [cautions["could-show"]] : []),
  ];
}

const couldShowMore = ({ result, claim_on, shown }: Made): boolean =>
  !shown && claim_on === "pigs" && result.test === "fisher-exact" && result.could_show !== null;

/** An interval of the difference that does not hold 0. */
function withoutNone({ result, claim_on }: Made): boolean {
  if (result.test !== "fisher-exact" || claim_on === "strata") return false;
  const { lower, upper } = claim_on === "pigs" ? result.difference : (result.penned ?? result).difference;
  return (lower ?? -1) > 0 || (upper ?? 1) < 0;
}
