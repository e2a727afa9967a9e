/** Pigs of one pen, room or litter resemble each other: which pigs belong together, and what that does to an interval. */
import type { Case } from "../cases/index.ts";
import { clusterLimits } from "../knowledge/index.ts";
import type { ClusterCount } from "../statistics/index.ts";
import { grouped } from "../words/grouped.ts";
import { type Answered, countOf } from "./indicator-answer.ts";

/** What pigs may belong together by. A room is the group that farm.yaml names. */
export type ClusterKind = "pen" | "room" | "litter";
export const clusterKinds: readonly ClusterKind[] = ["pen", "room", "litter"];

interface FoundClusters {
  readonly counts: readonly ClusterCount[];
  /** Pigs whose pen, room or litter is not recorded; they are in no cluster. */
  readonly unrecorded: number;
}

/**
 * The clusters of the pigs that answered. Pens are those of a group, groups and litters those of a farm, and all are of
 * one visit: pen 3 in spring and pen 3 in autumn hold different pigs.
 */
export function clustersOf(answered: readonly Answered[], kind: ClusterKind): FoundClusters {
  const found = grouped(answered, ({ one }) => clusterKey(one, kind));
  const unrecorded = found.get(undefined)?.length ?? 0;
  found.delete(undefined);
  return { counts: [...found.values()].map(countOf), unrecorded };
}

/** What a pig has in common with those of its pen, room or litter; undefined where that is not recorded. */
export function clusterKey(one: Case, kind: ClusterKind): string | undefined {
  const { group, pen, litter } = one.record.pig ?? {};
  const place = [one.farm?.folder, one.visit?.folder];
  const name = { pen, room: group, litter }[kind];
  if (name === undefined) return undefined;
  return JSON.stringify([...place, ...(kind === "pen" ? [group] : []), String(name)]);
}

/** Whether so many pigs of so many pens share pens, so that they cannot be taken as drawn singly without a word. */
export const sharePens = (pigs: number, pens: number): boolean => pigs >= clusterLimits.pigs_each * pens;

/** Whether the clusters are too few for an interval to be relied on that counts them. */
export const tooFewClusters = (clusters: number): boolean => clusters < clusterLimits.fewest;
