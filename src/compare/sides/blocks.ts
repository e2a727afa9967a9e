/** Which pigs are set against which, before anybody asks whether they may be compared. */
import type { Case } from "../../cases/index.ts";
import { basisOf, farmFolder, reachOf } from "../../herd/index.ts";
import { selectionBases } from "../../knowledge/index.ts";
import { grouped } from "../../words/grouped.ts";
import { count, listing } from "../../words/listing.ts";
import type { Between, Compared, SideLabel } from "../comparison.ts";
import { armOf, type Trial, trialOf } from "./arms.ts";
import { facets, visitFolder } from "./facets.ts";

export interface Side extends Omit<SideLabel, "pigs" | "ages"> {
  readonly cases: readonly Case[];
}

/** Sides of one farm (and visit), pigs chosen in one way. */
export interface Block
  extends Pick<Compared, "farm" | "visit" | "trial" | "basis" | "mixed" | "pigs" | "prevalence"> {
  readonly sides: readonly Side[];
}

interface Split {
  readonly blocks: readonly Block[];
  /** Cases that take no part, and why. */
  readonly leftOut: readonly string[];
}

/**
 * Splits the cases into blocks of two sides or more, one block a selection basis; where the sides share none, one block of
 * all pigs.
 * @param asked default: visits when a farm has two or more, else groups
 * @param mixBases take pigs together however they were chosen
 * @throws RangeError when there are no two sides
 */
export function blocksOf(
  cases: readonly Case[],
  asked: Between | undefined,
  mixBases: boolean,
): Split & { readonly between: Between } {
  for (const between of asked === undefined ? (["visits", "groups"] as const) : [asked]) {
    const found = split(cases, between, mixBases);
    if (found.blocks.length > 0) return { between, ...found };
  }
  if (cases.length === 0) throw new RangeError("there is no case to compare");
  throw new RangeError(
    asked === "visits"
      ? "there are no two visits of one farm; give the folder of the farm, or compare --between groups"
      : asked === "treatment"
        ? "no visit has both treated and control pigs; say in visit.yaml which pens or groups are which, such as groups: {nursery-2: {arm: {treated: [1, 4], control: [2, 3]}}}"
        : asked === "ill"
          ? "no visit has both pigs chosen for signs (selection: {basis: clinical}) and healthy comparison pigs (basis: comparison)"
          : "there are no two visits of one farm and no two groups of one visit; give the folder of a farm, or rank many with --between farms",
  );
}

function split(cases: readonly Case[], between: Between, mixBases: boolean): Split {
  const placed = cases.filter((one) => takesPart[between](one));
  const without = cases.length - placed.length;
  const lacking = {
    visits: "belong to no visit",
    groups: "name no group",
    ill: "were chosen in another way",
    treatment: "are in no arm of a trial, or in both",
  }[between];
  const parts = [
    ...grouped(placed, (one) =>
      JSON.stringify([farmFolder(one), between === "visits" ? null : visitFolder(one)]),
    ).values(),
  ].map((part) => splitPart(part, between, mixBases));
  return {
    blocks: parts.flatMap(({ blocks }) => blocks),
    leftOut: [
      ...(without === 0 ? [] : [`${count(without, "case")} that ${lacking}`]),
      ...parts.flatMap(({ leftOut }) => leftOut),
    ],
  };
}

const takesPart: Readonly<Record<Between, (one: Case) => boolean>> = {
  visits: (one) => one.visit !== undefined,
  groups: (one) => facets.group(one) !== undefined,
  treatment: (one) => armOf(one) !== undefined,
  ill: (one) => one.visit !== undefined && illness.some(({ basis }) => basis === basisOf(one)),
};

/** The sides of a contrast of one visit: what goes with the signs, seen from the healthy ones. */
const illness = [
  { basis: "comparison", title: "in healthy comparison pigs" },
  { basis: "clinical", title: "in pigs chosen for signs" },
] as const;

/** Ill against comparison pigs: one block, which stands for no group. */
function contrast(cases: readonly [Case, ...Case[]]): Split {
  const [first] = cases;
  const sides = illness.flatMap(({ basis, title }): Side[] => {
    const some = cases.filter((one) => basisOf(one) === basis);
    return some.length === 0 ? [] : [{ side: basis, title, date: null, cases: some }];
  });
  if (sides.length < 2) return { blocks: [], leftOut: [alone(first, cases.length, "ill")] };
  const block = { basis: null, mixed: false, pigs: "ill and comparison pigs, a contrast", prevalence: false };
  return {
    blocks: [{ farm: first.farm?.id ?? null, visit: first.visit?.id ?? null, ...block, sides }],
    leftOut: [],
  };
}

