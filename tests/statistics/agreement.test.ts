import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  binomialInterval,
  cohenKappa,
  type Icc,
  intraclassCorrelations,
  percentAgreement,
  studentTQuantile,
} from "../../src/statistics/index.ts";
import { runs } from "../random.ts";
import { expectClose } from "./reference.ts";

const round = (values: (number | null)[], digits: number) =>
  values.map((value) => (value === null ? "none" : value.toFixed(digits)));

describe("kappa, published examples", () => {
  it("unweighted and linear with their standard errors (SAS output of the table 0 4 1 / 0 8 0 / 0 1 5)", () => {
    const table = [
      [0, 4, 1],
      [0, 8, 0],
      [0, 1, 5],
    ];
    const plain = cohenKappa(table);
    expect(round([plain.kappa, plain.standardError, plain.lower, plain.upper], 4)).toEqual([
      "0.4842",
      "0.1380",
      "0.2137",
      "0.7547",
    ]);
    const linear = cohenKappa(table, { weights: "linear" });
    expect(round([linear.kappa, linear.standardError, linear.lower, linear.upper], 4)).toEqual([
      "0.4701",
      "0.1457",
      "0.1845",
      "0.7558",
    ]);
  });

  it("Cohen 1968, Psychol Bull 70:213-220: .492 unweighted, .348 with disagreements 0 1 3 / 1 0 6 / 3 6 0", () => {
    const table = [
      [88, 14, 18],
      [10, 40, 10],
      [2, 6, 12],
    ];
    const disagreement = [
      [0, 1, 3],
      [1, 0, 6],
      [3, 6, 0],
    ];
    const weights = disagreement.map((row) => row.map((value) => 1 - value / 6));
    expect(round([cohenKappa(table).kappa, cohenKappa(table, { weights }).kappa], 3)).toEqual([
      "0.492",
      "0.348",
    ]);
  });
});

