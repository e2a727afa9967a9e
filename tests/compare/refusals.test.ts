/** What cannot be compared has a reason in place of numbers, one for every kind; an override prints the caveat with the number. */
import { describe, expect, it } from "vitest";
import { type CompareOptions, compareCases, type Factor } from "../../src/compare/index.ts";
import { compareMarkdown, compareText } from "../../src/formats/compare/document.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { archiveOf, farm, visit } from "../herd/archive.ts";
import { consolidation } from "../score/pigs.ts";
import { affected, caseOf, farmOf, type Pig } from "./farm.ts";

const snout: CompareOptions = { indicators: ["snout-grade-2-up"] };
const twoVisits = (first: readonly Pig[], second: readonly Pig[]) =>
  farmOf({ "2026-01-01": first, "2026-06-01": second });

/** A way in which the second visit has nothing in common with the first, and what must be said. */
const different: [Factor, Partial<Pig>, Partial<Pig>, string][] = [
  ["basis", {}, { basis: "clinical" }, "on 2026-01-01 drawn at random; on 2026-06-01 chosen for signs"],
  ["basis", {}, { basis: null }, "on 2026-06-01 basis not recorded"],
  ["age", {}, { age: "150 d" }, "on 2026-01-01 weaner; on 2026-06-01 finisher"],
  ["age", {}, { age: null }, "on 2026-06-01 not recorded"],
  ["reader", {}, { examiner: "J. Teal" }, "on 2026-01-01 H. Marlow; on 2026-06-01 J. Teal"],
  ["place", {}, { manner: "slaughtered" }, "on 2026-01-01 table; on 2026-06-01 slaughter line"],
  ["section", {}, { section: "premolar-2" }, "on 2026-01-01 premolar-1; on 2026-06-01 premolar-2"],
];

describe.each(different)("other %s", (factor, first, second, said) => {
  const archive = twoVisits(affected(3, 6, first), affected(2, 6, second));

  it(`is refused: ${said}`, () => {
    const { blocks, answer } = compareCases(archive, snout);
    expect(blocks).toHaveLength(1);
    const [block] = blocks;
    const [one] = block?.comparisons ?? [];
    expect(block).toMatchObject({ comparable: false, adjustment: { comparisons: 0 } });
    expect(one).toMatchObject({ comparable: false, result: null, p: null, p_adjusted: null, sides: [] });
    expect(one?.reasons.map((reason) => reason.factor)).toEqual([factor]);
    expect(one?.reasons[0]?.text).toContain(said);
    expect(answer).toMatch(/^Not compared: other /);
    const text = compareText(compareCases(archive, snout), makeStyle(false));
    expect(text).not.toMatch(/\bp [0-9<]|interval|of 6/);
  });

  it("is compared when asked for, with the caveat beside every number", () => {
    const { blocks } = compareCases(archive, { ...snout, evenIf: [factor] });
    const [one] = blocks[0]?.comparisons ?? [];
    expect(one?.sides.map((side) => [side.affected, side.examined])).toEqual([
      [3, 6],
      [2, 6],
    ]);
    expect(one?.caveats.filter(({ although }) => although === factor)).toHaveLength(1);
    const text = compareText(compareCases(archive, { ...snout, evenIf: [factor] }), makeStyle(false));
    expect(text).toContain("compared although not comparable: other");
    if (factor !== "basis") expect(one?.sentence).toContain("not comparable by");
    const other: Factor = factor === "reader" ? "place" : "reader";
    expect(compareCases(archive, { ...snout, evenIf: [other] }).blocks[0]?.comparable).toBe(false);
  });
});

