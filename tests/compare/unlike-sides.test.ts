/** Three visits with another mix of groups, scores that cannot be told apart, and shared pens of scores. */
import { describe, expect, it } from "vitest";
import { type CompareOptions, compareCases } from "../../src/compare/index.ts";
import { permutedTrend, riskDifference, slopeWithin } from "../../src/statistics/index.ts";
import { affected, farmOf, type Pig } from "./farm.ts";

const snout: CompareOptions = { indicators: ["snout-grade-2-up"] };
const grade: CompareOptions = { scales: ["maff-1978"] };
const grades = (values: readonly number[], some: Partial<Pig> = {}): Pig[] =>
  values.map((value) => ({ grade: value, ...some }));
const only = (visits: Readonly<Record<string, readonly Pig[]>>, asked: CompareOptions) => {
  const report = compareCases(farmOf(visits), asked);
  const [one] = report.blocks[0]?.comparisons ?? [];
  if (one === undefined) throw new Error("nothing was compared");
  return { report, one };
};

describe("three visits with another mix of groups", () => {
  const mix = (a: [number, number], b: [number, number]): Pig[] => [
    ...affected(...a, { group: "a" }),
    ...affected(...b, { group: "b" }),
  ];

  it("claim the trend within groups, not that of the mix", () => {
    // Group a always all affected, group b never; more of a come each time.
    const { one } = only(
      {
        "2026-01-01": mix([2, 2], [0, 10]),
        "2026-01-31": mix([6, 6], [0, 6]),
        "2026-03-02": mix([10, 10], [0, 2]),
      },
      snout,
    );
    expect(one.result?.p).toBeLessThan(0.01);
    expect(one).toMatchObject({ claim_on: "strata", p: 1, shown: false });
  });

  it("claim nothing when no group comes twice; scores of groups that come again are claimed within them", () => {
    const apart = {
      "2026-01-01": affected(0, 6, { group: "a" }),
      "2026-02-01": affected(3, 6, { group: "b" }),
      "2026-03-01": affected(6, 6, { group: "c" }),
    };
    expect(only(apart, snout).one).toMatchObject({
      claim_on: "none",
      p: null,
      p_adjusted: null,
      shown: false,
    });
    const mixed = {
      ...apart,
      "2026-02-01": [...affected(2, 3, { group: "a" }), ...affected(1, 3, { group: "c" })],
    };
    // Grades 3 and 0 in place of yes and no: the ranks of Cuzick's test are then those of Armitage's.
    const scored = only(mixed, grade).one;
    const counted = only(mixed, snout).one;
    expect(scored.claim_on).toBe("strata");
    expect(scored.p).toBeCloseTo(
      permutedTrend(
        [
          [
            { place: 0, values: [0, 0, 0, 0, 0, 0] },
            { place: 31, values: [1, 1, 0] },
          ],
          [
            { place: 31, values: [1, 0, 0] },
            { place: 59, values: [1, 1, 1, 1, 1, 1] },
          ],
        ],
        { ranked: true },
      ).p,
      12,
    );
    expect(counted.claim_on).toBe("strata");
  });
});

describe("two visits of another mix", () => {
  it("claim scores within groups: every way to share the scores of each group out, tried", () => {
    const first = { a: [3, 4], b: [0, 1, 1] };
    const second = { a: [0, 1, 2], b: [0, 0] };
    const { one } = only(
      {
        "2026-01-01": [...grades(first.a, { group: "a" }), ...grades(first.b, { group: "b" })],
        "2026-06-01": [...grades(second.a, { group: "a" }), ...grades(second.b, { group: "b" })],
      },
      grade,
    );
    // Both groups have five pigs, so their rank sums weigh alike. Ranks of a: 1 2 3 | 4 5; of b: 2 4.5 4.5 | 2 2.
    const sums = (ranks: readonly number[], drawn: number, from = 0): number[] =>
      drawn === 0
        ? [0]
        : ranks
            .slice(from)
            .flatMap((rank, i) => sums(ranks, drawn - 1, from + i + 1).map((sum) => sum + rank));
    const all = sums([1, 2, 3, 4, 5], 3).flatMap((a) => sums([2, 2, 2, 4.5, 4.5], 2).map((b) => a + b));
    const mean = all.reduce((sum, one) => sum + one, 0) / all.length;
    const far = all.filter((sum) => Math.abs(sum - mean) >= Math.abs(1 + 2 + 3 + 2 + 2 - mean) - 1e-9);
    expect(one.claim_on).toBe("strata");
    expect(one.p).toBeCloseTo(far.length / all.length, 9);
  });
});

describe("too few", () => {
  it("is said of 3 and 4 pigs wholly apart in their scores: 2 of 35 ways, not 1", () => {
    const visits = { "2026-01-01": grades([3, 4, 5]), "2026-06-01": grades([0, 0, 1, 2]) };
    const { one, report } = only(visits, grade);
    expect(one.least_p).toBeCloseTo(2 / 35, 12);
    expect(report.blocks[0]?.too_few).toBe(true);
    expect(report.answer).toBe(
      "With 3 and 4 pigs nothing can be shown, not even if every pig of one side scored above every pig of the other.",
    );
    // Of yes and no they could: all three against none of four comes in 1 of 35 ways.
    expect(only(visits, snout).report.blocks[0]?.too_few).toBe(false);
  });
});

describe("a shift of ties", () => {
  it("has no interval from 0 to 0, and says why", () => {
    const { one, report } = only(
      { "2026-01-01": grades([0, 0, 0, 0, 0, 0, 0, 1]), "2026-06-01": grades([0, 0, 0, 0, 0, 0, 0, 0]) },
      grade,
    );
    if (one.result?.test !== "mann-whitney") throw new Error("another test");
    expect(one.result.shift).toMatchObject({ value: 0, lower: null, upper: null, reason: "ties" });
    expect(report.answer).toContain("no interval (most pairs of pigs lie just so far apart)");
  });
});