describe("kappa", () => {
  it("is 1 with perfect agreement, 0 by chance, -1 when two readers always take the other of two", () => {
    const perfect = cohenKappa([
      [5, 0],
      [0, 7],
    ]);
    expect(perfect).toMatchObject({
      kappa: 1,
      standardError: 0,
      lower: null,
      reason: "agreement is perfect",
    });
    expect(
      cohenKappa([
        [4, 6],
        [8, 12],
      ]).kappa,
    ).toBeCloseTo(0, 14);
    expect(
      cohenKappa([
        [0, 5],
        [5, 0],
      ]).kappa,
    ).toBe(-1);
  });

  it("has no interval without spread: one subject, or each reader with a grade of his own", () => {
    for (const pigs of [1, 30]) {
      const got = cohenKappa([
        [0, pigs],
        [0, 0],
      ]);
      expect(got).toMatchObject({ kappa: 0, standardError: 0, lower: null, upper: null });
      expect(got.reason).toBe("the readers never agree");
    }
  });

  it("at its pole says that the readers never agree", () => {
    const opposite = [
      [0, 5],
      [5, 0],
    ];
    for (const weights of ["unweighted", "linear", "quadratic"] as const)
      expect(cohenKappa(opposite, { weights })).toMatchObject({
        kappa: -1,
        lower: null,
        upper: null,
        reason: "the readers never agree",
      });
  });

  it("has no value when both readers used one category only, and one when each used another", () => {
    expect(
      cohenKappa([
        [9, 0],
        [0, 0],
      ]),
    ).toMatchObject({
      kappa: null,
      standardError: null,
      lower: null,
      reason: "both readers used one category only",
    });
    expect(
      cohenKappa([
        [0, 9],
        [0, 0],
      ]).kappa,
    ).toBe(0);
  });

  const tables = fc
    .integer({ min: 2, max: 5 })
    .chain((k) =>
      fc.array(fc.array(fc.integer({ min: 0, max: 12 }), { minLength: k, maxLength: k }), {
        minLength: k,
        maxLength: k,
      }),
    )
    .filter((table) => table.flat().some((count) => count > 0));
  const weights = fc.constantFrom("unweighted", "linear", "quadratic");

  it("does not depend on who is called first, nor on the direction of the scale", () => {
    fc.assert(
      fc.property(tables, weights, (table, weight) => {
        const got = cohenKappa(table, { weights: weight });
        const exchanged = table.map((_, i) => table.map((row) => row[i] ?? 0));
        const upsideDown = table.toReversed().map((row) => row.toReversed());
        for (const other of [exchanged, upsideDown]) {
          const again = cohenKappa(other, { weights: weight });
          expect(again.kappa ?? 9).toBeCloseTo(got.kappa ?? 9, 10);
          expect(again.standardError ?? 9).toBeCloseTo(got.standardError ?? 9, 10);
        }
        if (got.kappa !== null) expect(got.kappa).toBeLessThanOrEqual(1);
        if (table.length === 2 && got.kappa !== null) {
          expect(cohenKappa(table).kappa).toBeCloseTo(got.kappa, 12);
        }
      }),
    );
  });

  it("standard error agrees with the jackknife in a large sample", () => {
    const table = [
      [310, 80, 4],
      [30, 200, 120],
      [60, 10, 186],
    ];
    for (const weight of ["unweighted", "linear", "quadratic"] as const) {
      const { n, kappa, standardError } = cohenKappa(table, { weights: weight });
      let squares = 0;
      for (const [i, row] of table.entries()) {
        for (const [j, count] of row.entries()) {
          const without = table.map((r, a) => r.map((c, b) => (a === i && b === j ? c - 1 : c)));
          squares += count * ((cohenKappa(without, { weights: weight }).kappa ?? 0) - (kappa ?? 0)) ** 2;
        }
      }
      expectClose(Math.sqrt(squares * ((n - 1) / n)), standardError ?? 0, 5e-3, weight);
    }
  });

  it("quadratic weights give nearly ICC(2,1) of the same readings (Fleiss & Cohen 1973)", () => {
    const table = [
      [31, 8, 0],
      [5, 20, 12],
      [6, 1, 36],
    ];
    const ratings = table.flatMap((row, i) =>
      row.flatMap((count, j) => Array.from({ length: count }, () => [i, j])),
    );
    const kappa = cohenKappa(table, { weights: "quadratic" }).kappa ?? 0;
    expectClose(kappa, intraclassCorrelations(ratings).agreement.icc ?? 0, 0.01, "kappa");
  });

  it.each([
    [[[1]], undefined, "table must have at least 2 categories, got 1"],
    [[[1, 2], [3]], undefined, "table[1] must have 2 counts, got 1"],
    [
      [
        [1, 2],
        [3, -1],
      ],
      undefined,
      "table[1][1] must be a whole number from 0 to 1000000000, got -1",
    ],
    [
      [
        [0, 0],
        [0, 0],
      ],
      undefined,
      "table must hold at least one subject",
    ],
    [
      [
        [1, 0],
        [0, 1],
      ],
      "cubic",
      "weights must be one of unweighted, linear, quadratic or a table, got cubic",
    ],
    [
      [
        [1, 0],
        [0, 1],
      ],
      [[1, 0]],
      "weights[1][0] must lie from 0 to 1, got NaN",
    ],
    [
      [
        [1, 0],
        [0, 1],
      ],
      [
        [1, 0],
        [0, 0.5],
      ],
      "weights[1][1] must be 1, got 0.5",
    ],
  ])("%j is refused", (table, wrong, message) => {
    const options = wrong === undefined ? {} : { weights: wrong as "linear" };
    expect(() => cohenKappa(table, options)).toThrow(new RangeError(message));
  });
});

