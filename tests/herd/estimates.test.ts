/** Denominators, intervals and the words that go with them. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Case } from "../../src/cases/index.ts";
import { herdEstimates } from "../../src/herd/index.ts";
import { percent, percentRange } from "../../src/words/percent.ts";
import { runs } from "../random.ts";
import { consolidation, organ, pig } from "../score/pigs.ts";

const lungs = (entry: unknown, basis?: string): Case =>
  pig({ ...organ("respiratory.lungs", entry), ...(basis !== undefined && { selection: { basis } }) });
const affected = (basis?: string) => lungs({ consolidation: consolidation({ left_cranial: 30 }) }, basis);
const free = (basis?: string) => lungs("normal", basis);
const closed = (basis?: string) => lungs({ not_examined: "kept whole" }, basis);
const times = (number: number, one: Case): Case[] => Array<Case>(number).fill(one);

const asked = { indicators: ["lung-consolidation"], scales: ["madec-kobisch-1982"] };
const only = (cases: readonly Case[], level?: number) => {
  const { estimates, scores } = herdEstimates(cases, { ...asked, ...(level !== undefined && { level }) });
  const [estimate] = estimates;
  const [score] = scores;
  if (estimate === undefined || score === undefined || estimates.length + scores.length !== 2)
    throw new Error("expected one stratum");
  return { estimate, score };
};

describe("denominators", () => {
  test("pigs in which it was not examined are not in n, for estimates and for scores", () => {
    const bySystem = pig({ respiratory: "normal", selection: { basis: "random" } });
    const cases = [affected("random"), free("random"), free("random"), closed("random"), bySystem];
    const { estimate, score } = only(cases);
    const without = { not_graded: 1, not_examined: 1 };
    expect(estimate).toMatchObject({ affected: 1, examined: 3, ...without, proportion: 1 / 3 });
    expect(score).toMatchObject({ n: 3, ...without, mean: 2 / 3, median: 0, min: 0, max: 2 });
    expect(score.distribution).toEqual([
      { value: 0, count: 2 },
      { value: 2, count: 1 },
    ]);
    expect(estimate.wording).toContain("examined but not graded in 1 of 5 pigs; not examined in 1 of 5 pigs");
  });

  test("more pigs that were not examined change neither proportion nor interval", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 12 }),
        fc.integer({ min: 0, max: 12 }),
        fc.integer({ min: 0, max: 12 }),
        (ill, well, skipped) => {
          fc.pre(ill + well > 0);
          const seen = [...times(ill, affected("random")), ...times(well, free("random"))];
          const a = only(seen).estimate;
          const b = only([...times(skipped, closed("random")), ...seen]).estimate;
          expect(b).toMatchObject({ affected: a.affected, examined: ill + well, not_examined: skipped });
          expect([b.proportion, b.lower, b.upper]).toEqual([a.proportion, a.lower, a.upper]);
          // One pig gives no percentage.
          if (ill + well === 1) {
            expect([a.proportion, a.lower, a.upper]).toEqual([null, null, null]);
            return;
          }
          expect(a.lower).toBeLessThanOrEqual(a.proportion ?? Number.NaN);
          expect(a.upper).toBeGreaterThanOrEqual(a.proportion ?? Number.NaN);
        },
      ),
      { numRuns: runs(40) },
    );
  });

  test("nothing examined: no proportion, no interval, and it says so", () => {
    const { estimate, score } = only(times(5, closed("random")));
    expect(estimate).toMatchObject({ examined: 0, not_examined: 5, affected: 0 });
    expect([estimate.proportion, estimate.lower, estimate.upper]).toEqual([null, null, null]);
    expect(estimate.wording).toBe("Any lung consolidation: not examined in any of 5 pigs.");
    expect(score).toMatchObject({ n: 0, not_examined: 5, mean: null, median: null, distribution: [] });
    expect(score.indices.map(({ value, class: name }) => [value, name])).toEqual([
      [null, null],
      [null, null],
    ]);
    expect(only([closed()]).estimate.wording).toBe("Any lung consolidation: not examined in the only pig.");
  });
});

describe("intervals and one-sided limits (exact binomial; derived)", () => {
  test.each([
    [10, "30.85", "25.9 %"],
    [20, "16.84", "13.9 %"],
    [30, "11.57", "9.5 %"],
  ])("0 of %d: two-sided to %s %%, one-sided to %s", (n, twoSided, oneSided) => {
    const { estimate } = only(times(n, free("random")));
    expect(estimate).toMatchObject({ lower: 0, level: 0.95, method: "clopper-pearson" });
    expect(((estimate.upper ?? Number.NaN) * 100).toFixed(2)).toBe(twoSided);
    expect(estimate.wording).toContain(
      `with 95 % confidence no more than ${oneSided} of the group (one-sided)`,
    );
    expect(oneSided).toBe(percent(1 - 0.05 ** (1 / n)));
  });

  test("0 of 14: no more than 19.3 %", () => {
    expect(only(times(14, free("random"))).estimate.wording).toContain("no more than 19.3 %");
  });

  test("10 of 10: at least 74.1 %, the mirror image", () => {
    const { estimate } = only(times(10, affected("random")));
    expect(((estimate.lower ?? Number.NaN) * 100).toFixed(2)).toBe("69.15");
    expect(estimate.upper).toBe(1);
    expect(estimate.wording).toContain("with 95 % confidence at least 74.1 % of the group (one-sided)");
  });

  test("the level that is asked for is used and said", () => {
    const { estimate } = only(times(10, free("random")), 0.9);
    expect(estimate.level).toBe(0.9);
    expect(estimate.wording).toContain(`with 90 % confidence no more than ${percent(1 - 0.1 ** (1 / 10))}`);
    expect(estimate.wording).toContain("90 % CI");
  });

  test("in between there is no one-sided statement", () => {
    const { estimate } = only([...times(4, affected("random")), ...times(8, free("random"))]);
    expect(estimate.wording).toBe(
      "Any lung consolidation: 4 of 12 pigs (33.3 %, 95 % CI 9.9 to 65.1 %), estimated prevalence in the group (pigs drawn at random).",
    );
  });

  test.each([0, 1, 95, Number.NaN])("a level of %d is refused", (level) => {
    expect(() => herdEstimates([], { level })).toThrow(RangeError);
  });
});

describe("wording", () => {
  test("a whole group is a prevalence that is known exactly, and has no interval", () => {
    const whole = [...times(2, affected("complete")), ...times(6, free("complete"))];
    const { estimate, score } = only(whole);
    expect(estimate).toMatchObject({
      proportion: 0.25,
      lower: null,
      upper: null,
      method: null,
      reach: "prevalence",
    });
    expect(estimate.wording).toBe(
      "Any lung consolidation: 2 of 8 pigs (25.0 %), prevalence in the pigs of the group (all were examined).",
    );
    expect(score.mean_interval).toMatchObject({ lower: null, upper: null });
    expect(only(times(8, free("complete"))).estimate).toMatchObject({ one_sided: null });
  });

  test("in a whole group the pigs that nobody could look at may have it or not", () => {
    const whole = [
      ...times(2, affected("complete")),
      ...times(4, free("complete")),
      ...times(2, closed("complete")),
    ];
    const { estimate } = only(whole);
    expect(estimate).toMatchObject({ proportion: 1 / 3, lower: 0.25, upper: 0.5, method: "bounds" });
    expect(estimate.wording).toContain(
      "2 of 6 pigs (33.3 %); prevalence in the 8 pigs of the group 25.0 to 50.0 %, whatever the other 2 have",
    );
  });

  test.each([
    ["clinical", "they were chosen because they were ill"],
    ["found-dead", "they were found dead"],
    ["culled", "they were culled"],
    ["comparison", "they were chosen because they looked healthy"],
    ["convenience", "they were taken because they were at hand"],
    [undefined, "how they were chosen is not recorded"],
  ])("%s: of the pigs examined, no prevalence", (basis, why) => {
    const some = only([affected(basis), free(basis), free(basis)]).estimate;
    expect(some.basis).toBe(basis ?? null);
    expect(some.wording).toContain(`1 of 3 (33.3 %) of the pigs examined; ${why}`);
    for (const cases of [times(10, free(basis)), times(10, affected(basis))]) {
      const { estimate, score } = only(cases);
      expect(estimate).toMatchObject({ lower: null, upper: null, one_sided: null, reach: "these-pigs" });
      expect(score.mean_interval).toMatchObject({ lower: null, upper: null });
      expect(estimate.wording).not.toMatch(/prevalence|confidence|CI|% of the group/);
    }
  });

  test("one pig", () => {
    expect(only([affected("clinical"), closed("clinical")]).estimate.wording).toBe(
      "Any lung consolidation: seen in the one pig examined (chosen for signs); a single pig that was not drawn at random says nothing of how common it is in the group; not examined in 1 of 2 pigs.",
    );
    expect(only([free("random")]).estimate.wording).toBe(
      "Any lung consolidation: not seen in the one pig examined (drawn at random); a single pig says next to nothing of the group.",
    );
  });

  test("a sentence for every basis and count", () => {
    for (const basis of ["random", "complete", "clinical", undefined])
      for (const ill of [0, 1, 2])
        for (const well of [0, 1, 2])
          for (const skipped of [0, 1]) {
            const cases = [
              ...times(ill, affected(basis)),
              ...times(well, free(basis)),
              ...times(skipped, closed(basis)),
            ];
            if (cases.length === 0) continue;
            expect(only(cases).estimate.wording).toMatch(/^Any lung consolidation: [^.]+(\.\d[^.]+)*\.$/);
          }
  });

  test("tiny and nearly full proportions are not printed as 0 or 100", () => {
    expect(percent(0)).toBe("0 %");
    expect(percent(1)).toBe("100 %");
    expect(percent(0.0001)).toBe("<0.1 %");
    expect(percent(0.9999)).toBe(">99.9 %");
    expect(percentRange(0.0986, 0.651)).toBe("9.9 to 65.1 %");
  });
});

describe("sources go with the numbers", () => {
  test("the indicator has its own source and that of its scale, with what is from memory", () => {
    const { estimate, score } = only([affected("random")]);
    expect(estimate.source).toContain("Madec & Kobisch");
    expect(estimate.confidence).toBe("verified");
    expect(estimate.scale).toMatchObject({ id: "madec-kobisch-1982", confidence: "from-memory" });
    expect(score).toMatchObject({
      confidence: "from-memory",
      not_comparable: expect.arrayContaining(["madec-kobisch-1982-six-lobes"]),
    });
    expect(score.note).toContain("from memory");
  });
});

test("UK survey 1974 (verified: 44.7 % at grade 2 or more, 17.5 % at 3 or more; single grades derived, per 1000)", () => {
  const graded = (grade: number) =>
    pig({
      ...organ("respiratory.turbinates", { section: "premolar-1", grades: { "maff-1978": grade } }),
      selection: { basis: "random" },
    });
  const cases = [
    ...times(243, graded(0)),
    ...times(310, graded(1)),
    ...times(272, graded(2)),
    ...times(175, graded(3)),
  ];
  const { estimates, scores } = herdEstimates(cases, {
    indicators: ["snout-grade-3-up", "snout-grade-2-up"],
    scales: ["maff-1978"],
  });
  expect(estimates.map(({ indicator, proportion }) => [indicator, proportion])).toEqual([
    ["snout-grade-3-up", 0.175],
    ["snout-grade-2-up", 0.447],
  ]);
  expect(1000 - (scores[0]?.distribution[0]?.count ?? 0)).toBe(757);
});

test("unknown names are refused with the nearest known one", () => {
  const cases = [free("random")];
  expect(() => herdEstimates(cases, { indicators: ["lung-consolidatoin"] })).toThrow(/lung-consolidation/);
  expect(() => herdEstimates(cases, { scales: ["dottori"] })).toThrow(/dottori-2007/);
});
