/** Herd numbers put in order: what belongs to one stratum, and what it is called. */
import type { Estimate, HerdReport, HerdScores, Stratum } from "../../herd/index.ts";
import { reachOf } from "../../herd/index.ts";
import { count } from "../../words/listing.ts";

export interface Block {
  readonly stratum: Stratum;
  readonly basis: string | null;
  readonly estimates: Estimate[];
  readonly scores: HerdScores[];
}

/** Estimates and scores of the same stratum and basis, in the order of the report. */
export function blocksOf({ estimates, scores }: Pick<HerdReport, "estimates" | "scores">): Block[] {
  const blocks = new Map<string, Block>();
  const block = ({ stratum, basis }: Estimate | HerdScores): Block => {
    const key = JSON.stringify([stratum, basis]);
    const known = blocks.get(key) ?? { stratum, basis, estimates: [], scores: [] };
    blocks.set(key, known);
    return known;
  };
  for (const one of estimates) block(one).estimates.push(one);
  for (const one of scores) block(one).scores.push(one);
  return [...blocks.values()];
}

/** `alder-2026-03-14 · nursery-2 · drawn at random`, not yet made safe to show. */
export const stratumTitle = (stratum: Stratum, basis: string | null): string =>
  [...placeWords(stratum), ...groupWords(stratum), reachOf(basis).title].join(" · ");

/** Farm and visit. */
export function placeWords({ farm, visit, folder }: Stratum): string[] {
  return [
    ...(farm === undefined ? [] : [farm ?? "no farm"]),
    ...(visit === undefined ? [] : [visit ?? `no visit (${folder ?? ""})`]),
  ];
}

/** Group and age class. */
export function groupWords({ group, age_class }: Stratum): string[] {
  return [
    ...(group === undefined ? [] : [group ?? "no group"]),
    ...(age_class === undefined ? [] : [age_class ?? "age unknown"]),
  ];
}

/** The title of a block with its pigs, not yet made safe to show. */
export function blockTitle({ stratum, basis, estimates, scores }: Block): string {
  const pigs = Math.max(
    0,
    ...estimates.map((one) => one.examined + one.not_examined),
    ...scores.map((one) => one.n + one.not_examined),
  );
  return `${stratumTitle(stratum, basis)} (${count(pigs, "pig")})`;
}
