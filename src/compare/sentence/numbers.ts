/** Numbers and tests of a comparison as they stand in a sentence. */
import { indicators } from "../../knowledge/index.ts";
import { count, listing } from "../../words/listing.ts";
import { levelPercent, percent } from "../../words/percent.ts";
import { type Cluster, clusterWord, type SideNumbers } from "../comparison.ts";
import {
  type ArmsCompared,
  byPens,
  type ClaimOn,
  type Limited,
  type MeansByPens,
  type Ratio,
  type Result,
  type ScoresCompared,
  type SharesCompared,
  type WithinStrata,
  withinStrata,
} from "../judgement/results.ts";

/** `p 0.070`, `p < 0.001`. */
export const pText = (p: number): string => (p < 0.001 ? "p < 0.001" : `p ${p.toFixed(p < 0.1 ? 3 : 2)}`);

/** `7 of 10`. */
export const ofExamined = ({ affected = 0, examined }: Pick<SideNumbers, "affected" | "examined">): string =>
  `${affected} of ${examined}`;

/** At most two decimals. */
export const plain = (value: number): string => String(Number(value.toFixed(2)));

const hundred = (share: number): string => (Math.abs(share) * 100).toFixed(1);

/** `50.0 fewer of every 100 pigs, 95 % interval 6.9 to 74.0 fewer`. */
export function differenceText({ value, lower, upper }: Limited, level: number): string {
  return `${differenceValue(value)}, ${levelPercent(level)} interval ${rangeText(lower ?? -1, upper ?? 1)}`;
}

const differenceValue = (value: number | null): string =>
  value === null || value === 0
    ? "no more and no fewer"
    : `${hundred(value)} ${value < 0 ? "fewer" : "more"} of every 100 pigs`;

function rangeText(
  lower: number,
  upper: number,
  of: (value: number) => string = hundred,
  [less, more]: readonly [string, string] = ["fewer", "more"],
): string {
  if (upper <= 0) return `${of(upper)} to ${of(lower)} ${less}`;
  if (lower >= 0) return `${of(lower)} to ${of(upper)} ${more}`;
  return `${of(lower)} ${less} to ${of(upper)} ${more}`;
}

/** How often the second side stands above the first. */
export const oftenText = (superiority: number, pairs: string): string =>
  `the second side is higher in ${hundred(superiority)} of 100 ${pairs}, ties half`;

/**
 * `shift -1 points, 95 % interval -2 to 0`. A shift of 0 may hide a difference where most pigs share one score, so
 * then stands how often a pig of the second side scores above one of the first.
 */
export function shiftText(
  { shift, superiority }: Pick<ScoresCompared, "shift" | "superiority">,
  unit: string | undefined,
  level: number,
): string {
  const often = oftenText(superiority, "pairs of pigs");
  if (shift === null) return often;
  const { value, lower, upper } = shift;
  const by = `shift ${plain(value ?? 0)} ${unit ?? (Math.abs(value ?? 0) === 1 ? "point" : "points")}`;
  const range =
    lower === null || upper === null
      ? `no interval (${shift.reason === "ties" ? "most pairs of pigs lie just so far apart" : "too few pigs"})`
      : `${levelPercent(level)} interval ${plain(lower)} to ${plain(upper)}`;
  return `${by}, ${range}${value === 0 && superiority !== 0.5 ? `; ${often}` : ""}`;
}

/** `0.12 (0.01 to 1.24)`; `without limit (3.5 or more)` when nothing stands below the line. */
export function ratioText({ value, lower, upper, unbounded }: Ratio): string {
  if (unbounded) return `without limit${lower === null || lower === 0 ? "" : ` (${plain(lower)} or more)`}`;
  if (value === null) return upper === null ? "not to be told" : `not to be told (${plain(upper)} or less)`;
  const shown = plain(value);
  if (lower === null && upper === null) return shown;
  if (upper === null) return `${shown} (${plain(lower ?? 0)} or more)`;
  return lower === null || lower === 0
    ? `${shown} (${plain(upper)} or less)`
    : `${shown} (${plain(lower)} to ${plain(upper)})`;
}

