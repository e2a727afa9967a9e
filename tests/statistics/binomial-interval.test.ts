import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  BINOMIAL_METHODS,
  type BinomialMethod,
  binomialInterval,
  oneSidedLower,
  oneSidedUpper,
} from "../../src/statistics/index.ts";
import { every } from "../every.ts";
import { runs } from "../random.ts";
import { binomialProbabilities, expectClose, reference } from "./reference.ts";

interface Input {
  x: number;
  n: number;
  conf: number;
}
interface Limits {
  lower: number;
  upper: number;
}

const ROWS: Record<BinomialMethod, number> = {
  "clopper-pearson": 50,
  "mid-p": 25,
  blaker: 25,
  wilson: 25,
  jeffreys: 25,
  "agresti-coull": 18,
};

describe("reference rows", () => {
  for (const method of BINOMIAL_METHODS) {
    every(method, reference<Input, Limits>(method, ROWS[method]), ({ id, input, output }) => {
      const got = binomialInterval(input.x, input.n, { level: input.conf, method });
      expectClose(got.lower, output.lower, 1e-12, `${id} lower`);
      expectClose(got.upper, output.upper, 1e-12, `${id} upper`);
      expect(got).toMatchObject({ proportion: input.x / input.n, level: input.conf, method });
    });
  }
  const oneSided = reference<Input, { upper: number }>("one-sided-upper", 14);
  every("one-sided-upper", oneSided, ({ id, input, output }) => {
    expectClose(oneSidedUpper(input.x, input.n, input.conf), output.upper, 1e-12, id);
    expectClose(1 - oneSidedLower(input.n - input.x, input.n, input.conf), output.upper, 1e-12, id);
  });
});

describe("published worked examples", () => {
  // [affected, examined, lower, upper] to the digits printed.
  const newcombe = "Newcombe 1998, Stat Med 17:857-872, Table I";
  const tables: [string, BinomialMethod, [number, number, number, number][]][] = [
    [
      `${newcombe}, method 3`,
      "wilson",
      [
        [81, 263, 0.2553, 0.3662],
        [15, 148, 0.0624, 0.1605],
        [0, 20, 0, 0.1611],
        [1, 29, 0.0061, 0.1718],
      ],
    ],
    [
      `${newcombe}, method 5`,
      "clopper-pearson",
      [
        [81, 263, 0.2527, 0.3676],
        [15, 148, 0.0578, 0.1617],
        [0, 20, 0, 0.1684],
        [1, 29, 0.0009, 0.1776],
      ],
    ],
    [
      `${newcombe}, method 6`,
      "mid-p",
      [
        [15, 148, 0.0601, 0.1581],
        [0, 20, 0, 0.1391],
        [1, 29, 0.0017, 0.1585],
      ],
    ],
  ];
  for (const [source, method, cases] of tables) {
    it.each(cases)(`${source}: %d of %d`, (x, n, lower, upper) => {
      const got = binomialInterval(x, n, { method });
      expect([got.lower.toFixed(4), got.upper.toFixed(4)]).toEqual([lower.toFixed(4), upper.toFixed(4)]);
    });
  }

  it("Blaker 2000, Can J Stat 28:783-798, as printed in the manual of the R package BlakerCI: 3 of 10", () => {
    const got = binomialInterval(3, 10, { method: "blaker" });
    expect(got.lower.toFixed(8)).toBe("0.08726443");
    expect(got.upper.toFixed(8)).toBe("0.61941066");
  });
});

