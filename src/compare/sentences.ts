/** The answer in plain words: what is claimed only where the test shows it, and what the numbers are of. */
import { comparability } from "../knowledge/index.ts";
import { count, listing } from "../words/listing.ts";
import { clusterWords } from "./claims.ts";
import type { Between, Cluster, Comparison, Reason, SideNumbers } from "./comparison.ts";
import type { Result } from "./tests-made.ts";
import { byText, claimText } from "./tests-said.ts";
import { wayOf } from "./within.ts";
import {
  couldShowText,
  differenceText,
  inSentence,
  ofExamined,
  oftenText,
  plain,
  pText,
  ratioText,
  shiftText,
} from "./words.ts";

/** A comparison that was made, before it has its sentence. */
export interface Made extends Omit<Comparison, "sentence" | "result"> {
  readonly result: Result;
}

/** What the sentences of a block have in common. */
export interface Setting {
  readonly between: Between;
  readonly level: number;
  readonly cluster: Cluster;
  /** Whether a proportion over these pigs is a prevalence. */
  readonly prevalence: boolean;
  /** `chosen for signs`. */
  readonly pigs: string;
  /** Comparisons of which something could be claimed. */
  readonly comparisons: number;
  /** Whether no test could have shown anything with so few pigs. */
  readonly tooFew: boolean;
}

/** One comparison as a sentence. */
export function sentenceOf(made: Made, setting: Setting): string {
  const what = setting.between === "visits" ? "change" : "difference";
  if (made.no_claim !== null)
    return capital(`${whose(setting)}${plainly(made)}: no ${what} can be claimed, because ${made.no_claim}.`);
  if (made.shown) return capital(`${whose(setting)}${claim(made, setting)}.`);
  const shown = couldShow(made);
  const these = shown === "" ? "" : `; with these pigs ${shown}`;
  return capital(`${whose(setting)}no ${what} was shown in ${facts(made, setting)}${these}.`);
}

/** Refused: the title and why. */
export const refusedSentence = (title: string, reasons: readonly Reason[]): string =>
  `${title}: not compared, ${reasons.map(({ text }) => text.replace(/\.$/, "")).join("; ")}.`;

/** A block in which nothing could be compared: what the sides do not share or, where it is only that, what was not read. */
export function refusedAnswer(reasons: readonly Reason[]): string {
  const differing = reasons.filter(({ factor }) => factor !== "examined");
  const texts = (differing.length === 0 ? reasons : differing).map(({ text }) => text.replace(/\.$/, ""));
  return texts.length === 0 ? "There was nothing to compare." : `Not compared: ${texts.join("; ")}.`;
}

/** The whole block in a sentence. @param sentences those of the comparisons, by comparison */
export function blockAnswer(
  made: readonly Made[],
  setting: Setting,
  sides: readonly { readonly pigs: number }[],
): string {
  const [strongest] = [...made].sort((a, b) => (a.p ?? 2) - (b.p ?? 2));
  if (strongest === undefined) return "Nothing could be compared.";
  const pigs = listing(sides.map((side) => String(side.pigs)));
  if (made.length === 1 && strongest.no_claim !== null) return sentenceOf(strongest, setting);
  if (setting.tooFew) return `With ${pigs} pigs nothing can be shown, not even if ${extreme(made)}.`;
  if (made.length === 1) return sentenceOf(strongest, setting);
  const what = setting.between === "visits" ? "change" : "difference";
  const why = listing([...new Set(made.flatMap(({ no_claim }) => no_claim ?? []))]);
  if (setting.comparisons === 0)
    return `No ${what} can be claimed in any of ${made.length} comparisons: ${why}.`;
  const barred = made.length - setting.comparisons;
  const rest = barred === 0 ? "" : ` Of ${barred} more no ${what} can be claimed: ${why}.`;
  const shown = made.filter((one) => one.shown);
  if (shown.length > 0) {
    const others = shown.length - 1;
    const more =
      others === 0 ? "" : ` The same stands for ${others} more of the ${setting.comparisons} comparisons.`;
    return `${sentenceOf(strongest, setting)}${more}${rest}`;
  }
  const alone = made.filter(({ p }) => p !== null && p < 1 - setting.level).length;
  const hint = alone === 0 ? "" : `, though ${alone} would, each taken alone`;
  return `No ${what} was shown with ${pigs} pigs: none of ${setting.comparisons} comparisons stands after Holm${hint}; the nearest, ${whose(setting)}${facts(strongest, setting)}.${rest}`;
}

