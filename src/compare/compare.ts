/** Did it change between visits, or does it differ between groups? */
import { type Archive, type Case, questionOf, type VisitQuestion } from "../cases/index.ts";
import { highestLevel } from "../herd/index.ts";
import { casesOf } from "../score/index.ts";
import { requireLevel, type SharesRule } from "../statistics/index.ts";
import type { Asked, Between, CompareOptions, CompareReport } from "./comparison.ts";
import { judge } from "./judgement/judge.ts";
import { inWords } from "./sentence/block-answer.ts";
import { type Block, blocksOf } from "./sides/blocks.ts";
import { comparedSides } from "./sides/comparability.ts";
import { narrowed } from "./sides/facets.ts";

/**
 * Compares visits of a farm or groups of a visit, indicator by indicator and scale by scale, for each selection basis.
 *
 * Two sides: Fisher's exact test, differences and ratios; Mann & Whitney with the Hodges-Lehmann shift for scores. More:
 * Cochran-Armitage over visits, Freeman & Halton over groups, Kruskal-Wallis for scores. Sides that are made up differently
 * are judged within strata, and shared pens by pens; treated and control by what was allocated. How many comparisons a block has is allowed for. What cannot
 * be compared has a reason in place of numbers.
 * @throws RangeError when there are no two sides, a name does not exist, or the level is not between 0 and 1
 */
export function compareCases(from: Archive | readonly Case[], options: CompareOptions = {}): CompareReport {
  const { where = {}, evenIf = [], cluster = "pen", seed = 1 } = options;
  const cases = narrowed(casesOf(from), where);
  const level = options.level ?? highestLevel(cases);
  requireLevel(level);
  if (options.between === "treatment" && options.cluster !== undefined)
    throw new RangeError(
      "--cluster has no place beside --between treatment: what was allocated is counted, the pens or groups that visit.yaml names under arm",
    );
  const { between, blocks, leftOut } = blocksOf(cases, options.between, evenIf.includes("basis"));
  const asked: Asked = { ...options, between, evenIf, cluster, level, seed, sharesTest: sharesTestOf(cases) };
  const compared = blocks.map((block) => {
    const sides = comparedSides(block, asked);
    const question = questionOfBlock(block, between);
    const judged = judge(sides, question?.indicator ?? null, asked);
    return inWords(block, judged, question, asked);
  });
  const main = compared.find(({ comparable, too_few }) => comparable && !too_few) ?? compared[0];
  return { between, cluster, level, answer: main?.answer ?? "", blocks: compared, left_out: leftOut };
}

/** Of the settings; Fisher's where they differ. */
function sharesTestOf(cases: readonly Case[]): SharesRule {
  const [first, ...others] = new Set(cases.map(({ settings }) => settings.sharesTest));
  return first === undefined || others.length > 0 ? "fisher" : first;
}

/** What the last visit asked before its result, if it asked about a change. */
function questionOfBlock({ sides }: Block, between: Between): VisitQuestion | undefined {
  if (between !== "visits") return undefined;
  const [asked] = sides.at(-1)?.cases.flatMap((one) => questionOf(one.visit) ?? []) ?? [];
  return asked?.direction === undefined ? undefined : asked;
}