describe("exact limits in per cent for counts from published surveys", () => {
  // Counts from the survey named; the limits follow from them (Clopper-Pearson, 95 %).
  const cases: [string, number, number, string, string, string][] = [
    ["gastric score 3, Brazil 2014", 173, 400, "43.25", "38.34", "48.26"],
    ["gastric score 0, Brazil 2014", 5, 400, "1.25", "0.41", "2.89"],
    ["gastric lesions present, Brazil 2014", 395, 400, "98.75", "97.11", "99.59"],
    ["mange, herds, Davies 1996", 28, 50, "56.00", "41.25", "70.01"],
    ["mange, pigs, Davies 1996", 215, 1500, "14.33", "12.60", "16.21"],
    ["lungs, Valença (IPP)", 284, 436, "65.14", "60.46", "69.61"],
    ["Madec score above 0, SIPAS 2013", 3249, 6380, "50.92", "49.69", "52.16"],
    ["Madec score above 0, SIPAS 2013", 6976, 15174, "45.97", "45.18", "46.77"],
    ["none of ten", 0, 10, "0.00", "0.00", "30.85"],
    ["none of twenty", 0, 20, "0.00", "0.00", "16.84"],
    ["none of thirty", 0, 30, "0.00", "0.00", "11.57"],
    ["one of thirty", 1, 30, "3.33", "0.08", "17.22"],
    ["five of thirty", 5, 30, "16.67", "5.64", "34.72"],
    ["fifteen of thirty", 15, 30, "50.00", "31.30", "68.70"],
    ["thirty of thirty", 30, 30, "100.00", "88.43", "100.00"],
  ];
  it.each(cases)("%s: %d of %d", (_source, x, n, ...wanted) => {
    const { proportion, lower, upper } = binomialInterval(x, n);
    expect([proportion, lower, upper].map((value) => (100 * value).toFixed(2))).toEqual(wanted);
  });
});

const counts = fc
  .integer({ min: 1, max: 400 })
  .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
const levels = fc.double({ min: 0.5, max: 0.9999, noNaN: true });
const methods = fc.constantFrom(...BINOMIAL_METHODS);
/** Room for rounding where two limits may be equal. */
const ROUNDING = 1e-12;

describe("properties", () => {
  it("the interval lies in 0..1 and holds the proportion", () => {
    fc.assert(
      fc.property(counts, levels, methods, ([x, n], level, method) => {
        const got = binomialInterval(x, n, { level, method });
        expect(got.lower).toBeGreaterThanOrEqual(0);
        expect(got.upper).toBeLessThanOrEqual(1);
        expect(got.lower).toBeLessThanOrEqual(got.proportion + ROUNDING);
        expect(got.upper).toBeGreaterThanOrEqual(got.proportion - ROUNDING);
      }),
      { numRuns: runs(500) },
    );
  });

  it("both limits rise with the number affected", () => {
    fc.assert(
      fc.property(counts, levels, methods, ([x, n], level, method) => {
        if (x === n) return;
        const fewer = binomialInterval(x, n, { level, method });
        const more = binomialInterval(x + 1, n, { level, method });
        expect(more.lower).toBeGreaterThanOrEqual(fewer.lower);
        expect(more.upper).toBeGreaterThanOrEqual(fewer.upper);
      }),
      { numRuns: runs(500) },
    );
  });

  it("counting the unaffected instead reflects the interval", () => {
    fc.assert(
      fc.property(counts, levels, methods, ([x, n], level, method) => {
        const affected = binomialInterval(x, n, { level, method });
        const unaffected = binomialInterval(n - x, n, { level, method });
        expect(Math.abs(affected.lower + unaffected.upper - 1)).toBeLessThan(ROUNDING);
        expect(Math.abs(affected.upper + unaffected.lower - 1)).toBeLessThan(ROUNDING);
      }),
      { numRuns: runs(500) },
    );
  });

  it("a higher level never gives a narrower interval", () => {
    fc.assert(
      fc.property(counts, levels, levels, methods, ([x, n], one, other, method) => {
        const low = binomialInterval(x, n, { level: Math.min(one, other), method });
        const high = binomialInterval(x, n, { level: Math.max(one, other), method });
        expect(high.lower).toBeLessThanOrEqual(low.lower + ROUNDING);
        expect(high.upper).toBeGreaterThanOrEqual(low.upper - ROUNDING);
      }),
      { numRuns: runs(500) },
    );
  });

  it("Clopper-Pearson holds mid-P, Blaker and Jeffreys, and its halves are the one-sided limits", () => {
    fc.assert(
      fc.property(counts, levels, ([x, n], level) => {
        const outer = binomialInterval(x, n, { level });
        for (const method of ["mid-p", "blaker", "jeffreys"] as const) {
          const inner = binomialInterval(x, n, { level, method });
          expect(inner.lower, method).toBeGreaterThanOrEqual(outer.lower - ROUNDING);
          expect(inner.upper, method).toBeLessThanOrEqual(outer.upper + ROUNDING);
        }
        const half = 1 - (1 - level) / 2;
        expectClose(oneSidedLower(x, n, half), outer.lower, 1e-9, "lower");
        expectClose(oneSidedUpper(x, n, half), outer.upper, 1e-9, "upper");
      }),
      { numRuns: runs(500) },
    );
  });

  it("an exact limit leaves half of alpha in the binomial tail (sums of plain products, n <= 60)", () => {
    for (let n = 1; n <= 60; n++) {
      for (let x = 1; x <= n; x++) {
        const { lower } = binomialInterval(x, n);
        const tail = binomialProbabilities(n, lower)
          .slice(x)
          .reduce((sum, term) => sum + term, 0);
        expectClose(tail, 0.025, 1e-12, `${x} of ${n}`);
      }
    }
  });

  it("the mid-P limit leaves half of alpha in the tail that counts half of the observed term", () => {
    for (let n = 1; n <= 60; n++) {
      for (let x = 1; x <= n; x++) {
        const { lower } = binomialInterval(x, n, { method: "mid-p" });
        const [observed = 0, ...beyond] = binomialProbabilities(n, lower).slice(x);
        const tail = beyond.reduce((sum, term) => sum + term, observed / 2);
        expectClose(tail, 0.025, 1e-12, `${x} of ${n}`);
      }
    }
  });
});

