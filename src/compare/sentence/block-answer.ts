/** The third stage: a block in plain words, each comparison with its sentence, the answer and the cautions. */
import type { VisitQuestion } from "../../cases/index.ts";
import { clusterKey } from "../../herd/index.ts";
import { comparability } from "../../knowledge/index.ts";
import { count, listing } from "../../words/listing.ts";
import type { Adjustment, Asked, Compared, Reason } from "../comparison.ts";
import type { Judged } from "../judgement/judge.ts";
import type { Trial } from "../sides/arms.ts";
import type { Block, Side } from "../sides/blocks.ts";
import { type AgesApart, agesApart, agesOf, recurring } from "../sides/whom.ts";
import {
  clause,
  factsOf,
  isFirst,
  isTested,
  ofWhom,
  type Setting,
  sentenceOf,
  sought,
  type Tested,
} from "./comparison-sentence.ts";
import { plain, unitWords } from "./numbers.ts";
import { whyApart } from "./why.ts";

/** A block with all that is said of it. */
export function inWords(
  block: Block,
  judged: Judged,
  question: VisitQuestion | undefined,
  asked: Asked,
): Compared {
  const setting: Setting = { ...asked, ...block, ...judged };
  const tested = judged.judgements.filter(isTested);
  const comparable = tested.length > 0;
  const reasons = comparable ? [] : distinct(judged.judgements.flatMap((one) => one.reasons));
  return {
    ...block,
    sides: block.sides.map(({ side, title, date, cases }) => ({
      side,
      title,
      date,
      pigs: cases.length,
      ages: agesOf(cases),
    })),
    too_few: judged.tooFew,
    answer: comparable ? answerOf(tested, block, question, setting) : refusedAnswer(reasons),
    comparable,
    reasons,
    adjustment: judged.adjustment,
    comparisons: judged.judgements.map((one) => ({
      ...one,
      sentence: sentenceOf(one, setting),
      note: isTested(one) ? whyApart(one, setting) : null,
    })),
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
function answerOf(
  tested: readonly Tested[],
  block: Block,
  question: VisitQuestion | undefined,
  setting: Setting,
): string {
  const { claimable, adjustment, tooFew, level } = setting;
  const [strongest] = [...tested].sort((a, b) => (a.p ?? 2) - (b.p ?? 2));
  if (strongest === undefined) return "Nothing could be compared.";
  const pigs = listing(block.sides.map(({ cases }) => String(cases.length)));
  const only = tested.length === 1;
  if (only && strongest.no_claim !== null) return sentenceOf(strongest, setting);
  if (tooFew && strongest.result.test === "unit-means")
    return `With ${unitWords(strongest.result)} nothing can be shown, not even if ${extreme(tested)}.`;
  if (tooFew) return `With ${pigs} pigs nothing can be shown, not even if ${extreme(tested)}.`;
  if (only) return sentenceOf(strongest, setting);
  const first = tested.find((one) => isFirst(one, setting));
  if (first !== undefined)
    return `${sentenceOf(first, setting)}${otherWay(first, question)}${besides(tested, setting)}`;
  const what = sought(setting);
  const why = listing([...new Set(tested.flatMap(({ no_claim }) => no_claim ?? []))]);
  if (claimable === 0) return `No ${what} can be claimed in any of ${tested.length} comparisons: ${why}.`;
  const barred = tested.length - claimable;
  const rest = barred === 0 ? "" : ` Of ${barred} more no ${what} can be claimed: ${why}.`;
  const shown = tested.filter((one) => one.shown).length;
  if (shown > 0) {
    const more = shown === 1 ? "" : ` The same stands for ${shown - 1} more of the ${claimable} readings.`;
    return `${sentenceOf(strongest, setting)}${more}${rest}`;
  }
  const alone = tested.filter(({ p }) => p !== null && p < 1 - level).length;
  const hint = alone === 0 ? "" : `, though ${alone} would, each taken alone`;
  return `No ${what} was shown with ${pigs} pigs: none of ${asked(adjustment)} stands when all are allowed for${hint}; the nearest, ${ofWhom(setting)}${factsOf(strongest, setting)}.${rest}`;
}

/** `6 questions (16 readings)`, `5 readings of one organ`. */
function asked({ questions, comparisons }: Adjustment): string {
  if (questions < 2) return `${count(comparisons, "reading")} of one organ`;
  const readings = comparisons === questions ? "" : ` (${comparisons} readings)`;
  return `${count(questions, "question")}${readings}`;
}

/** A word where what was shown points the other way than the visit asked. */
function otherWay({ shown, result }: Tested, question: VisitQuestion | undefined): string {
  if (!shown || result.test !== "fisher-exact") return "";
  const found = (result.difference.value ?? 0) < 0 ? "fewer" : "more";
  const { direction } = question ?? {};
  return direction === undefined || direction === "either" || direction === found
    ? ""
    : ` The visit had asked whether it would be ${direction}.`;
}

/** What of the others stands beside the question of the visit. */
function besides(tested: readonly Tested[], setting: Setting): string {
  const { adjustment } = setting;
  if (adjustment.comparisons === 0) return "";
  const shown = tested.filter((one) => one.shown && !isFirst(one, setting));
  const stands =
    shown.length === 0 ? "none stands" : `${shown.length} ${shown.length === 1 ? "stands" : "stand"}`;
  const named = shown.length === 0 || shown.length > 3 ? "" : `: ${listing(shown.map(({ title }) => title))}`;
  return ` That was the question of the visit; of ${asked(adjustment)} besides it ${stands}${named}.`;
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
function cautionsOf(tested: readonly Tested[], block: Block, setting: Setting): string[] {
  const { sides, basis, trial } = block;
  const { cautions } = comparability;
  const { between, prevalence, adjustment, tooFew } = setting;
  const pens = trial === undefined ? penCounts(sides) : undefined;
  const counted = tested.some(({ claim_on }) => claim_on === "pens" || claim_on === "pens-in-strata");
  return [
    trial === undefined ? cautions[between] : cautions[trialCaution(trial)],
    ...(prevalence || between === "ill" ? [] : [cautions["not-random"]]),
    ...(prevalence && basis === null ? [cautions["random-and-whole"]] : []),
    ...agesApart(sides, comparability.age_apart.days).map(agesText),
    ...recurringText(sides),
    ...(pens === undefined ? [] : [`${pens}. ${counted ? cautions["pens-counted"] : cautions.pens}`]),
    ...(adjustment.comparisons > 1 && !tooFew ? [cautions.several] : []),
    ...(!tooFew && tested.some(couldShowMore) ? [cautions["could-show"]] : []),
  ];
}

const trialCaution = ({ from, allocated }: Trial) =>
  from === "treatments" ? "treatment-derived" : allocated === "by-lot" ? "treatment" : "treatment-not-by-lot";

/** `Finisher pigs were 110 d old in the middle on 2026-03-14 and 165 d on 2026-09-19: ...` */
export function agesText({ ageClass, sides }: AgesApart): string {
  const { why, source } = comparability.age_apart;
  const ages = sides.map(({ title, median }) => `${plain(median)} d ${title}`);
  return `Median age of ${ageClass} pigs: ${listing(ages)}. ${why} (${source.confidence.replace("-", " ")}).`;
}

function recurringText(sides: readonly Side[]): string[] {
  const tags = recurring(sides);
  if (tags.length === 0) return [];
  const some = tags.length > 4 ? [...tags.slice(0, 3), `${tags.length - 3} more`] : tags;
  return [`${tags.length === 1 ? "Tag" : "Tags"} ${listing(some)}: ${comparability.cautions.recurring}`];
}

const couldShowMore = ({ result, claim_on, shown }: Tested): boolean =>
  !shown && claim_on === "pigs" && result.test === "fisher-exact" && result.could_show !== null;

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
