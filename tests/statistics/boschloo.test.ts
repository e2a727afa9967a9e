/** Rules for two shares that waste less of the level than Fisher's, against SciPy, published numbers and enumeration. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  boschlooP,
  detectableShares,
  fisherExact,
  fisherPower,
  fisherSampleSize,
  SHARES_RULES,
  type TwoGroups,
} from "../../src/statistics/index.ts";
import { runs } from "../random.ts";
import { binomialProbabilities } from "./reference.ts";

const of = (x1: number, n1: number, x2: number, n2: number): TwoGroups => ({ x1, n1, x2, n2 });

describe("Boschloo's test", () => {
  // scipy.stats.boschloo_exact(alternative="two-sided", n=256), SciPy 1.17.1.
  it.each([
    [of(7, 10, 2, 10), 0.04138946533203129],
    [of(7, 34, 1, 34), 0.038463922122742404],
    [of(9, 12, 3, 12), 0.022844672203063923],
    [of(3, 8, 0, 11), 0.050659426270002604],
    [of(13, 20, 5, 18), 0.024548735181626133],
    [of(0, 5, 5, 5), 0.001953125],
    [of(10, 30, 2, 25), 0.02584981518854898],
  ])("of %j is that of SciPy", (groups, p) => {
    expect(Math.abs(boschlooP(groups) - p) / p).toBeLessThan(1e-6);
  });

  it("of 74 of 117 and 31 of 63 is 0.0355 one-sided: Mehta & Senchaudhuri 2003, as SciPy's manual gives it", () => {
    expect((boschlooP(of(74, 117, 31, 63)) / 2).toFixed(4)).toBe("0.0356");
    expect(Math.abs(boschlooP(of(74, 117, 31, 63)) - 0.07112812860309041)).toBeLessThan(1e-6);
  });

  it("needs the numbers of Kieser 2018 (one-sided 2.5 %, power 80 %, both groups together 126, 168, 190, 204)", () => {
    // As the tests of an R package for the Fisher-Boschloo test repeat them.
    for (const [p1, both] of [
      [0.1, 126],
      [0.2, 168],
      [0.3, 190],
      [0.4, 204],
    ] as const) {
      const { n } = fisherSampleSize({ p1, p2: p1 + 0.2 }, { rule: "boschloo" });
      expect((n ?? 0) * 2, `from ${p1}`).toBe(both);
    }
  });

  it("does not depend on which group is first, nor on which pigs are called affected", () => {
    const groups = fc
      .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 }))
      .chain(([n1, n2]) =>
        fc.record({
          x1: fc.integer({ min: 0, max: n1 }),
          n1: fc.constant(n1),
          x2: fc.integer({ min: 0, max: n2 }),
          n2: fc.constant(n2),
        }),
      );
    fc.assert(
      fc.property(groups, ({ x1, n1, x2, n2 }) => {
        const p = boschlooP({ x1, n1, x2, n2 });
        expect(boschlooP({ x1: x2, n1: n2, x2: x1, n2: n1 })).toBeCloseTo(p, 9);
        expect(boschlooP({ x1: n1 - x1, n1, x2: n2 - x2, n2 })).toBeCloseTo(p, 9);
        expect(p).toBeLessThanOrEqual(1);
      }),
      { numRuns: runs(40) },
    );
  });

  it("refuses more than 300 in a group", () => {
    expect(() => boschlooP(of(1, 301, 0, 5))).toThrow(RangeError);
  });
});

describe("the rules", () => {
  it.each([
    [8, 8],
    [5, 11],
  ])(
    "at %d and %d: Boschloo's and Fisher's never pass 5 %, and the power by enumeration is that of the p values",
    (n1, n2) => {
      const pOf = {
        fisher: (groups: TwoGroups) => fisherExact(groups).p,
        "mid-p": (groups: TwoGroups) => fisherExact(groups).midP,
        boschloo: boschlooP,
      };
      const found = SHARES_RULES.map((rule) =>
        Array.from({ length: n1 + 1 }, (_, x1) =>
          Array.from({ length: n2 + 1 }, (_, x2) => pOf[rule](of(x1, n1, x2, n2)) <= 0.05),
        ),
      );
      for (const share of [0.1, 0.3, 0.5, 0.8]) {
        const [first, second] = [binomialProbabilities(n1, share), binomialProbabilities(n2, share)];
        const sizes = found.map((tables) =>
          tables.reduce(
            (sum, row, x1) =>
              sum + row.reduce((part, is, x2) => part + (is ? (first[x1] ?? 0) * (second[x2] ?? 0) : 0), 0),
            0,
          ),
        );
        const [fisher = 1, midP = 0, boschloo = 1] = sizes;
        expect(boschloo).toBeLessThanOrEqual(0.05);
        expect(fisher).toBeLessThanOrEqual(0.05);
        expect(midP).toBeGreaterThan(fisher - 1e-9);
        for (const [place, rule] of SHARES_RULES.entries())
          expect(fisherPower(n1, n2, { p1: share, p2: share }, 0.05, rule), rule).toBeCloseTo(
            sizes[place] ?? 0,
            9,
          );
      }
    },
  );

  it("find more than Fisher's with the same pigs, and need fewer for the same", () => {
    const [fisher, midP, boschloo] = SHARES_RULES.map(
      (rule) => fisherSampleSize({ p1: 0.4, p2: 0.15 }, { rule }).n ?? 0,
    );
    expect(boschloo).toBeLessThan(fisher ?? 0);
    expect(midP).toBeLessThan(fisher ?? 0);
    const below = SHARES_RULES.map((rule) => detectableShares(20, 20, 0.7, { rule }).below ?? 0);
    expect(below[2]).toBeGreaterThan(below[0] ?? 1);
  });
});