/** The shares of the second side that would have been shown; empty where it was not worked out. */
export function couldShowText({ could_show }: SharesCompared): string {
  if (could_show === null) return "";
  const { below, above } = could_show;
  const shares = [
    ...(below === null ? [] : [`${percent(below)} or less`]),
    ...(above === null ? [] : [`${percent(above)} or more`]),
  ];
  return shares.length === 0
    ? "no share would be shown four times in five, not even none or all"
    : `${shares.join(" or ")} would be shown four times in five`;
}

/** The title as it stands within a sentence: those that ship begin small. */
export function inSentence(id: string, title: string): string {
  const ours = indicators.get(id)?.title === title;
  return ours ? `${title.charAt(0).toLowerCase()}${title.slice(1)}` : title;
}

/** How the means of pens of many were tested. */
const atRandom = "by permutation";

const exactly = (exact: boolean, else_: string): string => (exact ? "exact" : else_);

const rules: Readonly<Record<SharesCompared["rule"], (p: string) => string>> = {
  fisher: (p) => `Fisher's exact ${p}`,
  "mid-p": (p) => `Fisher's mid-${p}`,
  boschloo: (p) => `Boschloo's exact ${p}`,
};

/** `Fisher's exact p 0.070`: all pigs together, each for itself. */
export function testText(result: Result): string {
  const p = pText(result.p);
  switch (result.test) {
    case "fisher-exact":
      return rules[result.rule](p);
    case "mann-whitney":
      return `Mann-Whitney ${p}, ${exactly(result.exact, "normal")}`;
    case "cochran-armitage":
      return `Cochran-Armitage trend ${p}, ${exactly(result.exact, "normal")}`;
    case "unit-means":
      return meansTest(result, result.unit === "pen or group" ? "pens and group" : result.unit);
    case "cuzick":
      return `Cuzick trend ${p}, ${exactly(result.exact, atRandom)}`;
    case "freeman-halton":
      return result.exact ? `Freeman-Halton ${p}, exact` : `chi-squared ${p}`;
    case "kruskal-wallis":
      return `Kruskal-Wallis ${p}, ${exactly(result.exact, "chi-squared")}`;
  }
}

const strataP = (inStrata: WithinStrata): string =>
  "mid_p" in inStrata && inStrata.mid_p
    ? `mid-${pText(inStrata.p)}`
    : `${pText(inStrata.p)}, ${exactly(inStrata.exact, "normal")}`;

/** `odds ratio 0.17 (0.03 to 0.95); Mantel-Haenszel p 0.10, exact`. */
export function withinStrataText(inStrata: WithinStrata, level: number): string {
  const p = strataP(inStrata);
  if ("odds_ratio" in inStrata)
    return `odds ratio ${ratioText(inStrata.odds_ratio)}, ${levelPercent(level)} interval; Mantel-Haenszel ${p}`;
  if ("superiority" in inStrata)
    return `${oftenText(inStrata.superiority, "pairs of like pigs")}; van Elteren ${p}`;
  return `trend ${p}`;
}

/** `group and age class`. */
export const facetsText = ({ by }: WithinStrata): string =>
  listing(by.map((facet) => facet.replaceAll("_", " ")));

