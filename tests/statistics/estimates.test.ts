import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  binomialInterval,
  clusterPrevalence,
  finiteInterval,
  langReiczigelInterval,
  type StratumCount,
  signTest,
  stratifiedProportion,
  truePrevalence,
} from "../../src/statistics/index.ts";
import { binomialProbabilities, expectClose } from "./reference.ts";

describe("proportion from clusters", () => {
  const clusters = (...pairs: [number, number][]) =>
    pairs.map(([affected, examined]) => ({ affected, examined }));

  it("is wider than as if drawn singly when pens differ, never narrower than capped", () => {
    const got = clusterPrevalence(clusters([10, 10], [0, 10], [9, 10], [1, 10], [10, 10], [0, 10]));
    const single = binomialInterval(30, 60);
    expect(got.method).toBe("korn-graubard");
    expect(got.designEffect).toBeGreaterThan(5);
    expect(got.lower).toBeLessThan(single.lower - 0.1);
    expect(got.upper).toBeGreaterThan(single.upper + 0.1);
    expect(got.icc).toBeGreaterThan(0.7);
  });

  it("caps the effective size at the animals examined when clusters are more alike than chance makes them", () => {
    const got = clusterPrevalence(clusters([5, 10], [5, 10], [5, 10], [5, 11], [5, 10], [5, 10]));
    expect(got.adjustedSize).toBeGreaterThan(61);
    const single = binomialInterval(30, 61);
    expectClose(got.lower, single.lower, 1e-12, "lower");
    expectClose(got.upper, single.upper, 1e-12, "upper");
    expect((got.uncapped?.upper ?? 1) - (got.uncapped?.lower ?? 0)).toBeLessThan(got.upper - got.lower);
  });

  it.each([
    [
      "none affected",
      [
        [0, 5],
        [0, 7],
      ],
      0,
      12,
    ],
    [
      "all affected",
      [
        [5, 5],
        [7, 7],
      ],
      12,
      12,
    ],
    [
      "the clusters do not differ",
      [
        [1, 3],
        [2, 6],
        [3, 9],
      ],
      6,
      18,
    ],
    ["only one cluster", [[3, 8]], 3, 8],
  ] as [string, [number, number][], number, number][])(
    "%s: falls back to Clopper-Pearson and says so",
    (reason, pairs, x, n) => {
      const got = clusterPrevalence(clusters(...pairs), { level: 0.9 });
      const { lower, upper } = binomialInterval(x, n, { level: 0.9 });
      expect(got).toMatchObject({ method: "clopper-pearson", reason, effectiveSize: null, uncapped: null });
      expectClose(got.lower, lower, 1e-13, "lower");
      expectClose(got.upper, upper, 1e-13, "upper");
    },
  );

  it("with one animal a cluster is close to drawing singly", () => {
    const single = Array.from({ length: 200 }, (_, i) => ({ affected: i % 4 === 0 ? 1 : 0, examined: 1 }));
    const got = clusterPrevalence(single);
    expectClose(got.designEffect ?? 0, 200 / 199, 1e-12, "design effect");
    expect(got.icc).toBeNull();
    expectClose(got.lower, binomialInterval(50, 200).lower, 0.01, "lower");
  });

  it("does not depend on the order, and holds the proportion", () => {
    const cluster = fc
      .integer({ min: 1, max: 30 })
      .chain((examined) =>
        fc.record({ affected: fc.integer({ min: 0, max: examined }), examined: fc.constant(examined) }),
      );
    fc.assert(
      fc.property(fc.array(cluster, { minLength: 1, maxLength: 25 }), (all) => {
        const got = clusterPrevalence(all);
        expect(got.lower).toBeLessThanOrEqual(got.proportion + 1e-12);
        expect(got.upper).toBeGreaterThanOrEqual(got.proportion - 1e-12);
        expect(got.lower).toBeGreaterThanOrEqual(0);
        expect(got.upper).toBeLessThanOrEqual(1);
        const turned = clusterPrevalence(all.toReversed());
        expectClose(turned.lower, got.lower, 1e-9, "lower");
        expectClose(turned.upper, got.upper, 1e-9, "upper");
        const healthy = clusterPrevalence(
          all.map(({ affected, examined }) => ({ affected: examined - affected, examined })),
        );
        expect(Math.abs(healthy.lower + got.upper - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  it.each([
    [() => clusterPrevalence([]), /clusters must not be empty/],
    [() => clusterPrevalence(clusters([1, 0])), /examined must be a whole number from 1/],
    [() => clusterPrevalence(clusters([3, 2])), /affected must be a whole number from 0 to 2/],
    [() => clusterPrevalence(clusters([1, 2]), { level: 1 }), /level must lie/],
  ])("%s is refused", (call, message) => expect(call).toThrow(message));
});

describe("imperfect tests", () => {
  it("gives the worked examples of Rogan & Gladen 1978 as quoted (5.1 %, 0-13 %; 0, up to 1.3 %)", () => {
    const one = truePrevalence(23, 150, { sensitivity: 0.96, specificity: 0.89 }, { method: "blaker" });
    expect([one.prevalence, one.lower, one.upper].map((p) => p.toFixed(3))).toEqual([
      "0.051",
      "0.000",
      "0.128",
    ]);
    const two = truePrevalence(6, 151, { sensitivity: 0.964, specificity: 0.927 });
    expect(two.prevalence).toBe(0);
    expect(two.unclipped.toFixed(4)).toBe("-0.0373");
    expect(two.upper.toFixed(3)).toBe("0.013");
  });

  it("changes nothing for a perfect test", () => {
    const perfect = { sensitivity: 1, specificity: 1 };
    for (const method of ["clopper-pearson", "wilson", "blaker"] as const) {
      const { lower, upper } = binomialInterval(7, 40, { method });
      expect(truePrevalence(7, 40, perfect, { method })).toMatchObject({ prevalence: 7 / 40, lower, upper });
    }
  });

  it("the adjusted counts tend to known accuracy when the accuracy study is large", () => {
    const study = {
      truePositive: 9_000_000,
      affected: 10_000_000,
      trueNegative: 9_500_000,
      unaffected: 10_000_000,
    };
    const got = langReiczigelInterval(300_000, 1_000_000, study);
    const known = truePrevalence(
      300_000,
      1_000_000,
      { sensitivity: 0.9, specificity: 0.95 },
      { method: "wilson" },
    );
    expectClose(got.lower, known.lower, 1e-4, "lower");
    expectClose(got.upper, known.upper, 1e-4, "upper");
    expectClose(got.prevalence ?? Number.NaN, known.prevalence, 1e-12, "estimate");
  });

  it("is wider than with the accuracy taken as known", () => {
    const got = langReiczigelInterval(60, 200, {
      truePositive: 27,
      affected: 30,
      trueNegative: 38,
      unaffected: 40,
    });
    const known = truePrevalence(60, 200, { sensitivity: 0.9, specificity: 0.95 });
    expect(got.upper - got.lower).toBeGreaterThan(known.upper - known.lower);
    expectClose(got.prevalence ?? Number.NaN, known.prevalence, 1e-14, "estimate");
  });

  const study = { truePositive: 1, affected: 10, trueNegative: 2, unaffected: 10 };
  it.each([
    [
      () => truePrevalence(1, 10, { sensitivity: 0.4, specificity: 0.6 }),
      "sensitivity + specificity must be above 1, got 0.4 + 0.6",
    ],
    [
      () => truePrevalence(1, 10, { sensitivity: 1.2, specificity: 0.6 }),
      "sensitivity must lie from 0 to 1, got 1.2",
    ],
    [
      () => truePrevalence(1, 10, { sensitivity: 1, specificity: Number.NaN }),
      "specificity must lie from 0 to 1, got NaN",
    ],
    [() => langReiczigelInterval(1, 10, study), /must be above 1/],
    [() => langReiczigelInterval(1, 10, { ...study, affected: 0 }), /must be a whole number/],
  ])("%s is refused", (call, message) => expect(call).toThrow(message));
});

describe("proportion over strata", () => {
  it("weights by head count, with the textbook standard error", () => {
    const strata = [
      { affected: 3, examined: 10, population: 100 },
      { affected: 1, examined: 20, population: 300 },
    ];
    const got = stratifiedProportion(strata);
    expectClose(got.proportion, 0.25 * 0.3 + 0.75 * 0.05, 1e-15, "proportion");
    const variance = 0.0625 * 0.9 * (0.21 / 9) + 0.5625 * (1 - 20 / 300) * (0.0475 / 19);
    expectClose(got.standardError ?? 0, Math.sqrt(variance), 1e-14, "standard error");
    expect(got).toMatchObject({ population: 400, level: 0.95, method: "thinnest-stratum" });
  });

  it("with one stratum is that stratum's exact interval", () => {
    const { lower, upper } = finiteInterval(4, 15, 60);
    const got = stratifiedProportion([{ affected: 4, examined: 15, population: 60 }]);
    expectClose(got.lower, lower, 1e-13, "lower");
    expectClose(got.upper, upper, 1e-13, "upper");
  });

  it("keeps open what strata with none affected leave open, and is sure of strata examined whole", () => {
    const got = stratifiedProportion([
      { affected: 0, examined: 3, population: 100 },
      { affected: 0, examined: 3, population: 100 },
    ]);
    expect(got).toMatchObject({ proportion: 0, lower: 0, standardError: 0 });
    expect(got.upper).toBeGreaterThan(0.4);
    const whole = stratifiedProportion([
      { affected: 2, examined: 8, population: 8 },
      { affected: 5, examined: 12, population: 12 },
    ]);
    expect(whole).toMatchObject({ standardError: 0 });
    expectClose(whole.lower, 7 / 20, 1e-14, "lower");
    expectClose(whole.upper, 7 / 20, 1e-14, "upper");
  });

  it("has no standard error when one of many is examined, and one for a lone animal", () => {
    const other = { affected: 2, examined: 10, population: 30 };
    expect(
      stratifiedProportion([{ affected: 0, examined: 1, population: 30 }, other]).standardError,
    ).toBeNull();
    expect(
      stratifiedProportion([{ affected: 1, examined: 1, population: 30 }, other]).standardError,
    ).toBeNull();
    expect(
      stratifiedProportion([{ affected: 1, examined: 1, population: 1 }, other]).standardError,
    ).not.toBeNull();
  });

  // Every state of two or three strata, every sample: no simulation. [animals, examined] of each stratum.
  const designs: [number, number][][] = [
    [
      [12, 4],
      [12, 4],
    ],
    [
      [10, 5],
      [20, 3],
    ],
    [
      [6, 2],
      [6, 2],
      [6, 2],
    ],
    [
      [15, 10],
      [4, 2],
      [9, 3],
    ],
    [
      [30, 10],
      [10, 10],
    ],
    [
      [40, 2],
      [10, 8],
    ],
    [
      [30, 3],
      [30, 12],
    ],
    [
      [50, 5],
      [20, 10],
    ],
  ];
  it.each(designs.map((design) => ({ design, name: JSON.stringify(design) })))(
    "exact coverage over every state of $name",
    ({ design }) => {
      const { lowest, mean } = coverage(design, 0.95);
      console.log(`strata ${JSON.stringify(design)}: lowest exact coverage ${lowest}, mean ${mean}`);
      expect(lowest).toBeGreaterThanOrEqual(0.95);
      expect(mean).toBeLessThan(1);
    },
  );

  it.each([
    [() => stratifiedProportion([]), "strata must not be empty"],
    [
      () => stratifiedProportion([{ affected: 0, examined: 0, population: 5 }]),
      /examined must be a whole number from 1 to 5/,
    ],
    [
      () => stratifiedProportion([{ affected: 0, examined: 6, population: 5 }]),
      /examined must be a whole number/,
    ],
  ])("%s is refused", (call, message) => expect(call).toThrow(message));
});

/** Lowest and mean coverage of the stratified interval over all numbers affected, from exact products. */
function coverage(design: [number, number][], level: number): { lowest: number; mean: number } {
  const choose = (n: number, k: number): number => {
    let ways = 1;
    for (let i = 1; i <= k; i++) ways = (ways * (n - k + i)) / i;
    return k < 0 || k > n ? 0 : ways;
  };
  const product = <T>(lists: T[][]): T[][] =>
    lists.reduce<T[][]>((made, list) => made.flatMap((start) => list.map((item) => [...start, item])), [[]]);
  const upTo = (n: number) => Array.from({ length: n + 1 }, (_, i) => i);
  const intervals = product(design.map(([, n]) => upTo(n))).map((xs) => {
    const strata: StratumCount[] = xs.map((affected, h) => {
      const [population, examined] = design[h] ?? [0, 0];
      return { affected, examined, population };
    });
    return { xs, ...stratifiedProportion(strata, { level }) };
  });
  const total = design.reduce((sum, [population]) => sum + population, 0);
  let lowest = 1;
  let sum = 0;
  const states = product(design.map(([population]) => upTo(population)));
  for (const state of states) {
    const truth = state.reduce((all, d) => all + d, 0) / total;
    const chance = design.map(([population, n], h) =>
      upTo(n).map(
        (x) =>
          (choose(state[h] ?? 0, x) * choose(population - (state[h] ?? 0), n - x)) / choose(population, n),
      ),
    );
    let held = 0;
    for (const { xs, lower, upper } of intervals) {
      if (truth < lower - 1e-9 || truth > upper + 1e-9) continue;
      held += xs.reduce((p, x, h) => p * (chance[h]?.[x] ?? 0), 1);
    }
    lowest = Math.min(lowest, held);
    sum += held;
  }
  return { lowest, mean: sum / states.length };
}

describe("sign test", () => {
  it("is exact: twice the binomial tail at one half, never above 1", () => {
    for (let n = 0; n <= 60; n++) {
      const terms = binomialProbabilities(n, 0.5);
      for (let x = 0; x <= n; x++) {
        const tail = terms.slice(0, Math.min(x, n - x) + 1).reduce((sum, term) => sum + term, 0);
        expectClose(signTest(x, n - x), Math.min(1, 2 * tail), 1e-12, `${x} and ${n - x}`);
      }
    }
    expect(() => signTest(-1, 2)).toThrow(/positive must be a whole number/);
    expect(() => signTest(1, 2.5)).toThrow(/negative must be a whole number/);
  });
});
