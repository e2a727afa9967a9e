import fc from "fast-check";
import { jStat } from "jstat";
import { describe, expect, it } from "vitest";
import {
  binomialInterval,
  finiteInterval,
  hypergeometricAtLeast,
  hypergeometricAtMost,
  hypergeometricProbability,
  oneSidedUpper,
  zeroUpperFinite,
} from "../../src/statistics/index.ts";
import { runs } from "../random.ts";
import { expectClose, reference } from "./reference.ts";

function choose(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n;
  let value = 1n;
  for (let i = 1; i <= k; i++) value = (value * BigInt(n - i + 1)) / BigInt(i);
  return value;
}

/** Ways to draw at least x affected, out of all ways: exact whole numbers. */
function exactAtLeast(x: number, population: number, affected: number, drawn: number): [bigint, bigint] {
  let ways = 0n;
  for (let k = Math.max(0, x); k <= drawn; k++) {
    ways += choose(affected, k) * choose(population - affected, drawn - k);
  }
  return [ways, choose(population, drawn)];
}

function ratio([part, whole]: [bigint, bigint]): number {
  return Number((part << 300n) / whole) / 2 ** 300;
}

describe("reference rows", () => {
  interface Count {
    N: number;
    n: number;
    x: number;
    conf: number;
  }
  it.each(
    reference<Count, { lowerD: number; upperD: number; lower: number; upper: number }>(
      "hypergeometric-ci",
      42,
    ),
  )("$id", ({ id, input, output }) => {
    const got = finiteInterval(input.x, input.n, input.N, { level: input.conf });
    expect([got.lowerCount, got.upperCount]).toEqual([output.lowerD, output.upperD]);
    expectClose(got.lower, output.lower, 1e-14, `${id} lower`);
    expectClose(got.upper, output.upper, 1e-14, `${id} upper`);
  });

  it.each(reference<Omit<Count, "x">, { upperD: number; upper: number }>("zero-upper-finite", 10))(
    "$id",
    ({ id, input, output }) => {
      const got = zeroUpperFinite(input.n, input.N, input.conf);
      expect(got.upperCount).toBe(output.upperD);
      expectClose(got.upper, output.upper, 1e-14, id);
    },
  );

  interface Draw {
    population: number;
    affected: number;
    drawn: number;
    x: number;
  }
  it.each(reference<Draw, { probability: number; atMost: number; atLeast: number }>("hypergeometric", 20))(
    "$id",
    ({ id, input, output }) => {
      expectClose(hypergeometricProbability(input.x, input), output.probability, 1e-13, `${id} probability`);
      expectClose(hypergeometricAtMost(input.x, input), output.atMost, 1e-13, `${id} atMost`);
      expectClose(hypergeometricAtLeast(input.x, input), output.atLeast, 1e-13, `${id} atLeast`);
    },
  );
});

const draws = fc
  .integer({ min: 1, max: 120 })
  .chain((population) =>
    fc.tuple(
      fc.constant(population),
      fc.integer({ min: 0, max: population }),
      fc.integer({ min: 0, max: population }),
    ),
  );

describe("hypergeometric tails", () => {
  it("equal exact counts of ways, every x, populations up to 120", () => {
    fc.assert(
      fc.property(draws, ([population, affected, drawn]) => {
        const sample = { population, affected, drawn };
        for (let x = -1; x <= drawn + 1; x++) {
          const [ways, all] = exactAtLeast(x, population, affected, drawn);
          const what = `x=${x} ${JSON.stringify(sample)}`;
          expectClose(hypergeometricAtLeast(x, sample), ratio([ways, all]), 1e-12, `at least ${what}`);
          expectClose(
            hypergeometricAtMost(x - 1, sample),
            ratio([all - ways, all]),
            1e-12,
            `at most ${what}`,
          );
          const exactly = choose(affected, x) * choose(population - affected, drawn - x);
          expectClose(hypergeometricProbability(x, sample), ratio([exactly, all]), 1e-12, what);
        }
      }),
      { numRuns: runs(150) },
    );
  });

  it("agree with jstat in absolute value (jstat 1.9.6 was measured within 1e-15)", () => {
    fc.assert(
      fc.property(draws, fc.nat(), ([population, affected, drawn], seed) => {
        const x = seed % (drawn + 1);
        const got = hypergeometricAtMost(x, { population, affected, drawn });
        expect(Math.abs(got - jStat.hypgeom.cdf(x, population, affected, drawn))).toBeLessThan(1e-12);
      }),
    );
  });
});

