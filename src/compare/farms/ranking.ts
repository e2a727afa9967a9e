/** What is said of farms that were ranked. */
import type { Share } from "../../herd/index.ts";
import type { Caveat, Cluster, Comparison, Reason } from "../comparison.ts";

/** Affected pigs of the visit of a farm that is looked at. */
export interface FarmCount {
  readonly farm: string;
  readonly visit: string | null;
  readonly date: string | null;
  /** Selection basis; null when it is not recorded. */
  readonly basis: string | null;
  readonly affected: number;
  /** Pigs read: the denominator. */
  readonly examined: number;
  readonly not_examined: number;
}

export interface RankedFarm extends FarmCount, Pick<Share, "lower" | "upper" | "method"> {
  /** 0 to 1; weighted by head counts where there are several groups. */
  readonly share: number;
  /** Pigs drawn singly that say as much; fewer than `examined` where pigs share pens or groups are weighted. */
  readonly counted_as: number;
  /** The share drawn towards the mean of all farms, the more the less the pigs say; null with too few farms. */
  readonly likely: number | null;
  /** Of the test against all others together, and of the one against their spread; the larger is `p`. */
  readonly p_together: number | null;
  readonly p_spread: number | null;
  readonly p: number | null;
  /** Allowing for all farms and questions of the report. */
  readonly p_adjusted: number | null;
  readonly stands_out: "more" | "fewer" | null;
  /** Whether it differs from all others together, allowing for all, be it within their spread. */
  readonly differs: "more" | "fewer" | null;
  /** What must be known to read the interval, each a clause. */
  readonly notes: readonly string[];
  /** Why it was not judged; null where it was. */
  readonly not_judged: string | null;
}

/** A farm whose pigs stand for nobody but themselves. */
export interface UnrankedFarm extends FarmCount {
  /** Behind "because"; null where how the pigs were chosen says it. */
  readonly why: string | null;
}

/** One indicator in pigs of one age class. */
export interface Ranking extends Pick<Comparison, "question" | "title" | "organ" | "source" | "confidence"> {
  readonly age_class: string | null;
  /** Highest share first; empty where other `reasons` than too few farms forbid it. */
  readonly farms: readonly RankedFarm[];
  readonly others: readonly UnrankedFarm[];
  /** Why there is no ranking; empty when there is. */
  readonly reasons: readonly Reason[];
  readonly caveats: readonly Caveat[];
  readonly answer: string;
}

export interface FarmsReport {
  readonly between: "farms";
  readonly cluster: Cluster;
  /** Confidence level, between 0 and 1; a farm stands out below 1 - level. */
  readonly level: number;
  readonly answer: string;
  /** Farms judged, over all rankings: what every p allows for. */
  readonly adjustment: { readonly method: "holm"; readonly tests: number };
  readonly rankings: readonly Ranking[];
  readonly left_out: readonly string[];
}