describe("scores of shared pens", () => {
  it("are ranked by the means of the pens: five against five wholly apart, 2 of 252 ways", () => {
    const pens = (low: number): Pig[] =>
      [1, 2, 3, 4, 5].flatMap((pen) => grades([low, low + 1, low], { pen }));
    const { one } = only({ "2026-01-01": pens(3), "2026-06-01": pens(0) }, grade);
    expect(one.claim_on).toBe("pens");
    // All means of a side are equal: the rank sums of the two sides are the farthest there are.
    expect(one.p).toBeCloseTo(2 / 252, 12);
    expect(one.shown).toBe(true);
  });
});

describe("three visits", () => {
  const visits = (...counts: readonly [number, number][]) =>
    Object.fromEntries(counts.map(([yes, of], at) => [`2026-0${at + 1}-01`, affected(yes, of)]));

  it("have the difference from first to last with the limits of two sides: 56 of 70 to 48 of 80", () => {
    const { one } = only(visits([56, 70], [50, 70], [48, 80]), snout);
    if (one.result?.test !== "cochran-armitage") throw new Error("another test");
    const { value, lower, upper } = one.result.first_to_last;
    expect(value).toBeCloseTo(-0.2, 12);
    const two = riskDifference({ x1: 48, n1: 80, x2: 56, n2: 70 });
    expect([lower, upper]).toEqual([two.lower, two.upper]);
    expect([lower?.toFixed(2), upper?.toFixed(2)]).toEqual(["-0.34", "-0.04"]);
  });

  it("have it by pens where pigs share them", () => {
    const pens = (sick: readonly number[]): Pig[] =>
      sick.flatMap((x, pen) => affected(x, 10, { pen: pen + 1 }));
    const first = pens([8, 7, 2, 1, 0]);
    const last = pens([10, 9, 8, 2, 1]);
    const three = only({ "2026-01-01": first, "2026-02-01": first, "2026-06-01": last }, snout).one;
    const two = only({ "2026-01-01": first, "2026-06-01": last }, snout).one;
    if (three.result?.test !== "cochran-armitage" || two.result?.test !== "fisher-exact")
      throw new Error("tests");
    expect(three.result.first_to_last).toEqual(two.result.penned?.difference);
  });

  it("have the shift of scores, and groups have none", () => {
    const score = (by: number): Pig[] => grades([0, 1, 1, 2, 2, 3].map((value) => value + by));
    const { one } = only({ "2026-01-01": score(2), "2026-02-01": score(1), "2026-06-01": score(0) }, grade);
    if (one.result?.test !== "cuzick") throw new Error("another test");
    expect(one.result.first_to_last?.value).toBe(-2);
    const groups = ["a", "b", "c"].flatMap((group) => grades([0, 1, 2, 3], { group }));
    const apart = only({ "2026-01-01": groups }, { ...grade, between: "groups" }).one;
    expect(apart.result?.test).toBe("kruskal-wallis");
    expect(apart.result).not.toHaveProperty("first_to_last");
  });

  describe("whose pigs share pens", () => {
    const pens = (sick: readonly number[]): Pig[] =>
      sick.flatMap((x, pen) => affected(x, 4, { pen: pen + 1 }));
    const visits = {
      "2026-01-01": pens([4, 3, 4, 2, 3]),
      "2026-01-31": pens([2, 3, 1, 2, 2]),
      "2026-03-02": pens([1, 0, 2, 0, 1]),
    };
    const shares = [
      { place: 0, values: [1, 0.75, 1, 0.5, 0.75] },
      { place: 30, values: [0.5, 0.75, 0.25, 0.5, 0.5] },
      { place: 60, values: [0.25, 0, 0.5, 0, 0.25] },
    ];

    it("have the trend and the slope of the pens' shares", () => {
      const { one, report } = only(visits, snout);
      if (one.result?.test !== "cochran-armitage") throw new Error("another test");
      expect(one).toMatchObject({ claim_on: "pens", no_claim: null, shown: true });
      expect(one.p).toBe(permutedTrend([shares]).p);
      const { slope, lower, upper } = slopeWithin([shares.map((one) => ({ ...one, animals: 20 }))]);
      const { value, lower: from, upper: to } = one.result.penned?.difference ?? {};
      expect([value, from, to]).toEqual([slope, lower, upper].map((one) => (one ?? 0) * 60));
      // Means 0.8, 0.5 and 0.2: the line falls by 0.6.
      expect(value).toBeCloseTo(-0.6, 12);
      expect(report.answer).toContain("became rarer");
      expect(report.answer).toContain("60.0 fewer of every 100 pigs");
    });

    it("have those of the pens' mean scores: grade 3 for yes", () => {
      const { one, report } = only(visits, grade);
      if (one.result?.test !== "cuzick") throw new Error("another test");
      expect(one).toMatchObject({ claim_on: "pens", shown: true });
      expect(one.result.first_to_last).toBeNull();
      expect(one.result.penned?.difference.value).toBeCloseTo(-1.8, 12);
      expect(one.p).toBe(only(visits, snout).one.p);
      expect(report.answer).toContain("became lower");
    });

    it("claim nothing where a visit has fewer than five pens", () => {
      const { one } = only({ ...visits, "2026-03-02": pens([1, 0, 2, 0]) }, snout);
      expect(one.no_claim).toContain("at least 5 on each side are needed");
    });
  });
});
