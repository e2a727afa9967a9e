import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { makeStyle } from "../../src/formats/page/style.ts";
import { planCsv, planJson } from "../../src/formats/plan/data.ts";
import { planText } from "../../src/formats/plan/document.ts";
import { type Plan, planCompare, planDetect, planEstimate, planSay } from "../../src/plan/index.ts";
import {
  binomialInterval,
  detectionSampleSize,
  finiteInterval,
  fisherPower,
  herdAccuracy,
  hypergeometricProbability,
} from "../../src/statistics/index.ts";

const text = ({ sentences }: Plan): string => sentences.join("\n");

describe("detect", () => {
  it("600 pigs, 5 %: 56, with D, the rule, the formula and what none of 56 would mean", () => {
    const plan = planDetect({ herd: 600, prevalence: 0.05 });
    expect(plan.answer).toMatchObject({ affected: 30, n: 56 });
    expect(text(plan)).toContain("Examine 56 of the 600 pigs");
    expect(text(plan)).toContain("D = 30 affected, rounded up (ceil)");
    expect(text(plan)).toContain("Cannon & Roe gives 56");
    // The other way round: 29 affected pigs would be missed by 56 more often than in 5 of 100 draws, 30 would not.
    expect(text(plan)).toContain("at most 29 of the 600");
  });

  it("its table is the published table, row by row", () => {
    const file = new URL("../fixtures/detection-table.json", import.meta.url);
    const { cells } = JSON.parse(readFileSync(file, "utf8")) as { cells: number[][] };
    for (const herd of [20, 120, 600, 5000]) {
      const rows = cells.filter(([population]) => population === herd);
      const prevalences = rows.map(([, prevalence]) => prevalence ?? 0);
      const { table } = planDetect({ herd, prevalence: 0.05, over: prevalences });
      const ascending = [...rows].sort((a, b) => (a[1] ?? 0) - (b[1] ?? 0));
      expect(table.rows.map((row) => [row.n, row.cannon_roe])).toEqual(
        ascending.map(([, , n, formula]) => [n, formula]),
      );
    }
  });

  it("prints what the rounding rule does: 50 pigs, 5 %", () => {
    expect(planDetect({ herd: 50, prevalence: 0.05 }).answer).toMatchObject({ affected: 3, n: 31 });
    const down = planDetect({ herd: 50, prevalence: 0.05, rounding: "floor" });
    expect(down.answer).toMatchObject({ affected: 2, n: 39 });
    expect(text(down)).toContain("D = 2 affected, rounded down (floor)");
  });

  it("next to certainty does not contradict itself, and shows where the numbers differ", () => {
    const plan = planDetect({ herd: 600, prevalence: 0.05, confidence: 0.999999999999 });
    expect(plan.answer.n).toBe(353);
    expect(text(plan)).toContain("there is 99.9999999999 % confidence that at most 29 of the 600");
    const fine = planDetect({ herd: 600, prevalence: 0.05, confidence: 0.9999 });
    expect(text(fine)).toContain("with a probability of 99.990 % (with 154: 99.989 %)");
    expect(planText(fine, makeStyle(false))).toMatch(/5 % +30 +155 +99\.990 % +155/);
  });

  it("refuses a herd specificity of a test that is never wrong on healthy pigs", () => {
    expect(() => planDetect({ prevalence: 0.05, herdSpecificity: 0.9 })).toThrow(/--specificity 98%/);
    expect(() => planDetect({ prevalence: 0.05, herdSpecificity: 0.9, poolSize: 5 })).toThrow(RangeError);
  });

  it("says when not even the whole herd is enough", () => {
    const plan = planDetect({ herd: 71, prevalence: 3 / 71, sensitivity: 0.5, confidence: 0.9 });
    expect(plan.answer.n).toBe(null);
    expect(text(plan)).toContain("even all 71 pigs give a probability of 87.5 % only");
  });

  it("with an imperfect test gives a cut-off that does what is said: 5000 pigs, 194 and 8 (Cameron & Baldock 1998)", () => {
    const plan = planDetect({ herd: 5000, prevalence: 0.05, sensitivity: 0.95, specificity: 0.98 });
    expect(plan.answer).toMatchObject({ n: 194, cutoff: 8 });
    expect(text(plan)).toContain("8 or more are positive");
    for (const row of plan.table.rows) {
      if (typeof row.n !== "number" || typeof row.cutoff !== "number") continue;
      const herd = { population: 5000, affected: Number(row.affected) };
      const got = herdAccuracy(herd, row.n, row.cutoff, { sensitivity: 0.95, specificity: 0.98 });
      expect(Math.min(got.herdSensitivity, got.herdSpecificity)).toBeGreaterThanOrEqual(0.95);
    }
    const none = planDetect({ herd: 20, prevalence: 0.05, sensitivity: 0.5, specificity: 0.9 });
    expect(text(none)).toContain("No number of pigs reaches");
  });

  it("without a herd size: 59 for 5 %, and the imperfect test as for a very large herd", () => {
    expect(planDetect({ prevalence: 0.05 }).answer.n).toBe(59);
    const plan = planDetect({ prevalence: 0.2, sensitivity: 0.9, specificity: 0.95 });
    expect(text(plan)).toContain("10 000 000");
    expect(plan.answer.n).toBeGreaterThan(20);
  });

  it("in pools states the assumption about dilution and never draws more than the herd", () => {
    const plan = planDetect({ herd: 600, prevalence: 0.05, poolSize: 5, sensitivity: 0.9 });
    expect(plan.answer).toMatchObject({ pools: 13, animals: 65 });
    expect(text(plan)).toContain("whatever the number of healthy pigs in it");
    expect(text(planDetect({ herd: 7, prevalence: 0.01, poolSize: 5 }))).toContain(
      "No number of pools is enough",
    );
    expect(() => planDetect({ prevalence: 0.05, poolSize: 5, specificity: 0.9 })).toThrow(
      /specificity of 1 only/,
    );
  });
});

