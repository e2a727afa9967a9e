/** How the sides are made up: the strata within which like stands against like. */
import type { TwoGroups } from "../statistics/index.ts";
import type { AnsweredSide } from "./comparability.ts";
import type { Between, Cluster, Factor } from "./comparison.ts";
import { type Facet, facets } from "./facets.ts";
import type { Answered } from "./questions.ts";
import type { Limited, Ratio } from "./tests-made.ts";

/** What the sides may be made up of in other shares; a group is the side itself when groups are compared. */
const makeUp: Record<Between, readonly Facet[]> = {
  visits: ["group", "age_class", "place"],
  groups: ["age_class", "place"],
};

/** Sides parted into strata, each with the answers side by side. */
export interface Parted {
  readonly by: readonly Facet[];
  /** Strata in which two sides or more have pigs: a list of answers for each side, in order. */
  readonly strata: readonly (readonly (readonly Answered[])[])[];
  /** Pigs in strata that only one side has. */
  readonly outside: number;
}

/**
 * The strata of sides that are made up differently: by the facets whose shares are not the same on all sides. Left out is
 * what was overridden and has no value in common, for there the caveat stands at every number; and the group, where
 * rooms are what the pigs share.
 * @returns null when all shares are the same
 */
export function strataOf(
  sides: readonly AnsweredSide[],
  between: Between,
  evenIf: readonly Factor[],
  cluster: Cluster,
): Parted | null {
  const answers = sides.map((side) => side.answers);
  const overridden = (facet: Facet): boolean =>
    evenIf.some((factor) => facetOfFactor[factor] === facet) && parted(answers, [facet]).strata.length === 0;
  const by = unevenFacets(sides, between).filter(
    (facet) => !overridden(facet) && !(cluster === "room" && facet === "group"),
  );
  return by.length === 0 ? null : parted(answers, by);
}

const facetOfFactor: Partial<Record<Factor, Facet>> = { age: "age_class", place: "place" };

/** The facets whose shares are not the same on all sides. */
function unevenFacets(sides: readonly AnsweredSide[], between: Between): Facet[] {
  return makeUp[between].filter((facet) => {
    const values = new Set(sides.flatMap(({ answers }) => answers.map((answer) => facetOf(answer, facet))));
    return [...values].some((value) => {
      const [first = 0, ...rest] = sides.map(
        ({ answers }) => answers.filter((answer) => facetOf(answer, facet) === value).length / answers.length,
      );
      return rest.some((share) => Math.abs(share - first) > 1e-12);
    });
  });
}

const facetOf = ({ one }: Answered, facet: Facet): string => facets[facet](one) ?? "";

/** Parts lists of answers, one for each side, by the facets given. */
function parted(sides: readonly (readonly Answered[])[], by: readonly Facet[]): Parted {
  const cells = new Map<string, Answered[][]>();
  for (const [place, answers] of sides.entries())
    for (const answer of answers) {
      const key = JSON.stringify(by.map((facet) => facetOf(answer, facet)));
      const cell = cells.get(key) ?? sides.map(() => []);
      cell[place]?.push(answer);
      cells.set(key, cell);
    }
  const strata = [...cells.values()].filter((cell) => cell.filter(({ length }) => length > 0).length > 1);
  const pigs = (some: readonly (readonly unknown[])[]): number =>
    some.reduce((sum, { length }) => sum + length, 0);
  return { by, strata, outside: pigs(sides) - strata.reduce((sum, cell) => sum + pigs(cell), 0) };
}

/** Affected of examined, the second side as the first group of the statistic. */
export const secondAgainstFirst = (first: readonly Answered[], second: readonly Answered[]): TwoGroups => ({
  x1: second.filter(({ value }) => value === 1).length,
  n1: second.length,
  x2: first.filter(({ value }) => value === 1).length,
  n2: first.length,
});

const finite = (value: number | null): number | null =>
  value !== null && Number.isFinite(value) ? value : null;

export const limited = (value: number | null, lower: number | null, upper: number | null): Limited => ({
  value: finite(value),
  lower: finite(lower),
  upper: finite(upper),
});

/** A ratio, which may be without limit. */
export const ratio = (value: number | null, lower: number | null, upper: number | null): Ratio => ({
  ...limited(value, lower, upper),
  unbounded: value === Number.POSITIVE_INFINITY,
});
