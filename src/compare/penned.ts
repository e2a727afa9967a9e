/** Two sides whose pigs share pens, set against each other so that a pen is not taken for many pigs. */
import { adjustedShares, rankSumTest, stratifiedRankSum } from "../statistics/index.ts";
import { limited, type Parted, secondAgainstFirst } from "./made-up.ts";
import { designEffects, type Penned } from "./pens.ts";
import type { Answered } from "./questions.ts";
import type { PennedScores, PennedShares } from "./tests-made.ts";

/** Shares by Rao & Scott's adjusted counts, within strata where there are any. */
export function pennedShares(
  sides: readonly [Penned, Penned],
  strata: Parted | null,
  level: number,
): PennedShares | null {
  const [first, second] = sides;
  const cells = strata?.strata ?? [sides.map(({ clusters }) => clusters.flat())];
  if (cells.length === 0) return null;
  const [before, after] = designEffects(first, second);
  const whole = secondAgainstFirst(first.clusters.flat(), second.clusters.flat());
  const df = degrees([
    { part: before / whole.n2, clusters: first.clusters.length },
    { part: after / whole.n1, clusters: second.clusters.length },
  ]);
  const effects = { first: after, second: before, df };
  const tables = cells.map(([one = [], other = []]) => secondAgainstFirst(one, other));
  const { p } = adjustedShares(tables, effects, { level });
  const { difference, effective } = adjustedShares([whole], effects, { level });
  return {
    ...clustersOf(sides),
    within: strata !== null,
    design_effect: [before, after],
    effective: [effective[1], effective[0]],
    difference: { ...limited(difference.value, difference.lower, difference.upper), method: "newcombe" },
    p,
  };
}

/** Scores by the means of the pens, ranked; within strata where there are any. */
export function pennedScores(sides: readonly [Penned, Penned], strata: Parted | null): PennedScores | null {
  const means = sides.map(({ clusters }) => clusters);
  const counted = clustersOf(sides);
  if (strata === null) {
    const [first = [], second = []] = means.map((some) => some.map(meanOf));
    const { p, method, superiority } = rankSumTest(second, first);
    return { ...counted, within: false, superiority, p, exact: method === "exact" };
  }
  const cells = strata.strata.map((cell) =>
    cell.map((answers, place) => (means[place] ?? []).flatMap((pigs) => partMean(pigs, answers))),
  );
  if (cells.length === 0) return null;
  const ranked = cells.map(([first = [], second = []]) => ({ first: second, second: first }));
  const { p, method, superiority } = stratifiedRankSum(ranked);
  return { ...counted, within: true, superiority, p, exact: method === "exact" };
}

function clustersOf([first, second]: readonly [Penned, Penned]) {
  const alone = ({ clusters, known }: Penned): number => clusters.length - known;
  return {
    clusters: [first.clusters.length, second.clusters.length],
    alone: [alone(first), alone(second)],
  } as const;
}

/**
 * Degrees of freedom of a spread that two sides share, whole and 1 or more: their clusters less two when both vary alike,
 * near those of the side that varies more when not (Satterthwaite 1946, Biometrics Bulletin 2:110-114, from memory).
 * @param parts variance of each side, up to one factor, with its clusters
 */
function degrees(parts: readonly { readonly part: number; readonly clusters: number }[]): number {
  const all = parts.reduce((sum, { part }) => sum + part, 0);
  const squares = parts.reduce((sum, { part, clusters }) => sum + part ** 2 / (clusters - 1), 0);
  return Math.max(1, Math.floor(all ** 2 / squares + 1e-9));
}

const meanOf = (pigs: readonly Answered[]): number =>
  pigs.reduce((sum, { value }) => sum + (value ?? 0), 0) / pigs.length;

/** The mean of those pigs of a pen that are in a stratum; none when it has no pig there. */
function partMean(pigs: readonly Answered[], stratum: readonly Answered[]): number[] {
  const inside = pigs.filter((pig) => stratum.includes(pig));
  return inside.length === 0 ? [] : [meanOf(inside)];
}
