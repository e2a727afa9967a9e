import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hodgesLehmann, kruskalWallis, rankSumTest } from "../../src/statistics/index.ts";
import { runs } from "../random.ts";
import { expectClose } from "./reference.ts";

/** Pairs won by the first group, ties half: the definition of U. */
function wins(first: readonly number[], second: readonly number[]): number {
  let sum = 0;
  for (const a of first) for (const b of second) sum += a > b ? 1 : a === b ? 0.5 : 0;
  return sum;
}

/** Every way to choose the places of the first group. */
function choices(from: number, total: number, size: number): number[][] {
  if (size === 0) return [[]];
  if (total - from < size) return [];
  return [
    ...choices(from + 1, total, size - 1).map((rest) => [from, ...rest]),
    ...choices(from + 1, total, size),
  ];
}

/** Two-sided permutation p by trying every split. */
function permutationP(first: readonly number[], second: readonly number[]): number {
  const all = [...first, ...second];
  const mean = (first.length * second.length) / 2;
  const far = Math.abs(wins(first, second) - mean);
  const splits = choices(0, all.length, first.length);
  const extreme = splits.filter((places) => {
    const chosen = all.filter((_, place) => places.includes(place));
    const rest = all.filter((_, place) => !places.includes(place));
    return Math.abs(wins(chosen, rest) - mean) >= far;
  });
  return extreme.length / splits.length;
}

const grades = (min: number, max: number) =>
  fc.array(fc.integer({ min: 0, max: 4 }), { minLength: min, maxLength: max });

