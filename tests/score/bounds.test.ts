/** What a record that is not complete allows: certain grades, and the least and greatest that the rest leaves. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { OrganState } from "../../src/cases/index.ts";
import { organById, type Scale } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { printedBounds, scoreOrgan } from "../../src/score/index.ts";
import { runs } from "../random.ts";
import { entryOf } from "./entries.ts";
import { consolidation, type Json, scaleNamed, scoreOn, without } from "./pigs.ts";

describe("a grade that no missing part could change", () => {
  test.each([
    ["swaby-gregory-2012", { keratin: 30, ulcer: 10 }, 3],
    ["polish-stomach-2024", { keratin: 30, ulcer: 10 }, 3],
    ["keeling-2012", { lost: 60 }, 2],
    ["kritas-morrison-2007", { lost: 30, wound: "healed" }, 4],
    ["kritas-morrison-2007", { lost: 60 }, 4],
    ["german-key-tail-wound", { wound: "scratch" }, 1],
    ["dottori-2007", { pleurisy: { left: "dorsocaudal-extensive" } }, null],
    ["german-rule-lungs", { consolidation: { right_caudal: 60, left_caudal: 40 } }, 2],
  ])("%s of %j is %s", (id, entry, value) => {
    const score = scoreOn(id, entry);
    expect(score.value).toBe(value);
    if (value === null) return;
    expect(score.missing).toEqual([]);
    expect(score.bounds).toBeUndefined();
  });

  test("names what was not recorded and not needed", () => {
    expect(scoreOn("swaby-gregory-2012", { keratin: 30, ulcer: 10 })).toMatchObject({
      not_needed: ["stomach.pars_oesophagea.erosion"],
      parts: { keratin: 1, erosion: null, ulcer: 3 },
    });
  });
});

describe("a grade that they could", () => {
  test.each([
    ["swaby-gregory-2012", { keratin: 30, erosion: 5 }, [2, 3], "at least 2"],
    ["swaby-gregory-2012", { keratin: 30, ulcer: 0 }, [1, 2], "1 to 2"],
    ["swaby-gregory-2012", { keratin: 0, ulcer: 0 }, [0, 2], "at most 2"],
    ["keeling-2012", { wound: "open" }, [1, 2], "at least 1"],
    ["dottori-2007", { pleurisy: { left: "dorsocaudal-focal" } }, [2, 3], "2 to 3"],
    ["dottori-2007", { pleurisy: { left: "dorsocaudal-extensive" } }, [3, 4], "at least 3"],
    ["stomach-index-2016", { ulcer: 10 }, [7, 10], "7 to 10"],
    ["german-key-tail-wound", { wound_size: "9 mm" }, [0, 2], "at most 2"],
    ["madec-leneveu-2011", { consolidation: consolidation({ accessory: 10 }) }, [1, 2], "1 to 2"],
    ["goodwin-1971", { consolidation: consolidation({ left_caudal: 10 }) }, [0, 5], "at most 5"],
  ])("%s of %j lies in %j", (id, entry, bounds, words) => {
    const score = scoreOn(id, entry);
    expect(score).toMatchObject({ value: null, bounds });
    expect(score.missing.length).toBeGreaterThan(0);
    expect(printedBounds(scaleNamed(id), bounds as [number, number])).toBe(words);
  });

  test("has a class where both bounds lie in it", () => {
    const left = { dorsal: 2, ventral: 2 };
    const snout = { section: "premolar-1", left, right: { dorsal: 2 }, septum: "slight" };
    expect(scoreOn("polloni-2018", snout)).toMatchObject({ bounds: [7, 11], class: null });
    expect(scoreOn("polloni-2018", { ...snout, right: { dorsal: 3 } })).toMatchObject({
      bounds: [8, 12],
      class: "moderate",
    });
  });

  test.each([
    ["no part of the scale is recorded", "keeling-2012", { wound_swollen: "no" }],
    ["what is recorded narrows nothing", "keeling-2012", { wound: "none" }],
    ["what the scale requires is not recorded", "polloni-2018", { left: { dorsal: 4, ventral: 4 } }],
    ["the grades are names", "valros-2020", { wound: "open" }],
    [
      "something else contradicts itself",
      "goodwin-1971",
      { consolidation: { left_caudal: 0 }, caudal_cranial_part: { left: 20 } },
    ],
  ])("has no bounds when %s", (_, id, entry) => {
    expect(scoreOn(id, entry).value).toBeNull();
    expect(scoreOn(id, entry).bounds).toBeUndefined();
  });

  test("refuses a grade outside of them", () => {
    const entry = { consolidation: { left_cranial: 80 }, grades: { "madec-kobisch-1982": 3 } };
    expect(scoreOn("madec-kobisch-1982", entry)).toMatchObject({
      value: null,
      reason:
        "respiratory.lungs.grades.madec-kobisch-1982 is 3, but the recorded parts give at least 4; one of them is wrong",
    });
    entry.grades["madec-kobisch-1982"] = 4;
    expect(scoreOn("madec-kobisch-1982", entry)).toMatchObject({ value: 4, from_grade: true });
  });
});

/** Apart from the interpreter: what may be written for an observation, on both sides of every cut point of any scale. */
const percents = [0, 1, 9, 10, 11, 21, 24, 25, 26, 31, 33, 34, 49, 50, 51, 66, 67, 75, 76, 99, 100];
const lengths = [0, 5, 10, 11, 19, 20, 21, 100];
function writable(scale: Scale, path: string): unknown[] {
  const [key = ""] = path.split(".");
  const {
    kind,
    values,
    range: [from = 0, to = 0] = [],
  } = organById(scale.organ)?.definition.observations?.[key] ?? {};
  if (values !== undefined) return [...values];
  if (kind === "percent") return percents;
  if (kind === "length") return lengths.map((mm) => `${mm} mm`);
  return Array.from({ length: to - from + 1 }, (_, index) => from + index);
}

