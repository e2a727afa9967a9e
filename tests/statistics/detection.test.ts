import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  affectedCount,
  cannonRoe,
  detectionProbability,
  detectionSampleSize,
  detectionSampleSizeUnlimited,
  herdAccuracy,
  herdTestSampleSize,
  hypergeometricProbability,
  pooledDetectionProbability,
  pooledSampleSize,
  pooledSampleSizeUnlimited,
  zeroUpperFinite,
} from "../../src/statistics/index.ts";
import { every } from "../every.ts";
import { runs } from "../random.ts";
import { binomialProbabilities, expectClose } from "./reference.ts";

const fixture = new URL("../fixtures/detection-table.json", import.meta.url);
const { cells } = JSON.parse(readFileSync(fixture, "utf8")) as { cells: [number, number, number, number][] };

const wholeUp = (raw: number | null): number => Math.ceil((raw ?? Number.NaN) - 1e-9);

describe("the table of exact numbers at 95 %, D rounded up", () => {
  it("has all its cells", () => {
    expect(cells).toHaveLength(23 * 12);
  });

  every(
    "is met: animals, prevalence, number, Cannon & Roe",
    cells,
    ([population, prevalence, exact, formula]) => {
      const herd = { population, affected: affectedCount(population, prevalence) };
      const got = detectionSampleSize(herd);
      expect([got.n, wholeUp(got.cannonRoe)]).toEqual([exact, formula]);
      expect(formula - exact === 0 || formula - exact === 1).toBe(true);
    },
  );
});

describe("published numbers", () => {
  it("Cannon & Roe 1982, Livestock disease surveys, Canberra: 1600 animals, 1 %, 99 %: 399", () => {
    const herd = { population: 1600, affected: affectedCount(1600, 0.01) };
    expect(wholeUp(cannonRoe(herd, 0.99))).toBe(399);
    expect(detectionSampleSize(herd, { level: 0.99 }).n).toBe(399);
  });

  it("200 animals, 20 %: exact minimum 13, Cannon & Roe 14, unlimited 14", () => {
    const got = detectionSampleSize({ population: 200, affected: 40 });
    expect([got.n, wholeUp(got.cannonRoe), detectionSampleSizeUnlimited(0.2).n]).toEqual([13, 14, 14]);
  });

  it.each([
    [0.05, 0.95, 59],
    [0.01, 0.95, 299],
    [0.1, 0.95, 29],
    [0.02, 0.95, 149],
  ])("without limit, %d at %d: %d", (prevalence, level, n) => {
    expect(detectionSampleSizeUnlimited(prevalence, { level }).n).toBe(n);
  });

  it.each([
    [0.01, 328],
    [0.02, 164],
    [0.05, 65],
    [0.1, 32],
    [0.2, 15],
  ])("MacDiarmid 1988, unlimited with Se 0.91: prevalence %d, %d", (prevalence, n) => {
    expect(detectionSampleSizeUnlimited(prevalence, { sensitivity: 0.91 }).n).toBe(n);
  });

  it("Cameron & Baldock 1998, Prev Vet Med 34:1-17, first example: 65 animals, 3 affected, 10 tested", () => {
    const test = { sensitivity: 0.95, specificity: 0.99 };
    const got = herdAccuracy({ population: 65, affected: 3 }, 10, 1, test);
    expect(got.herdSensitivity.toFixed(7)).toBe("0.4411522");
    expect(got.herdSpecificity.toFixed(7)).toBe("0.9043821");
  });

  it("Cameron & Baldock 1998: 194 of 5000 tested, positive at 8 or more (not at more than 8), is the smallest", () => {
    const herd = { population: 5000, affected: 250 };
    const test = { sensitivity: 0.95, specificity: 0.98 };
    const got = herdTestSampleSize(herd, test);
    expect([got?.n, got?.cutoff]).toEqual([194, 8]);
    expect(got?.herdSensitivity.toFixed(6)).toBe("0.951019");
    expect(got?.herdSpecificity.toFixed(6)).toBe("0.957394");
    expect(herdAccuracy(herd, 194, 7, test).herdSpecificity).toBeLessThan(0.95);
  });

  it("120 animals, 27 tested: the herd specificity is 0.99^27, not the .9999933 printed elsewhere", () => {
    const test = { sensitivity: 0.9, specificity: 0.99 };
    const got = herdAccuracy({ population: 120, affected: 12 }, 27, 1, test);
    expectClose(got.herdSpecificity, 0.99 ** 27, 1e-13, "HSp");
    expect(got.herdSensitivity.toFixed(7)).toBe("0.9555394");
  });
});

