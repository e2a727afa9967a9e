/** Which cases stand on which side, before anybody asks whether they may be compared. */
import type { Case } from "../cases/index.ts";
import { selectionBases } from "../knowledge/index.ts";
import { count, listing } from "../words/listing.ts";
import type { Between } from "./comparison.ts";
import { facets, farmFolder, visitFolder } from "./facets.ts";

export interface Side {
  readonly key: string;
  readonly side: string;
  /** `on 2026-03-14`, `in nursery-2`. */
  readonly title: string;
  readonly date: string | null;
  readonly cases: readonly Case[];
}

/** Sides of one farm (and visit), pigs chosen in one way; `parted` when the sides share no way. */
export interface Block {
  readonly farm: string | null;
  readonly visit?: string | null;
  readonly basis: string | null;
  readonly mixed: boolean;
  readonly parted: boolean;
  readonly sides: readonly Side[];
}

export interface Split {
  readonly blocks: readonly Block[];
  readonly leftOut: readonly string[];
}

/**
 * Splits the cases into blocks of two sides or more, one block a selection basis.
 * @param mixBases take pigs together however they were chosen
 */
export function splitSides(cases: readonly Case[], between: Between, mixBases: boolean): Split {
  const placed = cases.filter((one) =>
    between === "visits" ? one.visit !== undefined : facets.group(one) !== undefined,
  );
  const without = cases.length - placed.length;
  const lacking = between === "visits" ? "belong to no visit" : "name no group";
  const parts = [...byKey(placed, (one) => outerKey(one, between)).values()].map((inside) =>
    splitPart(inside, between, mixBases),
  );
  return {
    blocks: parts.flatMap(({ blocks }) => blocks),
    leftOut: [
      ...(without === 0 ? [] : [`${count(without, "case")} that ${lacking}`]),
      ...parts.flatMap(({ leftOut }) => leftOut),
    ],
  };
}

const outerKey = (one: Case, between: Between): string =>
  JSON.stringify([farmFolder(one), between === "groups" ? visitFolder(one) : null]);

function splitPart(cases: readonly Case[], between: Between, mixBases: boolean): Split {
  const [first] = cases;
  const sides = sidesOf(cases, between);
  if (first === undefined) return { blocks: [], leftOut: [] };
  const where = {
    farm: first.farm?.id ?? null,
    ...(between === "groups" && { visit: first.visit?.id ?? null }),
  };
  if (sides.length < 2) return { blocks: [], leftOut: [alone(first, cases.length, between)] };
  const bases = basesOf(cases);
  if (mixBases && bases.size > 1)
    return { blocks: [{ ...where, basis: null, mixed: true, parted: false, sides }], leftOut: [] };
  const found = [...bases.keys()].map((basis) => {
    const ofBasis = sides.flatMap((side) => {
      const some = side.cases.filter((one) => basisOf(one) === basis);
      return some.length === 0 ? [] : [{ ...side, cases: some }];
    });
    return { ...where, basis, mixed: false, parted: false, sides: ofBasis };
  });
  const blocks = found.filter(({ basis, sides: ofBasis }) => basis !== null && ofBasis.length > 1);
  if (blocks.length === 0)
    return { blocks: [{ ...where, basis: null, mixed: true, parted: true, sides }], leftOut: [] };
  return {
    blocks,
    leftOut: found.flatMap(({ basis, sides: ofBasis }) => {
      if (ofBasis.length > 1 && basis !== null) return [];
      const pigs = ofBasis.reduce((sum, side) => sum + side.cases.length, 0);
      const places = listing(ofBasis.map(({ title }) => title));
      return basis === null
        ? [`${count(pigs, "pig")} ${places}: how they were chosen is not recorded`]
        : [`${count(pigs, "pig")} ${places} (${basisTitle(basis)}): none chosen so on another side`];
    }),
  };
}

function alone(one: Case, pigs: number, between: Between): string {
  const what = between === "visits" ? (facets.farm(one) ?? "no farm") : (facets.visit(one) ?? "no visit");
  return `${count(pigs, "case")} of ${what}: only one ${between === "visits" ? "visit" : "group"}`;
}

function sidesOf(cases: readonly Case[], between: Between): Side[] {
  if (between === "groups") {
    const order = Object.keys(cases[0]?.farm?.record.groups ?? {});
    const place = (name: string): number => (order.includes(name) ? order.indexOf(name) : order.length);
    return [...byKey(cases, (one) => facets.group(one) ?? "")]
      .map(([group, some]) => ({ key: group, side: group, title: `in ${group}`, date: null, cases: some }))
      .sort((a, b) => place(a.side) - place(b.side) || a.side.localeCompare(b.side, "en", { numeric: true }));
  }
  const visits = [...byKey(cases, visitFolder)].map(([key, some]) => {
    const visit = some[0]?.visit;
    return { key, side: visit?.id ?? key, date: visit?.record.date ?? null, cases: some };
  });
  const dated = new Set(visits.map(({ date }) => date)).size === visits.length;
  return visits
    .map((one) => ({
      ...one,
      title: dated && one.date !== null ? `on ${one.date}` : `at visit ${one.side}`,
    }))
    .sort((a, b) => (a.date ?? "~").localeCompare(b.date ?? "~", "en"));
}

/** Bases in the order of the knowledge file; null, where none is recorded, last. */
function basesOf(cases: readonly Case[]): Map<string | null, number> {
  const known: (string | null)[] = [...Object.keys(selectionBases), null];
  const found = new Set(cases.map(basisOf));
  return new Map(known.filter((basis) => found.has(basis)).map((basis, index) => [basis, index]));
}

export const basisOf = (one: Case): string | null => facets.basis(one) ?? null;

/** `drawn at random`. */
export const basisTitle = (basis: string | null): string =>
  (basis === null ? undefined : selectionBases[basis]?.title) ?? "basis not recorded";

function byKey(cases: readonly Case[], keyOf: (one: Case) => string): Map<string, Case[]> {
  const parts = new Map<string, Case[]>();
  for (const one of cases) parts.set(keyOf(one), [...(parts.get(keyOf(one)) ?? []), one]);
  return parts;
}
