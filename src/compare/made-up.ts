/** How the sides are made up: strata within which like stands against like, and what pens they come from. */
import { mantelHaenszel, oddsHomogeneity, type TwoGroups } from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import type { AnsweredSide } from "./comparability.ts";
import type { Between, Limited, Stratified } from "./comparison.ts";
import { type Facet, facets } from "./facets.ts";
import type { Answered } from "./questions.ts";
import type { Side } from "./sides.ts";

/** What the sides may be made up of in other shares; a group is the side itself when groups are compared. */
const makeUp: Record<Between, readonly Facet[]> = {
  visits: ["group", "age_class", "place"],
  groups: ["age_class", "place"],
};

/** The facets whose shares differ between the sides. */
export function unevenFacets(sides: readonly AnsweredSide[], between: Between): Facet[] {
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

/**
 * An indicator within strata of the facets given: Mantel & Haenszel 1959 with the homogeneity of Breslow & Day (Tarone).
 * @returns null when no stratum has pigs of both sides
 */
export function stratified(
  first: readonly Answered[],
  second: readonly Answered[],
  by: readonly Facet[],
  level: number,
): Stratified | null {
  const cells = new Map<string, { first: Answered[]; second: Answered[] }>();
  const put = (answer: Answered, side: "first" | "second"): void => {
    const key = JSON.stringify(by.map((facet) => facetOf(answer, facet)));
    const cell = cells.get(key) ?? { first: [], second: [] };
    cell[side].push(answer);
    cells.set(key, cell);
  };
  for (const answer of first) put(answer, "first");
  for (const answer of second) put(answer, "second");
  const common = [...cells.values()].filter((cell) => cell.first.length > 0 && cell.second.length > 0);
  if (common.length === 0) return null;
  const strata = common.map((cell) => secondAgainstFirst(cell.first, cell.second));
  const { oddsRatio, lower, upper, pCorrected } = mantelHaenszel(strata, { level });
  const { x1, n1, x2, n2 } = secondAgainstFirst(first, second);
  const homogeneity = oddsHomogeneity(strata);
  const inside = strata.reduce((sum, one) => sum + one.n1 + one.n2, 0);
  return {
    by,
    strata: strata.length,
    pigs_outside: first.length + second.length - inside,
    odds_ratio: limited(oddsRatio, lower, upper),
    opposite: oddsRatio !== null && Math.sign(oddsRatio - 1) * Math.sign(x1 / n1 - x2 / n2) < 0,
    p: pCorrected,
    p_homogeneity: homogeneity.chiSquared === null ? null : homogeneity.p,
  };
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

/** Where pigs share pens or the sides come from different numbers of pens: `10 pigs of 6 pens on 2026-03-14`. */
export function penCounts(sides: readonly Side[]): string | undefined {
  const counted = sides.map((side) => {
    const penned = side.cases.flatMap(({ record }) =>
      record.pig?.pen === undefined ? [] : [JSON.stringify([record.pig.group, record.pig.pen])],
    );
    return { side, pigs: side.cases.length, penned: penned.length, pens: new Set(penned).size };
  });
  const [first] = counted;
  const shared = counted.some(({ penned, pens }) => pens < penned);
  const different = counted.some(({ pens }) => pens !== first?.pens);
  if (!shared && !different) return undefined;
  return counted
    .map(({ side, pigs, penned, pens }) => {
      const unknown = pigs > penned ? `, ${pigs - penned} without a pen` : "";
      return `${count(pigs, "pig")} of ${count(pens, "known pen")}${unknown} ${side.title}`;
    })
    .join("; ");
}
