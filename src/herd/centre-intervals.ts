/** How sure the middle of the scores is: intervals of mean and median. */
import { bootstrapInterval, meanInterval, medianInterval } from "../statistics/index.ts";

export interface SeverityOptions {
  /** Confidence level, between 0 and 1. */
  readonly level: number;
  /** Seed of the bootstrap interval of the mean; none is made when left out. */
  readonly seed?: number;
}

/** Limits in points of the scale; null, with the reason, where there are none. */
interface CentreInterval {
  readonly lower: number | null;
  readonly upper: number | null;
  readonly method: "t" | "order-statistics" | "bca-bootstrap";
  readonly reason: string | null;
}

export interface SeverityIntervals {
  readonly level: number;
  readonly mean_interval: CentreInterval;
  /** `coverage` is the least probability that such an interval holds the median, 0 to 1. */
  readonly median_interval: CentreInterval & { readonly coverage: number | null };
  /** Of the mean; only when asked for. */
  readonly bootstrap?: CentreInterval & { readonly seed: number; readonly resamples: number };
}

/**
 * Intervals of the mean (t, and by bootstrap when a seed is given) and the median. The limits of the mean are held
 * within the range of the scale, which no mean can leave.
 * @param values scores of the pigs that have one
 * @param range least and greatest value of the scale
 * @param known why there is nothing uncertain about them; null where there is
 */
export function severityIntervals(
  values: readonly number[],
  range: readonly [number, number] | readonly number[],
  { level, seed }: SeverityOptions,
  known: string | null = null,
): SeverityIntervals {
  if (known !== null) return withoutLimits(level, seed, known);
  const [lowest = -Infinity, highest = Infinity] = range;
  const held = (value: number | null) => (value === null ? null : Math.min(highest, Math.max(lowest, value)));
  const mean = meanInterval(values, { level });
  const median = medianInterval(values, { level });
  return {
    level,
    mean_interval: {
      lower: held(mean.lower),
      upper: held(mean.upper),
      method: mean.method,
      reason: mean.reason,
    },
    median_interval: {
      lower: median.lower,
      upper: median.upper,
      method: median.method,
      coverage: median.coverage,
      reason: median.reason,
    },
    ...(seed !== undefined && { bootstrap: bootstrapped(values, level, seed) }),
  };
}

function withoutLimits(level: number, seed: number | undefined, reason: string): SeverityIntervals {
  const none = { lower: null, upper: null, reason };
  return {
    level,
    mean_interval: { ...none, method: "t" },
    median_interval: { ...none, method: "order-statistics", coverage: null },
    ...(seed !== undefined && { bootstrap: { ...none, method: "bca-bootstrap", seed, resamples: 0 } }),
  };
}

function bootstrapped(values: readonly number[], level: number, seed: number) {
  const { lower, upper, method, reason, resamples } = bootstrapInterval(values, "mean", { level, seed });
  return { lower, upper, method, reason, seed, resamples };
}