describe("estimate", () => {
  it("20 % within 5 points of 600: the interval of the stated count is no wider, and the whole group is the most", () => {
    const plan = planEstimate({ expected: 0.2, within: 0.05, herd: 600 });
    const { n, affected } = plan.answer;
    const { lower, upper } = finiteInterval(Number(affected), Number(n), 600);
    expect([plan.answer.lower, plan.answer.upper]).toEqual([lower, upper]);
    expect((upper - lower) / 2).toBeLessThanOrEqual(0.05 + 1e-12);
    expect(planEstimate({ expected: 0.5, within: 0.001, herd: 40 }).sentences.join()).toContain(
      "That is the whole group",
    );
  });

  it("multiplies by the design effect when pens are sampled: 5 from each pen, 0.1: 1.4", () => {
    const plan = planEstimate({ expected: 0.2, within: 0.05, fromEachPen: 5, correlation: 0.1 });
    expect(plan.answer.design_effect).toBeCloseTo(1.4, 12);
    expect(plan.answer).toMatchObject({ n_singly: 267, n: Math.ceil(267 * 1.4), pens: 75 });
    expect(plan.sentences[0]).toContain("Examine 374 pigs, 5 from each of 75 pens");
    expect(text(plan)).toContain("Drawn singly 267 pigs would be enough");
    expect(planCsv(plan)).toMatch(/^expected,n,pens,n_singly,/);
  });

  it("multiplies first and corrects for the herd then: 267 x 2.2 / (1 + 267 x 2.2 / 600) = 296.8", () => {
    const asked = { within: 0.05, herd: 600, fromEachPen: 5 };
    const plan = planEstimate({ ...asked, expected: 0.2, correlation: 0.3 });
    expect(plan.answer).toMatchObject({ n: 297, pens: 60, n_singly: 183, n_normal: 285 });
    expect(plan.sentences[0]).toContain("Examine 297 pigs of the 600, 5 from each of 60 pens");
    // The whole herd is never needed where pens only resemble each other.
    expect(Number(planEstimate({ ...asked, expected: 0.5, correlation: 0.8 }).answer.n)).toBeLessThan(600);
    expect(planEstimate({ ...asked, expected: 0.2, correlation: 0 }).answer).toMatchObject({
      n: 183,
      pens: 37,
    });
  });

  it("refuses a correlation without the pigs from each pen", () => {
    expect(() => planEstimate({ expected: 0.2, within: 0.05, correlation: 0.3 })).toThrow(
      /--from-each-pen 5/,
    );
  });
});

describe("compare", () => {
  it("40 % to 15 %: the power stated is the power", () => {
    const plan = planCompare({ from: 0.4, to: 0.15 });
    const n = Number(plan.answer.n);
    expect(plan.answer.power).toBe(fisherPower(n, n, { p1: 0.4, p2: 0.15 }));
    expect(fisherPower(n - 1, n - 1, { p1: 0.4, p2: 0.15 })).toBeLessThan(0.8);
    expect(plan.table.rows.map((row) => row.n)).toContain(n);
    for (const row of plan.table.rows) {
      if (typeof row.below === "number") {
        expect(fisherPower(Number(row.n), Number(row.n), { p1: 0.4, p2: row.below })).toBeCloseTo(0.8, 6);
      }
    }
  });

  it("speaks of a rise where it is one, and says when 1000 are not enough", () => {
    expect(text(planCompare({ from: 0.1, to: 0.5 }))).toContain("a rise from 10 % to 50 %");
    expect(text(planCompare({ from: 0.3, to: 0.31, power: 0.99, over: [10] }))).toContain(
      "1000 pigs on each visit are not enough",
    );
  });
});