/** What would be the most these pigs could have differed. */
function extreme(made: readonly Made[]): string {
  const several = made.some(({ sides }) => sides.length > 2);
  if (made.some(({ kind }) => kind === "indicator"))
    return several
      ? "all were affected on some sides and none on the others"
      : "all were affected on one side and none on the other";
  return several
    ? "the scores of no two sides overlapped"
    : "every pig of one side scored above every pig of the other";
}

const whose = ({ prevalence, pigs }: Setting): string =>
  prevalence ? "" : `of the pigs examined (${pigs}), `;

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** The test, p after Holm, and what was overridden; a different basis is already said by whose pigs they are. */
function tested({ result, claim_on, p_holm, caveats }: Made, { comparisons, cluster }: Setting): string {
  const after = comparisons < 2 ? "" : `, ${pText(p_holm ?? 1)} after Holm for ${comparisons} comparisons`;
  const others = caveats.flatMap(({ although }) =>
    although === undefined || although === "basis" ? [] : [comparability.factors[although].title],
  );
  const although = others.length === 0 ? "" : `; not comparable by ${listing(others)}`;
  return `${claimText(result, claim_on ?? "pigs", cluster)}${after}${although}`;
}

/** Title and numbers of the sides. */
function plainly({ sides, question, title, kind }: Made): string {
  return `${kind === "scale" ? title : inSentence(question, title)}: ${each(sides)}`;
}

function claim(made: Made, setting: Setting): string {
  const { sides, result, question, title } = made;
  const [first, second] = sides;
  if (first === undefined || second === undefined) return "";
  const name = inSentence(question, title);
  const test = tested(made, setting);
  const within = strataOf(made);
  const like = within === null ? "" : `like against like (by ${byText(within)}), `;
  const up = (plainWay: number): boolean => (within === null ? plainWay : wayOf(within)) > 0;
  const effect = effectText(made, setting);
  switch (result.test) {
    case "fisher-exact": {
      const more = up(result.difference.value ?? 0) ? "more" : "fewer";
      const pigs = setting.prevalence ? `${more} pigs` : more;
      return `${like}${pigs} had ${name} ${second.title} (${ofExamined(second)}) than ${first.title} (${ofExamined(first)}): ${effect}${test}`;
    }
    case "mann-whitney": {
      const higher = up(result.superiority - 0.5) ? "higher" : "lower";
      return `${like}${title} was ${higher} ${second.title} (${scored(second)}) than ${first.title} (${scored(first)}): ${effect}${test}`;
    }
    case "cochran-armitage":
      return `${like}${name} became ${up(result.z ?? 0) ? "more common" : "rarer"}: ${each(sides)}; ${test}`;
    case "freeman-halton":
    case "kruskal-wallis":
      return `${made.kind === "scale" ? title : name} was not the same everywhere: ${each(sides)}; ${test}`;
  }
}

/** The strata that a claim rests on. */
function strataOf({ result, claim_on }: Made) {
  if (claim_on !== "strata" && claim_on !== "pens-in-strata") return null;
  return "stratified" in result ? result.stratified : null;
}

/** The numbers without a claim. */
const facts = (made: Made, setting: Setting): string =>
  `${plainly(made)} (${effectText(made, setting)}${tested(made, setting)})`;

/** The size of a difference of two sides, as its claim sees it. */
function effectText(made: Made, { level, cluster }: Setting): string {
  const { result, unit, claim_on } = made;
  const within = strataOf(made);
  const pens = claim_on === "pens" || claim_on === "pens-in-strata";
  if (result.test === "mann-whitney") {
    if (pens && result.penned !== null)
      return `${oftenText(result.penned.superiority, `pairs of ${clusterWords[cluster]}s`)}; `;
    if (within !== null && "superiority" in within)
      return `${oftenText(within.superiority, "pairs of like pigs")}; `;
    return `${shiftText(result, unit, level)}; `;
  }
  if (result.test !== "fisher-exact") return "";
  if (claim_on === "strata" && within !== null && "odds_ratio" in within)
    return `odds ratio ${ratioText(within.odds_ratio)}; `;
  return `${differenceText((pens ? (result.penned ?? result) : result).difference, level)}; `;
}

const each = (sides: readonly SideNumbers[]): string =>
  listing(
    sides.map((side) => `${side.affected === undefined ? scored(side) : ofExamined(side)} ${side.title}`),
  );

const scored = ({ median, examined }: SideNumbers): string =>
  `median ${plain(median ?? 0)} in ${count(examined, "pig")}`;

/** What could have been shown of pigs that were taken each for itself. */
const couldShow = ({ result, claim_on }: Made): string =>
  result.test === "fisher-exact" && claim_on === "pigs" ? couldShowText(result) : "";
