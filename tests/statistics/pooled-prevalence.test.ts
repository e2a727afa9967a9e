import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { binomialInterval, pooledPrevalence, truePrevalence } from "../../src/statistics/index.ts";

const counts = fc
  .tuple(fc.integer({ min: 1, max: 200 }), fc.nat({ max: 200 }), fc.integer({ min: 1, max: 30 }))
  .map(([pools, positive, size]) => ({ pools, positive: Math.min(positive, pools), size }));

describe("the share of animals behind positive pools", () => {
  it("is that of animals, with their interval, where a pool is one animal", () => {
    fc.assert(
      fc.property(counts, ({ pools, positive }) => {
        const one = pooledPrevalence(positive, pools, 1);
        const plain = binomialInterval(positive, pools);
        expect(one.prevalence).toBeCloseTo(plain.proportion, 12);
        expect(one.lower).toBeCloseTo(plain.lower, 12);
        expect(one.upper).toBeCloseTo(plain.upper, 12);
      }),
    );
  });

  it("makes the share of positive pools that was seen the likeliest", () => {
    fc.assert(
      fc.property(counts, ({ pools, positive, size }) => {
        const { prevalence, lower, upper } = pooledPrevalence(positive, pools, size);
        expect(1 - (1 - prevalence) ** size).toBeCloseTo(positive / pools, 9);
        expect(lower).toBeLessThanOrEqual(prevalence);
        expect(upper).toBeGreaterThanOrEqual(prevalence);
        if (positive === 0) expect([prevalence, lower]).toEqual([0, 0]);
        if (positive === pools) expect([prevalence, upper]).toEqual([1, 1]);
      }),
    );
  });

  it("covers the true share at least as often as it says, summed over all outcomes", () => {
    for (const [pools, size] of [
      [10, 5],
      [25, 4],
    ] as const)
      for (const share of [0.01, 0.05, 0.2, 0.4]) {
        const q = 1 - (1 - share) ** size;
        let mass = q === 0 ? 1 : (1 - q) ** pools;
        let covered = 0;
        for (let positive = 0; positive <= pools; positive++) {
          const { lower, upper } = pooledPrevalence(positive, pools, size);
          if (lower <= share && share <= upper) covered += mass;
          mass *= ((pools - positive) / (positive + 1)) * (q / (1 - q));
        }
        expect(covered).toBeGreaterThanOrEqual(0.95);
      }
  });

  it("is corrected for errors of the pool test first, as one animal is", () => {
    const accuracy = { sensitivity: 0.9, specificity: 0.97 };
    const one = pooledPrevalence(12, 40, 1, accuracy);
    const plain = truePrevalence(12, 40, accuracy);
    expect(one.prevalence).toBeCloseTo(plain.prevalence, 12);
    expect(one.upper).toBeCloseTo(plain.upper, 12);
    expect(pooledPrevalence(1, 40, 5, accuracy).prevalence).toBe(0);
  });

  it("is worked out by hand", () => {
    // 1 - (1 - 3 / 20) ^ (1 / 5)
    expect(pooledPrevalence(3, 20, 5).prevalence).toBeCloseTo(0.0319812, 7);
  });

  it("refuses counts, sizes and tests that cannot be", () => {
    expect(() => pooledPrevalence(3, 2, 5)).toThrow(RangeError);
    expect(() => pooledPrevalence(1, 2, 0)).toThrow(RangeError);
    expect(() => pooledPrevalence(1, 2, 5, { sensitivity: 0.5, specificity: 0.5 })).toThrow(RangeError);
  });
});