describe("affected animals that a prevalence means", () => {
  it("follows the rule, and 50 animals at 5 % need 31 or 39", () => {
    expect([
      affectedCount(50, 0.05),
      affectedCount(50, 0.05, "floor"),
      affectedCount(50, 0.05, "round"),
    ]).toEqual([3, 2, 3]);
    expect(detectionSampleSize({ population: 50, affected: 3 }).n).toBe(31);
    expect(detectionSampleSize({ population: 50, affected: 2 }).n).toBe(39);
  });

  it("takes no rounding dust for an animal, and is never 0", () => {
    for (let percent = 1; percent <= 100; percent++) {
      for (const population of [100, 200, 700, 1_000_000]) {
        expect(affectedCount(population, percent / 100)).toBe((population * percent) / 100);
        expect(affectedCount(population, percent / 100, "floor")).toBe((population * percent) / 100);
      }
    }
    expect(affectedCount(10, 0.001, "floor")).toBe(1);
  });
});

const herds = fc
  .integer({ min: 1, max: 80 })
  .chain((population) =>
    fc.record({ population: fc.constant(population), affected: fc.integer({ min: 1, max: population }) }),
  );
const shares = fc.integer({ min: 1, max: 20 }).map((twentieth) => twentieth / 20);

describe("probability to detect", () => {
  it("equals the definition, summed plainly", () => {
    fc.assert(
      fc.property(herds, fc.nat(80), shares, (herd, some, sensitivity) => {
        const drawn = Math.min(some, herd.population);
        let none = 0;
        for (let y = 0; y <= drawn; y++) {
          none += hypergeometricProbability(y, { ...herd, drawn }) * (1 - sensitivity) ** y;
        }
        expect(Math.abs(detectionProbability(herd, drawn, sensitivity) - (1 - none))).toBeLessThan(1e-12);
      }),
    );
  });

  it("rises with the number, so the answer is the smallest: one fewer does not reach the level", () => {
    fc.assert(
      fc.property(herds, shares, fc.constantFrom(0.8, 0.9, 0.95, 0.99), (herd, sensitivity, level) => {
        const got = detectionSampleSize(herd, { sensitivity, level });
        const reached = Array.from({ length: herd.population }, (_, i) => i + 1).filter(
          (n) => detectionProbability(herd, n, sensitivity) >= level - 1e-12,
        );
        expect(got.n).toBe(reached[0] ?? null);
        expect(got.most).toBeCloseTo(1 - (1 - sensitivity) ** herd.affected, 12);
      }),
    );
  });

  it("a large herd needs what an unlimited population needs", () => {
    for (const prevalence of [0.01, 0.05, 0.2]) {
      for (const sensitivity of [1, 0.8]) {
        const { n } = detectionSampleSize(
          { population: 10_000_000, affected: 10_000_000 * prevalence },
          { sensitivity },
        );
        expect(n).toBe(detectionSampleSizeUnlimited(prevalence, { sensitivity }).n);
      }
    }
  });

  it("does not underflow where the smallest term does", () => {
    const herd = { population: 100_000, affected: 50_000 };
    // About 10 000 of the drawn are affected and 3 in 10 000 of them are found: nearly Poisson with mean 3.
    expect(detectionProbability(herd, 20_000, 0.0003)).toBeCloseTo(1 - Math.exp(-3), 2);
  });
});

/** Whole numbers and fractions of them, without rounding. */
function choose(n: number, k: number): bigint {
  let value = 1n;
  for (let i = 0; i < k; i++) value = (value * BigInt(n - i)) / BigInt(i + 1);
  return n < k ? 0n : value;
}
/** A number as a whole multiple of 2^-200, exact for those of 1e-16 and more. */
const units = (value: number): bigint => BigInt(value * 2 ** 110) * 2n ** 90n;

/** The smallest number that misses all with a probability not above `tail`, in whole numbers. */
function exactNumber({ population, affected }: Affected, tail: number): number {
  for (let n = 1; n < population; n++)
    if (choose(population - affected, n) * 2n ** 200n <= choose(population, n) * units(tail)) return n;
  return population;
}
interface Affected {
  readonly population: number;
  readonly affected: number;
}

