import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { detectableShares, fisherExact, fisherPower, fisherSampleSize } from "../../src/statistics/index.ts";
import { runs } from "../random.ts";
import { binomialProbabilities, expectClose } from "./reference.ts";

function choose(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n;
  let value = 1n;
  for (let i = 1; i <= k; i++) value = (value * BigInt(n - i + 1)) / BigInt(i);
  return value;
}

/** Ways of every possible first count, in whole numbers. */
function ways(x1: number, n1: number, x2: number, n2: number): [count: number, ways: bigint][] {
  const total = x1 + x2;
  return Array.from({ length: n1 + 1 }, (_, k): [number, bigint] => [
    k,
    choose(n1, k) * choose(n2, total - k),
  ]).filter(([, way]) => way > 0n);
}

/** Two-sided p in whole numbers: no tolerance is needed. */
function exactP(x1: number, n1: number, x2: number, n2: number): number {
  const all = ways(x1, n1, x2, n2);
  const observed = choose(n1, x1) * choose(n2, x2);
  const sum = (of: [number, bigint][]): bigint => of.reduce((total, [, way]) => total + way, 0n);
  return Number((sum(all.filter(([, way]) => way <= observed)) << 200n) / sum(all)) / 2 ** 200;
}

/** P(k >= x1) at an odds ratio, in plain floating point from whole weights. */
function tailAt(odds: number, x1: number, n1: number, x2: number, n2: number): number {
  const all = ways(x1, n1, x2, n2).map(([k, way]): [number, number] => [k, Number(way) * odds ** k]);
  const sum = (of: [number, number][]): number => of.reduce((total, [, weight]) => total + weight, 0);
  return sum(all.filter(([k]) => k >= x1)) / sum(all);
}

const tables = fc
  .record({ n1: fc.integer({ min: 1, max: 25 }), n2: fc.integer({ min: 1, max: 25 }) })
  .chain(({ n1, n2 }) =>
    fc.record({ x1: fc.nat(n1), n1: fc.constant(n1), x2: fc.nat(n2), n2: fc.constant(n2) }),
  );

describe("Fisher's exact test", () => {
  it("Fisher 1935, the lady tasting tea: p .4857; odds ratio 6.40832, .21174 to 626.2435 (R 4.2.2)", () => {
    const got = fisherExact({ x1: 3, n1: 4, x2: 1, n2: 4 });
    expect(got.p.toFixed(4)).toBe("0.4857");
    expect(got.oddsRatio?.toFixed(5)).toBe("6.40832");
    expect([got.lower.toFixed(5), got.upper.toFixed(4)]).toEqual(["0.21174", "626.2435"]);
  });

  it("p equals the count in whole numbers, is at most 1 and does not mind which group comes first", () => {
    fc.assert(
      fc.property(tables, ({ x1, n1, x2, n2 }) => {
        const got = fisherExact({ x1, n1, x2, n2 });
        expectClose(got.p, exactP(x1, n1, x2, n2), 1e-12, `${x1}/${n1} ${x2}/${n2}`);
        const swapped = fisherExact({ x1: x2, n1: n2, x2: x1, n2: n1 });
        expectClose(swapped.p, got.p, 1e-12, "swapped");
        expectClose(swapped.midP, got.midP, 1e-12, "swapped mid-P");
        expect(got.p).toBeLessThanOrEqual(1);
        expect(got.midP).toBeLessThanOrEqual(1);
        expectClose(swapped.lower, 1 / got.upper, 1e-10, "swapped limit");
      }),
      { numRuns: runs(300) },
    );
  });

  it("each limit leaves half of alpha in its tail, and the estimate has the observed mean", () => {
    fc.assert(
      fc.property(tables, fc.constantFrom(0.8, 0.95, 0.99), ({ x1, n1, x2, n2 }, level) => {
        const got = fisherExact({ x1, n1, x2, n2 }, { level });
        const error = (1 - level) / 2;
        if (got.lower > 0) expectClose(tailAt(got.lower, x1, n1, x2, n2), error, 1e-9, "lower");
        if (got.upper < Number.POSITIVE_INFINITY) {
          expectClose(tailAt(1 / got.upper, x2, n2, x1, n1), error, 1e-9, "upper");
        }
        const odds = got.oddsRatio ?? 0;
        if (odds > 0 && odds < Number.POSITIVE_INFINITY) {
          const all = ways(x1, n1, x2, n2).map(([k, way]): [number, number] => [k, Number(way) * odds ** k]);
          const mean =
            all.reduce((sum, [k, weight]) => sum + k * weight, 0) /
            all.reduce((sum, [, weight]) => sum + weight, 0);
          expectClose(mean, x1, 1e-10, "mean");
        }
        const middle = fisherExact({ x1, n1, x2, n2 }, { level, tails: "mid-p" });
        expect(middle.lower).toBeGreaterThanOrEqual(got.lower);
        expect(middle.upper).toBeLessThanOrEqual(got.upper);
      }),
      { numRuns: runs(300) },
    );
  });

  it("the mid-P interval leaves out 1 exactly when the mid-P is below alpha", () => {
    fc.assert(
      fc.property(tables, (groups) => {
        const got = fisherExact(groups, { tails: "mid-p" });
        fc.pre(Math.abs(got.midP - 0.05) > 1e-9);
        expect(got.lower > 1 || got.upper < 1).toBe(got.midP < 0.05);
      }),
    );
  });

  it("says nothing where the margins leave one table, and works with ten million", () => {
    expect(fisherExact({ x1: 0, n1: 5, x2: 0, n2: 7 })).toMatchObject({
      p: 1,
      midP: 1,
      oddsRatio: null,
      lower: 0,
      upper: Number.POSITIVE_INFINITY,
    });
    expect(fisherExact({ x1: 2, n1: 10_000_000, x2: 9, n2: 10_000_000 }).oddsRatio).toBeCloseTo(2 / 9, 6);
  });

  it.each([
    [
      "n1 must be a whole number from 1 to 10000000, got 0",
      () => fisherExact({ x1: 0, n1: 0, x2: 1, n2: 2 }),
    ],
    ["x2 must be a whole number from 0 to 2, got 3", () => fisherExact({ x1: 0, n1: 3, x2: 3, n2: 2 })],
  ])("refused: %s", (message, call) => {
    expect(call).toThrow(new RangeError(message));
  });
});

