import { describe, expect, it } from "vitest";
import {
  binomialInterval,
  finiteInterval,
  precisionFormula,
  precisionSampleSize,
} from "../../src/statistics/index.ts";

/** Half-length for the worse of the counts next to n p, straight from the rule. */
function worstHalf(n: number, proportion: number, population?: number): number {
  const exact = n * proportion;
  const near =
    Math.abs(exact - Math.round(exact)) < 1e-9 ? [Math.round(exact)] : [Math.floor(exact), Math.ceil(exact)];
  return Math.max(
    ...near.map((x) => {
      const { lower, upper } =
        population === undefined ? binomialInterval(x, n) : finiteInterval(x, n, population);
      return (upper - lower) / 2;
    }),
  );
}

const enough = (half: number, wanted: number): boolean => half <= wanted + 1e-12;

describe("exact number to estimate a proportion", () => {
  it.each([
    [0.5, 0.1],
    [0.5, 0.05],
    [0.3, 0.1],
    [0.2, 0.07],
    [0.1, 0.05],
    [0.05, 0.03],
    [0.02, 0.02],
    [0.9, 0.08],
    [0, 0.05],
    [1, 0.1],
  ])(
    "p %d, half-width %d: enough at n and at every larger number up to 1500, not at n - 1",
    (p, halfWidth) => {
      const { n, halfWidth: got } = precisionSampleSize({ proportion: p, halfWidth });
      expect(got).toBe(worstHalf(n, p));
      expect(enough(worstHalf(n - 1, p), halfWidth)).toBe(false);
      for (let larger = n; larger <= 1500; larger++) {
        expect(enough(worstHalf(larger, p), halfWidth), `n = ${larger}`).toBe(true);
      }
    },
  );

  it("is more than the smallest number that happens to do: exact intervals are not monotone", () => {
    const smaller = [0.2, 0.1, 0.05, 0.3].flatMap((p) =>
      [0.03, 0.04, 0.05, 0.06].filter((halfWidth) => {
        const { n } = precisionSampleSize({ proportion: p, halfWidth });
        let first = 1;
        while (!enough(worstHalf(first, p), halfWidth)) first++;
        expect(first).toBeLessThanOrEqual(n);
        return first < n;
      }),
    );
    expect(smaller.length).toBeGreaterThan(0);
  });

  it.each([10, 25, 60, 119, 250])("in a herd of %d: enough at n and at every larger number", (population) => {
    for (const p of [0, 0.03, 0.1, 0.25, 0.5, 0.8]) {
      for (const halfWidth of [0.01, 0.05, 0.1, 0.2]) {
        const { n } = precisionSampleSize({ proportion: p, halfWidth, population });
        const fits = Array.from({ length: population }, (_, i) =>
          enough(worstHalf(i + 1, p, population), halfWidth),
        );
        expect(n, `p ${p}, half-width ${halfWidth}`).toBe(fits.lastIndexOf(false) + 2);
      }
    }
  });

  it("needs more than the normal formula, and less in a small herd", () => {
    for (const [proportion, halfWidth] of [
      [0.5, 0.05],
      [0.2, 0.05],
      [0.05, 0.02],
    ] as const) {
      const { n } = precisionSampleSize({ proportion, halfWidth });
      expect(n).toBeGreaterThan(precisionFormula({ proportion, halfWidth }).n);
      expect(precisionSampleSize({ proportion, halfWidth, population: 500 }).n).toBeLessThan(n);
    }
  });

  it.each([
    [
      "proportion must lie from 0 to 1, got 20",
      () => precisionSampleSize({ proportion: 20, halfWidth: 0.05 }),
    ],
    [
      "halfWidth must lie strictly between 0 and 1, got 0",
      () => precisionSampleSize({ proportion: 0.2, halfWidth: 0 }),
    ],
    [
      "more than 10000000 animals would be needed",
      () => precisionSampleSize({ proportion: 0.5, halfWidth: 1e-4 }),
    ],
    ["icc must lie from 0 to 1, got 2", () => precisionFormula({ proportion: 0.5, halfWidth: 0.1, icc: 2 })],
  ])("refused: %s", (message, call) => {
    expect(call).toThrow(new RangeError(message));
  });
});