describe("the interval of Blaker is the hull of its acceptability set", () => {
  /** Acceptability of p for x of n, straight from the definition. */
  function acceptability(x: number, n: number, p: number): number {
    const terms = binomialProbabilities(n, p);
    const atMost: number[] = [];
    const atLeast: number[] = new Array(n + 1).fill(0);
    for (let k = 0; k <= n; k++) atMost.push((atMost[k - 1] ?? 0) + (terms[k] ?? 0));
    for (let k = n; k >= 0; k--) atLeast[k] = (atLeast[k + 1] ?? 0) + (terms[k] ?? 0);
    const low = atMost[x] ?? 0;
    const high = atLeast[x] ?? 0;
    const opposite = low < high ? atLeast : atMost;
    const small = Math.min(low, high);
    const fitting = opposite.filter((tail) => tail <= small);
    return Math.min(1, small + Math.max(0, ...fitting));
  }

  function expectFirstAcceptable(x: number, n: number, level: number): void {
    const { lower } = binomialInterval(x, n, { level, method: "blaker" });
    const at = acceptability(x, n, lower * (1 + 1e-10));
    expect(at, `${x} of ${n} at ${lower}`).toBeGreaterThanOrEqual((1 - level) * (1 - 1e-9));
    let highest = acceptability(x, n, lower * (1 - 1e-9));
    for (let i = 1; i < 400; i++) highest = Math.max(highest, acceptability(x, n, (lower * i) / 400));
    expect(highest, `${x} of ${n} below ${lower}`).toBeLessThan(1 - level);
  }

  it.each([0.8, 0.9, 0.95, 0.99])("level %d, n up to 24, a grid of 400 below each limit", (level) => {
    for (let n = 1; n <= 24; n++) {
      for (let x = 1; x <= n; x++) expectFirstAcceptable(x, n, level);
    }
  });

  // At the Clopper-Pearson limit an opposite tail is smaller than alpha/2 by no more than 0.01 to 0.2 %.
  it.each([
    [8, 56, 0.95],
    [20, 42, 0.8],
    [31, 42, 0.8],
    [56, 56, 0.95],
    [10, 28, 0.9],
    [26, 51, 0.8],
  ])("%d of %d at level %d, where two tails nearly tie", expectFirstAcceptable);

  it("an exact tie ends at the Clopper-Pearson limit: n of n at level 1 - 2^(1-n) starts at one half", () => {
    for (let n = 2; n <= 20; n++) {
      const { lower } = binomialInterval(n, n, { level: 1 - 2 ** (1 - n), method: "blaker" });
      expectClose(lower, 0.5, 1e-14, `n = ${n}`);
    }
  });
});

