/** What may be asked of herd numbers. */
import type { BinomialMethod } from "../statistics/index.ts";
import type { ClusterKind } from "./clusters.ts";
import type { TestAccuracy } from "./corrected.ts";
import type { Dimension } from "./strata.ts";

export interface HerdOptions {
  /** What to split by. Default: visit, group and age class. Selection basis always splits. */
  readonly by?: readonly Dimension[];
  /** Confidence level, between 0 and 1. Default: that of the settings (the highest, should they differ). */
  readonly level?: number;
  /** Ids of the indicators. Default: all of the settings. */
  readonly indicators?: readonly string[];
  /** Ids of the scales. Default: those of the settings. */
  readonly scales?: readonly string[];
  /** Interval of a proportion, for pigs drawn singly from a large group. Default: Clopper-Pearson. */
  readonly interval?: BinomialMethod;
  /** Whether the interval is to be that of a group of known size, where the head count is known. */
  readonly finite?: boolean;
  /** Count pigs by what they belong together by, and not as drawn singly. */
  readonly cluster?: ClusterKind;
  /** How the eye or the test errs; for one indicator. */
  readonly test?: TestAccuracy;
  /** Whether groups are also combined, weighted by their head counts. */
  readonly combine?: boolean;
  /** Seed of a bootstrap interval of the mean scores, a whole number; none is made when left out. */
  readonly seed?: number;
}
