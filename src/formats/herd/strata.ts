/** Herd numbers put in order: what belongs to one stratum, and what it is called. */
import type { Estimate, HerdReport, HerdScores, Stratum } from "../../herd/index.ts";
import { reachOf } from "../../herd/index.ts";
import { count } from "../../words/listing.ts";

/** A report; one on the scores of groups has no answers. */
export type HerdNumbers = Pick<HerdReport, "estimates" | "scores"> & Partial<HerdReport>;

export interface StratumNumbers {
  readonly stratum: Stratum;
  readonly basis: string | null;
  readonly estimates: Estimate[];
  readonly scores: HerdScores[];
}

/** Estimates and scores of the same stratum and basis, in the order of the report. */
export function byStratum({ estimates, scores }: Pick<HerdReport, "estimates" | "scores">): StratumNumbers[] {
  const strata = new Map<string, StratumNumbers>();
  const numbers = ({ stratum, basis }: Estimate | HerdScores): StratumNumbers => {
    const key = JSON.stringify([stratum, basis]);
    const known = strata.get(key) ?? { stratum, basis, estimates: [], scores: [] };
    strata.set(key, known);
    return known;
  };
  for (const one of estimates) numbers(one).estimates.push(one);
  for (const one of scores) numbers(one).scores.push(one);
  return [...strata.values()];
}

/** `alder-2026-03-14 · nursery-2 · drawn at random` */
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

/** The title of a stratum with its pigs */
export function numbersTitle({ stratum, basis, estimates, scores }: StratumNumbers): string {
  const pigs = Math.max(
    0,
    ...estimates.map((one) => one.examined + one.not_examined),
    ...scores.map((one) => one.n + one.not_examined),
  );
  return `${stratumTitle(stratum, basis)} (${count(pigs, "pig")})`;
}
