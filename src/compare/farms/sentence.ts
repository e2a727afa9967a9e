/** What may be said of farms that were ranked. */
import { comparability } from "../../knowledge/index.ts";
import { capital, count, listing } from "../../words/listing.ts";
import { inSentence, ofExamined, pText } from "../sentence/numbers.ts";
import type { RankedFarm, Ranking } from "./ranking.ts";

interface Told {
  readonly tests: number;
  /** Whether pigs of several age classes were ranked, each for itself. */
  readonly several: boolean;
}

/** `weaner`, as it is in the case. */
export const ageWords = (ageClass: string | null): string => ageClass ?? "age not recorded";

export function answerOf(ranking: Omit<Ranking, "answer">, { tests, several }: Told): string {
  const said = sentenceOf(ranking, tests);
  return several ? `${capital(ageWords(ranking.age_class))}: ${said}` : said;
}

function sentenceOf({ question, title, farms, reasons }: Omit<Ranking, "answer">, tests: number): string {
  const what = inSentence(question, title);
  const { fewest } = comparability.farms;
  const [highest, lowest] = [farms[0], farms.at(-1)];
  if (highest === undefined || lowest === undefined || reasons.length > 0)
    return `The farms are not ranked in ${what}: ${reasons.map(({ text }) => text.replace(/\.$/, "")).join("; ")}.`;
  const range = `from ${ofExamined(lowest)} in ${lowest.farm} to ${ofExamined(highest)} in ${highest.farm}`;
  if (farms.length < fewest)
    return `${count(farms.length, "farm")} are too few to say which stands out in ${what}: ${range}. That takes ${fewest}.`;
  const out = farms.filter(({ stands_out }) => stands_out !== null);
  const among = `among ${count(farms.length, "farm")} in ${what}`;
  const allowing = `allowing for ${tests === farms.length ? count(tests, "farm") : count(tests, "test")}`;
  if (out.length === 0) {
    const differing = farms.filter(({ differs }) => differs !== null);
    return differing.length === 0
      ? `No farm was shown to stand out ${among}: ${range}. That is no proof that they are alike.`
      : `No farm stands out from the spread of the others ${among}: ${range}. But they differ by more than chance: ${sides(differing)} than the others together (${allowing}).`;
  }
  const seen = (farm: RankedFarm): string => `${ofExamined(farm)}, ${pText(farm.p_adjusted ?? 1)}`;
  const [only, ...more] = out;
  if (only !== undefined && more.length === 0)
    return `${only.farm} stands out ${among}: ${only.stands_out} of its pigs are affected (${seen(only)} ${allowing}).`;
  const each = out.map((farm) => `${farm.farm} with ${farm.stands_out} (${seen(farm)})`);
  return `${listing(out.map(({ farm }) => farm))} stand out ${among}: ${listing(each)}, ${allowing}.`;
}

/** `birch and elm have more, oak has fewer`. */
function sides(farms: readonly RankedFarm[]): string {
  const named = (["more", "fewer"] as const).flatMap((side) => {
    const some = farms.filter(({ differs }) => differs === side).map(({ farm }) => farm);
    return some.length === 0 ? [] : [`${listing(some)} ${some.length === 1 ? "has" : "have"} ${side}`];
  });
  return named.join(", ");
}

/** The rankings in which a farm stands out; where there is none, the first. */
export function reportAnswer(rankings: readonly Ranking[]): string {
  const out = rankings.filter(({ farms }) => farms.some(({ stands_out }) => stands_out !== null));
  const told = out.length > 0 ? out : rankings.slice(0, 1);
  return told.length === 0 ? "There was nothing to rank." : told.map(({ answer }) => answer).join(" ");
}

/** What must be known to read a ranking. */
export function cautionsOf({ farms, caveats }: Ranking): string[] {
  const { cautions } = comparability;
  const fewer = farms.filter(({ counted_as, examined }) => counted_as < examined - 0.05);
  const unjudged = farms.filter(({ not_judged }) => not_judged !== null);
  const whole = farms.filter(({ basis }) => basis === "complete").length;
  const noted = farms.filter(({ method, notes }) => method === "clopper-pearson" && notes.length > 0);
  return [
    ...caveats.map(({ text }) => text),
    ...(fewer.length === 0 ? [] : [`${cautions["farms-counted"]} ${fewer.map(countedText).join("; ")}.`]),
    ...noted.map(({ farm, notes }) => `${farm}: ${notes.join("; ")}.`),
    ...(unjudged.length === 0
      ? []
      : [`Not judged: ${unjudged.map(({ farm, not_judged }) => `${farm}, ${not_judged}`).join("; ")}.`]),
    ...(whole > 0 && whole < farms.length ? [cautions["random-and-whole"]] : []),
    cautions.farms,
  ];
}

const countedText = ({ farm, examined, counted_as }: RankedFarm): string =>
  `${farm}, ${examined} as ${Number(counted_as.toFixed(1))}`;
