/** Did it change between visits, or does it differ between groups? */
import type { Archive, Case } from "../cases/index.ts";
import { highestLevel } from "../herd/index.ts";
import { casesOf } from "../score/index.ts";
import { requireLevel } from "../statistics/index.ts";
import type { Asked, CompareOptions, CompareReport } from "./comparison.ts";
import { judge } from "./judgement/judge.ts";
import { inWords } from "./sentence/block-answer.ts";
import { blocksOf } from "./sides/blocks.ts";
import { comparedSides } from "./sides/comparability.ts";
import { narrowed } from "./sides/facets.ts";

/**
 * Compares visits of a farm or groups of a visit, indicator by indicator and scale by scale, for each selection basis.
 *
 * Two sides: Fisher's exact test, differences and ratios; Mann & Whitney with the Hodges-Lehmann shift for scores. More:
 * Cochran-Armitage over visits, Freeman & Halton over groups, Kruskal-Wallis for scores. Sides that are made up differently
 * are judged within strata, and shared pens by pens. Holm's correction runs over the comparisons of a block. What cannot
 * be compared has a reason in place of numbers.
 * @throws RangeError when there are no two sides, a name does not exist, or the level is not between 0 and 1
 */
export function compareCases(from: Archive | readonly Case[], options: CompareOptions = {}): CompareReport {
  const { where = {}, evenIf = [], cluster = "pen" } = options;
  const cases = narrowed(casesOf(from), where);
  const level = options.level ?? highestLevel(cases);
  requireLevel(level);
  const { between, blocks, leftOut } = blocksOf(cases, options.between, evenIf.includes("basis"));
  const asked: Asked = { ...options, between, evenIf, cluster, level };
  const compared = blocks.map((block) => {
    const sides = comparedSides(block, asked);
    const judged = judge(sides, asked);
    return inWords(block, judged, asked);
  });
  const main = compared.find(({ comparable, too_few }) => comparable && !too_few) ?? compared[0];
  return { between, cluster, level, answer: main?.answer ?? "", blocks: compared, left_out: leftOut };
}
