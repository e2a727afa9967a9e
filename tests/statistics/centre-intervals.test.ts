import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bootstrapInterval, meanInterval, medianInterval, seededRandom } from "../../src/statistics/index.ts";
import { xoshiro128 } from "../../src/statistics/random.ts";
import { runs } from "../random.ts";
import { binomialProbabilities, expectClose } from "./reference.ts";

const SKEWED = [0, 0, 0, 1, 0, 2, 5, 0, 1, 3, 0, 8, 12, 0, 1, 4, 0, 0, 2, 20];
const EVEN = [12, 15, 11, 19, 22, 14, 16, 13, 18, 17, 15, 16];

describe("mean", () => {
  it("of two values lies 12.706 half-distances about their middle at 95 %", () => {
    const { lower, upper, mean } = meanInterval([1, 3]);
    expectClose(mean ?? 0, 2, 1e-15, "mean");
    expectClose(upper ?? 0, 2 + 12.706204736174698, 1e-14, "upper");
    expectClose(lower ?? 0, 2 - 12.706204736174698, 1e-14, "lower");
  });

  it.each([
    [[], null, null, "no values"],
    [[4], 4, null, "only one value"],
    [[2, 2, 2], 2, 0, "all values are equal"],
    [[0.1, 0.1, 0.1], 0.1, 0, "all values are equal"],
  ])("of %j has no interval, and says why", (values, mean, standardError, reason) => {
    const got = meanInterval(values);
    expect(got).toMatchObject({ n: values.length, standardError, lower: null, upper: null, reason });
    expect(got.mean).toBe(mean);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e151])("a value of %d is refused", (value) => {
    for (const call of [
      () => meanInterval([1, value]),
      () => medianInterval([1, value]),
      () => bootstrapInterval([1, value], "mean"),
    ]) {
      expect(call).toThrow(
        new RangeError(`values[1] must be a number of at most 1e+150 in size, got ${value}`),
      );
    }
  });
});

describe("median", () => {
  it("takes the ranks of the published tables at 95 % (Conover 1999, binomial at one half)", () => {
    // n, rank of the lower limit: largest k with P(X < k) <= 0.025.
    const table = [
      [6, 1],
      [8, 1],
      [9, 2],
      [11, 2],
      [12, 3],
      [15, 4],
      [20, 6],
      [25, 8],
      [30, 10],
      [50, 18],
      [100, 40],
    ] as const;
    for (const [n, k] of table) {
      const values = Array.from({ length: n }, (_, i) => (7 * i) % n).map((value) => value + 1);
      const shuffled = new Set(values).size === n ? values : values.map((_, i) => n - i);
      expect(medianInterval(shuffled), `n = ${n}`).toMatchObject({
        ranks: [k, n + 1 - k],
        lower: k,
        upper: n + 1 - k,
      });
    }
  });

  it("states its coverage, by sums of binomial terms, and takes no closer ranks that would do", () => {
    for (let n = 6; n <= 60; n++) {
      const terms = binomialProbabilities(n, 0.5);
      const below = (k: number) => terms.slice(0, k).reduce((sum, term) => sum + term, 0);
      for (const level of [0.8, 0.95]) {
        const got = medianInterval(
          Array.from({ length: n }, (_, i) => i),
          { level },
        );
        const k = got.ranks?.[0] ?? 0;
        expectClose(got.coverage ?? 0, 1 - 2 * below(k), 1e-12, `${n}`);
        expect(got.coverage).toBeGreaterThanOrEqual(level - 1e-12);
        expect(1 - 2 * below(k + 1)).toBeLessThan(level);
      }
    }
  });

  it("has no interval below six values at 95 %, and says why", () => {
    expect(medianInterval([])).toMatchObject({ median: null, lower: null, reason: "no values" });
    const five = medianInterval([1, 2, 3, 4, 5]);
    expect(five).toMatchObject({ median: 3, ranks: null, coverage: null, lower: null, upper: null });
    expect(five.reason).toBe("too few values for an interval at level 0.95");
    expect(medianInterval([1, 2, 3, 4, 5], { level: 0.9 })).toMatchObject({ lower: 1, upper: 5 });
  });

  it("of equal values is that value: more data could hardly move it", () => {
    expect(medianInterval(new Array<number>(20).fill(2))).toMatchObject({ median: 2, lower: 2, upper: 2 });
  });
});

