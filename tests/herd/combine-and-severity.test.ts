/** Groups weighted by head count, and how sure the middle of the scores is. */
import { describe, expect, test } from "vitest";
import type { Case } from "../../src/cases/index.ts";
import { herdText } from "../../src/formats/herd/document.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { type HerdOptions, herdEstimates } from "../../src/herd/index.ts";
import { consolidation, organ, pig } from "../score/pigs.ts";
import { binomialProbabilities, expectClose, reference } from "../statistics/reference.ts";
import { archiveOf, farm, visit } from "./archive.ts";

const times = (number: number, some: Case): Case[] => Array<Case>(number).fill(some);
const lungs = (ill: boolean, pigFacts: object, basis: string) => ({
  format: 1,
  pig: pigFacts,
  selection: { basis },
  ...organ("respiratory.lungs", { consolidation: consolidation({ left_cranial: ill ? 30 : 0 }) }),
});

/** Cases in groups of one visit: `{a: [ill, examined]}`. */
function groupsOf(
  counts: Readonly<Record<string, readonly [number, number]>>,
  heads: Readonly<Record<string, number>>,
  basis = "random",
): Case[] {
  const names = Object.keys(counts);
  const { cases } = archiveOf({
    "farm.yaml": {
      ...farm("alder"),
      groups: Object.fromEntries(Object.entries(heads).map(([name, head]) => [name, { head }])),
    },
    "v/visit.yaml": visit("spring", "2026-03-14"),
    ...Object.fromEntries(
      names.flatMap((group) => [
        [`v/${group}-ill.yaml`, lungs(true, { group }, basis)],
        [`v/${group}-well.yaml`, lungs(false, { group }, basis)],
      ]),
    ),
  });
  return names.flatMap((group) => {
    const [ill, examined] = counts[group] ?? [0, 0];
    const find = (which: string) => cases.filter(({ file }) => file.endsWith(`${group}-${which}.yaml`));
    return [
      ...find("ill").flatMap((one) => times(ill, one)),
      ...find("well").flatMap((one) => times(examined - ill, one)),
    ];
  });
}
const asked: HerdOptions = {
  indicators: ["lung-consolidation"],
  scales: ["madec-kobisch-1982"],
  combine: true,
};
function combined(cases: readonly Case[], options: HerdOptions = {}) {
  const { combined: all = [] } = herdEstimates(cases, { ...asked, ...options });
  const [first] = all;
  if (first === undefined || all.length !== 1) throw new Error(`${all.length} combined`);
  return first;
}

describe("groups combined by head count", () => {
  test("the share is the weighted mean, not that of all pigs", () => {
    const found = combined(groupsOf({ a: [8, 10], b: [1, 10] }, { a: 60, b: 540 }));
    expect(found.proportion).toBeCloseTo(0.1 * 0.8 + 0.9 * 0.1, 14);
    expect(found).toMatchObject({
      affected: 9,
      examined: 20,
      population: 600,
      refused: null,
      basis: "random",
    });
    expect(found.groups.map(({ group, head, affected }) => [group, head, affected])).toEqual([
      ["a", 60, 8],
      ["b", 540, 1],
    ]);
    // Thinnest: 540/600 of the weight on 10 pigs.
    expect(found.effective_size).toBeCloseTo(10 / 0.9, 10);
    expect(found.wording).toBe(
      `Any lung consolidation: 17.0 %, 95 % CI ${((found.lower ?? 0) * 100).toFixed(1)} to ${((found.upper ?? 0) * 100).toFixed(1)} %, estimated prevalence in the 600 pigs of a and b together, each group weighted by its head count (9 of 20 pigs affected); other groups of the farm are not in it.`,
    );
  });

  test("sampled in proportion, the limits are the exact ones of all pigs (binomial tails added up here)", () => {
    const { lower, upper, effective_size } = combined(
      groupsOf({ a: [3, 10], b: [5, 10] }, { a: 300, b: 300 }),
    );
    expect(effective_size).toBeCloseTo(20, 10);
    const tail = (p: number, from: number, to: number) =>
      binomialProbabilities(20, p)
        .slice(from, to + 1)
        .reduce((sum, one) => sum + one, 0);
    expectClose(tail(lower ?? 0, 8, 20), 0.025, 1e-9, "upper tail at the lower limit");
    expectClose(tail(upper ?? 0, 0, 8), 0.025, 1e-9, "lower tail at the upper limit");
  });

  test("strata stay as they are, and it is there only when asked for", () => {
    const cases = groupsOf({ a: [3, 10], b: [5, 10] }, { a: 300, b: 300 });
    const { combined: _, ...rest } = herdEstimates(cases, asked);
    expect(rest).toEqual(herdEstimates(cases, { ...asked, combine: false }));
  });

  test("groups are combined within a visit, whether or not it was split by group", () => {
    const cases = groupsOf({ a: [3, 10], b: [5, 10] }, { a: 300, b: 100 });
    expect(combined(cases, { by: ["visit"] })).toEqual(combined(cases, { by: ["visit", "group"] }));
    expect(combined(cases, { by: ["visit"] }).stratum).toEqual({ visit: "spring" });
  });

  test.each([
    [
      "chosen pigs",
      groupsOf({ a: [3, 4], b: [1, 4] }, { a: 30, b: 30 }, "clinical"),
      "these pigs (chosen for signs) do not stand for their groups, so head counts give them no weight",
    ],
    [
      "one group",
      groupsOf({ a: [3, 4] }, { a: 30 }),
      "there is one group only of this age class; to combine groups of all ages split by visit and group (--by visit,group)",
    ],
    [
      "no head count",
      groupsOf({ a: [3, 4], b: [1, 4] }, { a: 30 }),
      "neither visit.yaml nor farm.yaml says how many pigs are in b",
    ],
    [
      "too small a head count",
      groupsOf({ a: [3, 4], b: [1, 4] }, { a: 30, b: 2 }),
      "farm.yaml has 2 pigs in b, but 4 were examined",
    ],
  ] as const)("%s: refused, and why", (_, cases, why) => {
    const found = combined(cases);
    expect(found).toMatchObject({
      proportion: null,
      lower: null,
      upper: null,
      population: null,
      refused: why,
    });
    expect(found.wording).toBe(`Any lung consolidation: groups not combined, because ${why}.`);
  });

  test("groups examined whole are known and add no width", () => {
    const found = combined(groupsOf({ a: [2, 4], b: [0, 6] }, { a: 4, b: 6 }, "complete"));
    expect(found).toMatchObject({ proportion: 0.2, lower: null, upper: null, method: null, refused: null });
  });
});

