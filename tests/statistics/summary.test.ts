import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Summary, summarise } from "../../src/statistics/index.ts";
import { expectClose, reference } from "./reference.ts";

const MEASURES = ["mean", "median", "q1", "q3", "min", "max"] as const;

describe("summary", () => {
  it.each(reference<{ values: number[] }, Record<(typeof MEASURES)[number] | "n", number>>("summary", 19))(
    "$id",
    ({ id, input, output }) => {
      const got = summarise(input.values);
      expect(got.n).toBe(output.n);
      for (const measure of MEASURES) {
        expectClose(got[measure] ?? Number.NaN, output[measure], 1e-15, `${id} ${measure}`);
      }
    },
  );

  it("interpolates its quartiles: definition 7, not 2, of Hyndman & Fan 1996", () => {
    expect(summarise([1, 2, 3, 4])).toMatchObject({ q1: 1.75, median: 2.5, q3: 3.25 });
  });

  it("is empty for no values", () => {
    const empty: Summary = {
      n: 0,
      mean: null,
      median: null,
      q1: null,
      q3: null,
      min: null,
      max: null,
      distribution: [],
    };
    expect(summarise([])).toEqual(empty);
  });

  it("counts each value, ascending, and leaves the list as it was", () => {
    const values = [10, 2, 0, 2, 10, 10, 0.5];
    expect(summarise(values).distribution).toEqual([
      { value: 0, count: 1 },
      { value: 0.5, count: 1 },
      { value: 2, count: 2 },
      { value: 10, count: 3 },
    ]);
    expect(values).toEqual([10, 2, 0, 2, 10, 10, 0.5]);
  });

  it("does not let the mean drift: equal values have their own mean, whatever their number", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.integer({ min: 1, max: 2000 }),
        (value, n) => {
          const { mean, median, q1, q3 } = summarise(new Array<number>(n).fill(value));
          for (const measure of [mean, median, q1, q3]) expect(measure === value, `${measure}`).toBe(true);
        },
      ),
    );
    const tenths = new Array<number>(1_000_000).fill(0.1);
    expect(summarise([...tenths, 0.3]).mean).toBe(100000.3 / 1_000_001);
  });

  it("does not depend on the order, and keeps its measures in order", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 28 }), { minLength: 1, maxLength: 200 }), (values) => {
        const got = summarise(values);
        expect(summarise(values.toSorted((a, b) => b - a))).toEqual(got);
        const { min, q1, median, q3, max, mean } = got;
        const ladder = [min, q1, median, q3, max].map((value) => value ?? Number.NaN);
        expect(ladder).toEqual(ladder.toSorted((a, b) => a - b));
        expect(mean).toBeGreaterThanOrEqual(min ?? Number.NaN);
        expect(mean).toBeLessThanOrEqual(max ?? Number.NaN);
        const total = got.distribution.reduce((sum, { value, count }) => sum + value * count, 0);
        expect(total / got.n).toBe(mean);
        expect(got.distribution.reduce((sum, { count }) => sum + count, 0)).toBe(values.length);
      }),
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e301])(
    "%d is refused",
    (value) => {
      expect(() => summarise([1, 2, value])).toThrow(
        new RangeError(`values[2] must be a number of at most 1e+300 in size, got ${value}`),
      );
    },
  );
});