describe("finite interval", () => {
  it("matches its definition in exact whole numbers, every x and n, populations up to 30", () => {
    // alpha/2 as a fraction: an exact tie must be rejected.
    const levels: [number, bigint, bigint][] = [
      [0.95, 1n, 40n],
      [0.8, 1n, 10n],
      [0.5, 1n, 4n],
    ];
    for (const [level, numerator, denominator] of levels) {
      for (const population of [1, 2, 5, 12, 20, 30]) {
        for (let n = 1; n <= population; n++) {
          for (let x = 0; x <= n; x++) {
            const possible: number[] = [];
            for (let d = x; d <= population - n + x; d++) possible.push(d);
            const above = ([ways, all]: [bigint, bigint]) => ways * denominator > all * numerator;
            const lower = possible.find((d) => above(exactAtLeast(x, population, d, n)));
            const upper = possible.findLast((d) => {
              const [more, all] = exactAtLeast(x + 1, population, d, n);
              return above([all - more, all]);
            });
            const got = finiteInterval(x, n, population, { level });
            expect([got.lowerCount, got.upperCount], `${x} of ${n} in ${population}`).toEqual([lower, upper]);
          }
        }
      }
    }
  });

  const samples = fc
    .integer({ min: 1, max: 300 })
    .chain((n) =>
      fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n), fc.integer({ min: n, max: 3000 })),
    );

  it("lies within the interval for an unlimited population", () => {
    // Drawing without replacement thins a tail only from one animal beyond its mean outwards, so a limit that
    // expects less than one animal more (or fewer) in the sample may stick out, by less than one in the population.
    fc.assert(
      fc.property(samples, fc.constantFrom(0.8, 0.9, 0.95, 0.99), ([x, n, population], level) => {
        const finite = finiteInterval(x, n, population, { level });
        const unlimited = binomialInterval(x, n, { level });
        const below = x - n * unlimited.lower >= 1 ? 1e-12 : 1 / population;
        const above = n * unlimited.upper - x >= 1 ? 1e-12 : 1 / population;
        expect(finite.lower).toBeGreaterThanOrEqual(unlimited.lower - below);
        expect(finite.upper).toBeLessThanOrEqual(unlimited.upper + above);
        expect(finite.lower).toBeLessThanOrEqual(finite.proportion + 1 / population);
        expect(finite.upper).toBeGreaterThanOrEqual(finite.proportion - 1 / population);
      }),
      { numRuns: runs(300) },
    );
  });

  it("tends to the interval for an unlimited population", () => {
    for (const [x, n] of [
      [0, 30],
      [1, 30],
      [7, 40],
      [40, 40],
      [20, 50],
    ] as const) {
      const unlimited = binomialInterval(x, n);
      for (const population of [10_000, 100_000, 1_000_000, 10_000_000]) {
        const finite = finiteInterval(x, n, population);
        const room = (n + 2) / population;
        expect(Math.abs(finite.lower - unlimited.lower)).toBeLessThan(room);
        expect(Math.abs(finite.upper - unlimited.upper)).toBeLessThan(room);
      }
      expect(Math.abs(zeroUpperFinite(n, 10_000_000).upper - oneSidedUpper(0, n))).toBeLessThan(1e-5);
    }
  });

  it("is the count itself when all are examined, and reflects", () => {
    fc.assert(
      fc.property(samples, ([x, n, population]) => {
        const all = finiteInterval(x, n, n);
        expect([all.lowerCount, all.upperCount]).toEqual([x, x]);
        const affected = finiteInterval(x, n, population);
        const unaffected = finiteInterval(n - x, n, population);
        expect(affected.lowerCount + unaffected.upperCount).toBe(population);
      }),
    );
  });

  it("names the method and the level", () => {
    expect(finiteInterval(3, 50, 500)).toEqual({
      lowerCount: 8,
      upperCount: 80,
      lower: 0.016,
      upper: 0.16,
      proportion: 0.06,
      population: 500,
      level: 0.95,
      method: "hypergeometric",
    });
  });
});

describe("arguments", () => {
  it.each([
    ["examined must be a whole number from 1 to 10, got 0", () => finiteInterval(1, 0, 10)],
    ["examined must be a whole number from 1 to 10, got 11", () => finiteInterval(1, 11, 10)],
    ["affected must be a whole number from 0 to 3, got 4", () => finiteInterval(4, 3, 10)],
    ["population must be a whole number from 1 to 10000000, got 0", () => finiteInterval(1, 3, 0)],
    ["population must be a whole number from 1 to 10000000, got 100000000", () => finiteInterval(1, 3, 1e8)],
    ["examined must be a whole number from 1 to 10, got 0", () => zeroUpperFinite(0, 10)],
    ["level must lie strictly between 0 and 1 (0.95 for 95 %), got 1", () => zeroUpperFinite(5, 10, 1)],
    [
      "x must be a whole number from -10000000 to 10000000, got 0.5",
      () => hypergeometricAtMost(0.5, { population: 10, affected: 3, drawn: 4 }),
    ],
    [
      "affected must be a whole number from 0 to 10, got 11",
      () => hypergeometricProbability(0, { population: 10, affected: 11, drawn: 4 }),
    ],
    [
      "drawn must be a whole number from 0 to 10, got 11",
      () => hypergeometricAtLeast(0, { population: 10, affected: 3, drawn: 11 }),
    ],
    [
      "affected must be a whole number from 0 to 10, got 11",
      () => hypergeometricAtLeast(0, { population: 10, affected: 11, drawn: 4 }),
    ],
  ])("refused: %s", (message, call) => {
    expect(call).toThrow(new RangeError(message));
  });
});
