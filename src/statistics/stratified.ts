import { requireLevel, requireWhole } from "./checks.ts";
import { fractionalLimits } from "./effective-sample.ts";
import { finiteInterval } from "./finite-interval.ts";

/** What was seen in one stratum, such as a room, and how many animals it holds. */
export interface StratumCount {
  readonly affected: number;
  readonly examined: number;
  /** Animals in the stratum, `examined` to 10 000 000. */
  readonly population: number;
}

/** A proportion over strata, each weighted by its number of animals. */
export interface StratifiedProportion {
  readonly proportion: number;
  readonly lower: number;
  readonly upper: number;
  /** By the textbook formula; null when a stratum with more than one animal has only one examined. */
  readonly standardError: number | null;
  /** Animals drawn singly that the strata not examined whole stand for; null when all are examined. */
  readonly effectiveSize: number | null;
  /** Animals in all strata. */
  readonly population: number;
  readonly level: number;
  readonly method: "hypergeometric" | "thinnest-stratum";
}

/**
 * Proportion affected in all strata together, weighted by head count: `P = sum W p` with W = population / all
 * animals. The standard error is `sqrt(sum W^2 (1 - n/N) p (1-p) / (n - 1))`.
 *
 * One stratum has its exact finite-population interval. With several, the textbook normal interval has no width
 * where none of three is affected, and joining limits of strata can cover far less than it says. So the limits are
 * Clopper-Pearson's for P in `1 / max(W/n)` animals: as if every stratum were sampled as thinly as the thinnest.
 * That many drawn singly vary at least as much as the weighted estimate, whatever the strata are like, because
 * `sum W^2 p(1-p)/n <= max(W/n) sum W p(1-p) <= max(W/n) P(1-P)`. When all are sampled in proportion it is the
 * number examined. Strata examined whole are known and are left out of this; animals seen bound both limits.
 *
 * @param strata at least one; each a simple random sample without replacement, at least one examined.
 * @throws RangeError when there is no stratum or a count or the level is outside its range.
 *
 * Source: estimate and standard error, Cochran 1977, Sampling Techniques, 3rd ed, ch 5 (from memory); interval, the
 * inequality above and the effective sample size of Korn & Graubard 1998, Survey Methodology 24:193-201.
 */
export function stratifiedProportion(
  strata: readonly StratumCount[],
  { level = 0.95 }: { readonly level?: number } = {},
): StratifiedProportion {
  requireLevel(level);
  for (const { affected, examined, population } of strata) {
    requireWhole("population", population, 1, 10_000_000);
    requireWhole("examined", examined, 1, population);
    requireWhole("affected", affected, 0, examined);
  }
  const first = strata[0];
  if (first === undefined) throw new RangeError("strata must not be empty");
  const population = sum(strata, (stratum) => stratum.population);
  const proportion = sum(strata, ({ affected, examined, population: animals }) => {
    return (animals / population) * (affected / examined);
  });
  const common = { proportion, standardError: standardError(strata, population), population, level };
  if (strata.length === 1) {
    const { lower, upper } = finiteInterval(first.affected, first.examined, first.population, { level });
    const effectiveSize = first.examined === first.population ? null : first.examined;
    return { ...common, lower, upper, effectiveSize, method: "hypergeometric" };
  }
  return { ...common, ...thinnest(strata, population, 1 - level), method: "thinnest-stratum" };
}

const sum = <T>(items: readonly T[], of: (item: T) => number) =>
  items.reduce((total, item) => total + of(item), 0);

function standardError(strata: readonly StratumCount[], population: number): number | null {
  const open = strata.filter((stratum) => stratum.examined < stratum.population);
  if (open.some(({ examined }) => examined === 1)) return null;
  const variance = sum(open, ({ affected, examined: n, population: animals }) => {
    const p = affected / n;
    return ((animals / population) ** 2 * (1 - n / animals) * p * (1 - p)) / (n - 1);
  });
  return Math.sqrt(variance);
}

function thinnest(
  strata: readonly StratumCount[],
  population: number,
  alpha: number,
): { lower: number; upper: number; effectiveSize: number | null } {
  const seen = sum(strata, (stratum) => stratum.affected);
  const healthy = sum(strata, ({ affected, examined }) => examined - affected);
  const fewest = seen / population;
  const most = (population - healthy) / population;
  const open = strata.filter((stratum) => stratum.examined < stratum.population);
  if (open.length === 0) return { lower: fewest, upper: most, effectiveSize: null };
  const animals = sum(open, (stratum) => stratum.population);
  const known = sum(strata, (stratum) => (open.includes(stratum) ? 0 : stratum.affected)) / population;
  const share = animals / population;
  const p = sum(open, (stratum) => (stratum.population / animals) * (stratum.affected / stratum.examined));
  const thinness = Math.max(...open.map((stratum) => stratum.population / animals / stratum.examined));
  const effectiveSize = 1 / thinness;
  // Rounding must not make one of none affected, or of all.
  const affected = open.every((stratum) => stratum.affected === stratum.examined) ? 1 : p;
  const { lower, upper } = fractionalLimits(affected * effectiveSize, effectiveSize, alpha);
  return {
    lower: Math.max(fewest, known + share * lower),
    upper: Math.min(most, known + share * upper),
    effectiveSize,
  };
}