describe("next to certainty", () => {
  const herd = { population: 600, affected: 30 };

  // The exact numbers come from fractions of whole numbers (Python, math.comb).
  it.each([
    [1e-6, 217],
    [1e-11, 334],
    [3e-12, 344],
    [1e-12, 353],
    [1e-14, 386],
  ])("600 animals, 30 affected, all but %d: %d", (tail, n) => {
    const level = 1 - tail;
    const perfect = { sensitivity: 1, specificity: 1 };
    expect(detectionSampleSize(herd, { level }).n).toBe(n);
    expect(pooledSampleSize(herd, { poolSize: 1 }, level).pools).toBe(n);
    expect(herdTestSampleSize(herd, perfect, { herdSensitivity: level })?.n).toBe(n);
    expect(zeroUpperFinite(n, 600, level).upperCount).toBe(29);
    expect(zeroUpperFinite(n - 1, 600, level).upperCount).toBeGreaterThan(29);
  });

  const tails = fc.tuple(fc.integer({ min: 1, max: 13 }), fc.integer({ min: 1, max: 9 }));
  it("the number is the one of whole numbers, and what none of so many says is less than was asked for", () => {
    fc.assert(
      fc.property(herds, tails, (some, [zeros, digit]) => {
        const level = 1 - digit / 10 ** zeros;
        const { n } = detectionSampleSize(some, { level });
        const tail = 1 - level;
        expect(n).toBeLessThanOrEqual(exactNumber(some, tail));
        expect(n).toBeGreaterThanOrEqual(exactNumber(some, tail * (1 + 2e-9) + 2 ** -53));
        expect(zeroUpperFinite(n ?? 0, some.population, level).upperCount).toBeLessThan(some.affected);
      }),
      { numRuns: runs(200) },
    );
  });

  it("a test that misses some needs the same number by all three ways", () => {
    for (const tail of [1e-2, 1e-6, 1e-10, 1e-12]) {
      const level = 1 - tail;
      const { n } = detectionSampleSize({ population: 600, affected: 60 }, { sensitivity: 0.9, level });
      const many = { population: 600, affected: 60 };
      const test = { sensitivity: 0.9, specificity: 1 };
      expect(n).not.toBe(null);
      expect(herdTestSampleSize(many, test, { herdSensitivity: level })?.n).toBe(n);
      expect(pooledSampleSize(many, { poolSize: 1, sensitivity: 0.9 }, level).pools).toBe(n);
    }
  });

  it("a herd specificity of all but 1e-12 leaves no more false alarms than that", () => {
    const got = herdTestSampleSize(
      { population: 2000, affected: 400 },
      { sensitivity: 0.95, specificity: 0.99 },
      { herdSensitivity: 0.99, herdSpecificity: 1 - 1e-12 },
    );
    const { n = 0, cutoff = 0 } = got ?? {};
    const masses = binomialProbabilities(n, 0.01).slice(cutoff);
    const alarms = masses.reduceRight((sum, one) => sum + one, 0);
    expect(n).toBeGreaterThan(20);
    expect(alarms).toBeLessThanOrEqual(1.0002e-12);
  });

  it("a tie counts as reached: 10 of 20 with one affected animal find it in half of the draws", () => {
    expect(detectionSampleSize({ population: 20, affected: 1 }, { level: 0.5 }).n).toBe(10);
    for (let n = 1; n < 100; n++)
      expect(detectionSampleSize({ population: 100, affected: 1 }, { level: n / 100 }).n).toBe(n);
    // One affected animal in ten million, a tail of 1e-7.
    expect(detectionSampleSize({ population: 1e7, affected: 1 }, { level: 1 - 1e-7 }).n).toBe(1e7 - 1);
  });
});

describe("pools", () => {
  it("of one animal each are animals examined with that sensitivity", () => {
    fc.assert(
      fc.property(herds, fc.nat(80), shares, (herd, some, sensitivity) => {
        const drawn = Math.min(some, herd.population);
        const got = pooledDetectionProbability(herd, drawn, { poolSize: 1, sensitivity });
        expect(Math.abs(got - detectionProbability(herd, drawn, sensitivity))).toBeLessThan(1e-12);
      }),
    );
  });

  it("equal every way of filling two pools, counted", () => {
    // 7 animals of which 2 are affected, two pools of 2: all 7! orders, the first four go into the pools.
    const orders = permutations([1, 1, 0, 0, 0, 0, 0]);
    const sensitivity = 0.7;
    const none = orders.map(([a = 0, b = 0, c = 0, d = 0]) => {
      const pools = (a + b > 0 ? 1 : 0) + (c + d > 0 ? 1 : 0);
      return (1 - sensitivity) ** pools;
    });
    const mean = none.reduce((sum, one) => sum + one, 0) / none.length;
    const got = pooledDetectionProbability({ population: 7, affected: 2 }, 2, { poolSize: 2, sensitivity });
    expectClose(got, 1 - mean, 1e-13, "two pools");
  });

  it("fill up the herd at most, and the smallest number is found", () => {
    expect(
      pooledSampleSize({ population: 600, affected: 30 }, { poolSize: 5, sensitivity: 0.9 }),
    ).toMatchObject({
      pools: 13,
      animals: 65,
    });
    expect(pooledSampleSize({ population: 12, affected: 1 }, { poolSize: 5 })).toEqual({
      pools: null,
      animals: null,
      probability: 10 / 12,
    });
    // 1 - (1 - 0.9 (1 - 0.95^5))^14 by hand: each pool is positive with probability 0.2036.
    expect(pooledSampleSizeUnlimited(0.05, { poolSize: 5, sensitivity: 0.9 })).toMatchObject({
      pools: 14,
      animals: 70,
    });
    expect(pooledSampleSizeUnlimited(0.05, { poolSize: 1 }).pools).toBe(59);
  });
});

