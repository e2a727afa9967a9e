/** How many pigs the group of a stratum holds, where that is known and is what the pigs stand for. */
import type { Case } from "../cases/index.ts";
import { fact } from "../record/index.ts";
import { grouped } from "../words/grouped.ts";
import { count } from "../words/listing.ts";
import { basisOf, reachOf } from "./selection-basis.ts";
import type { Dimension, StratumOfCases } from "./strata.ts";

/** The pigs of a group. */
export interface HeadCount {
  readonly group: string;
  readonly head: number;
  /** `visit.yaml` counts the day of the visit (`at_risk`), `farm.yaml` the usual number (`head`). */
  readonly from: "visit.yaml" | "farm.yaml";
}

/** No head count that could be used, and why not. */
export interface NoHeadCount {
  readonly reason: string;
}

/**
 * The head count of the group that all pigs of a stratum belong to: of the day from visit.yaml, else the usual one from
 * farm.yaml.
 *
 * None where the pigs were not drawn at random or examined whole, are of several groups or visits, or are one age class of
 * a group of several; where no count is recorded, or one that cannot be (fewer than were examined).
 * @param all the cases that the strata were made of
 * @param by the dimensions that they were split by
 */
export function headCount(
  { basis, cases }: StratumOfCases,
  all: readonly Case[],
  by: readonly Dimension[],
): HeadCount | NoHeadCount {
  const reach = reachOf(basis);
  const [first] = cases;
  if (!reach.prevalence || first === undefined)
    return { reason: `the pigs (${reach.title}) are no random sample of a group` };
  const visits = new Set(cases.map((one) => one.visit?.folder));
  if (visits.size > 1) return { reason: `the pigs are of ${count(visits.size, "visit")}` };
  const groups = new Set(cases.map(groupKey));
  if (groups.size > 1) return { reason: `the pigs are of ${count(groups.size, "group")}` };
  const group = first.record.pig?.group;
  if (group === undefined) return { reason: "the group of the pigs is not recorded" };
  if (by.includes("age_class") && otherAges(first, all))
    return { reason: `${group} holds several age classes, and its head count is of all` };
  return checked(counted(first, group), cases.length);
}

/**
 * Why pigs that were recorded as a whole group are not one, behind "because": the group holds more. Pigs of all ages count.
 * @param one a pig of the group
 */
export function wholeGroupFault(one: Case, all: readonly Case[]): string | undefined {
  const group = one.record.pig?.group;
  const found = group === undefined ? undefined : counted(one, group);
  if (found === undefined || "reason" in found) return undefined;
  const pigs = inGroup(one, all).filter((other) => basisOf(other) === basisOf(one)).length;
  return pigs < found.head
    ? `${found.from} has ${count(found.head, "pig")} in ${found.group}, and of this whole group there are ${count(pigs, "case")}`
    : undefined;
}

/** Farm and group of a case, as one word. */
export const groupKey = (one: Case): string => JSON.stringify([one.farm?.folder, one.record.pig?.group]);

const otherAges = (first: Case, all: readonly Case[]): boolean =>
  inGroup(first, all).some((other) => other.ageClass !== first.ageClass);

/** The pigs of the group that a pig belongs to, as its visit found them. */
const inGroup = (one: Case, all: readonly Case[]): readonly Case[] => byGroup(all).get(keyInVisit(one)) ?? [];

const keyInVisit = (one: Case): string => JSON.stringify([groupKey(one), one.visit?.folder]);
const byGroup = fact((all: readonly Case[]) => grouped(all, keyInVisit));

function counted(one: Case, group: string): HeadCount | NoHeadCount {
  const ofDay = own(one.visit?.record.groups, group)?.at_risk;
  if (ofDay !== undefined) return { group, head: ofDay, from: "visit.yaml" };
  const usual = own(one.farm?.record.groups, group)?.head;
  if (usual !== undefined) return { group, head: usual, from: "farm.yaml" };
  return { reason: `neither visit.yaml nor farm.yaml says how many pigs are in ${group}` };
}

const own = <T>(groups: Readonly<Record<string, T>> | undefined, name: string): T | undefined =>
  groups !== undefined && Object.hasOwn(groups, name) ? groups[name] : undefined;

function checked(found: HeadCount | NoHeadCount, pigs: number): HeadCount | NoHeadCount {
  if ("reason" in found) return found;
  const says = `${found.from} has ${count(found.head, "pig")} in ${found.group}`;
  if (found.head < pigs) return { reason: `${says}, but ${pigs} were examined` };
  return found;
}