describe("exact coverage, n = 1 to 60", () => {
  it.each([
    ["clopper-pearson", 0.95],
    ["clopper-pearson", 0.8],
    ["blaker", 0.95],
    ["blaker", 0.8],
  ] as const)("%s at %d is never below the level", (method, level) => {
    let lowest = 1;
    let where = "";
    for (let n = 1; n <= 60; n++) {
      const intervals = Array.from({ length: n + 1 }, (_, x) => binomialInterval(x, n, { level, method }));
      const ends = intervals.flatMap(({ lower, upper }) => [lower, upper]);
      const grid = ends.flatMap((end) => [
        end,
        end * (1 - 1e-10),
        end * (1 + 1e-10),
        1 - (1 - end) * (1 + 1e-10),
      ]);
      for (let i = 0; i <= 1000; i++) grid.push(i / 1000);
      for (const p of grid) {
        if (!(p >= 0 && p <= 1)) continue;
        const terms = binomialProbabilities(n, p);
        let coverage = 0;
        for (const [x, { lower, upper }] of intervals.entries()) {
          if (lower <= p && p <= upper) coverage += terms[x] ?? 0;
        }
        if (coverage < lowest) {
          lowest = coverage;
          where = `n = ${n}, p = ${p}`;
        }
      }
    }
    console.log(`lowest exact coverage of ${method} at ${level}: ${lowest} (${where})`);
    expect(lowest, where).toBeGreaterThanOrEqual(level - 1e-9);
  });

  it("is not a test that everything passes: mid-P at 0.95 does fall below", () => {
    const p = binomialInterval(0, 20, { method: "mid-p" }).upper * (1 + 1e-10);
    const coverage = binomialProbabilities(20, p).reduce((sum, term, x) => {
      const { lower, upper } = binomialInterval(x, 20, { method: "mid-p" });
      return lower <= p && p <= upper ? sum + term : sum;
    }, 0);
    expect(coverage).toBeLessThan(0.95);
  });
});

describe("ends of the range", () => {
  it("nothing affected starts at exactly 0, everything affected ends at exactly 1", () => {
    for (const method of BINOMIAL_METHODS) {
      for (const level of [0.8, 0.95, 0.99, 0.999]) {
        for (let n = 1; n <= 500; n++) {
          expect(binomialInterval(0, n, { level, method }).lower).toBe(0);
          expect(binomialInterval(n, n, { level, method }).upper).toBe(1);
        }
      }
    }
  });
});

describe("arguments", () => {
  it.each([
    [-1, 10, "affected must be a whole number from 0 to 10, got -1"],
    [11, 10, "affected must be a whole number from 0 to 10, got 11"],
    [1.5, 10, "affected must be a whole number from 0 to 10, got 1.5"],
    [Number.NaN, 10, "affected must be a whole number from 0 to 10, got NaN"],
    [0, 0, "examined must be a whole number from 1 to 10000000, got 0"],
    [0, 2.5, "examined must be a whole number from 1 to 10000000, got 2.5"],
    [0, 10_000_001, "examined must be a whole number from 1 to 10000000, got 10000001"],
    [0, Number.POSITIVE_INFINITY, "examined must be a whole number from 1 to 10000000, got Infinity"],
  ])("%d of %d is refused", (x, n, message) => {
    for (const method of BINOMIAL_METHODS) {
      expect(() => binomialInterval(x, n, { method })).toThrow(new RangeError(message));
    }
    expect(() => oneSidedUpper(x, n)).toThrow(new RangeError(message));
    expect(() => oneSidedLower(x, n)).toThrow(new RangeError(message));
  });

  it.each([0, 1, 95, -0.5, Number.NaN, 1e-300])("level %d is refused", (level) => {
    expect(() => binomialInterval(1, 2, { level })).toThrow(RangeError);
    expect(() => oneSidedUpper(1, 2, level)).toThrow(/level must lie strictly between 0 and 1/);
    expect(() => oneSidedLower(1, 2, level)).toThrow(RangeError);
  });

  it("an unknown method is refused by name", () => {
    for (const name of ["wald", "toString", ""]) {
      const method = name as BinomialMethod;
      expect(() => binomialInterval(1, 2, { method })).toThrow(/method must be one of clopper-pearson, /);
    }
  });

  it("levels at the edge still give ordered, finite limits", () => {
    for (const level of [1e-9, 0.01, 1 - 1e-6, 1 - 1e-12]) {
      for (const method of BINOMIAL_METHODS) {
        for (const [x, n] of [
          [0, 1],
          [1, 2],
          [3, 7],
          [500, 1_000],
          [9_999_999, 10_000_000],
        ] as const) {
          const { lower, upper } = binomialInterval(x, n, { level, method });
          expect(lower, `${method} ${x}/${n} ${level}`).toBeLessThanOrEqual(upper);
          expect(lower).toBeGreaterThanOrEqual(0);
          expect(upper).toBeLessThanOrEqual(1);
        }
      }
    }
  });
});