describe("rank-sum test", () => {
  it("exact p with ties equals all splits tried one by one", () => {
    fc.assert(
      fc.property(grades(1, 6), grades(1, 6), (first, second) => {
        const got = rankSumTest(first, second);
        expect(got.u).toBe(wins(first, second));
        expectClose(got.exactP ?? Number.NaN, permutationP(first, second), 1e-12, "p");
        expect(got.p).toBe(got.exactP);
        expect(got.p).toBeLessThanOrEqual(1);
      }),
      { numRuns: runs(150) },
    );
  });

  it("tables of Mann & Whitney 1947: 3 and 4 animals without ties, U = 0 has 1 of 35 splits in its tail", () => {
    expectClose(rankSumTest([1, 2, 3], [4, 5, 6, 7]).p, 2 / 35, 1e-14, "U = 0");
    expectClose(rankSumTest([1, 2, 4], [3, 5, 6, 7]).p, 4 / 35, 1e-14, "U = 1");
  });

  it("does not mind which group comes first, nor the unit", () => {
    fc.assert(
      fc.property(grades(1, 30), grades(1, 30), (first, second) => {
        const got = rankSumTest(first, second);
        const turned = rankSumTest(second, first);
        const scaled = rankSumTest(
          first.map((grade) => grade * 0.1 + 7),
          second.map((grade) => grade * 0.1 + 7),
        );
        expect(got.u + turned.u).toBe(first.length * second.length);
        expectClose(turned.p, got.p, 1e-10, "swapped");
        expectClose(scaled.p, got.p, 1e-10, "scaled");
        expectClose(turned.normalP, got.normalP, 1e-10, "swapped, normal");
        for (const p of [got.p, got.normalP, got.uncorrectedP]) expect(p).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("exact and normal come near each other when groups are large, and over 100 values only one is left", () => {
    const first = Array.from({ length: 50 }, (_, i) => i % 5);
    const second = Array.from({ length: 50 }, (_, i) => (i % 5) + (i % 3 === 0 ? 1 : 0));
    const got = rankSumTest(first, second);
    expect(Math.abs((got.exactP ?? 0) - got.normalP)).toBeLessThan(0.002);
    expect(rankSumTest([...first, 2], second)).toMatchObject({ exactP: null, method: "normal" });
  });

  it("equal values everywhere: p is 1", () => {
    expect(rankSumTest([2, 2, 2], [2, 2])).toMatchObject({
      u: 3,
      superiority: 0.5,
      p: 1,
      normalP: 1,
      uncorrectedP: 1,
    });
  });

  it.each([
    ["group 2 has no values", () => rankSumTest([1], [])],
    ["values must be numbers of at most 1e+300 in size, got NaN", () => rankSumTest([1, Number.NaN], [2])],
  ])("refused: %s", (message, call) => {
    expect(call).toThrow(new RangeError(message));
  });
});

describe("Hodges-Lehmann shift", () => {
  it("is the median of the differences; its interval has the coverage of the rank-sum test (no ties)", () => {
    // Two-sided 5 %, 5 and 5 animals: the largest U that is significant is 2 (Mann & Whitney 1947, from memory).
    const first = [1.1, 2.3, 3.2, 4.9, 6.8];
    const second = [0.4, 1.7, 2.2, 3.9, 5.0];
    const differences = first.flatMap((a) => second.map((b) => a - b)).sort((a, b) => a - b);
    const got = hodgesLehmann(first, second);
    expect(got.shift).toBe(differences[12]);
    expect([got.lower, got.upper]).toEqual([differences[2], differences[22]]);
  });

  it("the limits are where the exact test turns: a shift outside is rejected, one inside is not", () => {
    const values = fc.uniqueArray(fc.integer({ min: 0, max: 10_000 }), { minLength: 8, maxLength: 20 });
    fc.assert(
      fc.property(values, fc.integer({ min: 4, max: 4 }), (all, size) => {
        const first = all.slice(0, size).map((value) => value + 0.1);
        const second = all.slice(size);
        const { lower, upper } = hodgesLehmann(first, second);
        fc.pre(lower !== null && upper !== null);
        const rejected = (shift: number): boolean =>
          rankSumTest(
            first.map((value) => value - shift),
            second,
          ).p <= 0.05;
        // Beside a limit no pair is tied, so the distribution is the one without ties.
        expect(rejected((lower ?? 0) - 1e-6)).toBe(true);
        expect(rejected((upper ?? 0) + 1e-6)).toBe(true);
        const inside = [(lower ?? 0) + 1e-6, (upper ?? 0) - 1e-6].filter(
          (shift) => shift > (lower ?? 0) && shift < (upper ?? 0),
        );
        for (const shift of inside) expect(rejected(shift)).toBe(false);
      }),
    );
  });

  it("covers at least the level with ties, every split counted", () => {
    // Two groups of five from the same ten graded values: the interval for a shift of 0 must hold 0 in 95 % of the splits.
    const all = [0, 0, 1, 1, 1, 2, 2, 3, 4, 4];
    const splits = choices(0, all.length, 5);
    const covered = splits.filter((places) => {
      const { lower, upper } = hodgesLehmann(
        all.filter((_, place) => places.includes(place)),
        all.filter((_, place) => !places.includes(place)),
      );
      return (lower ?? Number.NEGATIVE_INFINITY) <= 0 && (upper ?? Number.POSITIVE_INFINITY) >= 0;
    });
    expect(covered.length / splits.length).toBeGreaterThanOrEqual(0.95);
  });

  it("turns round, shifts along, and has no limits when the groups are too small", () => {
    fc.assert(
      fc.property(grades(1, 60), grades(1, 60), (first, second) => {
        const got = hodgesLehmann(first, second);
        const turned = hodgesLehmann(second, first);
        expect(turned.shift).toBeCloseTo(-got.shift, 12);
        expect(turned.lower === null).toBe(got.upper === null);
        if (got.lower !== null && turned.upper !== null) expect(turned.upper).toBeCloseTo(-got.lower, 12);
        if (got.lower !== null) expect(got.lower).toBeLessThanOrEqual(got.shift);
        const moved = hodgesLehmann(
          first.map((grade) => grade + 3),
          second,
        );
        expect(moved.shift).toBe(got.shift + 3);
      }),
    );
    expect(hodgesLehmann([1, 2], [3, 4])).toMatchObject({ shift: -2, lower: null, upper: null });
  });
});

describe("Kruskal-Wallis test", () => {
  it("of two groups is the rank-sum test without continuity correction", () => {
    fc.assert(
      fc.property(grades(2, 20), grades(2, 20), (first, second) => {
        const { h, p } = kruskalWallis([first, second]);
        fc.pre(h !== null);
        expect(p).toBeCloseTo(rankSumTest(first, second).uncorrectedP, 10);
      }),
    );
  });

  /** Every way to share the places out to groups of these sizes. */
  function sharings(places: readonly number[], sizes: readonly number[]): number[][][] {
    const [size = 0, ...rest] = sizes;
    if (rest.length === 0) return [[[...places]]];
    return choices(0, places.length, size).flatMap((chosen) => {
      const mine = chosen.map((at) => places[at] ?? 0);
      const others = places.filter((place) => !mine.includes(place));
      return sharings(others, rest).map((tail) => [mine, ...tail]);
    });
  }

  it("exact p equals all sharings tried one by one, ties included", () => {
    fc.assert(
      fc.property(grades(1, 3), grades(1, 3), grades(1, 3), (...groups) => {
        const { h, exactP } = kruskalWallis(groups, { exact: true });
        fc.pre(h !== null);
        const values = groups.flat();
        const all = sharings(
          [...values.keys()],
          groups.map((group) => group.length),
        );
        const far = all.filter((sharing) => {
          const other = kruskalWallis(sharing.map((places) => places.map((place) => values[place] ?? 0)));
          return (other.h ?? 0) >= (h ?? 0) - 1e-9;
        });
        expectClose(exactP ?? Number.NaN, far.length / all.length, 1e-12, "exact p");
      }),
      { numRuns: runs(40) },
    );
  });

  it("of two groups the exact p is that of the rank-sum test", () => {
    fc.assert(
      fc.property(grades(1, 9), grades(1, 9), (first, second) => {
        const { h, exactP } = kruskalWallis([first, second], { exact: true });
        fc.pre(h !== null);
        expectClose(exactP ?? Number.NaN, rankSumTest(first, second).p, 1e-10, "exact p");
      }),
    );
  });

  it("gives up the exact p where it would take long, and keeps the other", () => {
    const groups = [0, 1, 2].map((shift) => Array.from({ length: 30 }, (_, i) => i + shift / 3));
    expect(kruskalWallis(groups, { exact: true }).exactP).toBe(null);
  });

  it("does not mind the order of groups, and says nothing of equal values", () => {
    const groups = [
      [0, 1, 1, 2],
      [1, 2, 2, 3],
      [3, 3, 2, 3],
    ];
    expectClose(kruskalWallis([...groups].reverse()).p, kruskalWallis(groups).p, 1e-12, "order");
    expect(kruskalWallis([[1, 1], [1], [1]], { exact: true })).toEqual({ h: null, df: 2, p: 1, exactP: 1 });
    expect(() => kruskalWallis([[1, 2]])).toThrow(new RangeError("at least two groups are needed, got 1"));
  });
});
