/** The answer in plain words: what is claimed only where the test shows it, and what the numbers are of. */
import { comparability } from "../knowledge/index.ts";
import { count, listing } from "../words/listing.ts";
import type { Between, Comparison, Reason, Result, SideNumbers } from "./comparison.ts";
import {
  couldShowText,
  differenceText,
  inSentence,
  ofExamined,
  plain,
  pText,
  shiftText,
  testText,
} from "./words.ts";

/** A comparison that was made, before it has its sentence. */
export interface Made extends Omit<Comparison, "sentence" | "result" | "p" | "p_holm"> {
  readonly result: Result;
  readonly p: number;
  readonly p_holm: number;
}

/** What the sentences of a block have in common. */
export interface Setting {
  readonly between: Between;
  readonly level: number;
  /** Whether a proportion over these pigs is a prevalence. */
  readonly prevalence: boolean;
  /** `chosen for signs`. */
  readonly pigs: string;
  /** Comparisons made. */
  readonly comparisons: number;
  /** Whether the sides are so small that not even all against none would be shown. */
  readonly tooFew: boolean;
}

/** One comparison as a sentence. */
export function sentenceOf(made: Made, setting: Setting): string {
  if (made.shown) return capital(`${whose(setting)}${claim(made, setting)}.`);
  const what = setting.between === "visits" ? "change" : "difference";
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
  const [strongest] = [...made].sort((a, b) => a.p - b.p);
  if (strongest === undefined) return "Nothing could be compared.";
  const pigs = listing(sides.map((side) => String(side.pigs)));
  if (setting.tooFew)
    return `With ${pigs} pigs nothing can be shown, not even if all were affected on one side and none on the other.`;
  if (made.length === 1) return sentenceOf(strongest, setting);
  const shown = made.filter((one) => one.shown);
  if (shown.length > 0) {
    const others = shown.length - 1;
    const more =
      others === 0 ? "" : ` The same test stands for ${others} more of the ${made.length} comparisons.`;
    return `${sentenceOf(strongest, setting)}${more}`;
  }
  const alone = made.filter(({ p }) => p < 1 - setting.level).length;
  const hint = alone === 0 ? "" : `, though ${alone} would, each taken alone`;
  const nothing = setting.between === "visits" ? "Nothing changed" : "Nothing differs";
  return `${nothing} that ${pigs} pigs could show: none of ${made.length} comparisons stands after Holm${hint}; the nearest, ${whose(setting)}${facts(strongest, setting)}.`;
}

const whose = ({ prevalence, pigs }: Setting): string =>
  prevalence ? "" : `of the pigs examined (${pigs}), `;

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** The test, p after Holm, and what was overridden; a different basis is already said by whose pigs they are. */
function tested({ result, p_holm, caveats }: Made, { comparisons }: Setting): string {
  const after = comparisons < 2 ? "" : `, ${pText(p_holm)} after Holm for ${comparisons} comparisons`;
  const others = caveats.flatMap(({ although }) =>
    although === undefined || although === "basis" ? [] : [comparability.factors[although].title],
  );
  const although = others.length === 0 ? "" : `; not comparable by ${listing(others)}`;
  return `${testText(result)}${after}${although}`;
}

function claim(made: Made, setting: Setting): string {
  const { sides, result, question, title, unit } = made;
  const [first, second] = sides;
  if (first === undefined || second === undefined) return "";
  const name = inSentence(question, title);
  const test = tested(made, setting);
  switch (result.test) {
    case "fisher-exact": {
      const more = (result.difference.value ?? 0) < 0 ? "fewer" : "more";
      const pigs = setting.prevalence ? `${more} pigs` : more;
      return `${pigs} had ${name} ${second.title} (${ofExamined(second)}) than ${first.title} (${ofExamined(first)}): ${differenceText(result.difference, setting.level)}; ${test}`;
    }
    case "mann-whitney": {
      const lower = result.superiority < 0.5 ? "lower" : "higher";
      const shift = `${shiftText(result, unit, setting.level)}; `;
      return `${title} was ${lower} ${second.title} (${scored(second)}) than ${first.title} (${scored(first)}): ${shift}${test}`;
    }
    case "cochran-armitage":
      return `${name} became ${(result.z ?? 0) < 0 ? "rarer" : "more common"}: ${each(sides)}; ${test}`;
    case "kruskal-wallis":
      return `${made.kind === "scale" ? title : name} was not the same everywhere: ${each(sides)}; ${test}`;
  }
}

/** The numbers without a claim. */
function facts(made: Made, setting: Setting): string {
  const { sides, result, question, title, unit, kind } = made;
  const name = kind === "scale" ? title : inSentence(question, title);
  const test = tested(made, setting);
  const effect =
    result.test === "fisher-exact"
      ? `${differenceText(result.difference, setting.level)}; `
      : result.test === "mann-whitney"
        ? `${shiftText(result, unit, setting.level)}; `
        : "";
  return `${name}: ${each(sides)} (${effect}${test})`;
}

const each = (sides: readonly SideNumbers[]): string =>
  listing(
    sides.map((side) => `${side.affected === undefined ? scored(side) : ofExamined(side)} ${side.title}`),
  );

const scored = ({ median, examined }: SideNumbers): string =>
  `median ${plain(median ?? 0)} in ${count(examined, "pig")}`;

const couldShow = ({ result }: Made): string => (result.test === "fisher-exact" ? couldShowText(result) : "");
