/** Who is set against whom: random against a whole group, ages, and pigs that stand on both sides. */
import { describe, expect, it } from "vitest";
import { type CompareOptions, compareCases } from "../../src/compare/index.ts";
import { compareMarkdown, compareText } from "../../src/formats/compare/document.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { affected, farmOf, type Pig } from "./farm.ts";

const snout: CompareOptions = { indicators: ["snout-grade-2-up"] };
const compared = (visits: Readonly<Record<string, readonly Pig[]>>) => compareCases(farmOf(visits), snout);

describe("random against a whole group", () => {
  const first = affected(9, 10);
  const second = affected(1, 10, { basis: "complete" });

  it("is compared, and says prevalence, because both stand for their group", () => {
    const report = compared({ "2026-01-01": first, "2026-06-01": second });
    const [block] = report.blocks;
    expect(report.blocks).toHaveLength(1);
    expect(block).toMatchObject({
      basis: null,
      mixed: false,
      prevalence: true,
      comparable: true,
      pigs: "drawn at random or whole group examined",
    });
    // 9 of 10 and 1 of 10: (100 + 1) x 2 of the C(20, 10) ways to share ten affected out.
    expect(block?.comparisons[0]?.p).toBeCloseTo(202 / 184_756, 12);
    expect(report.answer).toMatch(/^Fewer pigs had snout grade 2 or more/);
    expect(block?.cautions.join(" ")).toContain("Pigs drawn at random stand against a whole group");
  });

  it("stays apart where either stands on both sides, and chosen pigs stay out", () => {
    const apart = compared({
      "2026-01-01": [...first, ...second],
      "2026-06-01": [...affected(2, 10), ...second],
    });
    expect(apart.blocks.map(({ basis }) => basis)).toEqual(["random", "complete"]);
    const ill = affected(3, 3, { basis: "clinical" });
    const mixed = compared({ "2026-01-01": [...first, ...ill], "2026-06-01": second });
    expect(mixed.blocks.map(({ sides }) => sides.map(({ pigs }) => pigs))).toEqual([[10, 10]]);
    expect(mixed.left_out).toEqual([
      "3 pigs on 2026-01-01 (chosen for signs): none chosen so on another side",
    ]);
  });

  it("is still refused against pigs chosen for illness", () => {
    const report = compared({ "2026-01-01": first, "2026-06-01": affected(9, 10, { basis: "clinical" }) });
    expect(report.blocks[0]).toMatchObject({ comparable: false, mixed: true });
  });
});

describe("ages", () => {
  const of = (first: string | null, second: string) =>
    compared({ "2026-01-01": affected(5, 6, { age: first }), "2026-06-01": affected(1, 6, { age: second }) });

  it("stand beside both sides, in text, Markdown and JSON", () => {
    const report = compared({
      "2026-01-01": [
        ...affected(1, 2, { age: "50 d" }),
        ...affected(1, 1, { age: "58 d" }),
        ...affected(0, 1, { age: null }),
      ],
      "2026-06-01": affected(1, 4, { age: "60 d" }),
    });
    expect(report.blocks[0]?.sides.map(({ ages }) => ages)).toEqual([
      { median: 50, least: 50, greatest: 58, not_recorded: 1 },
      { median: 60, least: 60, greatest: 60, not_recorded: 0 },
    ]);
    const line = "Median age: 50 d (50 to 58) on 2026-01-01, 1 not recorded; 60 d on 2026-06-01";
    expect(compareText(report, makeStyle(false)).replaceAll(/\n\s*/g, " ")).toContain(line);
    expect(compareMarkdown(report).replaceAll(/\n\s*/g, " ")).toContain(line);
  });

  it("more than three weeks apart within a class are a warning, and three weeks are none", () => {
    const far = of("110 d", "165 d").blocks[0]?.cautions.join(" ");
    expect(far).toContain("Median age of finisher pigs: 110 d on 2026-01-01 and 165 d on 2026-06-01.");
    expect(far).toContain("(common practice)");
    expect(of("50 d", "71 d").blocks[0]?.cautions.join(" ")).not.toContain("Median age");
    expect(of("48 d", "70 d").blocks[0]?.cautions.join(" ")).toContain("Median age of weaner pigs: 48 d");
  });

  it("of another mix of classes are no warning: classes are compared each with its own", () => {
    const mix = (weaners: number, finishers: number): Pig[] => [
      ...affected(1, weaners, { age: "50 d", group: "a" }),
      ...affected(1, finishers, { age: "150 d", group: "b" }),
    ];
    const report = compared({ "2026-01-01": mix(6, 3), "2026-06-01": mix(3, 6) });
    expect(report.blocks[0]?.cautions.join(" ")).not.toContain("Median age of");
  });
});

describe("a tag on both sides", () => {
  it("is told, once on one side is not", () => {
    const pigs = (tags: readonly string[]): Pig[] =>
      tags.map((tag, at) => ({ grade: at % 2 === 0 ? 3 : 0, tag }));
    const twice = compared({
      "2026-01-01": pigs(["11", "12", "13"]),
      "2026-06-01": pigs(["21", "12", "23"]),
    });
    expect(twice.blocks[0]?.cautions.find((line) => line.startsWith("Tag 12:"))).toContain("not independent");
    const once = compared({ "2026-01-01": pigs(["11", "12"]), "2026-06-01": pigs(["21", "22"]) });
    expect(once.blocks[0]?.cautions.join(" ")).not.toContain("Tag");
  });
});
