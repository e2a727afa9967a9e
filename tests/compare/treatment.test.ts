/** Treated against control: the arms of a trial, by what was allocated. */
import { describe, expect, it } from "vitest";
import { type CompareOptions, compareCases } from "../../src/compare/index.ts";
import { compareText } from "../../src/formats/compare/document.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { affected, farmOf, type Pig } from "./farm.ts";

const day = "2026-01-01";
const snout: CompareOptions = { indicators: ["snout-grade-2-up"] };
/** Pens of four by their affected pigs, numbered from `from`. */
const pens = (sick: readonly number[], from: number, group = "a"): Pig[] =>
  sick.flatMap((yes, at) => affected(yes, 4, { pen: from + at, group }));
const reportOf = (pigs: readonly Pig[], visit: object, asked: CompareOptions = snout) =>
  compareCases(farmOf({ [day]: pigs }, { [day]: visit }), { between: "treatment", ...asked });
const only = (report: ReturnType<typeof reportOf>) => {
  const [one] = report.blocks[0]?.comparisons ?? [];
  if (one?.result?.test !== "unit-means") throw new Error("another test");
  return { one, result: one.result, block: report.blocks[0] };
};
const textOf = (report: ReturnType<typeof reportOf>): string =>
  compareText(report, makeStyle(false)).replaceAll(/\s+/g, " ");

const byPen = { groups: { a: { arm: { control: [1, 2, 3, 4, 5], treated: ["6", 7, 8, 9, 10] } } } };
const lot = { ...byPen, trial: { treatment: "vaccine at weaning", allocated: "by-lot" } };
const ten = [...pens([3, 2, 4, 1, 3], 1), ...pens([0, 1, 0, 1, 2], 6)];

describe("pens of one group", () => {
  it("are set against each other by their means: 14 of 252 ways, and limits by NumPy", () => {
    const { one, result, block } = only(reportOf(ten, lot));
    expect(one).toMatchObject({ claim_on: "pens", no_claim: null });
    expect(one.p).toBeCloseTo(14 / 252, 12);
    expect(one.least_p).toBeCloseTo(2 / 252, 12);
    expect(result).toMatchObject({ unit: "pen", clusters: [5, 5], exact: true, within: false });
    expect(result.difference.value).toBeCloseTo(-0.45, 12);
    expect(result.difference.lower).toBeCloseTo(-0.7047106485887755, 10);
    expect(result.difference.upper).toBeCloseTo(-0.041356565788023436, 10);
    expect(block?.sides.map(({ side, pigs }) => [side, pigs])).toEqual([
      ["control", 20],
      ["treated", 20],
    ]);
    expect(block?.trial).toEqual({
      treatment: "vaccine at weaning",
      allocated: "by-lot",
      unit: "pen",
      from: "arms",
    });
  });

  it("say so where the interval and the permutation disagree, and which of them counts", () => {
    const text = textOf(reportOf(ten, lot));
    expect(text).toContain("No difference was shown in snout grade 2 or more");
    expect(text).toContain("of so few pens it is the stricter rule");
    expect(text).toContain("Treatment: vaccine at weaning; pens allocated by lot");
  });

  it("count the pen however many pigs it has: more pigs of the same pens change nothing", () => {
    const twice = [...ten, ...ten];
    expect(only(reportOf(twice, lot)).one.p).toBe(only(reportOf(ten, lot)).one.p);
  });

  it("claim a difference where the permutation shows it, of shares and of scores", () => {
    const clear = [...pens([3, 2, 4, 2, 3], 1), ...pens([0, 1, 0, 1, 1], 6)];
    expect(reportOf(clear, lot).answer).toBe(
      "Fewer pigs had snout grade 2 or more in treated pens (3 of 20) than in control pens (14 of 20): by the means of 5 control and 5 treated pens, 55.0 fewer of every 100 pigs, 95 % interval 18.1 to 75.5 fewer; permutation of pens p 0.008, exact.",
    );
    const score = reportOf(clear, lot, { scales: ["maff-1978"] });
    expect(score.answer).toContain("Snout grade 0-5 was lower in treated pens");
    expect(score.answer).toContain("1.65 points lower, 95 % interval 0.72 to 2.58 lower");
  });

  it("do not say that the treatment did it where no lot was drawn", () => {
    expect(textOf(reportOf(ten, lot))).toContain("Allocated by lot");
    const text = textOf(reportOf(ten, byPen));
    expect(text).toContain("does not say that a lot was drawn");
    expect(text).toContain("Treatment: not named; pens not said to be allocated by lot");
  });

  it("are no trial with one pen each, and too few with three: the pen is the unit", () => {
    const one = only(reportOf([...pens([4], 1), ...pens([0], 6)], lot));
    expect(one.one).toMatchObject({ claim_on: "none", p: null, shown: false });
    expect(one.one.sentence).toContain(
      "no difference can be claimed, because the pen is what was treated, and with 1 control pen and 1 treated pen the treatment cannot be told apart from the difference between two pens",
    );
    const three = reportOf([...pens([4, 4, 4], 1), ...pens([0, 0, 0], 6)], lot);
    expect(three.answer).toBe(
      "With 3 control and 3 treated pens nothing can be shown, not even if all were affected on one side and none on the other.",
    );
    const four = reportOf([...pens([4, 4, 4, 4], 1), ...pens([0, 0, 0, 0], 6)], lot);
    expect(only(four).one.p).toBeCloseTo(2 / 70, 12);
    expect(four.answer).toContain("95 % interval 15.2 to 100.0 fewer");
  });

  it("leave out pens of neither arm or of both", () => {
    const both = { groups: { a: { arm: { control: [1, 2, 3, 4, 5], treated: [5, 6, 7, 8, 9] } } } };
    const report = reportOf(ten, both);
    expect(only(report).result.clusters).toEqual([4, 4]);
    expect(report.left_out).toEqual(["8 cases that are in no arm of a trial, or in both"]);
  });

  it("allow for several questions with the pens dealt out", () => {
    const { blocks } = reportOf(ten, lot, { indicators: ["snout-grade-2-up", "snout-grade-3-up"] });
    // Grades are 0 or 3, so both ask the same and the correction costs nothing but chance.
    for (const { p, p_adjusted } of blocks[0]?.comparisons ?? []) {
      expect(p_adjusted).toBeGreaterThanOrEqual(p ?? 1);
      expect(p_adjusted).toBeLessThan(0.07);
    }
  });
});

