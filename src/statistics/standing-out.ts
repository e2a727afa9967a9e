import { adjustedShares } from "./adjusted-shares.ts";
import { LARGEST_COUNT, requireBetween, requireCounts, requireWhole } from "./checks.ts";
import { fisherExact } from "./fisher.ts";
import { studentTTwoSided } from "./student-t.ts";

/** One of many places, such as a farm, with a share of its own. */
export interface Place {
  readonly affected: number;
  readonly examined: number;
  /** Design effect, 1 or more: 1 where the animals were drawn singly. */
  readonly effect: number;
  /** Pens that the animals came from; `examined` where they were drawn singly. */
  readonly clusters: number;
}

export interface PlaceAmongOthers {
  /** Against all others together: chance alone, if all places are alike. */
  readonly pTogether: number;
  /** Against the spread of the others: chance, if places differ as the others do. Null with fewer than two others. */
  readonly pSpread: number | null;
  /** The larger of the two; null where there is only one. */
  readonly p: number | null;
  /** Whether its share lies above that of the others together. */
  readonly above: boolean;
  /** The share drawn towards the mean of all places, 0 to 1: the less animals say, the nearer. */
  readonly drawn: number;
}

/**
 * Each place against all others, by two tests of which the larger p counts: a place stands out only where neither chance
 * among equal places nor the spread of the others accounts for it.
 *
 * Together: Fisher's exact test; with clusters the counts over the larger design effect (Rao & Scott 1992), by t. Spread: y =
 * asin sqrt((x + 3/8) / (n + 3/4)) with variance v = effect / (4 n + 2) (Anscombe 1948); mean and variance between the others by
 * DerSimonian & Laird 1986; t = (y - mean) / sqrt(v + between + 1 / sum of weights) with one degree of freedom less than there
 * are others (Higgins, Thompson & Spiegelhalter 2009, who take one less). Allowing for between on that scale: Spiegelhalter
 * 2005. Drawn: (v mean + between y) / (v + between) of all places, back on the scale of shares (Efron & Morris 1975). All from
 * memory. p is of one place; {@link holmAdjusted} allows for looking at all.
 *
 * @param places two at least.
 * @throws RangeError when there are fewer, or a count or an effect is out of its range.
 */
export function amongOthers(places: readonly Place[]): PlaceAmongOthers[] {
  if (places.length < 2) throw new RangeError("two places at least are needed");
  for (const { affected, examined, effect, clusters } of places) {
    requireCounts(affected, examined);
    requireBetween("effect", effect, 1, LARGEST_COUNT);
    requireWhole("clusters", clusters, 1, examined);
  }
  const points = places.map(pointOf);
  const all = spreadOf(points);
  return places.map((place, at) => {
    const point = pointOf(place);
    const others = places.toSpliced(at, 1);
    const pTogether = together(place, others);
    const pSpread = places.length < 3 ? null : outside(point, points.toSpliced(at, 1));
    const [x, n] = totalOf(others);
    return {
      above: place.affected / place.examined > x / n,
      pTogether,
      pSpread,
      p: pSpread === null ? null : Math.max(pTogether, pSpread),
      drawn: shareAt((point.v * all.mean + all.between * point.y) / (point.v + all.between), place.examined),
    };
  });
}

/** p allowing for all of them, in the same order: step-down, whatever depends on what (Holm 1979, from memory). */
export function holmAdjusted(ps: readonly number[]): number[] {
  const order = ps.map((p, at) => ({ p, at })).sort((a, b) => a.p - b.p);
  const adjusted = Array<number>(ps.length).fill(1);
  let before = 0;
  for (const [rank, { p, at }] of order.entries()) {
    before = Math.min(1, Math.max(before, p * (ps.length - rank)));
    adjusted[at] = before;
  }
  return adjusted;
}

const totalOf = (places: readonly Place[]): [affected: number, examined: number] =>
  places.reduce((sum, { affected, examined }) => [sum[0] + affected, sum[1] + examined], [0, 0]);

function together(place: Place, others: readonly Place[]): number {
  const sum = (of: (one: Place) => number) => others.reduce((total, one) => total + of(one), 0);
  const [x2, n2] = totalOf(others);
  const groups = { x1: place.affected, n1: place.examined, x2, n2 };
  const effect = sum((one) => one.effect * one.examined) / n2;
  const larger = Math.max(place.effect, effect);
  if (larger === 1) return fisherExact(groups).p;
  const parts = [
    { part: place.effect / place.examined, df: place.clusters - 1 },
    { part: effect / n2, df: sum(({ clusters }) => clusters - 1) },
  ];
  const df =
    parts.reduce((total, { part }) => total + part, 0) ** 2 /
    parts.reduce((total, { part, df: own }) => total + part ** 2 / own, 0);
  return adjustedShares([groups], { first: larger, second: larger, df: Math.max(1, Math.floor(df + 1e-9)) })
    .p;
}

interface Point {
  readonly y: number;
  readonly v: number;
}

const pointOf = ({ affected, examined, effect }: Place): Point => ({
  y: Math.asin(Math.sqrt((affected + 3 / 8) / (examined + 3 / 4))),
  v: effect / (4 * examined + 2),
});

const shareAt = (y: number, examined: number): number =>
  Math.min(1, Math.max(0, (Math.sin(y) ** 2 * (examined + 3 / 4) - 3 / 8) / examined));

/** Mean, variance between places, and variance of the mean. */
function spreadOf(points: readonly Point[]): { mean: number; between: number; ofMean: number } {
  const fixed = weighted(points, 0);
  const q = points.reduce((sum, { y, v }) => sum + (y - fixed.mean) ** 2 / v, 0);
  const squares = points.reduce((sum, { v }) => sum + v ** -2, 0);
  const between = Math.max(0, (q - (points.length - 1)) / (fixed.weight - squares / fixed.weight));
  const { mean, weight } = weighted(points, between);
  return { mean, between, ofMean: 1 / weight };
}

function weighted(points: readonly Point[], between: number): { mean: number; weight: number } {
  const weight = points.reduce((sum, { v }) => sum + 1 / (v + between), 0);
  return { mean: points.reduce((sum, { y, v }) => sum + y / (v + between), 0) / weight, weight };
}

function outside({ y, v }: Point, others: readonly Point[]): number {
  const { mean, between, ofMean } = spreadOf(others);
  return studentTTwoSided((y - mean) / Math.sqrt(v + between + ofMean), others.length - 1);
}
