/** Grades written on the line feed their own scale alone, and scales appear where they are used. */
import { describe, expect, test } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { herdEstimates } from "../../src/herd/index.ts";
import { organs } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { scalesInUse, scoreCases } from "../../src/score/index.ts";
import { organ, pig, scoreOf } from "./pigs.ts";

const all = [...scales.values()].filter((scale) => scale.organ !== "pig");

describe("nothing is converted, since no published conversion could be read", () => {
  test.each(all)("a grade under $id gives a score to no other scale", (scale) => {
    const [lowest, highest] = scale.range;
    const grade = Math.max(lowest, Math.floor(highest / 2));
    const section = scale.requires === undefined ? {} : { section: "premolar-1" };
    const record = organ(scale.organ, { ...section, grades: { [scale.id]: grade } });
    const scored = scoreCases([pig(record)], { scales: [...scales.keys()] }).cases[0]?.scores ?? [];
    expect(scored.length).toBe(scales.size);
    expect(scored.filter(({ value }) => value !== null).map(({ scale: id, value }) => [id, value])).toEqual([
      [scale.id, grade],
    ]);
    expect(scored.every((score) => !("converted_from" in score))).toBe(true);
  });
});

test("a grade that is only recorded stands as it was written, within its range and whole", () => {
  for (const { id, organ: place, range, recorded_only: why, requires } of all.filter(
    (one) => one.recorded_only,
  )) {
    expect(why?.length).toBeGreaterThan(20);
    const section = requires === undefined ? {} : { section: "premolar-2" };
    const graded = (grade: number) =>
      scoreOf(id, organ(place, { ...section, grades: { [id]: grade } })).value;
    expect([graded(range[0]), graded(range[1])]).toEqual([...range]);
    expect([graded(range[0] - 1), graded(range[1] + 1), graded(range[0] + 0.5)]).toEqual([null, null, null]);
  }
});

test("what must be measured is never guessed from a grade or a normal organ", () => {
  const record = organ("respiratory.turbinates", {
    state: "normal",
    section: "premolar-1",
    grades: { "maff-1978": 0 },
  });
  for (const id of ["collins-1989-perimeter", "collins-1989-area", "done-1984"])
    expect(scoreOf(id, record).value).toBeNull();
});

describe("which scales are shown when nobody names any", () => {
  const shown = (...records: Parameters<typeof pig>[0][]): string[] => {
    const [first = [], ...rest] = scoreCases(records.map((record) => pig(record))).cases.map(({ scores }) =>
      scores.map(({ scale }) => scale),
    );
    for (const other of rest) expect(other).toEqual(first);
    return first;
  };
  const always = [...scales.values()].filter(({ by_default: when = "always" }) => when === "always");
  const liver = organ("liver_pancreas.liver", { milk_spots: 3 });

  test("those that are always shown, and no other", () => {
    expect(shown({}).length).toBe(always.length);
    expect(shown(organ("liver_pancreas.liver", "normal"))).toEqual(always.map(({ id }) => id));
  });

  test("one that is shown when recorded, for every pig of the visit, when one pig has it", () => {
    expect(shown(liver, {})).toEqual([...always.map(({ id }) => id), "german-rule-liver"]);
    const [recorded, normal] = scoreCases([pig(liver), pig(organ("liver_pancreas.liver", "normal"))]).cases;
    for (const one of [recorded, normal])
      expect(one?.scores.find(({ scale }) => scale === "german-rule-liver")?.value).toBe(0);
  });

  test("what must be measured is shown for the pigs that have it", () => {
    const traced = organ("respiratory.turbinates", {
      section: "premolar-1",
      measured: { perimeter_ratio: { total: 1.2 } },
    });
    const stillborn = organ("respiratory.lungs", { float: "sinks" });
    const [one, two, three] = scoreCases([pig(traced), pig(stillborn), pig({})]).cases.map(({ scores }) =>
      scores.map(({ scale }) => scale).filter((id) => !always.some((scale) => scale.id === id)),
    );
    expect([one, two, three]).toEqual([["collins-1989-perimeter"], ["lung-float"], []]);
    const { scores } = herdEstimates([pig(traced), pig({})], { by: [] });
    expect(scores.find(({ scale }) => scale === "collins-1989-perimeter")).toMatchObject({
      n: 1,
      not_examined: 1,
      mean: 1.2,
    });
  });

  test("a grade under its name shows a scale, but not one that is off unless named", () => {
    const lungs = organ("respiratory.lungs", { grades: { "pallares-2021": 2, "halbur-1995": 12 } });
    expect(shown(lungs)).toContain("pallares-2021");
    expect(shown(lungs)).not.toContain("halbur-1995");
    expect(scoreOf("halbur-1995", lungs).value).toBe(12);
  });

  test("the weak memories never appear by themselves, whatever is recorded", () => {
    const everything = Object.fromEntries([...scales.keys()].map((id) => [id, 1]));
    const records = organs.map(({ id }) => organ(id, { grades: everything }));
    const inUse = scalesInUse(records.map((record) => pig(record)));
    const named = inUse(pig({})).filter(({ by_default: when }) => when === "when-named");
    expect(named).toEqual([]);
    expect(inUse(pig({})).length).toBeGreaterThan(always.length + 10);
  });

  test("a scale that the settings name is shown whether recorded or not", () => {
    const text = "format: 1\ncase: a\n";
    const { cases } = readCases(["-"], { input: { bytes: new TextEncoder().encode(text), name: "a.yaml" } });
    const named = cases.map((one) => ({
      ...one,
      settings: { ...one.settings, scales: ["danish-stomach-grade"] },
    }));
    expect(scoreCases(named).cases[0]?.scores.map(({ scale }) => scale)).toEqual(["danish-stomach-grade"]);
  });
});

test("a grade written down is as sure as the grade, a computed one as its formula", () => {
  const lung = (entry: Record<string, unknown>) =>
    scoreOf("german-rule-lungs", organ("respiratory.lungs", entry));
  const lobes = {
    left_cranial: 50,
    left_middle: 50,
    left_caudal: 20,
    right_cranial: 50,
    right_middle: 50,
    right_caudal: 20,
    accessory: 0,
  };
  expect(lung({ consolidation: lobes })).toMatchObject({ value: 1, confidence: "from-memory" });
  const graded = lung({ grades: { "german-rule-lungs": 1 } });
  expect(graded).toMatchObject({ value: 1, from_grade: true, confidence: "verified" });
  expect(graded.note).toBeUndefined();
  // Both, and they agree: the value was computed.
  expect(lung({ consolidation: lobes, grades: { "german-rule-lungs": 1 } }).confidence).toBe("from-memory");
  // A grade whose own words are from memory keeps the mark.
  expect(
    scoreOf(
      "maff-1978",
      organ("respiratory.turbinates", { section: "premolar-1", grades: { "maff-1978": 2 } }),
    ).confidence,
  ).toBe("from-memory");
});