const gradedRecord = (grade: number, facts: object = {}) => ({
  format: 1,
  pig: facts,
  ...organ("respiratory.turbinates", { section: "premolar-1", grades: { "maff-1978": grade } }),
  selection: { basis: "random" },
});
const graded = (grade: number): Case => pig(gradedRecord(grade));
function scores(values: readonly number[], options: HerdOptions = {}) {
  const [found] = herdEstimates(values.map(graded), {
    indicators: [],
    scales: ["maff-1978"],
    ...options,
  }).scores;
  if (found === undefined) throw new Error("no scores");
  return found;
}

describe("severity", () => {
  test("the mean has the t interval (R t.test), held within the scale", () => {
    type Row = { values: number[]; conf: number };
    const rows = reference<Row, { mean: number; lower: number; upper: number }>("t-mean", 6).filter(
      ({ input }) => Math.max(...input.values) <= 5,
    );
    expect(rows.length).toBeGreaterThanOrEqual(3);
    for (const { input, output } of rows) {
      const { mean, mean_interval: found, level } = scores(input.values, { level: input.conf });
      expect(level).toBe(input.conf);
      expectClose(mean ?? 0, output.mean, 1e-12, "mean");
      expect(found?.lower).toBeCloseTo(Math.max(0, output.lower), 9);
      expect(found?.upper).toBeCloseTo(Math.min(5, output.upper), 9);
    }
  });

  test("the median of ten lies between the second and the ninth score (1 - 2 x 11/1024 = 97.9 %)", () => {
    const found = scores([0, 0, 1, 1, 2, 2, 2, 3, 4, 5]).median_interval;
    expect(found).toMatchObject({ lower: 0, upper: 4, coverage: 1 - 22 / 1024, reason: null });
    expect(scores([0, 1, 2, 3, 4]).median_interval).toMatchObject({
      lower: null,
      reason: expect.stringContaining("too few"),
    });
  });

  test("a bootstrap interval only when asked for, the same for the same seed", () => {
    const values = [0, 0, 0, 1, 1, 1, 2, 2, 3, 5, 0, 1, 0, 0, 0, 1, 1, 1, 2, 2];
    expect(scores(values)).not.toHaveProperty("bootstrap");
    const found = scores(values, { seed: 7 }).bootstrap;
    expect(found).toMatchObject({ seed: 7, resamples: 9999, method: "bca-bootstrap", reason: null });
    expect(scores(values, { seed: 7 }).bootstrap).toEqual(found);
    expect(scores(values, { seed: 8 }).bootstrap).not.toEqual(found);
    expect(found?.lower).toBeLessThan(23 / 20);
    expect(found?.upper).toBeGreaterThan(23 / 20);
    expect(scores([0, 1, 2], { seed: 7 }).bootstrap).toMatchObject({
      lower: null,
      reason: "fewer than 20 values",
    });
  });

  test("shares at or above each grade have limits of the chosen method", () => {
    const found =
      scores([0, 0, 0, 1, 1, 2, 2, 2], { interval: "clopper-pearson", level: 0.9 }).at_or_above ?? [];
    expect(found.map(({ grade, pigs }) => [grade, pigs])).toEqual([
      [1, 5],
      [2, 3],
      [3, 0],
      [4, 0],
      [5, 0],
    ]);
    expectClose(found[2]?.upper ?? 0, 1 - 0.05 ** (1 / 8), 1e-12, "0 of 8");
    const tail = binomialProbabilities(8, found[1]?.lower ?? 0)
      .slice(3)
      .reduce((sum, one) => sum + one, 0);
    expectClose(tail, 0.05, 1e-9, "3 of 8");
    expect(scores([0, 1], { interval: "blaker" }).at_or_above?.[0]?.method).toBe("blaker");
  });

  test("the same share has the same limits, of a group of known size and counted by pen too", () => {
    const inPen = (pen: number, grades: readonly number[]) =>
      grades.map((grade) => gradedRecord(grade, { group: "nursery-1", pen }));
    const cases = archiveOf({
      "farm.yaml": { ...farm("alder"), groups: { "nursery-1": { head: 40 } } },
      "v/visit.yaml": visit("spring", "2026-03-14"),
      ...Object.fromEntries(
        [...inPen(1, [0, 2, 3, 1]), ...inPen(2, [0, 0, 2]), ...inPen(3, [0, 1, 5])].map((one, index) => [
          `v/${index}.yaml`,
          one,
        ]),
      ),
    });
    for (const options of [{ finite: true }, { cluster: "pen" as const }, {}]) {
      const { estimates, scores: found } = herdEstimates(cases, {
        indicators: ["snout-grade-2-up"],
        scales: ["maff-1978"],
        ...options,
      });
      const { lower, upper, method, notes } = estimates[0] ?? {};
      expect(found[0]?.at_or_above?.find(({ grade }) => grade === 2)).toEqual({
        grade: 2,
        pigs: 4,
        share: 0.4,
        lower,
        upper,
        method,
        ...(notes !== undefined && { notes }),
      });
    }
  });

  describe("a mean that few pigs decide", () => {
    const scored = (grades: readonly number[]) =>
      herdEstimates(
        archiveOf(
          Object.fromEntries(
            grades.map((grade, index) => [
              `${index}.yaml`,
              {
                format: 1,
                case: `pig-${index}`,
                selection: { basis: "random" },
                respiratory: { turbinates: { section: "premolar-1", grades: { "maff-1978": grade } } },
              },
            ]),
          ),
        ).cases,
        { indicators: [], scales: ["maff-1978"], by: [], seed: 1 },
      );
    const zeros = (pigs: number) => new Array<number>(pigs).fill(0);
    const few = "too few pigs differ from the commonest score for an interval of the mean (5 of 22)";

    test("has no interval by t or bootstrap, says why and keeps its shares", () => {
      const report = scored([...zeros(17), 1, 1, 2, 3, 5]);
      const [score] = report.scores;
      expect(score?.mean_interval).toMatchObject({ lower: null, upper: null, reason: few });
      expect(score?.bootstrap).toMatchObject({ lower: null, reason: few });
      expect(score?.at_or_above?.every(({ lower }) => lower !== null)).toBe(true);
      expect(herdText(report, makeStyle(false), { all: true }).replaceAll(/\s+/g, " ")).toContain(
        `${few}; see the shares at or above each grade.`,
      );
    });

    test("has one from six pigs on, or from half of them, and the bootstrap from twenty", () => {
      const [six] = scored([...zeros(16), 1, 1, 1, 2, 3, 5]).scores;
      expect([six?.mean_interval?.reason, six?.bootstrap?.reason]).toEqual([null, null]);
      const [half] = scored([0, 0, 0, 1, 2, 2]).scores;
      expect([half?.mean_interval?.reason, half?.bootstrap?.reason]).toEqual([null, "fewer than 20 values"]);
      const [equal] = scored(zeros(9)).scores;
      expect(equal?.mean_interval?.reason).toBe("all values are equal");
    });
  });

  test("without pigs there are no limits", () => {
    const empty = herdEstimates([pig({ selection: { basis: "random" } })], {
      indicators: [],
      scales: ["maff-1978"],
    }).scores[0];
    expect(empty?.mean_interval).toMatchObject({ lower: null, reason: "no values" });
    expect(empty).not.toHaveProperty("at_or_above");
  });
});
