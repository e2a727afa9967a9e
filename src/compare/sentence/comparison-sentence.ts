/** One comparison in plain words: what is claimed only where the test shows it, and what the numbers are of. */
import { comparability } from "../../knowledge/index.ts";
import { capital, count, listing } from "../../words/listing.ts";
import { type Adjustment, type Asked, clusterWord, type SideNumbers } from "../comparison.ts";
import type { Judged, Judgement } from "../judgement/judge.ts";
import { byPens, type Result, withinStrata } from "../judgement/results.ts";
import { wayOf } from "../judgement/within-strata.ts";
import type { Block } from "../sides/blocks.ts";
import {
  claimText,
  couldShowText,
  differenceText,
  facetsText,
  inSentence,
  meansText,
  ofExamined,
  oftenText,
  plain,
  pText,
  ratioText,
  shiftText,
  slopeText,
  unitWords,
} from "./numbers.ts";

/** A comparison that was not refused. */
export interface Tested extends Judgement {
  readonly result: Result;
}

/** What the sentences of a block have in common. */
export interface Setting
  extends Pick<Asked, "between" | "level" | "cluster">,
    Pick<Block, "prevalence" | "pigs">,
    Pick<Judged, "claimable" | "adjustment" | "tooFew"> {}

export const isTested = (one: Judgement): one is Tested => one.result !== null;

/** What was looked for: a change between visits, a difference between groups. */
export const sought = ({ between }: Setting): string => (between === "visits" ? "change" : "difference");

/** One comparison as a sentence; refused: the title and why. */
export function sentenceOf(one: Judgement, setting: Setting): string {
  if (!isTested(one)) return `${one.title}: not compared, ${one.reasons.map(clause).join("; ")}.`;
  return capital(`${ofWhom(setting)}${said(one, setting)}.`);
}

/** A reason within a sentence. */
export const clause = ({ text }: { readonly text: string }): string => text.replace(/\.$/, "");

function said(one: Tested, setting: Setting): string {
  const what = sought(setting);
  if (one.no_claim !== null) return `${plainly(one)}: no ${what} can be claimed, because ${one.no_claim}`;
  if (one.shown) return claim(one, setting);
  const could = couldShow(one);
  const these = could === "" ? "" : `; with these pigs ${could}`;
  return `no ${what} was shown in ${factsOf(one, setting)}${these}`;
}

/** Whose numbers they are, where they are not those of the group. */
export const ofWhom = ({ prevalence, pigs }: Setting): string =>
  prevalence ? "" : `of the pigs examined (${pigs}), `;

/** What p was adjusted for: `6 questions`, or `5 readings` of one organ. */
export const allowedFor = ({ questions, comparisons }: Adjustment): string =>
  questions > 1 ? count(questions, "question") : count(comparisons, "reading");

/** Whether it is what the visit asked before its result, which needs no correction. */
export const isFirst = ({ kind, question }: Judgement, { adjustment }: Setting): boolean =>
  kind === "indicator" && question === adjustment.without;

/** The test, p allowing for all questions, and what was overridden; a different basis is already said by whose pigs they are. */
function tested(one: Tested, setting: Setting): string {
  const { result, claim_on, p_adjusted, caveats } = one;
  const { adjustment, cluster } = setting;
  const after =
    adjustment.comparisons < 2 || isFirst(one, setting)
      ? ""
      : `, ${pText(p_adjusted ?? 1)} allowing for ${allowedFor(adjustment)}`;
  const others = caveats.flatMap(({ although }) =>
    although === undefined || although === "basis" ? [] : [comparability.factors[although].title],
  );
  const although = others.length === 0 ? "" : `; not comparable by ${listing(others)}`;
  return `${claimText(result, claim_on ?? "pigs", cluster)}${after}${although}`;
}

/** Title and numbers of the sides. */
const plainly = (one: Tested): string => `${nameOf(one)}: ${each(one.sides)}`;

const nameOf = ({ kind, question, title }: Tested): string =>
  kind === "scale" ? title : inSentence(question, title);

