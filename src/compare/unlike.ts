/** Sides that are made up differently: what was done about it, or that nothing could be. */
import { listing } from "../words/listing.ts";
import type { AnsweredSide } from "./comparability.ts";
import type { Between, Caveat, Result } from "./comparison.ts";
import { unevenFacets } from "./made-up.ts";

/** Caveats for sides in which groups, age classes or places of examination have other shares. */
export function unlike(
  kind: "indicator" | "scale",
  sides: readonly AnsweredSide[],
  result: Result,
  between: Between,
): Caveat[] {
  const uneven = unevenFacets(sides, between).map((facet) => facetWords[facet] ?? facet);
  if (uneven.length === 0) return [];
  const said = `the sides are made up differently by ${listing(uneven)}`;
  if (kind === "scale") return [{ text: `${said}; ranks are compared over all pigs together` }];
  if (result.test !== "fisher-exact") return [{ text: `${said}; the shares are of all pigs together` }];
  const { stratified } = result;
  if (stratified === null)
    return [{ text: `${said}, and have no stratum in common, so like could not be set against like` }];
  const opposite = stratified.opposite ? ", and points the other way: believe that one" : "";
  return [
    { text: `the sides are made up differently; the odds ratio within strata stands beside${opposite}` },
  ];
}

const facetWords: Readonly<Record<string, string>> = {
  age_class: "age class",
  place: "place of examination",
};