const written = (entry: Json, path: string): unknown =>
  path.split(".").reduce<unknown>((below, key) => (below as Json | undefined)?.[key], entry);

function withValue(entry: Json, path: string, value: unknown): Json {
  const [key = "", ...rest] = path.split(".");
  return {
    ...entry,
    [key]: rest.length === 0 ? value : withValue((entry[key] ?? {}) as Json, rest.join("."), value),
  };
}

const scored = (scale: Scale, entry: Json) =>
  scoreOrgan(scale, {
    status: "recorded",
    path: [],
    bySystem: false,
    reason: undefined,
    because: undefined,
    findings: [],
    entry: { ...entry },
    sides: [],
  } as OrganState);

const several = [...scales.values()].filter(
  ({ parts, organ }) => Object.keys(parts).length > 1 && organ !== "pig",
);
const readsOf = (scale: Scale): string[] => [
  ...new Set(
    Object.values(scale.parts).flatMap(({ read, zero_unless: asked }) => [
      read,
      ...(asked ? [asked.read] : []),
    ]),
  ),
];

test.each(several)("$id: the score of the whole record lies within the bounds of any part of it", (scale) => {
  fc.assert(
    fc.property(entryOf(scale.id), fc.subarray(readsOf(scale)), (entry, gone) => {
      const whole = scored(scale, entry).value;
      const { value, bounds } = scored(scale, gone.reduce(without, entry));
      const [least, greatest] = bounds ?? (value === null ? scale.range : [value, value]);
      expect(whole).toBeGreaterThanOrEqual(Number(least));
      expect(whole).toBeLessThanOrEqual(Number(greatest));
    }),
    { numRuns: runs(40) },
  );
});

test.each(several)("$id: the bounds are the least and greatest score of all completions", (scale) => {
  const reads = readsOf(scale);
  fc.assert(
    fc.property(entryOf(scale.id), fc.subarray(reads, { minLength: 1, maxLength: 2 }), (entry, gone) => {
      const partial = gone.reduce(without, entry);
      let completions = [partial];
      for (const path of gone.filter((one) => written(partial, one) === undefined))
        completions = completions.flatMap((one) =>
          writable(scale, path).map((value) => withValue(one, path, value)),
        );
      const values = completions.flatMap((one) => scored(scale, one).value ?? []);
      const [least, greatest] = [Math.min(...values), Math.max(...values)];
      const { value, bounds, missing } = scored(scale, partial);
      const [lowest, highest] = scale.range;
      if (least === greatest && missing.length < reads.length) expect(value).toBe(least);
      else if (bounds !== undefined) expect(bounds).toEqual([least, greatest]);
      else
        expect(
          scale.nominal || gone.length === reads.length || (least <= lowest && greatest >= highest),
        ).toBe(true);
    }),
    { numRuns: runs(12) },
  );
});
