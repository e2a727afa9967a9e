/** Tests as they stand in a sentence, each with its p. */
import { count, listing } from "../words/listing.ts";
import { levelPercent } from "../words/percent.ts";
import { clusterWords } from "./claims.ts";
import type { Cluster, SideNumbers } from "./comparison.ts";
import type { ClaimOn, Result, Within } from "./tests-made.ts";
import { differenceText, oftenText, plain, pText, ratioText } from "./words.ts";

const exactly = (exact: boolean, else_: string): string => (exact ? "exact" : else_);

/** `Fisher's exact p 0.070`: all pigs together, each for itself. */
export function testText(result: Result): string {
  const p = pText(result.p);
  switch (result.test) {
    case "fisher-exact":
      return `Fisher's exact ${p}`;
    case "mann-whitney":
      return `Mann-Whitney ${p}, ${exactly(result.exact, "normal")}`;
    case "cochran-armitage":
      return `Cochran-Armitage trend ${p}, ${exactly(result.exact, "normal")}`;
    case "freeman-halton":
      return result.exact ? `Freeman-Halton ${p}, exact` : `chi-squared ${p}`;
    case "kruskal-wallis":
      return `Kruskal-Wallis ${p}, ${exactly(result.exact, "chi-squared")}`;
  }
}

/** `odds ratio 0.17 (0.03 to 0.95); Mantel-Haenszel p 0.10, exact`. */
export function withinText(within: Within, level: number): string {
  const p = `${pText(within.p)}, ${exactly(within.exact, "normal")}`;
  if ("odds_ratio" in within)
    return `odds ratio ${ratioText(within.odds_ratio)}, ${levelPercent(level)} interval; Mantel-Haenszel ${p}`;
  if ("superiority" in within)
    return `${oftenText(within.superiority, "pairs of like pigs")}; van Elteren ${p}`;
  return `Cochran-Armitage trend ${p}`;
}

/** `group and age class`. */
export const byText = ({ by }: Within): string => listing(by.map((facet) => facet.replaceAll("_", " ")));

/** `30 pigs of 6 pens count as 8.2 on 2026-03-14, ...: 40.0 more of every 100 pigs, ...; Rao-Scott p 0.02`. */
export function pennedText(
  result: Result,
  sides: readonly SideNumbers[],
  level: number,
  cluster: Cluster,
): string {
  if (!("penned" in result) || result.penned === null) return "";
  const { penned } = result;
  const word = clusterWords[cluster];
  const within = penned.within ? " within strata" : "";
  const like = sides.map(({ title, examined }, place) => {
    const alone = penned.alone[place] ?? 0;
    const pens = count((penned.clusters[place] ?? 0) - alone, word);
    const of = `${count(examined, "pig")} of ${pens}${alone === 0 ? "" : ` and ${alone} alone`}`;
    return "effective" in penned
      ? `${of} count as ${plain(penned.effective[place] ?? 0)} ${title}`
      : `${of} ${title}`;
  });
  const test =
    "effective" in penned
      ? `${differenceText(penned.difference, level)}; Rao-Scott${within} ${pText(penned.p)}`
      : `means of ${word}s ranked${within}, ${oftenText(penned.superiority, `pairs of ${word}s`)}: ${penned.within ? "van Elteren" : "Mann-Whitney"} ${pText(penned.p)}, ${exactly(penned.exact, "normal")}`;
  return `${listing(like)}: ${test}`;
}

/** The test a claim rests on. */
export function claimText(result: Result, on: ClaimOn, cluster: Cluster): string {
  const within: Within | null = "stratified" in result ? result.stratified : null;
  const penned = "penned" in result ? result.penned : null;
  if (on === "strata" && within !== null) {
    const test = {
      "fisher-exact": "Mantel-Haenszel",
      "mann-whitney": "van Elteren",
      "cochran-armitage": "Cochran-Armitage trend within strata",
    }[result.test as "fisher-exact" | "mann-whitney" | "cochran-armitage"];
    return `${test} ${pText(within.p)}, ${exactly(within.exact, "normal")}`;
  }
  if ((on === "pens" || on === "pens-in-strata") && penned !== null) {
    const strata = penned.within ? " within strata" : "";
    if (!("exact" in penned)) return `Rao-Scott${strata} ${pText(penned.p)}`;
    const test = penned.within ? "van Elteren" : "Mann-Whitney";
    return `${test} of ${clusterWords[cluster]}s${strata} ${pText(penned.p)}, ${exactly(penned.exact, "normal")}`;
  }
  return testText(result);
}
