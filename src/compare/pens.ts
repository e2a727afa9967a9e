/** Pigs of one pen, room or litter resemble each other: which pigs share one, and what that does to a comparison. */
import type { Case } from "../cases/index.ts";
import { clusterLimits } from "../knowledge/index.ts";
import { clusterPrevalence } from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import type { AnsweredSide } from "./comparability.ts";
import type { Cluster } from "./comparison.ts";
import type { Answered } from "./questions.ts";
import type { Side } from "./sides.ts";

export const clusterNames: readonly Cluster[] = ["pen", "room", "litter", "none"];

/** The pigs of one side by what they share; a pig whose pen is not recorded stands for itself. */
export interface Penned {
  readonly clusters: readonly (readonly Answered[])[];
  /** Clusters that are recorded. */
  readonly known: number;
  /** Whether so many pigs share them that they cannot be taken as drawn singly. */
  readonly shared: boolean;
}

/**
 * Pens of a side. They count as shared from a mean of two pigs on, over the pigs and not over the pens: five pigs of one
 * pen and four of four others are 3.2 to a pen, as the design effect reckons (Kish 1965, from memory).
 */
export function pennedOf({ answers }: AnsweredSide, kind: Cluster): Penned {
  const named = new Map<string, Answered[]>();
  const single: Answered[][] = [];
  for (const answer of answers) {
    const key = clusterOf(answer.one, kind);
    if (key === undefined) single.push([answer]);
    else named.set(key, [...(named.get(key) ?? []), answer]);
  }
  const pens = [...named.values()];
  const pigs = pens.reduce((sum, { length }) => sum + length, 0);
  const squares = pens.reduce((sum, { length }) => sum + length * length, 0);
  return {
    clusters: [...pens, ...single],
    known: pens.length,
    shared: squares >= clusterLimits.pigs_each * pigs && pigs > 0,
  };
}

/** Whether pens are so few that the difference between them and the difference between the sides are one. */
export const fewPens = ({ shared, known }: Penned): boolean => shared && known < clusterLimits.fewest;

function clusterOf(one: Case, kind: Cluster): string | undefined {
  const { group, pen, litter } = one.record.pig ?? {};
  switch (kind) {
    case "pen":
      return pen === undefined ? undefined : JSON.stringify([group, String(pen)]);
    case "room":
      return group;
    case "litter":
      return litter === undefined ? undefined : String(litter);
    case "none":
      return undefined;
  }
}

/** 1 for yes, and pigs, of each cluster. */
const countsOf = ({ clusters }: Penned) =>
  clusters.map((pigs) => ({
    affected: pigs.filter(({ value }) => value === 1).length,
    examined: pigs.length,
  }));

/**
 * Design effects of two sides, none below 1. Where all or no pig of a side is affected it cannot be estimated, and that
 * of the other side stands in; where neither can, each cluster counts as one pig.
 */
export function designEffects(first: Penned, second: Penned): [number, number] {
  const [one, other] = [first, second].map((side) => clusterPrevalence(countsOf(side)).designEffect);
  const whole = (side: Penned): number =>
    side.clusters.reduce((sum, pigs) => sum + pigs.length, 0) / side.clusters.length;
  return [Math.max(1, one ?? other ?? whole(first)), Math.max(1, other ?? one ?? whole(second))];
}

/** Where pigs share pens or the sides come from different numbers of pens: `10 pigs of 6 pens on 2026-03-14`. */
export function penCounts(sides: readonly Side[]): string | undefined {
  const counted = sides.map((side) => {
    const penned = side.cases.flatMap((one) => clusterOf(one, "pen") ?? []);
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