function claim(one: Tested, setting: Setting): string {
  const { sides, result } = one;
  const [first, second] = sides;
  if (first === undefined || second === undefined) return "";
  const name = nameOf(one);
  const test = tested(one, setting);
  const inStrata = strataOf(one);
  const like = inStrata === null ? "" : `like against like (by ${facetsText(inStrata)}), `;
  const perPen = one.claim_on?.startsWith("pens") === true ? byPens(result) : null;
  const up = (plainWay: number): boolean =>
    (perPen !== null && "z" in perPen ? (perPen.z ?? 0) : inStrata === null ? plainWay : wayOf(inStrata)) > 0;
  const effect = effectText(one, setting);
  switch (result.test) {
    case "unit-means": {
      const [more, higher] = up(0) ? ["more", "higher"] : ["fewer", "lower"];
      const pigs = setting.prevalence ? `${more} pigs` : more;
      return one.kind === "indicator"
        ? `${pigs} had ${name} ${second.title} (${ofExamined(second)}) than ${first.title} (${ofExamined(first)}): ${effect}${test}`
        : `${name} was ${higher} ${second.title} (${scored(second)}) than ${first.title} (${scored(first)}): ${effect}${test}`;
    }
    case "fisher-exact": {
      const more = up(result.difference.value ?? 0) ? "more" : "fewer";
      const pigs = setting.prevalence ? `${more} pigs` : more;
      return `${like}${pigs} had ${name} ${second.title} (${ofExamined(second)}) than ${first.title} (${ofExamined(first)}): ${effect}${test}`;
    }
    case "mann-whitney": {
      const higher = up(result.superiority - 0.5) ? "higher" : "lower";
      return `${like}${name} was ${higher} ${second.title} (${scored(second)}) than ${first.title} (${scored(first)}): ${effect}${test}`;
    }
    case "cochran-armitage":
      return `${like}${name} became ${up(result.z ?? 0) ? "more common" : "rarer"}: ${each(sides)}; ${effect}${test}`;
    case "cuzick":
      return `${like}${name} became ${up(result.z ?? 0) ? "higher" : "lower"}: ${each(sides)}; ${effect}${test}`;
    case "freeman-halton":
    case "kruskal-wallis":
      return `${name} was not the same everywhere: ${each(sides)}; ${test}`;
  }
}

/** The strata that a claim rests on. */
const strataOf = ({ result, claim_on }: Tested) =>
  claim_on === "strata" || claim_on === "pens-in-strata" ? withinStrata(result) : null;

/** The numbers without a claim. */
export const factsOf = (one: Tested, setting: Setting): string =>
  `${plainly(one)} (${effectText(one, setting)}${tested(one, setting)})`;

/** The size of a difference of two sides, as its claim sees it. */
function effectText(one: Tested, { between, level, cluster }: Setting): string {
  const { result, unit, claim_on } = one;
  const inStrata = strataOf(one);
  const pens = claim_on === "pens" || claim_on === "pens-in-strata";
  if (result.test === "mann-whitney") {
    if (pens && result.penned !== null)
      return `${oftenText(result.penned.superiority, `pairs of ${clusterWord(cluster)}s`)}; `;
    if (inStrata !== null && "superiority" in inStrata)
      return `${oftenText(inStrata.superiority, "pairs of like pigs")}; `;
    return `${shiftText(result, unit, level)}; `;
  }
  if (result.test === "cochran-armitage" || result.test === "cuzick") {
    if (pens && result.penned !== null) return `${slopeText(result.penned, unitOf(one), level)}; `;
    if (result.test === "cochran-armitage" || result.first_to_last === null || claim_on !== "pigs") return "";
    return `first to last ${shiftText({ shift: result.first_to_last, superiority: 0.5 }, unit, level)}; `;
  }
  if (result.test === "unit-means")
    return `by the means of ${unitWords(result)}, ${meansText(result.difference, unitOf(one), level)}; `;
  if (result.test !== "fisher-exact") return "";
  if (claim_on === "strata" && inStrata !== null && "odds_ratio" in inStrata)
    return `odds ratio ${ratioText(inStrata.odds_ratio)}; `;
  if (between === "ill" && !pens)
    return `odds ratio ${ratioText(result.odds_ratio)}, risk ratio ${ratioText(result.risk_ratio)}; `;
  return `${differenceText((pens ? (result.penned ?? result) : result).difference, level)}; `;
}

/** What is measured: undefined of shares. */
const unitOf = ({ kind, unit }: Tested): string | undefined =>
  kind === "scale" ? (unit ?? "points") : undefined;

const each = (sides: readonly SideNumbers[]): string =>
  listing(
    sides.map((side) => `${side.affected === undefined ? scored(side) : ofExamined(side)} ${side.title}`),
  );

const scored = ({ median, examined }: SideNumbers): string =>
  `median ${plain(median ?? 0)} in ${count(examined, "pig")}`;

/** What could have been shown of pigs that were taken each for itself. */
const couldShow = ({ result, claim_on }: Tested): string =>
  result.test === "fisher-exact" && claim_on === "pigs" ? couldShowText(result) : "";
