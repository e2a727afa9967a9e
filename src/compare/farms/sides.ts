/** Which pigs stand for a farm: those of its latest visit that were drawn at random or are a whole group, by age class. */
import type { Case } from "../../cases/index.ts";
import { basisOf, farmFolder, reachOf, type StratumOfCases } from "../../herd/index.ts";
import { grouped } from "../../words/grouped.ts";
import { count } from "../../words/listing.ts";
import type { Side } from "../sides/blocks.ts";
import { facets, visitFolder } from "../sides/facets.ts";

/** Pigs of one visit of a farm, of one age class, chosen in one way. */
export interface FarmSide extends Side {
  readonly cell: StratumOfCases;
}

export interface FarmSides {
  readonly ageClass: string | null;
  /** A farm each, whose pigs may stand for their group. */
  readonly standing: readonly FarmSide[];
  /** Of farms without such pigs: those of the latest visit. */
  readonly others: readonly FarmSide[];
}

/** @throws RangeError when there are no two farms */
export function farmSides(cases: readonly Case[]): {
  readonly ages: readonly FarmSides[];
  readonly leftOut: readonly string[];
} {
  const placed = cases.filter((one) => one.farm !== undefined && one.visit !== undefined);
  if (new Set(placed.map(farmFolder)).size < 2)
    throw new RangeError(
      "there are no two farms with a visit (farm.yaml, visit.yaml); give the folder that holds the farms",
    );
  const without = cases.length - placed.length;
  const ages = [...grouped(placed, facets.age_class)].map(([ageClass, some]) => {
    const farms = [...grouped(some, farmFolder).values()].map(sidesOf);
    return {
      ageClass: ageClass ?? null,
      standing: farms.flatMap(({ standing }) => standing ?? []),
      others: farms.flatMap(({ others }) => others),
    };
  });
  return { ages, leftOut: without === 0 ? [] : [`${count(without, "case")} without a farm or a visit`] };
}

/** Pigs of one farm and age class. */
function sidesOf(cases: readonly Case[]): { standing?: FarmSide; others: readonly FarmSide[] } {
  const visits = [...grouped(cases, visitFolder).values()].sort((a, b) =>
    dateOf(b[0]).localeCompare(dateOf(a[0]), "en"),
  );
  const latest = visits.map(chosenAlike);
  const [standing] = latest.flatMap(
    (sides) => sides.find(({ cell }) => reachOf(cell.basis).prevalence) ?? [],
  );
  return standing === undefined ? { others: latest[0] ?? [] } : { standing, others: [] };
}

const dateOf = (one: Case): string => one.visit?.record.date ?? "";

/** One side a selection basis, the one of most pigs first. */
const chosenAlike = (cases: readonly Case[]): FarmSide[] =>
  [...grouped(cases, basisOf)]
    .map(([basis, some]) => {
      const { farm, visit } = some[0];
      const side = farm?.id ?? farm?.folder ?? "";
      return {
        side,
        title: `in ${side}`,
        date: visit?.record.date ?? null,
        cases: some,
        cell: { stratum: { visit: visit?.id ?? null }, basis, cases: some },
      };
    })
    .sort((a, b) => b.cases.length - a.cases.length);
