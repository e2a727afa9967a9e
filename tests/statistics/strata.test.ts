import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mantelHaenszel, oddsHomogeneity, trendTest } from "../../src/statistics/index.ts";
import { expectClose } from "./reference.ts";

const tables = fc
  .record({ n1: fc.integer({ min: 2, max: 40 }), n2: fc.integer({ min: 2, max: 40 }) })
  .chain(({ n1, n2 }) =>
    fc.record({ x1: fc.nat(n1), n1: fc.constant(n1), x2: fc.nat(n2), n2: fc.constant(n2) }),
  );

describe("Cochran-Armitage trend", () => {
  it("Armitage 1955, data as in R's prop.trend.test: 83/86 90/93 129/136 70/82: chi-squared 8.2249, p .004132", () => {
    const counts = [
      [83, 86],
      [90, 93],
      [129, 136],
      [70, 82],
    ] as const;
    const got = trendTest(counts.map(([affected, examined], i) => ({ affected, examined, score: i + 1 })));
    expect([got.chiSquared?.toFixed(4), got.z?.toFixed(4), got.p.toFixed(6)]).toEqual([
      "8.2249",
      "-2.8679",
      "0.004132",
    ]);
  });

  it("with two groups is the chi-squared test of a 2 x 2 table, whatever the two scores", () => {
    fc.assert(
      fc.property(tables, fc.integer({ min: 1, max: 50 }), ({ x1, n1, x2, n2 }, apart) => {
        const affected = x1 + x2;
        const total = n1 + n2;
        const got = trendTest([
          { affected: x1, examined: n1, score: 3 },
          { affected: x2, examined: n2, score: 3 + apart },
        ]);
        if (affected === 0 || affected === total)
          expect(got).toEqual({ z: null, chiSquared: null, p: 1, exactP: null });
        else {
          const cross = x1 * (n2 - x2) - x2 * (n1 - x1);
          const chiSquared = (total * cross * cross) / (n1 * n2 * affected * (total - affected));
          expect(got.chiSquared).toBeCloseTo(chiSquared, 9);
          expect(got.p).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it("needs different scores and whole counts", () => {
    const one = { affected: 1, examined: 3, score: 1 };
    expect(() => trendTest([one, one])).toThrow(/at least two different scores/);
    expect(() => trendTest([one, { ...one, affected: 4, score: 2 }])).toThrow(
      new RangeError("affected of group 2 must be a whole number from 0 to 3, got 4"),
    );
  });
});

describe("Mantel-Haenszel", () => {
  it("of one stratum is the cross product, and its test is chi-squared times (N - 1) / N", () => {
    fc.assert(
      fc.property(tables, ({ x1, n1, x2, n2 }) => {
        const got = mantelHaenszel([{ x1, n1, x2, n2 }]);
        const wrong = (n1 - x1) * x2;
        if (wrong > 0) expectClose(got.oddsRatio ?? -1, (x1 * (n2 - x2)) / wrong, 1e-12, "odds ratio");
        const total = n1 + n2;
        const affected = x1 + x2;
        if (affected > 0 && affected < total) {
          const cross = x1 * n2 - x2 * n1;
          const chiSquared = ((total - 1) * cross * cross) / (n1 * n2 * affected * (total - affected));
          expect(got.chiSquared).toBeCloseTo(chiSquared, 9);
        } else expect(got).toMatchObject({ chiSquared: null, p: 1, pCorrected: 1 });
      }),
    );
  });

  it("turns round with the groups; a stratum that says nothing changes nothing", () => {
    fc.assert(
      fc.property(fc.array(tables, { minLength: 1, maxLength: 6 }), (strata) => {
        const got = mantelHaenszel(strata);
        const turned = mantelHaenszel(
          strata.map(({ x1, n1, x2, n2 }) => ({ x1: x2, n1: n2, x2: x1, n2: n1 })),
        );
        expect(turned.p).toBeCloseTo(got.p, 12);
        expect(turned.pCorrected).toBeCloseTo(got.pCorrected, 12);
        if (got.lower !== null && turned.upper !== null)
          expectClose(turned.upper, 1 / got.lower, 1e-10, "limit");
        expect(mantelHaenszel([...strata, { x1: 0, n1: 9, x2: 0, n2: 4 }])).toEqual(got);
      }),
    );
  });

  it("leaves the correction out below one half (R's rule)", () => {
    // a - E(a) = 5 - 10 * 9 / 19 = 0.26.
    const got = mantelHaenszel([{ x1: 5, n1: 10, x2: 4, n2: 9 }]);
    expect(got.pCorrected).toBe(got.p);
  });

  it("refuses no strata", () => {
    expect(() => mantelHaenszel([])).toThrow(new RangeError("at least one stratum is needed"));
  });
});

describe("homogeneity of odds ratios", () => {
  it("is 0 when every stratum has the same odds ratio", () => {
    const got = oddsHomogeneity([
      { x1: 10, n1: 20, x2: 5, n2: 20 },
      { x1: 30, n1: 40, x2: 10, n2: 20 },
    ]);
    expect(got.chiSquared).toBeCloseTo(0, 10);
    expect([got.df, got.p]).toEqual([1, 1]);
  });

  it("equals the statistic worked out with expected counts found by halving", () => {
    fc.assert(
      fc.property(fc.array(tables, { minLength: 2, maxLength: 5 }), (strata) => {
        const { oddsRatio } = mantelHaenszel(strata);
        fc.pre(oddsRatio !== null && oddsRatio > 0 && Number.isFinite(oddsRatio));
        const odds = oddsRatio ?? 1;
        let sum = 0;
        let excess = 0;
        let variance = 0;
        for (const { x1, n1, x2, n2 } of strata) {
          const affected = x1 + x2;
          if (affected === 0 || affected === n1 + n2) continue;
          let low = Math.max(0, affected - n2);
          let high = Math.min(n1, affected);
          for (let i = 0; i < 200; i++) {
            const a = (low + high) / 2;
            if (a * (n2 - affected + a) < odds * (n1 - a) * (affected - a)) low = a;
            else high = a;
          }
          const one = 1 / (1 / low + 1 / (n1 - low) + 1 / (affected - low) + 1 / (n2 - affected + low));
          sum += (x1 - low) ** 2 / one;
          excess += x1 - low;
          variance += one;
        }
        const got = oddsHomogeneity(strata);
        fc.pre(got.chiSquared !== null);
        expect(got.chiSquared).toBeCloseTo(Math.max(0, sum - excess ** 2 / variance), 6);
      }),
    );
  });
});
