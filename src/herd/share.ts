/** The share of affected pigs, what it may be called, and how sure it is: one answer for estimates and for grades. */
import { stratifiedProportion } from "../statistics/index.ts";
import { grouped } from "../words/grouped.ts";
import { groupKey, type HeadCount } from "./head-count.ts";
import { type Answered, countOf } from "./indicator-answer.ts";
import {
  type ClusterResult,
  type IntervalChoice,
  type IntervalMethod,
  intervalOf,
  type OneSided,
  sharedPens,
} from "./interval.ts";
import type { Standing } from "./standing.ts";

/** Whether a number is one of a group, or of nobody but the pigs that were counted. */
export type Reach = "prevalence" | "these-pigs";

/** `bounds`: the least and the greatest share, whatever the pigs without an answer have. */
export type ShareMethod = IntervalMethod | "thinnest-stratum" | "bounds";

/** What was seen in one of several groups. */
export interface GroupShare {
  readonly group: string | null;
  /** Pigs of the group, and the file that says so. */
  readonly head: number;
  readonly from: HeadCount["from"];
  readonly examined: number;
  readonly affected: number;
}

export interface Share {
  readonly reach: Reach;
  /** 0 to 1; weighted where there are `groups`. Null where none or one pig answered: one pig gives no percentage. */
  readonly proportion: number | null;
  /** Null where the share is known exactly, as that of these pigs is. */
  readonly lower: number | null;
  readonly upper: number | null;
  readonly method: ShareMethod | null;
  readonly one_sided: OneSided | null;
  readonly population?: HeadCount;
  /** The groups that were taken together, each weighted by its head count. */
  readonly groups?: readonly GroupShare[];
  /** Pigs drawn singly that groups taken together are counted as; null when all were examined. */
  readonly effective_size?: number | null;
  readonly clusters?: ClusterResult;
  /** Why drawn pigs stand for themselves only, behind "because". */
  readonly why: string | null;
  /** What must be known to read the limits, each a clause. */
  readonly notes: readonly string[];
}

const known = { lower: null, upper: null, method: null, one_sided: null, notes: [] };

/**
 * @param answered the pigs that answered
 * @param pigs the pigs that were asked
 */
export function shareOf(
  answered: readonly Answered[],
  pigs: number,
  standing: Standing,
  choice: IntervalChoice,
): Share {
  const { affected, examined } = countOf(answered);
  const these = (why: string | null): Share => ({
    ...known,
    reach: "these-pigs",
    proportion: examined > 1 ? affected / examined : null,
    why,
  });
  if (standing.for === "themselves") return these(standing.why);
  if (examined < 2) return these(null);
  switch (standing.for) {
    case "whole":
      return wholeShare(affected, examined, pigs);
    case "groups": {
      const share = weighted(answered, standing.heads, choice);
      return typeof share === "string" ? these(share) : share;
    }
    case "group":
      return {
        ...intervalOf(answered, choice),
        reach: "prevalence",
        proportion: affected / examined,
        why: null,
      };
  }
}

/** All pigs of a group are in it: nothing is uncertain but what the pigs without an answer have. */
function wholeShare(affected: number, examined: number, pigs: number): Share {
  const share = { ...known, reach: "prevalence" as const, proportion: affected / examined, why: null };
  if (examined === pigs) return share;
  const lower = affected / pigs;
  return { ...share, lower, upper: lower + (pigs - examined) / pigs, method: "bounds" };
}

/** A text says why the groups cannot be taken together. */
function weighted(
  answered: readonly Answered[],
  heads: ReadonlyMap<string, HeadCount>,
  { level, cluster }: IntervalChoice,
): Share | string {
  if (cluster !== undefined) return `they are of several groups, and an interval by ${cluster} weighs none`;
  const seen = grouped(answered, ({ one }) => groupKey(one));
  const groups: GroupShare[] = [];
  for (const [key, { group, head, from }] of heads) {
    const some = seen.get(key);
    if (some === undefined) return `it was read in no pig of ${group}`;
    groups.push({ group, head, from, ...countOf(some) });
  }
  const counts = groups.map(({ affected, examined, head }) => ({ affected, examined, population: head }));
  const { proportion, lower, upper, effectiveSize } = stratifiedProportion(counts, { level });
  const share = { ...known, reach: "prevalence" as const, proportion, groups, why: null };
  // Without a number of pigs drawn singly all pigs of all groups answered.
  if (effectiveSize === null) return share;
  return {
    ...share,
    lower,
    upper,
    method: "thinnest-stratum",
    effective_size: effectiveSize,
    notes: sharedPens(answered),
  };
}
