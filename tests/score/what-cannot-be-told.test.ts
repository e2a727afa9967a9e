/** Blank, not examined, by system, out of place: null, with the path or the reason, never a guess. */
import { describe, expect, test } from "vitest";
import type { OrganState } from "../../src/cases/index.ts";
import type { Scale } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { scoreCases, scoreOrgan } from "../../src/score/index.ts";
import { every } from "../every.ts";
import { consolidation, organ, pig, scaleNamed, scoreOf, scoreOn, snout } from "./pigs.ts";

/** The scales of organs; those of the pig as a whole have no state such as normal. */
const all = [...scales.values()].filter((scale) => scale.organ !== "pig");

/** A state with this entry that did not pass the reader, which would have taken wrong values out. */
const unchecked = (entry: object): OrganState => ({
  status: "recorded",
  path: [],
  bySystem: false,
  reason: undefined,
  because: undefined,
  findings: [],
  entry: { ...entry },
  sides: [],
});

describe("every scale", () => {
  const systemOf = (scale: Scale): string => scale.organ.split(".")[0] ?? "";

  every("a blank organ is missing", all, (scale) => {
    const { id, organ: place } = scale;
    for (const record of [{}, organ(place, null), { [systemOf(scale)]: null }]) {
      expect(scoreOf(id, record)).toMatchObject({ value: null, class: null, missing: [place] });
    }
  });

  every("not examined and not assessable say why", all, (scale) => {
    const { id } = scale;
    const closed = scoreOn(id, { not_examined: "carcass left whole" });
    expect(closed).toMatchObject({ value: null, missing: [], reason: "not examined: carcass left whole" });
    const rotten = scoreOn(id, { not_assessable: { because: "autolysed", why: "three days dead" } });
    expect(rotten).toMatchObject({
      value: null,
      missing: [],
      reason: "not assessable (autolysed): three days dead",
    });
  });

  every("the word normal for the whole system is not a score", all, (scale) => {
    const { id, organ: place } = scale;
    expect(scoreOf(id, { [systemOf(scale)]: "normal" })).toMatchObject({
      value: null,
      missing: [place],
      reason: "recorded only by the word normal for the whole system; record the organ itself to score it",
    });
  });

  every("findings without observations leave every part missing", all, (scale) => {
    const { id, organ: place } = scale;
    for (const entry of [[{ process: "atrophy" }], { findings: [{ process: "atrophy" }] }]) {
      const score = scoreOn(id, entry);
      expect(score.value).toBeNull();
      expect(score.missing.length).toBeGreaterThan(0);
      expect(score.missing.every((path) => path.startsWith(`${place}.`))).toBe(true);
      expect(Object.values(score.parts).every((value) => value === null)).toBe(true);
    }
  });

  every(
    "a normal organ has the lowest grade, unless it must be measured, when what the scale requires is recorded",
    all,
    (scale) => {
      const { id, requires, when_normal: normal, range } = scale;
      const section = requires === undefined ? {} : { section: "premolar-2" };
      const value = normal === undefined ? null : Math.max(0, range[0]);
      const score = scoreOn(id, { state: "normal", ...section });
      expect(score.value).toBe(value);
      expect(score.missing.length).toBe(normal === undefined ? 1 : 0);
      const word = scoreOn(id, "normal");
      if (requires === undefined) expect(word.value).toBe(value);
      else if (normal === undefined) expect(word.missing).toContain("respiratory.turbinates.section");
      else expect(word).toMatchObject({ value: null, missing: ["respiratory.turbinates.section"] });
    },
  );

  every("normal with a finding contradicts itself", all, (scale) => {
    const { id } = scale;
    const entry = { state: "normal", section: undefined, findings: [{ process: "abscess" }] };
    expect(scoreOn(id, entry)).toMatchObject({
      value: null,
      missing: [],
      reason: expect.stringContaining("normal"),
    });
  });
});

describe("the level of the snout section", () => {
  test.each(["maff-1978", "embrapa-1993", "polloni-2018"])(
    "%s does not hold in front of premolar 1",
    (id) => {
      // Corrégé et al. 2013 (verified): a section 1 cm in front of it scores too high
      const entry = snout(1, {
        section: "rostral-to-premolar-1",
        grades: { [id]: id === "polloni-2018" ? 4 : 1 },
      });
      expect(scoreOn(id, entry)).toMatchObject({
        value: null,
        class: null,
        missing: ["respiratory.turbinates.section"],
        reason:
          "respiratory.turbinates.section is rostral-to-premolar-1: this scale holds only for premolar-1, between-premolars-1-2 or premolar-2",
      });
    },
  );

  test("a level that is not recorded is missing, beside other missing parts", () => {
    const { section: _, septum: __, ...entry } = snout(1);
    const score = scoreOn("polloni-2018", entry);
    expect(score.missing).toEqual(["respiratory.turbinates.section", "respiratory.turbinates.septum"]);
    expect(score.reason).toBeUndefined();
    expect(score.parts).toMatchObject({ "left dorsal concha": 1, septum: null });
  });
});

