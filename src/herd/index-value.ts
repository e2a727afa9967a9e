/** The statistics that published herd indices are made of. */
import type { HerdIndex } from "../knowledge/index.ts";
import { summarise } from "../statistics/index.ts";

/**
 * The value of an index over the scores of a stratum; all in points of the scale but `share`, which is 0 to 1.
 *
 * - mean: sum of all / n, those at the lowest value included
 * - share: pigs at `at_least` or more, or above `above` / n
 * - severity: sum of the scores of those pigs / number of those pigs
 * - sum-at-least-over-n: sum of the scores of those pigs / n. With f = share of such pigs and m their mean this is
 *   f x m (Dottori et al. 2007), and 0 when there are none
 * @param values scores of the pigs that have one
 * @returns null when there are none; for severity also when no pig reaches the limit
 */
export function indexValue(
  { statistic, at_least, above }: HerdIndex,
  values: readonly number[],
): number | null {
  const counts = (value: number): boolean =>
    (at_least === undefined || value >= at_least) && (above === undefined || value > above);
  const all = summarise(values);
  const reached = summarise(values.filter(counts));
  if (all.n === 0) return null;
  switch (statistic) {
    case "mean":
      return all.mean;
    case "share":
      return reached.n / all.n;
    case "severity":
      return reached.mean;
    case "sum-at-least-over-n":
      return summarise(values.map((value) => (counts(value) ? value : 0))).mean;
  }
}
