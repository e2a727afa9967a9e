/** One number for several groups, beside those of the groups: each weighted by how many pigs it holds. */
import type { Case } from "../cases/index.ts";
import { type Estimate, type EstimateChoice, estimate } from "./estimate.ts";
import { groupKey } from "./head-count.ts";
import { indicatorsIn } from "./indicators-and-scales.ts";
import { reachOf } from "./selection-basis.ts";
import type { GroupShare } from "./share.ts";
import { standingOf } from "./standing.ts";
import { type Dimension, type StratumOfCases, strata } from "./strata.ts";

/** An estimate over all groups of a visit, of each age class where it was split by that, and always of one basis. */
export interface CombinedEstimate extends Omit<Estimate, "population" | "groups"> {
  readonly groups: readonly GroupShare[];
  /** Pigs of all groups; null when they were not combined. */
  readonly population: number | null;
  /** Why the groups were not combined, and there is no proportion; null when they were. */
  readonly refused: string | null;
}

interface CombineOptions {
  readonly by: readonly Dimension[];
  readonly indicators?: readonly string[];
  readonly choiceOf: (cell: StratumOfCases) => EstimateChoice;
}

/** Groups of pigs that were not drawn at random or examined whole are not combined, and it says why. */
export const combinedEstimates = (
  all: readonly Case[],
  { by, indicators, choiceOf }: CombineOptions,
): CombinedEstimate[] => {
  const together = by.filter((one) => one !== "group");
  return strata(all, together).flatMap((whole) =>
    indicatorsIn(whole, indicators).map(({ id, indicator, cell }) => {
      const standing = standingOf(cell, all, together);
      const { groups = [], ...found } = estimate(id, indicator, cell, standing, choiceOf(cell));
      const refused =
        refusal(cell, together) ??
        (found.reach === "prevalence" ? null : (found.why ?? "it was read in fewer than two pigs"));
      if (refused === null) {
        const heads = groups.reduce((sum, { head }) => sum + head, 0);
        return { ...found, groups, population: groups.length > 0 ? heads : cell.cases.length, refused };
      }
      const nothing = { proportion: null, lower: null, upper: null, one_sided: null, method: null };
      const wording = `${found.title}: groups not combined, because ${refused}.`;
      return { ...found, ...nothing, groups, population: null, refused, wording };
    }),
  );
};

/** Null when the groups can be combined, as far as their pigs go. */
function refusal({ basis, cases }: StratumOfCases, by: readonly Dimension[]): string | null {
  const reach = reachOf(basis);
  if (!reach.prevalence)
    return `these pigs (${reach.title}) do not stand for their groups, so head counts give them no weight`;
  if (new Set(cases.map(groupKey)).size > 1) return null;
  return by.includes("age_class")
    ? "there is one group only of this age class; to combine groups of all ages split by visit and group (--by visit,group)"
    : "there is one group only";
}
