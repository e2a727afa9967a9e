/** Sides that are made up differently, and the strata within which like stands against like. */
import type { Asked, Between, Factor } from "../comparison.ts";
import { armOf } from "./arms.ts";
import { type Facet, facets } from "./facets.ts";
import type { Answered, AnsweredSide } from "./outcomes.ts";

/**
 * What the sides may be made up of in other shares; a group is the side itself when groups are compared. Treated and control
 * pens are set against each other within their groups in any case.
 */
const makeUp: Record<Between, readonly Facet[]> = {
  visits: ["group", "age_class", "place"],
  groups: ["age_class", "place"],
  ill: ["group", "age_class", "place"],
  treatment: ["group", "age_class", "place"],
};

/** Answers of each side, in order. */
export type Stratum = readonly (readonly Answered[])[];

export interface Stratification {
  readonly by: readonly Facet[];
  /** Strata in which two sides or more have pigs. */
  readonly strata: readonly Stratum[];
  /** Pigs in strata that only one side has. */
  readonly outside: number;
}

const facetOfFactor: Partial<Record<Factor, Facet>> = { age: "age_class", place: "place" };

/**
 * Stratifies sides that are made up differently by the facets whose shares are not the same on all sides. Left out is what
 * was overridden and has no value in common, for there the caveat stands at every number; and the group, where rooms are
 * what the pigs share, or groups what was allocated.
 * @returns null when all shares are the same
 */
export function stratify(
  answered: readonly AnsweredSide[],
  { between, evenIf, cluster }: Pick<Asked, "between" | "evenIf" | "cluster">,
): Stratification | null {
  const sides = answered.map(({ answers }) => answers);
  const overridden = (facet: Facet): boolean =>
    evenIf.some((factor) => facetOfFactor[factor] === facet) && split(sides, [facet]).strata.length === 0;
  const pigs = sides.flat();
  const several = new Set(pigs.map((answer) => facetOf(answer, "group"))).size > 1;
  const groupCounts =
    between === "treatment"
      ? several && pigs.every(({ one }) => armOf(one)?.unit === "pen")
      : cluster !== "room" && sharesDiffer(sides, "group");
  const by = makeUp[between].filter((facet) =>
    facet === "group" ? groupCounts : sharesDiffer(sides, facet) && !overridden(facet),
  );
  return by.length === 0 ? null : split(sides, by);
}

function sharesDiffer(sides: Stratum, facet: Facet): boolean {
  const values = new Set(sides.flat().map((answer) => facetOf(answer, facet)));
  return [...values].some((value) => {
    const [first = 0, ...rest] = sides.map(
      (answers) => answers.filter((answer) => facetOf(answer, facet) === value).length / answers.length,
    );
    return rest.some((share) => Math.abs(share - first) > 1e-12);
  });
}

const facetOf = ({ one }: Answered, facet: Facet): string => facets[facet](one) ?? "";

function split(sides: Stratum, by: readonly Facet[]): Stratification {
  const cells = new Map<string, Answered[][]>();
  for (const [place, answers] of sides.entries())
    for (const answer of answers) {
      const key = JSON.stringify(by.map((facet) => facetOf(answer, facet)));
      const cell = cells.get(key) ?? sides.map(() => []);
      cell[place]?.push(answer);
      cells.set(key, cell);
    }
  const strata = [...cells.values()].filter((cell) => cell.filter(({ length }) => length > 0).length > 1);
  return { by, strata, outside: sides.flat().length - strata.flat(2).length };
}