describe("random numbers", () => {
  it("are those of an independent program", () => {
    // xoshiro128** and SplitMix64 written again in Python with unbounded integers.
    const next = xoshiro128(1, 2, 3, 4);
    expect(Array.from({ length: 10 }, next)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
    const seeded: [number, number[]][] = [
      [1, [1695105466, 1423115009, 634581793, 1068227753, 716759206, 4186505319]],
      [0, [3737715805, 2584255861, 2876756834, 3286328325, 1553311962, 1625202774]],
      [Number.MAX_SAFE_INTEGER, [1233166643, 1287031142, 661813442, 2960669951, 2601079046, 1036114921]],
    ];
    for (const [seed, wanted] of seeded) {
      const random = seededRandom(seed);
      expect(Array.from({ length: 6 }, () => random.bits())).toEqual(wanted);
    }
  });

  it("below a bound are spread evenly (chi-squared of 10 000 draws, 6 df, under 22.5)", () => {
    const random = seededRandom(20_260_320);
    const counts = new Array<number>(7).fill(0);
    for (let i = 0; i < 10_000; i++) {
      const drawn = random.below(7);
      counts[drawn] = (counts[drawn] ?? 0) + 1;
    }
    const statistic = counts.reduce((sum, count) => sum + (count - 10_000 / 7) ** 2 / (10_000 / 7), 0);
    expect(counts.length).toBe(7);
    expect(statistic).toBeLessThan(22.5);
  });

  it("are refused a seed or a bound that is none", () => {
    for (const seed of [-1, 0.5, Number.NaN, 2 ** 53])
      expect(() => seededRandom(seed)).toThrow(/seed must be/);
    expect(() => seededRandom(1).below(0)).toThrow(/bound must be a whole number from 1/);
    expect(seededRandom(1).below(1)).toBe(0);
  });
});

describe("bootstrap", () => {
  it.each([
    // SciPy 1.17.1 stats.bootstrap(method="BCa"), 400 000 resamples, twice the same limits.
    ["mean", SKEWED, 1.4, 6.25],
    ["mean", EVEN, 14.166666666666666, 17.5],
    // NumPy 2, 400 000 resamples and the same formulas.
    ["median", SKEWED, 0, 3.5],
    ["median", EVEN, 13.5, 17.5],
  ] as const)("%s of %j agrees with an independent program", (measure, values, lower, upper) => {
    const got = bootstrapInterval(values, measure, { resamples: 99_999 });
    // One step of the lattice of possible means or medians, beside the noise of the resamples.
    const step = measure === "mean" ? 2 / values.length : 0.5;
    expect(Math.abs((got.lower ?? Number.NaN) - lower)).toBeLessThanOrEqual(step);
    expect(Math.abs((got.upper ?? Number.NaN) - upper)).toBeLessThanOrEqual(step);
  });

  it("is the same for the same seed, another for another, and leaves the list as it was", () => {
    const copy = [...SKEWED];
    const one = bootstrapInterval(SKEWED, "mean", { seed: 7 });
    expect(bootstrapInterval(SKEWED.toReversed(), "mean", { seed: 7 })).toEqual(one);
    const others = [8, 9, 10].map((seed) => bootstrapInterval(SKEWED, "mean", { seed }));
    expect(others.some(({ lower, upper }) => lower !== one.lower || upper !== one.upper)).toBe(true);
    expect(SKEWED).toEqual(copy);
    expect(one).toMatchObject({ n: 20, measure: "mean", resamples: 9999, seed: 7, level: 0.95 });
    expect(one.estimate).toBeCloseTo(2.95, 14);
  });

  it("leans to the long side of skewed values, where the t interval does not", () => {
    const { estimate, lower, upper } = bootstrapInterval(SKEWED, "mean");
    if (estimate === null || lower === null || upper === null) throw new Error("no interval");
    expect(upper - estimate).toBeGreaterThan(1.5 * (estimate - lower));
  });

  it.each([
    [[], "no values"],
    [[3], "all values are equal"],
    [[1, 2, 3, 4, 5, 6, 7, 8, 9], "fewer than 10 values"],
    [new Array<number>(12).fill(4), "all values are equal"],
    [new Array<number>(12).fill(0.1), "all values are equal"],
  ])("of %j has no interval, and says why", (values, reason) => {
    for (const measure of ["mean", "median"] as const) {
      expect(bootstrapInterval(values, measure)).toMatchObject({ lower: null, upper: null, reason });
    }
  });

  it("has none when the resamples hardly ever leave one value", () => {
    const values = [...new Array<number>(60).fill(0), 1];
    expect(bootstrapInterval(values, "median").reason).toBe(
      "the resamples give no spread about the estimate",
    );
    expect(bootstrapInterval(values, "mean").reason).toBeNull();
  });

  it("holds the estimate, moves and stretches with the values", () => {
    const scores = fc.array(fc.integer({ min: 0, max: 28 }), { minLength: 10, maxLength: 40 });
    fc.assert(
      fc.property(scores, fc.constantFrom("mean", "median"), (values, measure) => {
        const got = bootstrapInterval(values, measure, { resamples: 999 });
        if (got.lower === null || got.estimate === null) return;
        expect(got.lower).toBeLessThanOrEqual(got.estimate + 1e-9);
        expect(got.upper).toBeGreaterThanOrEqual(got.estimate - 1e-9);
        const moved = bootstrapInterval(
          values.map((value) => 4 * value + 100),
          measure,
          { resamples: 999 },
        );
        expect(moved.lower).toBeCloseTo(4 * got.lower + 100, 8);
        expect(moved.upper).toBeCloseTo(4 * got.upper + 100, 8);
      }),
      { numRuns: runs(60) },
    );
  });

  it("is refused options outside their range", () => {
    expect(() => bootstrapInterval(EVEN, "mode" as "mean")).toThrow(/measure must be one of mean, median/);
    expect(() => bootstrapInterval(EVEN, "mean", { resamples: 100 })).toThrow(/resamples must be/);
    expect(() => bootstrapInterval(EVEN, "mean", { seed: -1 })).toThrow(/seed must be/);
    expect(() => bootstrapInterval(EVEN, "mean", { level: 0 })).toThrow(/level must lie/);
  });
});