describe("grades read on the spot", () => {
  test("feed the scale they are written under and no other", () => {
    const record = organ("respiratory.turbinates", { section: "premolar-1", grades: { "maff-1978": 2 } });
    const scores = scoreCases([pig(record)], { scales: ["maff-1978", "embrapa-1993", "polloni-2018"] })
      .cases[0]?.scores;
    expect(scores?.map(({ value }) => value)).toEqual([2, null, null]);
    expect(scores?.[1]?.missing).toEqual(["respiratory.turbinates.grades.embrapa-1993"]);
  });

  test("a total stands in for parts that were not recorded, and says so", () => {
    const score = scoreOn("madec-kobisch-1982", { grades: { "madec-kobisch-1982": 5 } });
    expect(score).toMatchObject({ value: 5, missing: [], from_grade: true });
    expect(Object.values(score.parts).every((value) => value === null)).toBe(true);
    expect(scoreOn("madec-kobisch-1982-six-lobes", { grades: { "madec-kobisch-1982": 5 } }).value).toBeNull();
  });

  test("a total that the recorded parts do not give is no score", () => {
    const lungs = { consolidation: consolidation({ left_cranial: 25 }) };
    const grades = (grade: number) => ({ ...lungs, grades: { "madec-kobisch-1982": grade } });
    const right = scoreOn("madec-kobisch-1982", grades(2));
    expect(right.value).toBe(2);
    expect(right.from_grade).toBeUndefined();
    expect(scoreOn("madec-kobisch-1982", grades(7))).toMatchObject({
      value: null,
      reason: expect.stringContaining("the recorded parts give 2"),
    });
  });

  test.each([
    ["maff-1978", 6, "out of range for this scale (0 to 5)"],
    ["maff-1978", -1, "out of range for this scale (0 to 5)"],
    ["maff-1978", 2.5, "whole grades only"],
    ["embrapa-1993", 4, "out of range for this scale (0 to 3)"],
    ["madec-kobisch-1982", 29, "out of range for this scale (0 to 28)"],
    ["madec-kobisch-1982", 3.5, "whole grades only"],
    ["dottori-2007", 5, "out of range for this scale (0 to 4)"],
  ])("%s at %d is no score", (id, grade, reason) => {
    const section = scaleNamed(id).requires === undefined ? {} : { section: "premolar-1" };
    const score = scoreOn(id, { ...section, grades: { [id]: grade } });
    expect(score).toMatchObject({ value: null, class: null, reason: expect.stringContaining(reason) });
  });
});

describe("what contradicts itself or does not fit", () => {
  test("a normal lung with a consolidated lobe", () => {
    const entry = { state: "normal", consolidation: { left_cranial: 20 } };
    expect(scoreOn("madec-kobisch-1982", entry)).toMatchObject({
      value: null,
      reason: expect.stringContaining("consolidation.left_cranial is not"),
    });
    expect(scoreOn("madec-kobisch-1982", { state: "normal", consolidation: { left_cranial: 0 } }).value).toBe(
      0,
    );
  });

  test("the cranial part of a lobe that has no consolidation", () => {
    const entry = { consolidation: consolidation(), caudal_cranial_part: { left: 20 } };
    expect(scoreOn("goodwin-1971", entry)).toMatchObject({
      value: null,
      missing: [],
      reason: expect.stringContaining("although respiratory.lungs.consolidation.left_caudal is 0"),
    });
  });

  test("a half grade of a concha", () => {
    const score = scoreOn("polloni-2018", snout(0.5));
    expect(score).toMatchObject({ value: null, class: null, missing: [] });
    expect(score.reason).toContain("respiratory.turbinates.left.dorsal is 0.5: a fraction");
  });

  test.each([
    ["madec-kobisch-1982", { consolidation: consolidation({ accessory: 120 }) }],
    ["madec-kobisch-1982", { consolidation: consolidation({ accessory: -1 }) }],
    ["christensen-1999", { consolidation: consolidation({ accessory: 120 }) }],
    ["polloni-2018", snout(5)],
    ["polloni-2018", snout(0, { septum: "broken" })],
    ["dottori-2007", { pleurisy: { left: ["none", "parietal"], right: "none" } }],
  ])("%s: values that no reader let through still give no score (%j)", (id, entry) => {
    const score = scoreOrgan(scaleNamed(id), unchecked(entry));
    expect(score.value).toBeNull();
    expect(score.reason).toBeTruthy();
  });

  test("words of a list without a value do not vanish in the largest", () => {
    const state = unchecked({ pleurisy: { left: [], right: "none" } });
    expect(scoreOrgan(scaleNamed("dottori-2007"), state).missing).toEqual([
      "respiratory.pleura.pleurisy.left",
    ]);
  });
});

test("an unknown scale is refused with the nearest name", () => {
  expect(() => scoreCases([], { scales: ["madec-kobish-1982"] })).toThrow(/madec-kobisch-1982/);
});

test("without a choice the scales of the settings are computed, in their order", () => {
  const [scored] = scoreCases([pig({})]).cases;
  expect(scored).toMatchObject({ case: "pig-1", file: "pig.yaml" });
  const always = [...scales.values()].filter(({ by_default: when = "always" }) => when === "always");
  expect(always.length).toBe(8);
  expect(scored?.scores.map(({ scale }) => scale)).toEqual(always.map(({ id }) => id));
});
