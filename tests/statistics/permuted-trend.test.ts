import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  normalCdf,
  type PlacedValues,
  permutedTrend,
  rankSumTest,
  slopeWithin,
  stratifiedRankSum,
  stratifiedTrend,
} from "../../src/statistics/index.ts";
import { runs } from "../random.ts";
import { expectClose } from "./reference.ts";

const visits: readonly PlacedValues[] = [
  { place: 0, values: [0, 1, 1, 2] },
  { place: 30, values: [1, 2, 2, 3, 3] },
  { place: 91, values: [2, 3, 4, 4, 5] },
];
const control = [1 / 3, 0, 0.25, 0.5, 0];
const treated = [0.75, 2 / 3, 0.5, 1, 0.25];
const arms = (first: readonly number[], second: readonly number[]): PlacedValues[] => [
  { place: 0, values: first },
  { place: 1, values: second },
];

/** Every order of the places over the values of the strata, tried one by one. */
function triedP(strata: readonly (readonly PlacedValues[])[]): number {
  const orders = (places: readonly number[]): number[][] =>
    places.length === 0
      ? [[]]
      : places.flatMap((place, at) => orders(places.toSpliced(at, 1)).map((rest) => [place, ...rest]));
  let sums = [0];
  let [observed, mean] = [0, 0];
  for (const stratum of strata) {
    const values = stratum.flatMap((one) => one.values);
    const places = stratum.flatMap(({ place, values: some }) => some.map(() => place));
    const dot = (order: readonly number[]): number =>
      order.reduce((sum, place, at) => sum + place * (values[at] ?? 0), 0);
    const own = orders(places).map(dot);
    observed += dot(places);
    mean += own.reduce((a, b) => a + b, 0) / own.length;
    sums = sums.flatMap((sum) => own.map((more) => sum + more));
  }
  return sums.filter((sum) => Math.abs(sum - mean) >= Math.abs(observed - mean) - 1e-9).length / sums.length;
}

const values = (max: number) => fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 1, maxLength: max });

describe("a trend of values over places", () => {
  it("of ranks: 650 of 252 252 ways, and z = r √(N - 1), both by SciPy 1.17.1 and counting", () => {
    const found = permutedTrend([visits], { ranked: true });
    expect(found.method).toBe("exact");
    expectClose(found.p, 650 / 252_252, 1e-12, "p");
    expectClose(found.z ?? 0, 2.7673354744162437, 1e-12, "z");
  });

  it("of means of two arms: 14 of 252 ways, by SciPy 1.17.1", () => {
    expectClose(permutedTrend([arms(control, treated)]).p, 14 / 252, 1e-12, "p");
    expectClose(
      permutedTrend([arms([0.2], [0.1]), arms([0.5], [0.3]), arms([0.4], [0.35]), arms([0.9], [0.5])]).p,
      0.125,
      1e-12,
      "p of pairs",
    );
  });

  it("equals all orders tried one by one, in one stratum and in two", () => {
    fc.assert(
      fc.property(values(2), values(2), values(2), values(2), (a, b, c, d) => {
        const one = [
          { place: 0, values: a },
          { place: 3, values: b },
          { place: 5, values: c },
        ];
        expectClose(permutedTrend([one]).p, triedP([one]), 1e-12, "one stratum");
        const two = [arms(a, b), arms(c, d)];
        expectClose(permutedTrend(two).p, triedP(two), 1e-12, "two strata");
        const parts = two.map((stratum) =>
          stratum.map((some) => ({ ...some, values: some.values.map((value) => value / 7) })),
        );
        expectClose(permutedTrend(parts).p, triedP(parts), 1e-12, "values that are not whole");
      }),
      { numRuns: runs(60) },
    );
  });

  it("of ranks at two places is the rank-sum test, in strata van Elteren's; of 0 and 1 the exact trend", () => {
    fc.assert(
      fc.property(values(6), values(6), values(6), values(6), (a, b, c, d) => {
        expectClose(permutedTrend([arms(a, b)], { ranked: true }).p, rankSumTest(a, b).p, 1e-10, "rank sum");
        const elteren = stratifiedRankSum([
          { first: b, second: a },
          { first: d, second: c },
        ]);
        const two = permutedTrend([arms(a, b), arms(c, d)], { ranked: true });
        expectClose(two.p, elteren.p, 1e-10, "van Elteren");
        const yes = [a, b, c].map((some, at) => ({
          place: at * at,
          values: some.map((value) => Number(value > 2)),
        }));
        const counted = yes.map(({ place, values: some }) => ({
          score: place,
          examined: some.length,
          affected: some.filter((value) => value === 1).length,
        }));
        const { exactP } = stratifiedTrend([counted], { exact: true });
        expectClose(
          permutedTrend([yes], { ranked: true }).p,
          exactP ?? Number.NaN,
          1e-10,
          "Cochran-Armitage",
        );
      }),
      { numRuns: runs(60) },
    );
  });

  it("deals out at random what is too much to count, the same for the same seed, near the normal p", () => {
    const many = [0, 30, 60].map((place) => ({
      place,
      values: Array.from({ length: 30 }, (_, at) => ((at * 37 + place) % 101) / 7 + place / 30),
    }));
    const found = permutedTrend([many]);
    expect(found.method).toBe("permutations");
    expect(permutedTrend([many])).toEqual(found);
    expect(permutedTrend([many], { seed: 2 }).p).not.toBe(found.p);
    // Twice the standard error of 9999 draws is 0.01 at most.
    const normal = 2 * normalCdf(Math.abs(found.z ?? 0), "upper");
    expect(normal).toBeGreaterThan(0.01);
    expect(Math.abs(found.p - normal)).toBeLessThan(0.015);
  });

  it("says nothing where nothing can vary, and refuses what is no place", () => {
    expect(permutedTrend([arms([2, 2], [2])])).toEqual({ z: null, p: 1, method: "exact" });
    expect(permutedTrend([[{ place: 4, values: [1, 2] }]])).toEqual({ z: null, p: 1, method: "exact" });
    expect(() => permutedTrend([])).toThrow("stratum");
    expect(() => permutedTrend([arms([], [1])])).toThrow("no values");
    expect(() => permutedTrend([[{ place: 0.5, values: [1] }]])).toThrow("place");
  });
});

