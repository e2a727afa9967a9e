/** What a claim may rest on: all pigs, like against like, pens, or nothing at all. */
import { clusterLimits } from "../knowledge/index.ts";
import { count, listing } from "../words/listing.ts";
import type { Between, Cluster } from "./comparison.ts";
import { leastP } from "./least.ts";
import { fewPens } from "./pens.ts";
import type { Made } from "./results.ts";
import type { ClaimOn, Result } from "./tests-made.ts";

export interface Claim {
  readonly claim_on: ClaimOn;
  readonly no_claim: string | null;
  readonly p: number | null;
  readonly least_p: number | null;
}

const none = (no_claim: string): Claim => ({ claim_on: "none", no_claim, p: null, least_p: null });

/**
 * Pigs are taken each for itself only when the sides are made up alike and no pens are shared. Sides of another make-up
 * are judged within strata, shared pens by pens; what cannot be told apart is not claimed.
 */
export function claimOf(result: Result, made: Made, between: Between, cluster: Cluster): Claim {
  const { parted } = made;
  const what = between === "visits" ? "a change" : "a difference between groups";
  if (parted !== null && parted.strata.length === 0) {
    const [have, apart] = facetWords(parted.by);
    return none(
      `the sides have no ${have} in common, so ${what} cannot be told apart from the difference between ${apart}`,
    );
  }
  const shared = made.penned.some((side) => side.shared);
  if (shared && made.penned.some(fewPens)) return none(fewText(made, what, cluster));
  if (result.test === "freeman-halton" || result.test === "kruskal-wallis") {
    if (parted !== null)
      return none(
        `the sides are made up differently by ${facetWords(parted.by)[0]}, which this test of three sides or more cannot allow for; compare two, or narrow with --where`,
      );
    if (!result.exact && result.test === "freeman-halton" && result.least_expected < 5)
      return none("the tables are too many to count and the pigs too few for chi-squared");
  }
  if (shared && made.sides.length > 2)
    return none(
      `pigs share ${clusterWords[cluster]}s, which the tests of three sides or more cannot allow for; compare two`,
    );
  const test = testOf(result, parted !== null, shared);
  return { ...test, no_claim: null, least_p: leastP(result, made, test.claim_on, test.p) };
}

function testOf(result: Result, uneven: boolean, shared: boolean): { claim_on: ClaimOn; p: number } {
  if (shared && "penned" in result && result.penned !== null)
    return { claim_on: uneven ? "pens-in-strata" : "pens", p: result.penned.p };
  if (uneven && "stratified" in result && result.stratified !== null)
    return { claim_on: "strata", p: result.stratified.p };
  return { claim_on: "pigs", p: result.p };
}

/** `with 2 pens on 2026-01-01 and 2 on 2026-06-01, each of several pigs, ...`. */
function fewText({ sides, penned }: Made, what: string, cluster: Cluster): string {
  const word = clusterWords[cluster];
  const said = sides.map(({ side }, place) => {
    const { known = 0 } = penned[place] ?? {};
    return `${count(known, word)} ${side.title}`;
  });
  return `with ${listing(said)} and several pigs to a ${word}, ${what} cannot be told apart from the difference between ${word}s; at least ${clusterLimits.fewest} on each side are needed`;
}

export const clusterWords: Readonly<Record<Cluster, string>> = {
  pen: "pen",
  room: "room",
  litter: "litter",
  none: "pig",
};

const words: Readonly<Record<string, readonly [string, string]>> = {
  group: ["group", "groups"],
  age_class: ["age class", "age classes"],
  place: ["place of examination", "places of examination"],
};

/** Facets in words, one of them and several. */
export function facetWords(by: readonly string[]): [string, string] {
  const read = (place: 0 | 1): string => listing(by.map((facet) => words[facet]?.[place] ?? facet));
  return [read(0), read(1)];
}
