/** Sides that are made up differently: what was done about it. */
import { count } from "../words/listing.ts";
import { facetWords } from "./claims.ts";
import type { Caveat } from "./comparison.ts";
import type { Parted } from "./made-up.ts";
import type { Result, Within } from "./tests-made.ts";

/** Caveats for sides in which groups, age classes or places of examination have other shares. */
export function unlike(result: Result, parted: Parted | null): Caveat[] {
  if (parted === null) return [];
  const said = `the sides are made up differently by ${facetWords(parted.by)[0]}`;
  if (parted.strata.length === 0) return [{ text: `${said}, and have no stratum in common` }];
  const within: Within | null = "stratified" in result ? result.stratified : null;
  if (within === null) return [{ text: `${said}; the numbers are of all pigs together` }];
  const opposite = within.opposite ? ", and points the other way than all pigs together" : "";
  const outside =
    within.pigs_outside === 0
      ? ""
      : `; ${count(within.pigs_outside, "pig")} of strata that only one side has ${within.pigs_outside === 1 ? "takes" : "take"} no part in it`;
  return [
    { text: `${said}; what is claimed rests on like against like, within strata${opposite}${outside}` },
  ];
}