describe("limits by leaving out one subject at a time", () => {
  /** By the words of the definition: each subject in turn is left out and all is computed again. */
  function jackknifed(value: number, without: readonly number[], readers: number, level: number) {
    const scaled = (r: number) => 0.5 * Math.log((1 + (readers - 1) * r) / (1 - r));
    const back = (z: number) => (Math.exp(2 * z) - 1) / (Math.exp(2 * z) + readers - 1);
    const n = without.length;
    const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / n;
    const own = without.map((r) => n * scaled(value) - (n - 1) * scaled(r));
    const from = own.map((one) => one - mean(own));
    const variance = mean(from.map((d) => d ** 2));
    const df = Math.min(n - 1, (2 * n) / (mean(from.map((d) => d ** 4)) / variance ** 2 - 1));
    const margin = studentTQuantile((1 + level) / 2, df) * Math.sqrt(variance / (n - 1));
    return [back(scaled(value) - margin), back(scaled(value) + margin)] as const;
  }
  const table = [
    [9, 2, 1, 0],
    [1, 6, 3, 0],
    [0, 2, 5, 2],
    [0, 0, 1, 4],
  ];
  const rows = table.flatMap((row, i) =>
    row.flatMap((count, j) => Array.from({ length: count }, () => [i, j] as const)),
  );

  it.each(["unweighted", "linear", "quadratic"] as const)("of kappa, %s", (weights) => {
    const without = rows.map(([a, b]) => {
      const fewer = table.map((row, i) => row.map((count, j) => count - (i === a && j === b ? 1 : 0)));
      return cohenKappa(fewer, { weights }).kappa ?? Number.NaN;
    });
    for (const level of [0.95, 0.8]) {
      const got = cohenKappa(table, { weights, level, limits: "jackknife" });
      const [lower, upper] = jackknifed(got.kappa ?? Number.NaN, without, 2, level);
      expectClose(got.lower ?? 0, lower, 1e-10, "lower");
      expectClose(got.upper ?? 0, upper, 1e-10, "upper");
      expect(got.kappa).toBe(cohenKappa(table, { weights }).kappa);
    }
  });

  it.each([2, 3, 5])("of ICC, %d readers", (readers) => {
    const ratings = rows.map(([a, b], pig) =>
      [a, b, a + ((pig * 7) % 3) - 1, 2 * b - 1, a + 40].slice(0, readers),
    );
    for (const form of ["agreement", "consistency"] as const) {
      const without = ratings.map(
        (_, left) =>
          intraclassCorrelations(ratings.filter((__, pig) => pig !== left))[form].icc ?? Number.NaN,
      );
      const got = intraclassCorrelations(ratings, { limits: "jackknife" })[form];
      const [lower, upper] = jackknifed(got.icc ?? Number.NaN, without, readers, 0.95);
      expectClose(got.lower ?? 0, lower, 1e-8, `${form} lower`);
      expectClose(got.upper ?? 0, upper, 1e-8, `${form} upper`);
    }
  });

  it("are not given where one subject makes all the disagreement, or all of them the same", () => {
    const one = [
      [20, 1],
      [0, 9],
    ];
    const reason = "but for one reading agreement is perfect";
    expect(cohenKappa(one, { limits: "jackknife" })).toMatchObject({ lower: null, reason });
    const ratings = Array.from({ length: 24 }, (_, pig) => [pig % 6, pig === 5 ? 4 : pig % 6]);
    for (const form of ["agreement", "consistency"] as const)
      expect(intraclassCorrelations(ratings, { limits: "jackknife" })[form]).toMatchObject({
        lower: null,
        reason,
      });
    const tiny = [
      [1, 1],
      [0, 0],
    ];
    expect(cohenKappa(tiny, { limits: "jackknife" }).lower).toBeNull();
  });

  it("hold the estimate, stay below 1, and turn with the scale", () => {
    const tables = fc
      .array(fc.array(fc.nat(9), { minLength: 3, maxLength: 3 }), { minLength: 3, maxLength: 3 })
      .filter((counts) => counts.flat().some((count) => count > 0));
    fc.assert(
      fc.property(tables, (counts) => {
        const got = cohenKappa(counts, { weights: "linear", limits: "jackknife" });
        const turned = cohenKappa(
          counts.toReversed().map((row) => row.toReversed()),
          { weights: "linear", limits: "jackknife" },
        );
        expect(turned.lower ?? 9).toBeCloseTo(got.lower ?? 9, 8);
        if (got.lower === null || got.kappa === null) return;
        expect(got.lower).toBeLessThanOrEqual(got.kappa);
        expect(got.upper).toBeGreaterThanOrEqual(got.kappa);
        expect(got.lower).toBeGreaterThanOrEqual(-1);
        expect(got.upper).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe("per cent agreement and PABAK", () => {
  it("of two categories is 2 po - 1, with the interval of the agreement carried over", () => {
    const { agreement, pabak } = percentAgreement([
      [40, 5],
      [6, 9],
    ]);
    const { lower, upper } = binomialInterval(49, 60);
    expect(agreement).toMatchObject({ proportion: 49 / 60, lower, upper });
    expectClose(pabak.value, 2 * (49 / 60) - 1, 1e-14, "PABAK");
    expectClose(pabak.lower, 2 * lower - 1, 1e-14, "lower");
    expectClose(pabak.upper, 2 * upper - 1, 1e-14, "upper");
  });

  it("of k categories is 0 at one in k, 1 when all agree; does not sink with a rare lesion as kappa does", () => {
    const third = percentAgreement([
      [1, 1, 1],
      [1, 1, 1],
      [1, 1, 1],
    ]);
    expect(third.pabak.value).toBeCloseTo(0, 14);
    const rare = [
      [95, 2],
      [3, 0],
    ];
    expect(percentAgreement(rare).pabak.value).toBeCloseTo(0.9, 14);
    expect(cohenKappa(rare).kappa).toBeLessThan(0);
  });
});

const SHROUT_FLEISS = [
  [9, 2, 5, 8],
  [6, 1, 3, 2],
  [8, 4, 6, 8],
  [7, 1, 2, 6],
  [10, 5, 6, 9],
  [6, 2, 4, 7],
];

describe("intraclass correlation", () => {
  it("Shrout & Fleiss 1979, Psychol Bull 86:420-428: mean squares and the four forms of readers who read all", () => {
    const got = intraclassCorrelations(SHROUT_FLEISS);
    const { subjects, readers, residual } = got.meanSquares;
    expect(round([subjects, readers, residual], 2)).toEqual(["11.24", "32.49", "1.02"]);
    const single = [got.agreement, got.consistency].map(({ icc }) => icc);
    const averaged = [got.agreementMean, got.consistencyMean].map(({ icc }) => icc);
    expect(round(single, 2)).toEqual(["0.29", "0.71"]);
    expect(round(averaged, 2)).toEqual(["0.62", "0.91"]);
    expect(round([got.agreement.lower, got.agreement.upper], 4)).toEqual(["0.0188", "0.7611"]);
  });

  it("the other intervals, by the printed formulas in SciPy 1.17.1", () => {
    const got = intraclassCorrelations(SHROUT_FLEISS);
    const wanted: [Icc, number, number][] = [
      [got.consistency, 0.3424647650339253, 0.9458582599553595],
      [got.consistencyMean, 0.6756747138163046, 0.9858916781690623],
    ];
    for (const [icc, lower, upper] of wanted) {
      expectClose(icc.lower ?? 0, lower, 1e-9, "lower");
      expectClose(icc.upper ?? 0, upper, 1e-9, "upper");
    }
    // Spearman-Brown: the mean of four readers.
    const { lower } = got.agreement;
    expectClose(
      got.agreementMean.lower ?? 0,
      (4 * (lower ?? 0)) / (1 + 3 * (lower ?? 0)),
      1e-12,
      "stepped up",
    );
  });

  it("a reader who is always 2 higher keeps consistency and costs agreement", () => {
    const ratings = [3, 7, 1, 9, 4, 4, 8].map((value) => [value, value + 2]);
    const got = intraclassCorrelations(ratings);
    expect(got.consistency).toMatchObject({ icc: 1, lower: null, reason: "the readings do not differ" });
    expect(got.agreement.icc).toBeLessThan(0.85);
    expect(got.agreement.reason).toBe(
      "the readers differ by the same amount on every subject, or not at all",
    );
  });

  it("of the mean of the readings stays its own where ICC(2,1) has no interval: one of two always 1 higher", () => {
    // By hand: JMS = 2, EMS = 0, so BMS / (BMS + JMS / 4).
    const got = intraclassCorrelations([
      [1, 2],
      [2, 3],
      [3, 4],
      [5, 6],
    ]);
    const bms = (2 * (1.75 ** 2 + 0.75 ** 2 + 0.25 ** 2 + 2.25 ** 2)) / 3;
    expect(got.agreementMean.icc).toBeCloseTo(bms / (bms + 2 / 4), 12);
    expect(round([got.agreementMean.icc, got.agreement.icc], 3)).toEqual(["0.921", "0.854"]);
    expect(got.agreementMean).toMatchObject({ lower: null, reason: got.agreement.reason });
  });

  it.each([
    [
      "no variance at all",
      [
        [2, 2],
        [2, 2],
        [2, 2],
      ],
      null,
    ],
    [
      "no variance at all, in tenths",
      [
        [0.1, 0.1, 0.1],
        [0.1, 0.1, 0.1],
        [0.1, 0.1, 0.1],
      ],
      null,
    ],
    [
      "subjects that do not differ",
      [
        [1, 2],
        [2, 1],
        [1, 2],
      ],
      "a number",
    ],
  ])("%s: no interval", (_name, ratings, icc) => {
    const got = intraclassCorrelations(ratings);
    for (const one of [got.agreement, got.consistency]) {
      expect(one).toMatchObject({ lower: null, upper: null });
      expect(one.reason).not.toBeNull();
      if (icc === null) expect(one.icc).toBeNull();
      else expect(one.icc).toBeLessThanOrEqual(0);
    }
  });

  it("has no mean agreement at its pole, 8/3 + (6 - 14) / 3 = 0, whatever the rounding", () => {
    const pole = [
      [3, 7],
      [7, 3],
      [6, 0],
    ];
    expect(intraclassCorrelations(pole).agreementMean.icc).toBeNull();
    const moved = pole.map((row) => row.map((value) => 5 * value - 3));
    expect(intraclassCorrelations(moved).agreementMean.icc).toBeNull();
  });

  it("holds its estimate, does not depend on order, moves with the scale", () => {
    const table = fc.tuple(fc.integer({ min: 3, max: 12 }), fc.integer({ min: 2, max: 4 })).chain(([n, k]) =>
      fc.array(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: k, maxLength: k }), {
        minLength: n,
        maxLength: n,
      }),
    );
    fc.assert(
      fc.property(table, (ratings) => {
        const got = intraclassCorrelations(ratings);
        const other = intraclassCorrelations(
          ratings.toReversed().map((row) => row.toReversed().map((v) => 5 * v - 3)),
        );
        for (const form of ["agreement", "consistency", "agreementMean", "consistencyMean"] as const) {
          const { icc, lower, upper } = got[form];
          expect(other[form].icc ?? 9).toBeCloseTo(icc ?? 9, 7);
          if (icc === null || lower === null || upper === null) continue;
          expect(lower, form).toBeLessThanOrEqual(icc + 1e-9);
          expect(upper, form).toBeGreaterThanOrEqual(icc - 1e-9);
          expect(upper).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: runs(300) },
    );
  });

  it.each([
    [[], "ratings must be of at least 2 subjects by 2 readers, got 0 by 0"],
    [[[1, 2]], "ratings must be of at least 2 subjects by 2 readers, got 1 by 2"],
    [[[1], [2]], "ratings must be of at least 2 subjects by 2 readers, got 2 by 1"],
    [[[1, 2], [3]], "ratings[1] must have 2 values, got 1"],
    [
      [
        [1, 2],
        [3, Number.NaN],
      ],
      "ratings[1][1] must be a number of at most 1e+150 in size, got NaN",
    ],
  ])("%j is refused", (ratings, message) => {
    expect(() => intraclassCorrelations(ratings)).toThrow(new RangeError(message));
  });
});
