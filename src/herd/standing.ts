/** Whom the pigs of a stratum stand for: their group, several groups by their head counts, or nobody but themselves. */
import { dirname } from "node:path";
import type { Case } from "../cases/index.ts";
import { grouped } from "../words/grouped.ts";
import { count } from "../words/listing.ts";
import { groupKey, type HeadCount, headCount, wholeGroupFault } from "./head-count.ts";
import { reachOf } from "./selection-basis.ts";
import type { Dimension, StratumOfCases } from "./strata.ts";

/** A number over pigs that stand for nobody but themselves is of these pigs, and no prevalence. */
export type Standing =
  /** Drawn at random from one group of one visit. */
  | { readonly for: "group" }
  /** All pigs of one group or several, of one visit, if by drawing them. */
  | { readonly for: "whole" }
  /** Drawn at random from several groups of one visit, whose head counts are known: by `groupKey`. */
  | { readonly for: "groups"; readonly heads: ReadonlyMap<string, HeadCount> }
  /** `why` stands behind "because"; null where how the pigs were chosen says it. */
  | { readonly for: "themselves"; readonly why: string | null };

/**
 * @param all the cases that the strata were made of
 * @param by the dimensions that they were split by
 */
export function standingOf(cell: StratumOfCases, all: readonly Case[], by: readonly Dimension[]): Standing {
  const { basis, cases } = cell;
  if (!reachOf(basis).prevalence) return { for: "themselves", why: null };
  const visits = new Set(cases.map((one) => one.visit?.folder ?? dirname(one.file))).size;
  if (visits > 1) return { for: "themselves", why: `they are of ${count(visits, "visit")}` };
  const groups = [...grouped(cases, groupKey).values()];
  if (basis === "complete") {
    const [why] = groups.flatMap(([first]) => wholeGroupFault(first, all) ?? []);
    return why === undefined ? { for: "whole" } : { for: "themselves", why };
  }
  if (groups.length === 1) {
    const found = headCount(cell, all, by);
    return "head" in found && found.head === cases.length ? { for: "whole" } : { for: "group" };
  }
  const heads = new Map<string, HeadCount>();
  for (const some of groups) {
    const found = headCount({ ...cell, cases: some }, all, by);
    if ("reason" in found) return { for: "themselves", why: found.reason };
    heads.set(groupKey(some[0]), found);
  }
  return { for: "groups", heads };
}