describe("other refusals", () => {
  it("refuses a grade given by eye against a score computed from parts", () => {
    const lungs = { consolidation: consolidation({ left_cranial: 50 }) };
    const graded = { grades: { "madec-kobisch-1982": 2 } };
    const archive = twoVisits(affected(1, 5, { lungs }), affected(1, 5, { lungs: graded }));
    const asked = { scales: ["madec-kobisch-1982"] };
    const [one] = compareCases(archive, asked).blocks[0]?.comparisons ?? [];
    expect(one?.reasons.map(({ factor, text }) => [factor, text.slice(0, 73)])).toEqual([
      ["grade", "other way of scoring: on 2026-01-01 computed; on 2026-06-01 graded. A gra"],
    ]);
    expect(compareCases(archive, { ...asked, evenIf: ["grade"] }).blocks[0]?.comparable).toBe(true);
  });

  it("refuses an indicator that the two visits define differently", () => {
    const settings = (at_least: number) => ({
      format: 1,
      indicators: {
        mine: {
          title: "Mine",
          score: { scale: "maff-1978", at_least },
          source: { cite: "question of this practice", confidence: "common-practice" },
        },
      },
    });
    const archive = archiveOf({
      "alder/farm.yaml": farm("alder"),
      "alder/1/visit.yaml": visit("one", "2026-01-01"),
      "alder/1/carcase.yaml": settings(1),
      "alder/1/a.yaml": caseOf({ grade: 2 }),
      "alder/2/visit.yaml": visit("two", "2026-06-01"),
      "alder/2/carcase.yaml": settings(2),
      "alder/2/b.yaml": caseOf({ grade: 2 }),
    });
    const [one] = compareCases(archive, { indicators: ["mine"] }).blocks[0]?.comparisons ?? [];
    expect(one?.reasons.map(({ factor }) => factor)).toEqual(["scale"]);
  });

  it("refuses, whatever is overridden, what was not read on one side", () => {
    const archive = twoVisits(affected(1, 3), [{ grade: null }, { grade: null }]);
    const evenIf: Factor[] = ["basis", "age", "place", "reader", "section", "grade", "scale"];
    const [one] = compareCases(archive, { ...snout, evenIf }).blocks[0]?.comparisons ?? [];
    expect(one?.reasons).toEqual([
      { factor: "examined", text: "could not be read in any pig on 2026-06-01" },
    ]);
  });

  it("mentions what is only in part the same, and what is not recorded", () => {
    const archive = twoVisits(
      [...affected(2, 4), ...affected(1, 2, { examiner: "J. Teal" })],
      [...affected(1, 4), ...affected(0, 2, { manner: null })],
    );
    const [one] = compareCases(archive, snout).blocks[0]?.comparisons ?? [];
    const said = one?.caveats.map(({ text }) => text).join("\n");
    expect(one?.comparable).toBe(true);
    expect(said).toContain("examiner not the same throughout: on 2026-01-01 H. Marlow in 4, J. Teal in 2");
    expect(said).toContain("on 2026-06-01 table in 4, not recorded in 2");
  });

  it("has nothing to say without two sides, an unknown name or an impossible level", () => {
    const one = farmOf({ "2026-01-01": affected(1, 3) });
    expect(() => compareCases(one)).toThrow(/no two visits of one farm and no two groups of one visit/);
    expect(() => compareCases(one, { between: "visits" })).toThrow(/no two visits/);
    expect(() => compareCases([])).toThrow("there is no case to compare");
    const two = twoVisits(affected(1, 3), affected(1, 3));
    expect(() => compareCases(two, { indicators: ["snout-grade-2"] })).toThrow(
      /Did you mean snout-grade-2-up/,
    );
    expect(() => compareCases(two, { scales: ["maff"] })).toThrow(/maff-1978/);
    expect(() => compareCases(two, { where: { group: ["nursery"] } })).toThrow(/nursery-1/);
    expect(() => compareCases(two, { level: 1 })).toThrow(/level/);
  });
});

describe("names from a file", () => {
  it("reach no terminal and no Markdown unescaped", () => {
    const archive = twoVisits(affected(1, 3, { examiner: "A\u200b <b>|`x`" }), affected(1, 3));
    const report = compareCases(archive, snout);
    expect(compareText(report, makeStyle(false)).replaceAll(/\s+/g, " ")).toContain("A\\u{200b} <b>|`x`");
    expect(compareText(report, makeStyle(false), true)).not.toContain("\u200b");
    expect(compareMarkdown(report)).toContain("&lt;b&gt;\\|\\`x\\`");
    expect(compareMarkdown(report)).not.toContain("<b>");
  });
});

describe("groups", () => {
  it("are compared within a visit, by the order of their names", () => {
    const archive = farmOf({
      "2026-01-01": [...affected(9, 9, { group: "room-10" }), ...affected(0, 9, { group: "room-9" })],
    });
    const report = compareCases(archive, snout);
    expect(report.between).toBe("groups");
    expect(report.blocks[0]).toMatchObject({
      visit: "alder-2026-01-01",
      sides: [{ side: "room-9" }, { side: "room-10" }],
    });
    expect(report.answer).toMatch(
      /^More pigs had snout grade 2 or more in room-10 \(9 of 9\) than in room-9 \(0 of 9\): 100\.0 more of every 100 pigs/,
    );
  });

  it("are narrowed by where", () => {
    const archive = twoVisits(
      [...affected(2, 4, { group: "a" }), ...affected(1, 3, { group: "b" })],
      [...affected(2, 5, { group: "a" }), ...affected(1, 2, { group: "b" })],
    );
    const sides = (where: CompareOptions["where"]) =>
      compareCases(archive, { ...snout, ...(where && { where }) }).blocks[0]?.sides.map(({ pigs }) => pigs);
    expect(sides({ group: ["a"] })).toEqual([4, 5]);
    expect(sides({ group: ["a", "b"], basis: ["random"] })).toEqual([7, 7]);
  });
});