/** `30 pigs of 6 pens count as 8.2 on 2026-03-14, ...: 40.0 more of every 100 pigs, ...; Rao-Scott p 0.02`. */
export function byPensText(
  result: Result,
  sides: readonly SideNumbers[],
  scoreUnit: string | undefined,
  level: number,
  cluster: Cluster,
): string {
  const perPen = byPens(result);
  if (perPen === null) return "";
  const word = clusterWord(cluster);
  const strata = perPen.within ? " within strata" : "";
  const like = sides.map(({ title, examined }, place) => {
    const alone = perPen.alone[place] ?? 0;
    const pens = count((perPen.clusters[place] ?? 0) - alone, word);
    const of = `${count(examined, "pig")} of ${pens}${alone === 0 ? "" : ` and ${alone} alone`}`;
    return "effective" in perPen
      ? `${of} count as ${plain(perPen.effective[place] ?? 0)} ${title}`
      : `${of} ${title}`;
  });
  const unit = sides[0]?.affected === undefined ? (scoreUnit ?? "points") : undefined;
  const test =
    "z" in perPen
      ? `means of ${word}s, ${slopeText(perPen, unit, level)}; ${meansTest(perPen, word)}`
      : "effective" in perPen
        ? `${differenceText(perPen.difference, level)}; Rao-Scott${strata} ${pText(perPen.p)}`
        : `means of ${word}s ranked${strata}, ${oftenText(perPen.superiority, `pairs of ${word}s`)}: ${perPen.within ? "van Elteren" : "Mann-Whitney"} ${pText(perPen.p)}, ${exactly(perPen.exact, "normal")}`;
  return `${listing(like)}: ${test}`;
}

/** `permutation of pens within strata p 0.012, exact`. */
const meansTest = ({ within, p, exact }: MeansByPens, word: string): string =>
  `permutation of ${word}s${within ? " within strata" : ""} ${pText(p)}, ${exactly(exact, "9999 at random")}`;

/**
 * `1.2 points lower, 95 % interval 0.3 to 2.1 lower`, or of every 100 pigs: a difference of the means of pens.
 * @param unit undefined of shares
 */
export function meansText(difference: Limited, unit: string | undefined, level: number): string {
  const { lower, upper } = difference;
  const change = meansValue(difference, unit);
  if (lower === null || upper === null) return `${change}, no interval (too few, or all alike)`;
  const range =
    unit === undefined ? rangeText(lower, upper) : rangeText(lower, upper, size, ["lower", "higher"]);
  return `${change}, ${levelPercent(level)} interval ${range}`;
}

/** `4 control and 4 treated pens`. */
export const unitWords = ({ clusters: [control = 0, treated = 0], unit }: ArmsCompared): string =>
  `${control} control and ${treated} treated ${unit === "pen or group" ? "pens or group" : unit}s`;

const size = (of: number): string => plain(Math.abs(of));

/** The same without its interval. */
export function meansValue({ value }: Limited, unit: string | undefined): string {
  if (unit === undefined) return differenceValue(value);
  return value === null || value === 0
    ? "no higher and no lower"
    : `${size(value)} ${unit} ${value < 0 ? "lower" : "higher"}`;
}

/** From the first visit to the last, of three or more. @param unit undefined of shares */
export const slopeText = ({ difference }: MeansByPens, unit: string | undefined, level: number): string =>
  `along a straight line from first to last ${meansText(difference, unit, level)}`;

/** The test a claim rests on. */
export function claimText(result: Result, on: ClaimOn, cluster: Cluster): string {
  const [inStrata, perPen] = [withinStrata(result), byPens(result)];
  if (on === "strata" && inStrata !== null) {
    const test =
      "odds_ratio" in inStrata
        ? "Mantel-Haenszel"
        : "superiority" in inStrata
          ? "van Elteren"
          : `${result.test === "cuzick" ? "Cuzick" : "Cochran-Armitage"} trend within strata`;
    return `${test} ${strataP(inStrata)}`;
  }
  if (result.test === "unit-means") return testText(result);
  if ((on === "pens" || on === "pens-in-strata") && perPen !== null) {
    const strata = perPen.within ? " within strata" : "";
    if (!("exact" in perPen)) return `Rao-Scott${strata} ${pText(perPen.p)}`;
    if ("z" in perPen) return meansTest(perPen, clusterWord(cluster));
    const test = perPen.within ? "van Elteren" : "Mann-Whitney";
    return `${test} of ${clusterWord(cluster)}s${strata} ${pText(perPen.p)}, ${exactly(perPen.exact, "normal")}`;
  }
  return testText(result);
}
