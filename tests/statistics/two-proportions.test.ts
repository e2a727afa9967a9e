import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  fisherExact,
  riskDifference,
  riskRatio,
  studentTQuantile,
  type TwoGroups,
} from "../../src/statistics/index.ts";
import { runs } from "../random.ts";
import { expectClose } from "./reference.ts";

type Counts = [x1: number, n1: number, x2: number, n2: number];
const four = (value: number): string => (Math.abs(value) < 5e-5 ? "0.0000" : value.toFixed(4));

describe("risk difference, published examples: Newcombe 1998, Stat Med 17:873-890, Table II", () => {
  it.each<[...Counts, number, number]>([
    [56, 70, 48, 80, 0.0524, 0.3339],
    [9, 10, 3, 10, 0.1705, 0.809],
    [6, 7, 2, 7, 0.0582, 0.8062],
    [5, 56, 0, 29, -0.0381, 0.1926],
    [0, 10, 0, 20, -0.1611, 0.2775],
    [0, 10, 0, 10, -0.2775, 0.2775],
    [10, 10, 0, 20, 0.6791, 1],
    [10, 10, 0, 10, 0.6075, 1],
  ])("method 10: %d/%d - %d/%d", (x1, n1, x2, n2, lower, upper) => {
    const got = riskDifference({ x1, n1, x2, n2 }, { method: "newcombe" });
    expect([four(got.lower), four(got.upper)]).toEqual([four(lower), four(upper)]);
  });

  it.each<[...Counts, number, number]>([
    [56, 70, 48, 80, 0.0528, 0.3382],
    [9, 10, 3, 10, 0.17, 0.8406],
    [6, 7, 2, 7, 0.0342, 0.8534],
    [5, 56, 0, 29, -0.0326, 0.1933],
    [0, 10, 0, 20, -0.1658, 0.2844],
    [0, 10, 0, 10, -0.2879, 0.2879],
  ])("Miettinen & Nurminen 1985, Stat Med 4:213-226: %d/%d - %d/%d", (x1, n1, x2, n2, lower, upper) => {
    const got = riskDifference({ x1, n1, x2, n2 }, { method: "miettinen-nurminen" });
    expect([four(got.lower), four(got.upper)]).toEqual([four(lower), four(upper)]);
  });

  it("Mee 1984: 56/70 - 48/80 is .0533 to .3377", () => {
    const got = riskDifference({ x1: 56, n1: 70, x2: 48, n2: 80 }, { method: "mee" });
    expect([four(got.lower), four(got.upper)]).toEqual(["0.0533", "0.3377"]);
  });
});

describe("score intervals against an independent solution with 40 digits (mpmath: trigonometric root of the cubic)", () => {
  it.each<[...Counts, number, number, number]>([
    [56, 70, 48, 80, 0.95, 0.0528297132458446, 0.338172940015868],
    [56, 70, 48, 80, 0.99, 0.0051030360285441, 0.379265147418017],
    [9, 10, 3, 10, 0.99, 0.0218091155838799, 0.879161594638027],
    [6, 7, 2, 7, 0.95, 0.0341755450843645, 0.85340525989742],
    [5, 56, 0, 29, 0.95, -0.0325965617435137, 0.193330976690881],
    [0, 10, 0, 20, 0.99, -0.255500533451593, 0.407009836545711],
    [10, 10, 0, 20, 0.95, 0.715618660465623, 1],
    [7, 34, 1, 34, 0.95, 0.0270416265834468, 0.345291216966224],
    [23, 60, 35, 116, 0.95, -0.063014795832291, 0.231559968106606],
  ])("Miettinen-Nurminen difference %d/%d - %d/%d at %d", (x1, n1, x2, n2, level, lower, upper) => {
    const got = riskDifference({ x1, n1, x2, n2 }, { level, method: "miettinen-nurminen" });
    expectClose(got.lower, lower, 1e-12, "lower");
    expectClose(got.upper, upper, 1e-12, "upper");
  });

  it.each<[...Counts, number, number, number]>([
    [36, 40, 16, 80, 0.95, 2.93956919221499, 7.15222343486603],
    [36, 40, 16, 80, 0.9, 3.13675922106052, 6.63273807640483],
    [7, 34, 1, 34, 0.95, 1.22085285351481, 42.5757176097604],
    [0, 10, 3, 12, 0.95, 0, 1.3018226407829],
    [5, 56, 0, 29, 0.95, 0.725688883593619, Number.POSITIVE_INFINITY],
    [10, 10, 3, 20, 0.95, 2.77454955283565, 19.0953589375957],
    [1, 4, 17, 300, 0.9, 0.986146539975279, 12.8536880002349],
  ])("Koopman ratio %d/%d : %d/%d at %d", (x1, n1, x2, n2, level, lower, upper) => {
    const got = riskRatio({ x1, n1, x2, n2 }, { level, method: "koopman" });
    expectClose(got.lower, lower, 1e-12, "lower");
    expectClose(got.upper, upper, 1e-12, "upper");
  });
});

