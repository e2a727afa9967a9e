/** The table of scores: as wide as the page, and with the digits that a value needs. */
import { describe, expect, it } from "vitest";
import { type Archive, readCases } from "../../src/cases/index.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { scoreText } from "../../src/formats/score/text.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { scoreCases } from "../../src/score/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";

function archive(pigs: Readonly<Record<string, object>>): Archive {
  const root = temporaryFolder();
  put(
    root,
    Object.fromEntries(
      Object.entries(pigs).map(([id, respiratory]) => [
        `${id}.yaml`,
        JSON.stringify({ format: 1, case: id, pig: { group: "nursery" }, respiratory }),
      ]),
    ),
  );
  return readCases(["."], { from: root });
}

const told = (from: Archive, wanted: readonly string[], width = 80): string[] =>
  scoreText(scoreCases(from, { scales: wanted }).cases, from, makeStyle(false), { width, all: true }).split(
    "\n",
  );
const rowOf = (lines: readonly string[], id: string): string =>
  lines.find((line) => line.startsWith(`  ${id} `)) ?? "";

const section = "premolar-1";
const measured = (fraction: number) => ({
  turbinates: { section, measured: { concha_area_fraction: { total: fraction } } },
});

describe("the table of scores", () => {
  it("shows ratios with the digits that tell them apart", () => {
    const lines = told(archive({ a: measured(0.38), b: measured(0.42) }), ["collins-1989-area"]);
    expect(rowOf(lines, "a")).toMatch(/ 0\.38 ?$/);
    expect(rowOf(lines, "b")).toMatch(/ 0\.42 ?$/);
  });

  it("shows no mild lung as the first moderate number", () => {
    // Cranial and middle lobes whole but for 0.01 per cent, the rest clean: 14.999 points, and 15 is moderate.
    const lobes = {
      left_middle: 49.99,
      right_cranial: 0,
      right_middle: 0,
      left_caudal: 0,
      right_caudal: 0,
      accessory: 0,
    };
    const lung = { lungs: { consolidation: { left_cranial: 100, ...lobes } } };
    expect(rowOf(told(archive({ a: lung }), ["goodwin-1971"]), "a")).toMatch(/ 14\.999\*$/);
  });

  it.each([60, 80, 120])("stays within %d characters, with every scale, and repeats the case", (width) => {
    const from = archive({ "pig-01": measured(0.4), "pig-02": { lungs: { not_examined: "sold" } } });
    const lines = told(from, [...scales.keys()], width);
    // A path is not broken.
    for (const line of lines) if (/ \S+ \S/.test(line)) expect(line.length, line).toBeLessThanOrEqual(width);
    const heads = lines.filter((line) => /^ {2}case /.test(line));
    expect(heads.length).toBeGreaterThan(1);
    expect(heads.filter((line) => line.includes("group")).length).toBe(1);
    // No column is lost: each scale has its second head in one block.
    const shown = heads.join(" ");
    for (const { short } of scales.values()) expect(shown).toContain(short[1]);
  });

  it("marks a scale only where a value rests on memory", () => {
    const graded = { lungs: { grades: { "german-rule-lungs": 1 } } };
    const lines = told(archive({ a: graded }), ["german-rule-lungs"]);
    expect(rowOf(lines, "a")).toMatch(/ 1$/);
    expect(lines.join("\n")).not.toContain("*");
    expect(lines.join("\n")).toContain("10/30");
  });

  it("has a head of its own for every scale", () => {
    const heads = [...scales.values()].map(({ short }) => short.join(" "));
    for (const { id, short } of scales.values()) expect(short.join(" "), id).not.toMatch(/ b$/);
    expect(new Set(heads).size).toBe(scales.size);
  });
});
