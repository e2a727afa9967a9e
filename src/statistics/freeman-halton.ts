import { LARGEST_COUNT, requireWhole } from "./checks.ts";
import { chiSquaredTail } from "./chi-squared.ts";
import { type CountedGroup, conditionalSums } from "./conditional-sums.ts";
import { logBinomial } from "./log-binomial.ts";

/** Several proportions set against each other. */
export interface SharesTest {
  /** Pearson's chi-squared; null when all or none are affected. */
  readonly chiSquared: number | null;
  /** Groups less one. */
  readonly df: number;
  /** From the chi-squared distribution, which is rough where an expected count is below 5. */
  readonly p: number;
  /** Smallest expected count, of affected or healthy. */
  readonly leastExpected: number;
  /** Freeman & Halton's exact p; null when there are too many tables. */
  readonly exactP: number | null;
}

/** Logarithms of probabilities are held in parts of this size, so that equally probable tables are found equal. */
const PART = 1e-8;

/**
 * Fisher's exact test for two groups or more, after Freeman & Halton: all tables with these margins that are not
 * more probable than the observed one. Beside it Pearson's chi-squared.
 * Source: Freeman & Halton 1951, Biometrika 38:141-149 (from memory).
 *
 * @throws RangeError when there are fewer than two groups or a count is out of its range.
 */
export function sharesTest(groups: readonly CountedGroup[]): SharesTest {
  if (groups.length < 2) throw new RangeError(`at least two groups are needed, got ${groups.length}`);
  for (const [place, { affected, examined }] of groups.entries()) {
    requireWhole(`examined of group ${place + 1}`, examined, 1, LARGEST_COUNT);
    requireWhole(`affected of group ${place + 1}`, affected, 0, examined);
  }
  const df = groups.length - 1;
  const total = groups.reduce((sum, { examined }) => sum + examined, 0);
  const share = groups.reduce((sum, { affected }) => sum + affected, 0) / total;
  const smallest = Math.min(...groups.map(({ examined }) => examined));
  const leastExpected = smallest * Math.min(share, 1 - share);
  if (share === 0 || share === 1) return { chiSquared: null, df, p: 1, leastExpected, exactP: 1 };
  const chiSquared = groups.reduce(
    (sum, { affected, examined }) => sum + (affected - examined * share) ** 2 / examined,
    0,
  );
  const statistic = chiSquared / (share * (1 - share));
  return {
    chiSquared: statistic,
    df,
    p: chiSquaredTail(statistic, df),
    leastExpected,
    exactP: freemanHaltonP(groups),
  };
}

function freemanHaltonP(groups: readonly CountedGroup[]): number | null {
  const logOf = (group: number, count: number): number =>
    Math.round(logBinomial(groups[group]?.examined ?? 0, count) / PART);
  const sums = conditionalSums(groups, logOf);
  if (sums === null) return null;
  const observed = groups.reduce((sum, { affected }, group) => sum + logOf(group, affected), 0);
  let p = 0;
  // The tolerance of Fisher's test, 1e-7 relative, and what the parts may have rounded.
  for (const [sum, weight] of sums) if (sum <= observed + 10 + groups.length) p += weight;
  return Math.min(1, p);
}