const tables = fc
  .record({ n1: fc.integer({ min: 1, max: 200 }), n2: fc.integer({ min: 1, max: 200 }) })
  .chain(({ n1, n2 }) =>
    fc.record({ x1: fc.nat(n1), n1: fc.constant(n1), x2: fc.nat(n2), n2: fc.constant(n2) }),
  );

describe("Clopper-Pearson limits of both groups joined (Zou & Donner 2008; Donner & Zou 2012), against their definition", () => {
  function halved(below: (at: number) => boolean, to = 1): number {
    let [low, high] = [0, to];
    for (let i = 0; i < 200; i++) {
      const middle = (low + high) / 2;
      if (below(middle)) low = middle;
      else high = middle;
    }
    return low;
  }
  const masses = (n: number, p: number): number[] =>
    Array.from({ length: n + 1 }, (_, x) => {
      let ways = 1;
      for (let i = 0; i < x; i++) ways = (ways * (n - i)) / (i + 1);
      return ways * p ** x * (1 - p) ** (n - x);
    });
  /** Limits by halving on sums of binomial probabilities. */
  function exact(x: number, n: number, alpha: number): [lower: number, upper: number] {
    const sum = (all: readonly number[]): number => all.reduce((before, one) => before + one, 0);
    return [
      x === 0 ? 0 : halved((p) => sum(masses(n, p).slice(x)) < alpha / 2),
      x === n ? 1 : halved((p) => sum(masses(n, p).slice(0, x + 1)) > alpha / 2),
    ];
  }

  it.each<[...Counts, number]>([
    [7, 10, 2, 10, 0.95],
    [56, 70, 48, 80, 0.95],
    [9, 10, 3, 10, 0.9],
    [5, 56, 1, 29, 0.99],
    [1, 6, 19, 20, 0.95],
    [1, 10, 9, 10, 0.95],
    [8, 9, 1, 8, 0.95],
    [10, 10, 3, 20, 0.95],
  ])("%d/%d and %d/%d at %d", (x1, n1, x2, n2, level) => {
    const [l1, u1] = exact(x1, n1, 1 - level);
    const [l2, u2] = exact(x2, n2, 1 - level);
    const [p1, p2] = [x1 / n1, x2 / n2];
    const difference = riskDifference({ x1, n1, x2, n2 }, { level });
    expect(difference.method).toBe("zou-donner");
    // Away from 0 no nearer than with one affected and one free more on each side (Agresti & Caffo 2000), by t.
    const [a, b] = [(x1 + 1) / (n1 + 2), (x2 + 1) / (n2 + 2)];
    const t = studentTQuantile((1 + level) / 2, n1 + n2 - 2);
    const margin = t * Math.sqrt((a * (1 - a)) / (n1 + 2) + (b * (1 - b)) / (n2 + 2));
    const lower = p1 - p2 - Math.sqrt((p1 - l1) ** 2 + (u2 - p2) ** 2);
    const upper = p1 - p2 + Math.sqrt((u1 - p1) ** 2 + (p2 - l2) ** 2);
    expect(difference.lower).toBeCloseTo(p1 < p2 ? Math.max(-1, Math.min(lower, a - b - margin)) : lower, 9);
    expect(difference.upper).toBeCloseTo(p1 > p2 ? Math.min(1, Math.max(upper, a - b + margin)) : upper, 9);
    const ratio = riskRatio({ x1, n1, x2, n2 }, { level });
    expect(ratio.method).toBe("donner-zou");
    // The ratios R for which the limits of p1 - R p2 hold 0.
    const tooLow = (r: number): boolean => p1 - r * p2 > Math.hypot(p1 - l1, r * (u2 - p2));
    const lowEnough = (r: number): boolean => r * p2 - p1 <= Math.hypot(u1 - p1, r * (p2 - l2));
    expectClose(ratio.lower, halved(tooLow, p1 / p2), 1e-8, "lower");
    expectClose(ratio.upper, halved(lowEnough, 1e4), 1e-8, "upper");
  });

  it("leave out equality together", () => {
    fc.assert(
      fc.property(tables, (groups) => {
        const { lower, upper } = riskDifference(groups);
        const ratio = riskRatio(groups);
        fc.pre(Math.abs(lower) > 1e-9 && Math.abs(upper) > 1e-9);
        expect(ratio.lower > 1 || ratio.upper < 1).toBe(lower > 0 || upper < 0);
      }),
      { numRuns: runs(300) },
    );
  });

  it("hold the truth in at least 95 % of samples of 10 and 10, which Newcombe's and Koopman's do not", () => {
    const n = 10;
    const counts = Array.from({ length: n + 1 }, (_, x) => x);
    const shares = Array.from({ length: 19 }, (_, i) => (i + 1) / 20);
    const chances = shares.map((p) => masses(n, p));
    type Interval = { readonly lower: number; readonly upper: number };
    function worst(of: (groups: TwoGroups) => Interval, truth: (a: number, b: number) => number): number {
      const made = counts.flatMap((x1) => counts.map((x2) => ({ x1, x2, ...of({ x1, n1: n, x2, n2: n }) })));
      const covered = shares.flatMap((a, i) =>
        shares.map((b, j) =>
          made
            .filter(({ lower, upper }) => lower - 1e-12 <= truth(a, b) && truth(a, b) <= upper + 1e-12)
            .reduce((sum, { x1, x2 }) => sum + (chances[i]?.[x1] ?? 0) * (chances[j]?.[x2] ?? 0), 0),
        ),
      );
      return Math.min(...covered);
    }
    const less = (a: number, b: number): number => a - b;
    const over = (a: number, b: number): number => a / b;
    expect(worst((groups) => riskDifference(groups), less)).toBeGreaterThan(0.95);
    expect(worst((groups) => riskRatio(groups), over)).toBeGreaterThan(0.95);
    expect(worst((groups) => riskDifference(groups, { method: "newcombe" }), less)).toBeLessThan(0.92);
    expect(worst((groups) => riskRatio(groups, { method: "koopman" }), over)).toBeLessThan(0.92);
  });
});

