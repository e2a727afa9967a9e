/** Adjustment by the smallest p, against all ways to deal the labels out. */
import { describe, expect, it } from "vitest";
import { smallestPAdjusted } from "../../src/statistics/index.ts";

type Statistic = (labels: readonly number[]) => number;

/** |sum of the values labelled 1, less what is to be expected|. */
const away =
  (values: readonly number[]): Statistic =>
  (labels) => {
    const ones = labels.reduce((sum, label) => sum + label, 0);
    const all = values.reduce((sum, value) => sum + value, 0);
    const sum = values.reduce((total, value, place) => total + value * (labels[place] ?? 0), 0);
    return Math.abs(sum - (ones * all) / values.length);
  };

/** Every order of labels within strata. */
function allWays(labels: readonly number[], strata: readonly string[]): number[][] {
  const [place, ...rest] = labels.keys();
  if (place === undefined) return [[]];
  const go = (at: number, left: Map<string, number[]>): number[][] => {
    if (at === labels.length) return [[]];
    const own = left.get(strata[at] ?? "") ?? [];
    return [...new Set(own)].flatMap((label) => {
      const less = new Map(left);
      less.set(strata[at] ?? "", own.toSpliced(own.indexOf(label), 1));
      return go(at + 1, less).map((end) => [label, ...end]);
    });
  };
  const left = new Map<string, number[]>();
  for (const at of [place, ...rest])
    left.set(strata[at] ?? "", [...(left.get(strata[at] ?? "") ?? []), labels[at] ?? 0]);
  return go(0, left);
}

/** Step-down by definition, over all ways. */
function byAllWays(
  labels: readonly number[],
  strata: readonly string[],
  statistics: readonly Statistic[],
): number[] {
  const ways = allWays(labels, strata);
  const pOf = statistics.map((statistic) => {
    const all = ways.map(statistic);
    return (dealt: readonly number[]): number =>
      all.filter((value) => value >= statistic(dealt) - 1e-9).length / ways.length;
  });
  const own = pOf.map((p) => p(labels));
  const order = [...own.keys()].sort((a, b) => (own[a] ?? 0) - (own[b] ?? 0));
  const adjusted: number[] = [];
  let largest = 0;
  for (const [step, at] of order.entries()) {
    const still = order.slice(step);
    const reached = ways.filter(
      (dealt) => Math.min(...still.map((one) => pOf[one]?.(dealt) ?? 1)) <= (own[at] ?? 0) + 1e-12,
    );
    largest = Math.max(largest, reached.length / ways.length);
    adjusted[at] = largest;
  }
  return adjusted;
}

const together =
  (statistics: readonly Statistic[]) =>
  (labels: readonly number[]): number[] =>
    statistics.map((statistic) => statistic(labels));

const labels = [0, 0, 0, 0, 0, 1, 1, 1, 1, 1];
const strata = labels.map(() => "all");
const clear = [0, 0, 1, 0, 0, 3, 2, 4, 3, 1];
const other = [0, 1, 1, 0, 1, 0, 1, 0, 1, 1];
const third = [5, 1, 4, 2, 3, 3, 2, 9, 1, 4];

describe("the smallest p", () => {
  it.each([
    ["one stratum", strata],
    ["two strata", ["a", "a", "b", "b", "b", "a", "a", "a", "b", "b"]],
  ])("of %s comes near all ways to deal the labels out", (_name, within) => {
    const statistics = [away(other), away(clear), away(third)];
    const exact = byAllWays(labels, within, statistics);
    const got = smallestPAdjusted({ labels, strata: within }, together(statistics), {
      permutations: 20_000,
      seed: 3,
    });
    // Standard error at most 0.0036; p values that are equal by counting are not quite so by ranks of a sample.
    for (const [place, p] of got.entries()) expect(Math.abs(p - (exact[place] ?? 0))).toBeLessThan(0.02);
  });

  it("costs nothing for the same thing said four times, and something for another thing", () => {
    const alone = smallestPAdjusted({ labels, strata }, together([away(clear)]));
    const four = smallestPAdjusted(
      { labels, strata },
      together([1, 2, 3, 7].map((k) => away(clear.map((v) => k * v + 1)))),
    );
    expect(four).toEqual([alone[0], alone[0], alone[0], alone[0]]);
    const more = smallestPAdjusted({ labels, strata }, together([away(clear), away(other), away(third)]));
    expect(more[0]).toBeGreaterThan(alone[0] ?? 1);
  });

  it("is the same for the same seed, 1 where nothing can change places, and never below its least", () => {
    const ask = (seed: number) =>
      smallestPAdjusted({ labels, strata }, together([away(clear), away(other)]), { seed });
    expect(ask(5)).toEqual(ask(5));
    const apart = labels.map((_, place) => String(place));
    expect(smallestPAdjusted({ labels, strata: apart }, together([away(clear)]))).toEqual([1]);
    const far = Array.from({ length: 40 }, (_, place) => (place < 20 ? 0 : 1));
    const sure = smallestPAdjusted({ labels: far, strata: far.map(() => "") }, together([away(far)]), {
      permutations: 999,
    });
    expect(sure).toEqual([1 / 1000]);
  });

  it("refuses too few permutations and lists that do not go together", () => {
    expect(() => smallestPAdjusted({ labels, strata }, together([]), { permutations: 10 })).toThrow(
      RangeError,
    );
    expect(() => smallestPAdjusted({ labels, strata: [] }, together([]))).toThrow("as many");
  });
});
