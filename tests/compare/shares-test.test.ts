/** The test of two shares that the settings choose. */
import { describe, expect, it } from "vitest";
import { compareCases } from "../../src/compare/index.ts";
import { compareText } from "../../src/formats/compare/document.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { planCompare, planSay } from "../../src/plan/index.ts";
import { fisherPower } from "../../src/statistics/index.ts";
import { affected, farmOf, type Pig } from "./farm.ts";

const compared = (rule: string | null, visits: Readonly<Record<string, readonly Pig[]>>) =>
  compareCases(farmOf(visits, {}, rule === null ? {} : { shares_test: rule }), {
    indicators: ["snout-grade-2-up"],
  });
const seven = { "2026-01-01": affected(7, 10), "2026-06-01": affected(2, 10) };

describe("shares_test", () => {
  it.each([
    [null, 0.06977851869492736, "Fisher's exact p 0.070"],
    ["fisher", 0.06977851869492736, "Fisher's exact p 0.070"],
    // SciPy 1.17.1: boschloo_exact two-sided; and twice the smaller hypergeometric tail with half of the table itself.
    ["boschloo", 0.04138946533203129, "Boschloo's exact p 0.041"],
    ["mid-p", 0.037628006668254346, "Fisher's mid-p 0.038"],
  ])("%s: 7 of 10 against 2 of 10", (rule, p, words) => {
    const report = compared(rule, seven);
    const one = report.blocks[0]?.comparisons[0];
    expect(Math.abs((one?.p ?? 0) - p)).toBeLessThan(1e-7);
    if (one?.result?.test !== "fisher-exact") throw new Error("another test");
    expect(one.result.rule).toBe(rule ?? "fisher");
    expect(one.result.p_fisher).toBeCloseTo(0.06977851869492736, 12);
    expect(one.shown).toBe(p < 0.05);
    const text = compareText(report, makeStyle(false));
    expect(text).toContain(words);
    expect(text.includes("chosen in carcase.yaml")).toBe(rule === "boschloo" || rule === "mid-p");
  });

  it("mid-p holds within strata too; Boschloo's has no strata, and Fisher's stays", () => {
    const mix = {
      "2026-01-01": [...affected(5, 6, { group: "a" }), ...affected(2, 4, { group: "b" })],
      "2026-06-01": [...affected(1, 4, { group: "a" }), ...affected(1, 6, { group: "b" })],
    };
    const pOf = (rule: string) => compared(rule, mix).blocks[0]?.comparisons[0]?.p ?? 0;
    expect(pOf("boschloo")).toBe(pOf("fisher"));
    expect(pOf("mid-p")).toBeLessThan(pOf("fisher"));
    expect(compareText(compared("mid-p", mix), makeStyle(false))).toContain("Mantel-Haenszel mid-p");
  });

  it("knows what its own test could show at most: 3 and 3 pigs by Boschloo's", () => {
    // All of 3 and none of 3: 2 x 0.5^6 = 0.031 where Fisher's is 2 / 20.
    const all = { "2026-01-01": affected(3, 3), "2026-06-01": affected(0, 3) };
    expect(compared("fisher", all).blocks[0]).toMatchObject({ too_few: true });
    const block = compared("boschloo", all).blocks[0];
    expect(block).toMatchObject({ too_few: false });
    expect(block?.comparisons[0]?.p).toBeCloseTo(2 * 0.5 ** 6, 9);
  });
});

describe("plan compare", () => {
  it("plans for the test that will be made, and names it", () => {
    const plan = planCompare({ from: 0.1, to: 0.3, test: "boschloo", over: [20, 500] });
    // Kieser 2018: 126 in both groups.
    expect(plan.answer.n).toBe(63);
    expect(plan.sentences[0]).toContain("Boschloo's exact test sees it");
    expect(plan.table.rows.map(({ n }) => n)).toEqual([20, 63]);
    expect(plan.sources.map(({ cite }) => cite).join()).toContain("Boschloo 1970");
  });
});

describe("plan say", () => {
  it("speaks of the test that will be made: 20 pigs by Boschloo's see more than by Fisher's", () => {
    const [fisher, boschloo] = [planSay({ pigs: 20 }), planSay({ pigs: 20, test: "boschloo" })];
    expect(fisher.sentences.join(" ")).toContain("(Fisher's exact test at 5 %)");
    expect(boschloo.sentences.join(" ")).toContain("(Boschloo's exact test at 5 %)");
    expect(boschloo.sentences.join(" ")).not.toContain("Fisher");
    expect(boschloo.sources.map(({ cite }) => cite).join()).not.toContain("Fisher");
    const fall = Number(boschloo.answer.least_fall_to);
    expect(fall).toBeGreaterThan(Number(fisher.answer.least_fall_to));
    expect(fisherPower(20, 20, { p1: 0.5, p2: fall }, 0.05, "boschloo")).toBeCloseTo(0.8, 6);
  });

  it("takes Fisher's where compare would, above 300 pigs a visit", () => {
    expect(planSay({ pigs: 301, test: "boschloo" }).asked.test).toBe("fisher");
    expect(planSay({ pigs: 301, test: "boschloo" }).answer).toEqual(planSay({ pigs: 301 }).answer);
  });
});
