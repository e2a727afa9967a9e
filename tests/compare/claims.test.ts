/** What a comparison may not claim: few pigs, another mix of groups, shared pens. Every p is counted by hand beside it. */
import { describe, expect, it } from "vitest";
import { type CompareOptions, compareCases } from "../../src/compare/index.ts";
import { affected, farmOf, type Pig } from "./farm.ts";

const snout: CompareOptions = { indicators: ["snout-grade-2-up"] };
const compared = (visits: Readonly<Record<string, readonly Pig[]>>, more: CompareOptions = {}) => {
  const { answer, blocks } = compareCases(farmOf(visits), { ...snout, ...more });
  const [one] = blocks[0]?.comparisons ?? [];
  if (one === undefined) throw new Error("nothing was compared");
  return { answer, one };
};

describe("a claim", () => {
  it("is not made of a trend in 2, 2 and 2 pigs: even the clearest order comes in 2 of 20 ways", () => {
    // 0 of 2, 1 of 2, 2 of 2: as far from the middle or farther in 4 of the C(6, 3) ways to share three affected out.
    const { answer, one } = compared({
      "2026-01-01": affected(0, 2),
      "2026-02-01": affected(1, 2),
      "2026-03-04": affected(2, 2),
    });
    expect(one.result?.p).toBeCloseTo(4 / 20, 12);
    expect(one.shown).toBe(false);
    expect(answer).toMatch(/nothing can be shown/);
  });

  it("is not made of a change that is one of the mix of groups", () => {
    // 9 of 12 against 3 of 12 all together (Fisher 0.039), yet 8 of 10 against 2 of 2, and 1 of 2 against 1 of 10 within groups.
    const { one } = compared({
      "2026-01-01": [...affected(8, 10, { group: "a" }), ...affected(1, 2, { group: "b" })],
      "2026-06-01": [...affected(2, 2, { group: "a" }), ...affected(1, 10, { group: "b" })],
    });
    expect(one.result?.p).toBeCloseTo(0.0391, 3);
    expect(one.claim_on).toBe("strata");
    expect(one.p).toBeGreaterThan(0.5);
    expect(one.shown).toBe(false);
  });

  it("is not made where the sides have no group in common", () => {
    const { answer, one } = compared({
      "2026-01-01": affected(0, 6, { group: "a" }),
      "2026-06-01": affected(6, 6, { group: "b" }),
    });
    expect(one).toMatchObject({ claim_on: "none", p: null, shown: false });
    expect(answer).toContain("cannot be told apart from the difference between groups");
  });

  it("is not made of 30 and 30 pigs of two pens each, one of them full of it", () => {
    const { answer, one } = compared({
      "2026-01-01": [...affected(0, 15, { pen: 1 }), ...affected(0, 15, { pen: 2 })],
      "2026-06-01": [...affected(15, 15, { pen: 1 }), ...affected(0, 15, { pen: 2 })],
    });
    expect(one.result?.p).toBeLessThan(0.001);
    expect(one).toMatchObject({ claim_on: "none", shown: false });
    expect(answer).toContain("at least 5 on each side are needed");
  });

  it("rests on the pens where there are enough of them, and on the pigs when asked not to look at pens", () => {
    const pens = (sick: readonly number[]): Pig[] =>
      sick.flatMap((x, pen) => affected(x, 5, { pen: pen + 1 }));
    const visits = { "2026-01-01": pens([5, 5, 4, 0, 0, 5]), "2026-06-01": pens([0, 0, 0, 1, 0, 0]) };
    const { one } = compared(visits);
    expect(one.claim_on).toBe("pens");
    const single = compared(visits, { cluster: "none" }).one;
    expect(single.claim_on).toBe("pigs");
    expect(one.p ?? 0).toBeGreaterThan(single.p ?? 1);
  });

  it("gives the difference by pens limits at the t of its test, over the larger of the two design effects", () => {
    const pens = (sick: readonly number[]): Pig[] =>
      sick.flatMap((x, pen) => affected(x, 10, { pen: pen + 1 }));
    // 18 and 30 of 50.
    const { one } = compared({ "2026-01-01": pens([8, 7, 2, 1, 0]), "2026-06-01": pens([10, 9, 8, 2, 1]) });
    if (one.result?.test !== "fisher-exact" || one.result.penned === null) throw new Error("not by pens");
    const { difference, design_effect, effective } = one.result.penned;
    const effect = (sick: readonly number[]): number => {
      const p = sick.reduce((a, b) => a + b, 0) / 50;
      return ((5 / 4) * sick.reduce((sum, x) => sum + (x - 10 * p) ** 2, 0)) / 50 / (p * (1 - p));
    };
    const [first, second] = [effect([8, 7, 2, 1, 0]), effect([10, 9, 8, 2, 1])];
    expect(design_effect[0]).toBeCloseTo(first, 10);
    expect(design_effect[1]).toBeCloseTo(second, 10);
    const larger = Math.max(first, second);
    expect(effective[0]).toBeCloseTo(50 / larger, 10);
    expect(effective[1]).toBeCloseTo(50 / larger, 10);
    // t of 0.975 with 7 degrees of freedom (Satterthwaite, 7.9 rounded down), as printed in tables: 2.3646.
    const t = 2.3646242515927844;
    const wilson = (p: number, sign: number): number => {
      const n = 50 / larger;
      const half = t * Math.sqrt((p * (1 - p)) / n + (t * t) / (4 * n * n));
      return (p + (t * t) / (2 * n) + sign * half) / (1 + (t * t) / n);
    };
    expect(difference.lower ?? 0).toBeCloseTo(
      0.24 - Math.hypot(0.6 - wilson(0.6, -1), wilson(0.36, 1) - 0.36),
      9,
    );
    expect(difference.upper ?? 0).toBeCloseTo(
      0.24 + Math.hypot(wilson(0.6, 1) - 0.6, 0.36 - wilson(0.36, -1)),
      9,
    );
  });
});

describe("three groups or more", () => {
  it("0 of 5, 0 of 5 and 3 of 5: 30 of 455 ways, where chi-squared says 0.03", () => {
    const { one } = compared(
      {
        "2026-01-01": [
          ...affected(0, 5, { group: "a" }),
          ...affected(0, 5, { group: "b" }),
          ...affected(3, 5, { group: "c" }),
        ],
      },
      { between: "groups" },
    );
    expect(one.result?.p).toBeCloseTo(30 / 455, 12);
    expect(one.shown).toBe(false);
  });
});

describe("a ratio over nothing", () => {
  it("is without limit, and keeps the limit that is known", () => {
    const { one } = compared({ "2026-01-01": affected(0, 6), "2026-06-01": affected(6, 6) });
    if (one.result?.test !== "fisher-exact") throw new Error("another test");
    expect(one.result.odds_ratio).toMatchObject({ value: null, upper: null, unbounded: true });
    expect(one.result.odds_ratio.lower ?? 0).toBeGreaterThan(3.4);
    expect(one.result.risk_ratio).toMatchObject({ value: null, unbounded: true });
  });
});
