/** What a claim may rest on: all pigs, like against like, pens, or nothing at all. */
import { tooFewClusters } from "../../herd/index.ts";
import { clusterLimits } from "../../knowledge/index.ts";
import { count, listing } from "../../words/listing.ts";
import { type Asked, type Caveat, type Comparison, clusterWord } from "../comparison.ts";
import type { ComparedSides } from "../sides/comparability.ts";
import type { SidePens } from "../sides/pens.ts";
import type { Stratification } from "../sides/stratification.ts";
import { byPens, type Result, withinStrata } from "./results.ts";
import { smallestAttainableP } from "./smallest-attainable-p.ts";

type Claim = Pick<Comparison, "claim_on" | "no_claim" | "p" | "least_p">;

/**
 * Pigs are taken each for itself only when the sides are made up alike and no pens are shared. Sides of another make-up
 * are judged within strata, shared pens by pens; what cannot be told apart is not claimed.
 */
export function claimOf(result: Result, compared: ComparedSides, asked: Asked): Claim {
  const no_claim = whyNone(result, compared, asked);
  if (no_claim !== null) return { claim_on: "none", no_claim, p: null, least_p: null };
  const [inStrata, perPen] = [withinStrata(result), byPens(result)];
  const { p } = perPen ?? inStrata ?? result;
  const strata = compared.stratification !== null;
  const claim_on =
    perPen !== null ? (strata ? "pens-in-strata" : "pens") : inStrata !== null ? "strata" : "pigs";
  const smallest = smallestAttainableP(result, compared, claim_on);
  return { claim_on, p, no_claim, least_p: smallest === null ? null : Math.min(smallest, p) };
}

/** Why nothing can be claimed whatever the numbers; null when it can. */
function whyNone(
  result: Result,
  { sides, stratification, pens }: ComparedSides,
  { between, cluster }: Asked,
): string | null {
  const what = {
    visits: "a change",
    groups: "a difference between groups",
    ill: "a difference",
    treatment: "the treatment",
  }[between];
  const word = clusterWord(cluster);
  if (stratification?.strata.length === 0)
    return `the sides have no ${facetWords(stratification)} in common, so ${what} cannot be told apart from the difference between ${facetWords(stratification, "many")}`;
  if (result.test === "unit-means") {
    const some = sides.map(({ side }, place) =>
      count(pens[place]?.known ?? 0, `${side.side} ${result.unit}`),
    );
    if (pens.every(({ known }) => known > 1)) return null;
    return `the ${result.unit} is what was treated, and with ${listing(some)} the treatment cannot be told apart from the difference between two ${result.unit}s; at least 2 in each arm are needed, and as a rule 4 to show anything`;
  }
  const shared = pens.some((side) => side.shared);
  if (shared && pens.some(fewPens)) {
    const said = sides.map(({ side }, place) => `${count(pens[place]?.known ?? 0, word)} ${side.title}`);
    return `with ${listing(said)} and several pigs to a ${word}, ${what} cannot be told apart from the difference between ${word}s; at least ${clusterLimits.fewest} on each side are needed`;
  }
  const manySides = result.test === "freeman-halton" || result.test === "kruskal-wallis";
  if (manySides && stratification !== null)
    return `the sides are made up differently by ${facetWords(stratification)}, which this test of three groups or more cannot allow for; compare two, or narrow with --where`;
  if (result.test === "freeman-halton" && !result.exact && result.least_expected < 5)
    return "the tables are too many to count and the pigs too few for chi-squared";
  if (shared && manySides)
    return `pigs share ${word}s, which the tests of three groups or more cannot allow for; compare two`;
  return null;
}

/** Whether pens are so few that the difference between them and the difference between the sides are one. */
const fewPens = ({ shared, known }: SidePens): boolean => shared && tooFewClusters(known);

/** What was done about sides in which groups, age classes or places of examination have other shares. */
export function makeUpCaveats(result: Result, stratification: Stratification | null): Caveat[] {
  if (stratification === null) return [];
  const arms = result.test === "unit-means";
  const said = `the sides are made up differently by ${facetWords(stratification)}`;
  if (stratification.strata.length === 0) return [{ text: `${said}, and have no stratum in common` }];
  const inStrata = withinStrata(result);
  if (arms)
    return [
      {
        text: `treated and control are set against each other within each ${facetWords(stratification)}${partless(stratification.outside)}`,
      },
    ];
  if (inStrata === null) return [{ text: `${said}; the numbers are of all pigs together` }];
  const opposite = inStrata.opposite ? ", and points the other way than all pigs together" : "";
  return [
    {
      text: `${said}; what is claimed rests on like against like, within strata${opposite}${partless(inStrata.pigs_outside)}`,
    },
  ];
}

const partless = (outside: number): string =>
  outside === 0
    ? ""
    : `; ${count(outside, "pig")} of strata that only one side has ${outside === 1 ? "takes" : "take"} no part in it`;

const words: Readonly<Record<string, Readonly<Record<"one" | "many", string>>>> = {
  group: { one: "group", many: "groups" },
  age_class: { one: "age class", many: "age classes" },
  place: { one: "place of examination", many: "places of examination" },
};

const facetWords = ({ by }: Stratification, number: "one" | "many" = "one"): string =>
  listing(by.map((facet) => words[facet]?.[number] ?? facet));