describe("properties", () => {
  it("differences and ratios turn round when the groups are swapped, and hold their estimate", () => {
    fc.assert(
      fc.property(
        tables,
        fc.constantFrom("zou-donner", "newcombe", "miettinen-nurminen", "mee" as const),
        ({ x1, n1, x2, n2 }, method) => {
          const got = riskDifference({ x1, n1, x2, n2 }, { method });
          const turned = riskDifference({ x1: x2, n1: n2, x2: x1, n2: n1 }, { method });
          expect(turned.lower).toBeCloseTo(-got.upper, 12);
          expect(turned.upper).toBeCloseTo(-got.lower, 12);
          expect(got.lower).toBeLessThanOrEqual(got.difference);
          expect(got.upper).toBeGreaterThanOrEqual(got.difference);
          expect(got.lower).toBeGreaterThanOrEqual(-1);
          expect(got.upper).toBeLessThanOrEqual(1);
          const ratio = riskRatio({ x1, n1, x2, n2 });
          const other = riskRatio({ x1: x2, n1: n2, x2: x1, n2: n1 });
          if (ratio.lower > 0) expectClose(1 / other.upper, ratio.lower, 1e-10, "ratio");
          if (ratio.ratio !== null) {
            expect(ratio.lower).toBeLessThanOrEqual(ratio.ratio);
            expect(ratio.upper).toBeGreaterThanOrEqual(ratio.ratio);
          }
        },
      ),
      { numRuns: runs(300) },
    );
  });

  it("the Mee difference and the Koopman ratio leave out equality together: the test of equality is the same", () => {
    fc.assert(
      fc.property(tables, (groups) => {
        const { lower, upper } = riskDifference(groups, { method: "mee" });
        const ratio = riskRatio(groups, { method: "koopman" });
        fc.pre(Math.abs(lower) > 1e-9 && Math.abs(upper) > 1e-9);
        expect(ratio.lower > 1 || ratio.upper < 1).toBe(lower > 0 || upper < 0);
      }),
      { numRuns: runs(300) },
    );
  });

  it("a higher level gives a wider interval", () => {
    fc.assert(
      fc.property(tables, (groups) => {
        for (const method of ["zou-donner", "newcombe", "miettinen-nurminen"] as const) {
          const narrow = riskDifference(groups, { level: 0.8, method });
          const wide = riskDifference(groups, { level: 0.99, method });
          expect(wide.lower).toBeLessThanOrEqual(narrow.lower);
          expect(wide.upper).toBeGreaterThanOrEqual(narrow.upper);
        }
        expect(riskRatio(groups, { level: 0.99 }).upper).toBeGreaterThanOrEqual(
          riskRatio(groups, { level: 0.8 }).upper,
        );
        expect(fisherExact(groups, { level: 0.99 }).lower).toBeLessThanOrEqual(
          fisherExact(groups, { level: 0.8 }).lower,
        );
      }),
    );
  });

  it("nothing affected in both groups: no ratio, no limits of it", () => {
    expect(riskRatio({ x1: 0, n1: 10, x2: 0, n2: 20 })).toMatchObject({
      ratio: null,
      lower: 0,
      upper: Number.POSITIVE_INFINITY,
    });
  });

  it("an unknown method is refused by name", () => {
    const method = "wald" as "mee";
    expect(() => riskDifference({ x1: 1, n1: 2, x2: 1, n2: 2 }, { method })).toThrow(
      new RangeError("method must be one of zou-donner, newcombe, miettinen-nurminen, mee, got wald"),
    );
  });
});
