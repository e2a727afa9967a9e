/** What may be asked of herd numbers, and what cannot be had together, said before anything is computed. */
import { requireLevel } from "../statistics/index.ts";
import type { ClusterKind } from "./clusters.ts";
import { corrected, type TestAccuracy } from "./corrected.ts";
import { type HerdInterval, herdIntervals } from "./interval.ts";
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
  readonly interval?: HerdInterval;
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

/**
 * @throws RangeError when the level is not between 0 and 1, the interval has no such name, options do not go together,
 *   or the test errs too much to say anything
 */
export function checkOptions(options: HerdOptions): void {
  const { level, interval, finite, cluster, test, combine } = options;
  if (level !== undefined) requireLevel(level);
  if (interval !== undefined && !herdIntervals.includes(interval))
    throw new RangeError(`there is no interval "${interval}"; there are ${herdIntervals.join(", ")}`);
  const own = finite === true ? "finite" : cluster === undefined ? undefined : "cluster";
  if (finite === true && cluster !== undefined)
    throw new RangeError(
      `"finite" and "cluster" cannot be had together: the one takes pigs as drawn singly, the other does not`,
    );
  if (own !== undefined && interval !== undefined && interval !== "clopper-pearson")
    throw new RangeError(`"${own}" makes an interval of its own; leave out "interval"`);
  if (combine === true && cluster !== undefined)
    throw new RangeError(
      `"combine" and "cluster" cannot be had together: the weighted interval takes pigs as drawn singly within their group`,
    );
  if (test !== undefined) checkTest(options, own ?? (combine === true ? "combine" : undefined));
}

function checkTest({ indicators, test, level = 0.95 }: HerdOptions, other: string | undefined): void {
  if (indicators?.length !== 1)
    throw new RangeError("sensitivity and specificity are those of one question; name one indicator");
  if (other !== undefined)
    throw new RangeError(
      `sensitivity and specificity cannot be had together with "${other}": no interval for both is known to us`,
    );
  if (test !== undefined) corrected(0, 1, test, { level, method: "clopper-pearson" });
}