describe("pens of several groups", () => {
  const trial = {
    groups: {
      a: { arm: { control: [1, 2, 3], treated: [4, 5, 6] } },
      b: { arm: { control: [1, 2], treated: [3, 4] } },
    },
  };
  const pigs = [
    ...pens([3, 4, 2], 1, "a"),
    ...pens([0, 1, 1], 4, "a"),
    ...pens([4, 3], 1, "b"),
    ...pens([2, 0], 3, "b"),
  ];

  it("are set against each other within each group: 2 of 120 ways, and the limits by NumPy", () => {
    const { one, result } = only(reportOf(pigs, trial));
    expect(one).toMatchObject({ claim_on: "pens-in-strata", shown: true });
    expect(one.p).toBeCloseTo(2 / 120, 12);
    expect(one.least_p).toBeCloseTo(2 / 120, 12);
    expect(result.difference.value).toBeCloseTo(-0.6, 12);
    expect(result.difference.lower).toBeCloseTo(-0.8270905257223495, 10);
    expect(result.difference.upper).toBeCloseTo(-0.029087361111249432, 10);
    expect(one.caveats.map(({ text }) => text)).toEqual([
      "treated and control are set against each other within each group",
    ]);
  });

  it("claim nothing where one group has the treated and another the control pens", () => {
    const apart = {
      groups: { a: { arm: { control: [1, 2, 3, 4, 5, 6], treated: [99] } }, b: trial.groups.b },
    };
    const treatedOnly = pigs.filter(({ group, pen }) => group === "a" || (pen ?? 0) > 2);
    const { one } = only(reportOf(treatedOnly, apart));
    expect(one.no_claim).toContain("the sides have no group in common");
  });
});

describe("whole groups", () => {
  const arms = (arm: (at: number) => string) =>
    Object.fromEntries(["a", "b", "c", "d", "e", "f", "g", "h"].map((name, at) => [name, { arm: arm(at) }]));
  const groups = arms((at) => (at < 4 ? "control" : "treated"));
  const pigs = Object.keys(groups).flatMap((group, at) => pens(at < 4 ? [3, 4] : [0, 1], 1, group));

  it("count as what was allocated, not their pens", () => {
    const { one, result, block } = only(reportOf(pigs, { groups }));
    expect(result).toMatchObject({ unit: "group", clusters: [4, 4], within: false });
    expect(one.p).toBeCloseTo(2 / 70, 12);
    expect(block?.sides.map(({ title }) => title)).toEqual(["in control groups", "in treated groups"]);
  });

  it("are no trial with one each, however many pens they have", () => {
    const two = { a: { arm: "control" }, e: { arm: "treated" } };
    const some = pigs.filter(({ group }) => group === "a" || group === "e");
    expect(only(reportOf(some, { groups: two })).one.no_claim).toContain(
      "the group is what was treated, and with 1 control group and 1 treated group",
    );
  });
});

describe("where no group says its arm", () => {
  const pigs = ["a", "b"].flatMap((group) => pens([group === "a" ? 1 : 3, 2], 1, group));
  const inWater = { group: "a", with: "amoxicillin", route: "in-water" };

  it("it follows from treatments that name a group and reach all of it, and no effect is claimed for them", () => {
    const report = reportOf(pigs, { treatments: [inWater] });
    const { one, block } = only(report);
    expect(block?.trial).toEqual({
      treatment: "amoxicillin",
      allocated: null,
      unit: "group",
      from: "treatments",
    });
    expect(block?.sides.map(({ side, pigs: number }) => [side, number])).toEqual([
      ["control", 8],
      ["treated", 8],
    ]);
    expect(one.no_claim).toContain("the group is what was treated");
    expect(textOf(report)).toContain("a difference does not say whether the treatment works");
  });

  it.each([
    ["a text, of which nothing follows", ["none of the sows"]],
    ["what was given to all groups", [{ with: "amoxicillin", route: "in-water" }]],
    ["what may have been given to some of the group", [{ ...inWater, route: "by-injection" }]],
    ["what began after the visit", [{ ...inWater, from: "2026-01-05" }]],
    ["nothing", ["none"]],
  ])("it does not follow from %s", (_, treatments) => {
    expect(() => reportOf(pigs, { treatments })).toThrow("no visit has both treated and control pigs");
  });

  it("it is not taken from treatments beside arms that are said", () => {
    const groups = { a: { arm: "control" }, b: { arm: "treated" } };
    expect(only(reportOf(pigs, { treatments: [inWater], groups })).block?.trial).toMatchObject({
      from: "arms",
    });
  });
});

it("refuses --cluster: what was allocated is counted", () => {
  expect(() => reportOf(ten, lot, { ...snout, cluster: "none" })).toThrow("what was allocated is counted");
});
