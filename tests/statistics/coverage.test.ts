/** What intervals must keep to, by exact sums. Coverage of the binomial ones: binomial-interval.test.ts. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BINOMIAL_METHODS, binomialInterval, finiteInterval } from "../../src/statistics/index.ts";
import { runs } from "../random.ts";

/** C(n, k) for n up to 60, exact in floating point up to 2^53 and to the last digits beyond. */
const CHOOSE: number[][] = [[1]];
for (let n = 1; n <= 60; n++) {
  const before = CHOOSE[n - 1] ?? [];
  CHOOSE.push(Array.from({ length: n + 1 }, (_, k) => (before[k - 1] ?? 0) + (before[k] ?? 0)));
}
const choose = (n: number, k: number) => CHOOSE[n]?.[k] ?? 0;

describe("exact coverage of the finite-population interval", () => {
  it.each([0.8, 0.95, 0.99])(
    "at %d: every population up to 60, every sample, every number affected",
    (level) => {
      let lowest = 1;
      let where = "";
      let checked = 0;
      for (let population = 1; population <= 60; population++) {
        for (let n = 1; n <= population; n++) {
          const intervals = Array.from({ length: n + 1 }, (_, x) =>
            finiteInterval(x, n, population, { level }),
          );
          for (let affected = 0; affected <= population; affected++) {
            let coverage = 0;
            for (const [x, { lowerCount, upperCount }] of intervals.entries()) {
              if (affected < lowerCount || affected > upperCount) continue;
              coverage +=
                (choose(affected, x) * choose(population - affected, n - x)) / choose(population, n);
            }
            checked += 1;
            if (coverage < lowest) {
              lowest = coverage;
              where = `population ${population}, n = ${n}, affected ${affected}`;
            }
          }
        }
      }
      console.log(
        `lowest exact coverage of the finite interval at ${level}: ${lowest} (${where}; ${checked} states)`,
      );
      expect(checked).toBe(75_640);
      expect(lowest, where).toBeGreaterThanOrEqual(level - 1e-12);
    },
  );
});

const levels = fc.constantFrom(0.5, 0.8, 0.9, 0.95, 0.99, 0.999);
const counts = fc
  .integer({ min: 1, max: 300 })
  .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
const ROUNDING = 1e-12;

describe("one more animal", () => {
  const monotone = BINOMIAL_METHODS.filter((method) => method !== "blaker");

  it("that is not affected lowers both limits of a proportion", () => {
    fc.assert(
      fc.property(counts, levels, fc.constantFrom(...monotone), ([x, n], level, method) => {
        const before = binomialInterval(x, n, { level, method });
        const after = binomialInterval(x, n + 1, { level, method });
        expect(after.lower).toBeLessThanOrEqual(before.lower + ROUNDING);
        expect(after.upper).toBeLessThanOrEqual(before.upper + ROUNDING);
      }),
      { numRuns: runs(3000) },
    );
  });

  it("may raise a limit of Blaker's: its price for being the shorter one", () => {
    const options = { level: 0.999, method: "blaker" } as const;
    expect(binomialInterval(1, 21, options).upper).toBeGreaterThan(binomialInterval(1, 20, options).upper);
  });

  it("does so in a finite population too, and one more affected raises them", () => {
    for (const population of [7, 20, 45]) {
      for (let n = 1; n < population; n++) {
        for (let x = 0; x <= n; x++) {
          for (const level of [0.8, 0.95]) {
            const before = finiteInterval(x, n, population, { level });
            const healthy = finiteInterval(x, n + 1, population, { level });
            const affected = finiteInterval(x + 1, n + 1, population, { level });
            expect(healthy.lowerCount).toBeLessThanOrEqual(before.lowerCount);
            expect(healthy.upperCount).toBeLessThanOrEqual(before.upperCount);
            expect(affected.lowerCount).toBeGreaterThanOrEqual(before.lowerCount);
            expect(affected.upperCount).toBeGreaterThanOrEqual(before.upperCount);
          }
        }
      }
    }
  });
});

describe("a higher level", () => {
  it("never narrows a finite-population interval", () => {
    fc.assert(
      fc.property(counts, fc.integer({ min: 0, max: 2000 }), levels, levels, ([x, n], more, one, other) => {
        const [low, high] = [{ level: Math.min(one, other) }, { level: Math.max(one, other) }];
        const inner = finiteInterval(x, n, n + more, low);
        const outer = finiteInterval(x, n, n + more, high);
        expect(outer.lowerCount).toBeLessThanOrEqual(inner.lowerCount);
        expect(outer.upperCount).toBeGreaterThanOrEqual(inner.upperCount);
      }),
      { numRuns: runs(500) },
    );
  });
});
