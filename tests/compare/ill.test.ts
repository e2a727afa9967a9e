/** Pigs chosen for signs against healthy comparison pigs of one visit. */
import { describe, expect, it } from "vitest";
import { compareCases } from "../../src/compare/index.ts";
import { compareText } from "../../src/formats/compare/document.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { affected, farmOf, type Pig } from "./farm.ts";

const ill = (yes: number, of: number): Pig[] => affected(yes, of, { basis: "clinical" });
const healthy = (yes: number, of: number): Pig[] => affected(yes, of, { basis: "comparison" });
const contrast = (visits: Readonly<Record<string, readonly Pig[]>>) =>
  compareCases(farmOf(visits), { indicators: ["snout-grade-2-up"], between: "ill" });

describe("ill against comparison pigs", () => {
  it("has the exact odds ratio of 3 of 4 against 1 of 4: 6.408 (0.212 to 626), by R, and Fisher's p 0.4857", () => {
    const report = contrast({ "2026-01-01": [...ill(3, 4), ...healthy(1, 4)] });
    const one = report.blocks[0]?.comparisons[0];
    if (one?.result?.test !== "fisher-exact") throw new Error("another test");
    expect(one.result.odds_ratio.value).toBeCloseTo(6.40832, 4);
    expect(one.result.odds_ratio.lower).toBeCloseTo(0.21174, 4);
    expect(one.result.odds_ratio.upper).toBeCloseTo(626.2435, 2);
    expect(one.p).toBeCloseTo(0.4857, 4);
    expect(one.result.risk_ratio.value).toBeCloseTo(3, 12);
  });

  it("is a contrast and no prevalence: the answer has ratios, and nothing 'of every 100 pigs'", () => {
    const report = contrast({ "2026-01-01": [...ill(9, 10), ...healthy(1, 10)] });
    expect(report.blocks[0]).toMatchObject({
      basis: null,
      mixed: false,
      prevalence: false,
      comparable: true,
    });
    expect(report.answer).toMatch(
      /^Of the pigs examined \(ill and comparison pigs, a contrast\), more had snout grade 2 or more in pigs chosen for signs \(9 of 10\) than in healthy comparison pigs \(1 of 10\): odds ratio .*, risk ratio 9 /,
    );
    const text = compareText(report, makeStyle(false));
    expect(text).not.toContain("of every 100 pigs");
    expect(text.replaceAll(/\s+/g, " ")).toContain("It is no prevalence");
  });

  it("takes each visit for itself, leaves out pigs chosen in another way, and names the bases where one is missing", () => {
    const both = {
      "2026-01-01": [...ill(3, 3), ...healthy(0, 3), ...affected(1, 4)],
      "2026-06-01": ill(2, 2),
    };
    const report = contrast(both);
    expect(report.blocks.map(({ visit }) => visit)).toEqual(["alder-2026-01-01"]);
    expect(report.left_out).toEqual([
      "4 cases that were chosen in another way",
      "2 cases of alder-2026-06-01: only one kind of pig, ill or comparison",
    ]);
    expect(() => contrast({ "2026-01-01": ill(3, 3) })).toThrow("basis: comparison");
  });
});