describe("say", () => {
  it("12 pigs: none affected up to 22.1 % (1 - 0.05^(1/12)); half affected 21.1 to 78.9 %", () => {
    const plan = planSay({ pigs: 12 });
    expect(plan.answer.none_affected_upper).toBeCloseTo(1 - 0.05 ** (1 / 12), 12);
    const { lower, upper } = binomialInterval(6, 12);
    expect(plan.answer).toMatchObject({ half_affected_lower: lower, half_affected_upper: upper });
    expect(text(plan)).toContain("at most 22.1 %");
  });

  it("of a herd of known size all affected is as exact as none: 50 of 60 leave one healthy, 10 of 10 none", () => {
    const most = planSay({ pigs: 50, herd: 60 });
    expect(text(most)).toContain("If all of 50 are affected, at least 59 of the 60 (98.3 %) are.");
    expect(most.answer).toMatchObject({ none_affected_upper: 1 / 60, all_affected_lower: 59 / 60 });
    expect(text(planSay({ pigs: 10, herd: 10 }))).toContain("at least 10 of the 10 (100 %) are");
    // One less affected would show so in more than 1 of 20 draws, one more than that is impossible to tell: by counting.
    for (const [pigs, herd] of [
      [5, 40],
      [20, 60],
      [30, 33],
    ] as const) {
      const fewest = Number(planSay({ pigs, herd }).answer.all_affected_lower) * herd;
      const drawn = (affected: number) =>
        hypergeometricProbability(pigs, { population: herd, affected, drawn: pigs });
      expect(drawn(Math.round(fewest))).toBeGreaterThan(0.05);
      expect(drawn(Math.round(fewest) - 1)).toBeLessThanOrEqual(0.05);
    }
  });

  it("recommends no option that it does not have", () => {
    expect(planSay({ pigs: 12 }).cautions.join()).toContain("carcase plan detect says with --sensitivity");
    expect(planSay({ pigs: 12 }).cautions.join()).not.toContain("say so with --sensitivity");
  });

  it("agrees with detect: what 56 of 600 see at 5 % is what detect promised", () => {
    const { table } = planSay({ pigs: 56, herd: 600, over: [0.05] });
    expect(table.rows[0]?.seen).toBe(detectionSampleSize({ population: 600, affected: 30 }).probability);
  });

  it("says when no change would be seen, and refuses more pigs than there are", () => {
    expect(text(planSay({ pigs: 3 }))).toContain("no change at all would be seen");
    expect(text(planSay({ pigs: 1500 }))).toContain("up to 1000 pigs a visit");
    expect(() => planSay({ pigs: 13, herd: 12 })).toThrow(
      new RangeError("13 pigs cannot be drawn from a herd of 12"),
    );
  });
});

describe("every plan", () => {
  const plans: [string, Plan][] = [
    ["detect", planDetect({ herd: 600, prevalence: 0.05 })],
    ["detect without limit", planDetect({ prevalence: 0.05, sensitivity: 0.8 })],
    ["detect by herd test", planDetect({ herd: 300, prevalence: 0.2, specificity: 0.97 })],
    ["detect by pools", planDetect({ prevalence: 0.05, poolSize: 5 })],
    ["estimate", planEstimate({ expected: 0.2, within: 0.1 })],
    ["compare", planCompare({ from: 0.5, to: 0.1 })],
    ["say", planSay({ pigs: 12, herd: 40 })],
  ];
  it.each(plans)(
    "%s: warns of pigs that were not drawn at random, has sources, and keys that scripts can rely on",
    (_, plan) => {
      expect(plan.cautions.join(" ")).toMatch(/drawn at random/);
      expect(plan.sources.length).toBeGreaterThan(0);
      expect(plan.table.rows.length).toBeGreaterThan(0);
      expect(`${text(plan)}${planJson(plan)}`).not.toMatch(/undefined|NaN|\[object/);
      const keys = [
        ...Object.keys(plan.answer),
        ...Object.keys(plan.asked),
        ...plan.table.columns.map(({ key }) => key),
      ];
      for (const key of keys) expect(key).toMatch(/^[a-z][a-z0-9]*(_[a-z0-9]+)*$/);
      for (const row of plan.table.rows) {
        for (const { key } of plan.table.columns) expect(row).toHaveProperty(key);
      }
    },
  );
});