describe("herd sensitivity and specificity", () => {
  it("equal the convolution of plain binomials", () => {
    const setting = fc.record({
      herd: herds,
      part: fc.double({ min: 0, max: 1, noNaN: true }),
      cut: fc.double({ min: 0, max: 1, noNaN: true }),
      sensitivity: shares,
      specificity: shares,
    });
    fc.assert(
      fc.property(setting, ({ herd, part, cut, sensitivity, specificity }) => {
        const drawn = Math.max(1, Math.min(40, Math.round(part * herd.population)));
        const cutoff = Math.max(1, Math.round(cut * drawn));
        let positive = 0;
        for (let y = 0; y <= drawn; y++) {
          const found = binomialProbabilities(y, sensitivity);
          const wrong = binomialProbabilities(drawn - y, 1 - specificity);
          let reached = 0;
          for (const [a, one] of found.entries()) {
            for (const [b, other] of wrong.entries()) if (a + b >= cutoff) reached += one * other;
          }
          positive += hypergeometricProbability(y, { ...herd, drawn }) * reached;
        }
        const negative = binomialProbabilities(drawn, 1 - specificity).slice(0, cutoff);
        const got = herdAccuracy(herd, drawn, cutoff, { sensitivity, specificity });
        expect(Math.abs(got.herdSensitivity - positive)).toBeLessThan(1e-12);
        expect(Math.abs(got.herdSpecificity - negative.reduce((a, b) => a + b, 0))).toBeLessThan(1e-12);
      }),
    );
  });

  it("the smallest number with a cut-off is the smallest of all numbers and cut-offs", () => {
    for (const [population, affected, sensitivity, specificity] of [
      [60, 12, 0.9, 0.95],
      [40, 20, 0.7, 0.9],
      [50, 10, 0.95, 1],
      [30, 2, 0.9, 0.98],
    ] as const) {
      const herd = { population, affected };
      const test = { sensitivity, specificity };
      const fitting: [number, number][] = [];
      for (let n = 1; n <= population; n++) {
        for (let cutoff = 1; cutoff <= n; cutoff++) {
          const { herdSensitivity, herdSpecificity } = herdAccuracy(herd, n, cutoff, test);
          if (herdSensitivity >= 0.95 && herdSpecificity >= 0.95) fitting.push([n, cutoff]);
        }
      }
      const got = herdTestSampleSize(herd, test);
      expect(got === null ? undefined : [got.n, got.cutoff]).toEqual(fitting[0]);
    }
  });
});

describe("arguments", () => {
  const herd = { population: 100, affected: 5 };
  it.each([
    [
      "affected must be a whole number from 1 to 100, got 0",
      () => detectionSampleSize({ ...herd, affected: 0 }),
    ],
    ["drawn must be a whole number from 0 to 100, got 101", () => detectionProbability(herd, 101)],
    [
      "sensitivity must lie above 0 and not above 1, got 95",
      () => detectionSampleSize(herd, { sensitivity: 95 }),
    ],
    [
      "level must lie strictly between 0 and 1 (0.95 for 95 %), got 1",
      () => detectionSampleSize(herd, { level: 1 }),
    ],
    ["prevalence must lie above 0 and not above 1, got 0", () => affectedCount(100, 0)],
    ["prevalence must lie above 0 and not above 1, got 5", () => detectionSampleSizeUnlimited(5)],
    ["more than 10000000 animals would be needed", () => detectionSampleSizeUnlimited(1e-9)],
    ["poolSize must be a whole number from 1 to 100, got 0", () => pooledSampleSize(herd, { poolSize: 0 })],
    [
      "pools must be a whole number from 0 to 20, got 21",
      () => pooledDetectionProbability(herd, 21, { poolSize: 5 }),
    ],
    [
      "cutoff must be a whole number from 1 to 10, got 0",
      () => herdAccuracy(herd, 10, 0, { sensitivity: 1, specificity: 1 }),
    ],
  ])("refused: %s", (message, call) => {
    expect(call).toThrow(new RangeError(message));
  });
});

function permutations(items: readonly number[]): number[][] {
  if (items.length < 2) return [[...items]];
  return items.flatMap((item, place) =>
    permutations(items.filter((_, other) => other !== place)).map((rest) => [item, ...rest]),
  );
}