describe("the slope within strata", () => {
  it("is that of SciPy 1.17.1: three visits, two arms, pairs", () => {
    const line = slopeWithin([visits]);
    expectClose(line.slope ?? 0, 0.02742503931030743, 1e-12, "slope");
    // By NumPy from the variances of the visits, t with three degrees of freedom.
    expectClose(line.lower ?? 0, 0.004403224507369397, 1e-10, "lower");
    expectClose(line.upper ?? 0, 0.05044685411324547, 1e-10, "upper");
    const difference = slopeWithin([arms(control, treated)]);
    // The standard error is that of SciPy's Welch test, t with four degrees of freedom.
    expect(difference.df).toBe(4);
    expectClose(difference.lower ?? 0, -0.023545590125124582, 1e-10, "lower of a difference");
    expectClose(difference.upper ?? 0, 0.8568789234584578, 1e-10, "upper of a difference");
    const pairs = slopeWithin([
      arms([0.2], [0.1]),
      arms([0.5], [0.3]),
      arms([0.4], [0.35]),
      arms([0.9], [0.5]),
    ]);
    expect(pairs.df).toBe(3);
    expectClose(pairs.lower ?? 0, -0.43379715241151473, 1e-10, "lower of pairs");
    expectClose(pairs.upper ?? 0, 0.05879715241151465, 1e-10, "upper of pairs");
  });

  it("has Wilson's limits joined where the values are shares of animals, by NumPy", () => {
    const fourths = (place: number, some: readonly number[]): PlacedValues => ({
      place,
      values: some.map((one) => one / 4),
      animals: 4 * some.length,
    });
    const line = slopeWithin([
      [fourths(0, [4, 3, 4, 2, 3]), fourths(30, [2, 3, 1, 2, 2]), fourths(60, [1, 0, 2, 0, 1])],
    ]);
    expect(line).toMatchObject({ df: 8, method: "newcombe" });
    expectClose(line.lower ?? 0, -0.01315708064991161, 1e-10, "lower");
    expectClose(line.upper ?? 0, -0.003656806465774671, 1e-10, "upper");
    const strata = slopeWithin([
      [fourths(0, [3, 4, 2]), fourths(1, [0, 1, 1])],
      [fourths(0, [4, 3]), fourths(1, [2, 0])],
    ]);
    expectClose(strata.lower ?? 0, -0.8270905257223495, 1e-10, "lower in strata");
    expectClose(strata.upper ?? 0, -0.029087361111249432, 1e-10, "upper in strata");
    const alike = slopeWithin([[fourths(0, [4, 4, 4, 4]), fourths(1, [0, 0, 0, 0])]]);
    expectClose(alike.upper ?? 0, -0.15218679535169222, 1e-10, "where no value varies");
    const pairs = [
      [4, 3],
      [3, 3],
      [4, 1],
      [2, 0],
    ].map(([a = 0, b = 0]) => [fourths(0, [a]), fourths(1, [b])]);
    expectClose(slopeWithin(pairs).lower ?? 0, -0.7108255308928847, 1e-10, "lower of pairs");
    expectClose(slopeWithin(pairs).upper ?? 0, 0.1538807544383376, 1e-10, "upper of pairs");
  });

  it("has no limits with too few values or none that vary, and no slope at one place", () => {
    expect(slopeWithin([arms([1], [0])])).toMatchObject({ slope: -1, lower: null, upper: null, df: 0 });
    expect(slopeWithin([arms([1, 1, 1], [0, 0, 0])])).toMatchObject({ slope: -1, lower: null, df: 2 });
    expect(slopeWithin([[{ place: 1, values: [1, 2] }]])).toMatchObject({ slope: null, lower: null });
  });
});
