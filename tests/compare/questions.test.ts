/** Several questions, the one that the visit asked, and lines where a test and an interval disagree. */
import { describe, expect, it } from "vitest";
import {
  type CompareOptions,
  type CompareReport,
  type Comparison,
  compareCases,
} from "../../src/compare/index.ts";
import { compareText } from "../../src/formats/compare/document.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { affected, farmOf, type Pig } from "./farm.ts";

const asked: CompareOptions = { indicators: ["snout-grade-2-up", "lung-consolidation"] };
const of = ({ blocks: [block] }: CompareReport, question: string): Comparison => {
  const found = block?.comparisons.find((one) => one.question === question);
  if (found === undefined) throw new Error(`no ${question}`);
  return found;
};

describe("readings of one organ", () => {
  const fell = { "2026-01-01": affected(9, 12), "2026-06-01": affected(3, 12) };
  const both: CompareOptions = {
    indicators: ["snout-grade-2-up", "snout-grade-3-up"],
    scales: ["maff-1978"],
  };

  it("are one question, and saying the same three times costs nothing", () => {
    // Grades are 3 or 0, so that three readings are one: 0.0391 by Fisher, as counted in claims.test.ts.
    const report = compareCases(farmOf(fell), both);
    expect(report.blocks[0]?.adjustment).toMatchObject({ comparisons: 3, questions: 1, without: null });
    for (const { p, p_adjusted, shown } of report.blocks[0]?.comparisons ?? []) {
      expect(Math.abs((p_adjusted ?? 1) - (p ?? 0))).toBeLessThan(0.01);
      expect(shown).toBe(true);
    }
    expect(compareText(report, makeStyle(false))).toContain("allowing for 3 readings");
  });

  it("use the seed that was given, and print it", () => {
    const seeded = compareCases(farmOf(fell), { ...both, seed: 77 });
    expect(seeded.blocks[0]?.adjustment.seed).toBe(77);
    expect(compareText(seeded, makeStyle(false))).toContain("seed 77");
  });
});

describe("the question of the visit", () => {
  const pigs = { "2026-01-01": affected(9, 12), "2026-06-01": affected(3, 12) };
  const ask = (question: object | string) =>
    compareCases(farmOf(pigs, { "2026-06-01": { question } }), {
      indicators: ["snout-grade-2-up", "snout-grade-3-up"],
      scales: ["maff-1978"],
    });

  it("needs no correction, and is told first", () => {
    const report = ask({ indicator: "snout-grade-2-up", direction: "fewer" });
    expect(report.blocks[0]?.adjustment).toMatchObject({ without: "snout-grade-2-up", comparisons: 2 });
    const first = of(report, "snout-grade-2-up");
    expect(first.p_adjusted).toBe(first.p);
    expect(report.answer).toMatch(
      /^Fewer pigs had snout grade 2 or more on 2026-06-01 .*Fisher's exact p 0\.039\./,
    );
    expect(report.answer).toContain(
      "That was the question of the visit; of 2 readings of one organ besides it 2 stand",
    );
    expect(report.answer).not.toContain("had asked whether");
  });

  it("says so where it points the other way", () => {
    expect(ask({ indicator: "snout-grade-2-up", direction: "more" }).answer).toContain(
      "The visit had asked whether it would be more.",
    );
  });

  it("is none where it asks how common, in words alone, or at an earlier visit", () => {
    for (const question of [{ indicator: "snout-grade-2-up" }, "Is it better?"])
      expect(ask(question).blocks[0]?.adjustment.without).toBeNull();
    const earlier = compareCases(
      farmOf(pigs, { "2026-01-01": { question: { indicator: "snout-grade-2-up", direction: "fewer" } } }),
      asked,
    );
    expect(earlier.blocks[0]?.adjustment.without).toBeNull();
  });
});

describe("a line says why", () => {
  const noteOf = (visits: Readonly<Record<string, readonly Pig[]>>, more: CompareOptions = {}) =>
    of(compareCases(farmOf(visits), { indicators: ["snout-grade-2-up"], ...more }), "snout-grade-2-up").note;

  it("an interval leaves out no difference and the test shows none", () => {
    // 6 of 10 and 1 of 10: Fisher 0.057, and the interval of the difference ends just short of 0.
    expect(noteOf({ "2026-01-01": affected(6, 10), "2026-06-01": affected(1, 10) })).toMatch(
      /^an interval above leaves out 'no difference' and the test does not show one/,
    );
  });

  it("it is of all pigs together, where like against like shows none", () => {
    expect(
      noteOf({
        "2026-01-01": [...affected(8, 10, { group: "a" }), ...affected(1, 2, { group: "b" })],
        "2026-06-01": [...affected(2, 2, { group: "a" }), ...affected(1, 10, { group: "b" })],
      }),
    ).toMatch(/it is of all pigs together, and like against like shows none/);
  });

  it("nothing where both say the same", () => {
    expect(noteOf({ "2026-01-01": affected(9, 10), "2026-06-01": affected(1, 10) })).toBeNull();
    expect(noteOf({ "2026-01-01": affected(5, 10), "2026-06-01": affected(4, 10) })).toBeNull();
  });
});
