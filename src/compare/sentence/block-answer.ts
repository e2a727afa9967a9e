/** The third stage: a block in plain words, each comparison with its sentence, the answer and the cautions. */
import { clusterKey } from "../../herd/index.ts";
import { comparability } from "../../knowledge/index.ts";
import { count, listing } from "../../words/listing.ts";
import type { Asked, Compared, Reason } from "../comparison.ts";
import type { Judged } from "../judgement/judge.ts";
import type { Block, Side } from "../sides/blocks.ts";
import {
  clause,
  factsOf,
  isTested,
  ofWhom,
  type Setting,
  sentenceOf,
  sought,
  type Tested,
} from "./comparison-sentence.ts";

/** A block with all that is said of it. */
export function inWords(block: Block, judged: Judged, asked: Asked): Compared {
  const setting: Setting = { ...asked, ...block, ...judged };
  const tested = judged.judgements.filter(isTested);
  const comparable = tested.length > 0;
  const reasons = comparable ? [] : distinct(judged.judgements.flatMap((one) => one.reasons));
  return {
    ...block,
    sides: block.sides.map(({ side, title, date, cases }) => ({ side, title, date, pigs: cases.length })),
    too_few: judged.tooFew,
    answer: comparable ? answerOf(tested, block, setting) : refusedAnswer(reasons),
    comparable,
    reasons,
    adjustment: { method: "holm", comparisons: judged.claimable },
    comparisons: judged.judgements.map((one) => ({ ...one, sentence: sentenceOf(one, setting) })),
    cautions: comparable ? cautionsOf(tested, block, setting) : [],
  };
}

const distinct = (reasons: readonly Reason[]): Reason[] => [
  ...new Map(reasons.map((one) => [`${one.factor} ${one.text}`, one])).values(),
];

/** Nothing could be compared: what the sides do not share or, where it is only that, what was not read. */
function refusedAnswer(reasons: readonly Reason[]): string {
  const differing = reasons.filter(({ factor }) => factor !== "examined");
  const texts = (differing.length === 0 ? reasons : differing).map(clause);
  return texts.length === 0 ? "There was nothing to compare." : `Not compared: ${texts.join("; ")}.`;
}

/** The whole block in a sentence. */
function answerOf(tested: readonly Tested[], block: Block, setting: Setting): string {
  const { claimable, tooFew, level } = setting;
  const [strongest] = [...tested].sort((a, b) => (a.p ?? 2) - (b.p ?? 2));
  if (strongest === undefined) return "Nothing could be compared.";
  const pigs = listing(block.sides.map(({ cases }) => String(cases.length)));
  const only = tested.length === 1;
  if (only && strongest.no_claim !== null) return sentenceOf(strongest, setting);
  if (tooFew) return `With ${pigs} pigs nothing can be shown, not even if ${extreme(tested)}.`;
  if (only) return sentenceOf(strongest, setting);
  const what = sought(setting);
  const why = listing([...new Set(tested.flatMap(({ no_claim }) => no_claim ?? []))]);
  if (claimable === 0) return `No ${what} can be claimed in any of ${tested.length} comparisons: ${why}.`;
  const barred = tested.length - claimable;
  const rest = barred === 0 ? "" : ` Of ${barred} more no ${what} can be claimed: ${why}.`;
  const shown = tested.filter((one) => one.shown).length;
  if (shown > 0) {
    const more = shown === 1 ? "" : ` The same stands for ${shown - 1} more of the ${claimable} comparisons.`;
    return `${sentenceOf(strongest, setting)}${more}${rest}`;
  }
  const alone = tested.filter(({ p }) => p !== null && p < 1 - level).length;
  const hint = alone === 0 ? "" : `, though ${alone} would, each taken alone`;
  return `No ${what} was shown with ${pigs} pigs: none of ${claimable} comparisons stands after Holm${hint}; the nearest, ${ofWhom(setting)}${factsOf(strongest, setting)}.${rest}`;
}

/** What would be the most these pigs could have differed. */
function extreme(tested: readonly Tested[]): string {
  const several = tested.some(({ sides }) => sides.length > 2);
  if (tested.some(({ kind }) => kind === "indicator"))
    return several
      ? "all were affected on some sides and none on the others"
      : "all were affected on one side and none on the other";
  return several
    ? "the scores of no two sides overlapped"
    : "every pig of one side scored above every pig of the other";
}

/** What must be known to read all numbers of the block. */
function cautionsOf(tested: readonly Tested[], { sides }: Block, setting: Setting): string[] {
  const { cautions } = comparability;
  const { between, prevalence, claimable, tooFew, level } = setting;
  const pens = penCounts(sides);
  const counted = tested.some(({ claim_on }) => claim_on === "pens" || claim_on === "pens-in-strata");
  const hint = tested.some(
    (one) => !one.shown && one.p !== null && (one.p < 1 - level || differenceWithout0(one)),
  );
  return [
    cautions[between],
    ...(prevalence ? [] : [cautions["not-random"]]),
    ...(pens === undefined ? [] : [`${pens}. ${counted ? cautions["pens-counted"] : cautions.pens}`]),
    ...(claimable > 1 && !tooFew ? [cautions.holm] : []),
    ...(hint && !tooFew ? [cautions.hint] : []),
    ...(!tooFew && tested.some(couldShowMore) ? [cautions["could-show"]] : []),
  ];
}

const couldShowMore = ({ result, claim_on, shown }: Tested): boolean =>
  !shown && claim_on === "pigs" && result.test === "fisher-exact" && result.could_show !== null;

/** Whether the interval of the difference does not hold 0. */
function differenceWithout0({ result, claim_on }: Tested): boolean {
  if (result.test !== "fisher-exact" || claim_on === "strata") return false;
  const { lower, upper } = claim_on === "pigs" ? result.difference : (result.penned ?? result).difference;
  return (lower ?? -1) > 0 || (upper ?? 1) < 0;
}

/** Where pigs share pens or the sides come from different numbers of pens: `10 pigs of 6 known pens on 2026-03-14`. */
function penCounts(sides: readonly Side[]): string | undefined {
  const counted = sides.map(({ title, cases }) => {
    const penOfEach = cases.flatMap((one) => clusterKey(one, "pen") ?? []);
    return { title, pigs: cases.length, known: penOfEach.length, pens: new Set(penOfEach).size };
  });
  const shared = counted.some(({ known, pens }) => pens < known);
  const different = counted.some(({ pens }) => pens !== counted[0]?.pens);
  if (!shared && !different) return undefined;
  return counted
    .map(({ title, pigs, known, pens }) => {
      const unknown = pigs > known ? `, ${pigs - known} without a pen` : "";
      return `${count(pigs, "pig")} of ${count(pens, "known pen")}${unknown} ${title}`;
    })
    .join("; ");
}