describe("power of Fisher's exact test", () => {
  /** Straight from the definition, with p values counted in whole numbers. */
  function plainPower(n1: number, n2: number, p1: number, p2: number, alpha: number): number {
    const first = binomialProbabilities(n1, p1);
    const second = binomialProbabilities(n2, p2);
    let power = 0;
    for (const [x1, one] of first.entries()) {
      for (const [x2, other] of second.entries()) {
        if (exactP(x1, n1, x2, n2) <= alpha) power += one * other;
      }
    }
    return power;
  }

  it.each([
    [10, 10, 0.5, 0.1, 0.05],
    [12, 7, 0.8, 0.2, 0.05],
    [20, 20, 0.3, 0.6, 0.1],
    [15, 15, 0.4, 0.4, 0.05],
    [9, 14, 0, 1, 0.01],
  ])("%d and %d animals, %d against %d at %d", (n1, n2, p1, p2, alpha) => {
    expectClose(fisherPower(n1, n2, { p1, p2 }, alpha), plainPower(n1, n2, p1, p2, alpha), 1e-11, "power");
  });

  it("never calls equal groups different more often than alpha", () => {
    for (const n of [5, 12, 30, 80]) {
      for (let p = 0.05; p < 1; p += 0.05)
        expect(fisherPower(n, n, { p1: p, p2: p })).toBeLessThanOrEqual(0.05);
    }
  });

  it.each([
    [0.9, 0.1, 0.8],
    [0.5, 0.1, 0.8],
    [0.7, 0.3, 0.9],
    [0, 0.5, 0.8],
    [0.3, 0.05, 0.8],
  ])(
    "number for %d against %d with power %d: stays reached up to 120, and no smaller number does",
    (p1, p2, power) => {
      const got = fisherSampleSize({ p1, p2 }, { power });
      const fits = Array.from({ length: 120 }, (_, i) => fisherPower(i + 1, i + 1, { p1, p2 }) >= power);
      expect(got.n).toBe(fits.lastIndexOf(false) + 2);
      expect(got.first).toBe(fits.indexOf(true) + 1);
      expect(got.power).toBe(fisherPower(got.n ?? 0, got.n ?? 0, { p1, p2 }));
    },
  );

  it.each([
    [0.3, 0.2, 0.8, 250, 420],
    [0.1, 0.02, 0.8, 100, 260],
    [0.15, 0.05, 0.9, 150, 320],
  ])("%d against %d with power %d, every number from %d to %d tried", (p1, p2, power, from, to) => {
    const got = fisherSampleSize({ p1, p2 }, { power });
    const reached = Array.from({ length: to - from + 1 }, (_, i) =>
      fisherPower(from + i, from + i, { p1, p2 }),
    );
    const fits = reached.map((one) => one >= power);
    expect(got.n).toBe(from + fits.lastIndexOf(false) + 1);
    expect(got.first).toBe(from + fits.indexOf(true));
    // The step that the search relies on: no number has a power lower than an earlier one by 0.03.
    let highest = 0;
    for (const one of reached) {
      expect(one).toBeGreaterThan(highest - 0.03);
      highest = Math.max(highest, one);
    }
  });

  it("gives no number when 1000 are not enough", () => {
    expect(fisherSampleSize({ p1: 0.5, p2: 0.5001 }, { power: 0.999_999 }).n).toBe(null);
  });

  it("finds the nearest share that would be told apart", () => {
    const { below, above } = detectableShares(30, 40, 0.4);
    expect(fisherPower(30, 40, { p1: 0.4, p2: below ?? 0 })).toBeCloseTo(0.8, 6);
    expect(fisherPower(30, 40, { p1: 0.4, p2: above ?? 0 })).toBeCloseTo(0.8, 6);
    expect(detectableShares(3, 3, 0.5)).toEqual({ below: null, above: null });
    expect(detectableShares(30, 30, 0).below).toBe(null);
  });

  it("refuses equal shares and more than it can enumerate", () => {
    expect(() => fisherSampleSize({ p1: 0.2, p2: 0.2 })).toThrow(new RangeError("p1 and p2 must differ"));
    expect(() => fisherPower(1001, 5, { p1: 0.2, p2: 0.3 })).toThrow(
      new RangeError("n1 must be a whole number from 1 to 1000, got 1001"),
    );
  });
});
