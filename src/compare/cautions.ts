/** What must be known to read all numbers of a block. */
import { comparability } from "../knowledge/index.ts";
import type { Result } from "./comparison.ts";
import { penCounts } from "./made-up.ts";
import type { Made, Setting } from "./sentences.ts";
import type { Block } from "./sides.ts";

/** Cautions of the comparisons made; none when there are none. */
export function cautionsOf(block: Block, made: readonly Made[], setting: Setting): string[] {
  const { cautions } = comparability;
  if (made.length === 0) return [];
  const pens = penCounts(block.sides);
  const alpha = 1 - setting.level;
  const hint =
    !setting.tooFew && made.some(({ p, shown, result }) => !shown && (p < alpha || withoutNone(result)));
  return [
    cautions[setting.between],
    ...(setting.prevalence ? [] : [cautions["not-random"]]),
    ...(pens === undefined ? [] : [`${pens}. ${cautions.pens}`]),
    ...(setting.comparisons > 1 && !setting.tooFew ? [cautions.holm] : []),
    ...(hint ? [cautions.hint] : []),
    ...(!setting.tooFew && made.some(couldShowMore) ? [cautions["could-show"]] : []),
  ];
}

const couldShowMore = ({ result, shown }: Made): boolean =>
  !shown && result.test === "fisher-exact" && result.could_show !== null;

/** An interval of the difference that does not hold 0. */
function withoutNone(result: Result): boolean {
  if (result.test !== "fisher-exact") return false;
  const { lower, upper } = result.difference;
  return (lower ?? -1) > 0 || (upper ?? 1) < 0;
}