/** The cases of one farm or, between groups, of one visit. */
function splitPart(cases: readonly [Case, ...Case[]], between: Between, mixBases: boolean): Split {
  if (between === "ill") return contrast(cases);
  const [first] = cases;
  const trial = between === "treatment" ? trialOf(cases) : undefined;
  const sides =
    between === "visits"
      ? visitSides(cases)
      : trial === undefined
        ? groupSides(cases)
        : armSides(cases, trial);
  if (sides.length < 2) return { blocks: [], leftOut: [alone(first, cases.length, between)] };
  const block = (way: Way | null, some: readonly Side[]): Block => ({
    farm: first.farm?.id ?? null,
    ...(between !== "visits" && { visit: first.visit?.id ?? null }),
    ...(trial !== undefined && { trial }),
    basis: way?.bases.length === 1 ? (way.bases[0] ?? null) : null,
    mixed: way === null,
    pigs: way?.title ?? "chosen in different ways",
    prevalence: way?.prevalence ?? false,
    sides: some,
  });
  const found = waysOf(sides).map((way) => {
    const chosenSo = chosenIn(sides, way.bases);
    return { way, sides: chosenSo, comparable: !way.bases.includes(null) && chosenSo.length > 1 };
  });
  const comparable = found.filter((one) => one.comparable);
  if (comparable.length === 0 || (mixBases && found.length > 1))
    return { blocks: [block(null, sides)], leftOut: [] };
  return {
    blocks: comparable.map((one) => block(one.way, one.sides)),
    leftOut: found
      .filter((one) => !one.comparable)
      .map((one) => {
        const pigs = one.sides.reduce((sum, side) => sum + side.cases.length, 0);
        const places = `${count(pigs, "pig")} ${listing(one.sides.map(({ title }) => title))}`;
        return one.way.bases.includes(null)
          ? `${places}: how they were chosen is not recorded`
          : `${places} (${one.way.title}): none chosen so on another side`;
      }),
  };
}

/** How the pigs of a block were chosen; null among its bases where that is not recorded. */
interface Way {
  readonly bases: readonly (string | null)[];
  readonly title: string;
  readonly prevalence: boolean;
}

const chosenIn = (sides: readonly Side[], bases: readonly (string | null)[]): Side[] =>
  sides
    .map((side) => ({ ...side, cases: side.cases.filter((one) => bases.includes(basisOf(one))) }))
    .filter(({ cases }) => cases.length > 0);

/**
 * One way a selection basis; but pigs drawn at random on one side and a whole group on another both stand for their
 * group, and are set against each other where neither stands on two sides by itself.
 */
function waysOf(sides: readonly Side[]): Way[] {
  const bases = basesOf(sides.flatMap(({ cases }) => cases));
  const standing = bases.filter((basis) => reachOf(basis).prevalence);
  const apart = standing.length > 1 && standing.every((basis) => chosenIn(sides, [basis]).length < 2);
  const together: Way = {
    bases: standing,
    title: listing(
      standing.map((basis) => reachOf(basis).title),
      "or",
    ),
    prevalence: true,
  };
  const own = (basis: string | null): Way => ({ bases: [basis], ...reachOf(basis) });
  return apart && chosenIn(sides, standing).length > 1
    ? [together, ...bases.filter((basis) => !standing.includes(basis)).map(own)]
    : bases.map(own);
}

function alone(one: Case, pigs: number, between: Between): string {
  const what = between === "visits" ? (facets.farm(one) ?? "no farm") : (facets.visit(one) ?? "no visit");
  const kind: Readonly<Record<Between, string>> = {
    visits: "visit",
    groups: "group",
    ill: "kind of pig, ill or comparison",
    treatment: "arm, treated or control",
  };
  return `${count(pigs, "case")} of ${what}: only one ${kind[between]}`;
}

/** Control first: the treated are seen from there. */
function armSides(cases: readonly Case[], { unit }: Trial): Side[] {
  const where = unit === "pen or group" ? "pens or groups" : `${unit}s`;
  return (["control", "treated"] as const).flatMap((arm) => {
    const some = cases.filter((one) => armOf(one)?.arm === arm);
    return some.length === 0 ? [] : [{ side: arm, title: `in ${arm} ${where}`, date: null, cases: some }];
  });
}

/** In the order of the farm file, then by name. */
function groupSides(cases: readonly [Case, ...Case[]]): Side[] {
  const order = Object.keys(cases[0].farm?.record.groups ?? {});
  const place = (name: string): number => (order.includes(name) ? order.indexOf(name) : order.length);
  return [...grouped(cases, (one) => facets.group(one) ?? "")]
    .map(([group, some]) => ({ side: group, title: `in ${group}`, date: null, cases: some }))
    .sort((a, b) => place(a.side) - place(b.side) || a.side.localeCompare(b.side, "en", { numeric: true }));
}

function visitSides(cases: readonly Case[]): Side[] {
  const visits = [...grouped(cases, visitFolder)].map(([folder, some]) => {
    const { visit } = some[0];
    return { side: visit?.id ?? folder, date: visit?.record.date ?? null, cases: some };
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
function basesOf(cases: readonly Case[]): (string | null)[] {
  const found = new Set(cases.map(basisOf));
  return [...Object.keys(selectionBases), null].filter((basis) => found.has(basis));
}
