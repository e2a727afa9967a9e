/** What must hold for every lung, snout and pleura. */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { ScalePart } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { scoreCase } from "../../src/score/index.ts";
import { runs } from "../random.ts";
import { type Json, lobes, organ, pig, scaleNamed, without } from "./pigs.ts";

const share = fc.integer({ min: 0, max: 100 });
const grade = fc.integer({ min: 0, max: 4 });
/** Something else on the organ, so that taking out the only grade does not leave it blank. */
const findings = fc.constant([{ process: "oedema", distribution: "diffuse" }]);
/** A grade under each scale that is only recorded. */
const graded = (place: string) =>
  fc.record(
    Object.fromEntries(
      [...scales.values()]
        .filter((scale) => scale.organ === place && scale.recorded_only !== undefined)
        .map(({ id, range: [min, max] }) => [id, fc.integer({ min, max })]),
    ),
  );
const millimetres = (min: number, max: number) => fc.integer({ min, max }).map((value) => `${value} mm`);
const lung = fc.record({
  float: fc.constantFrom("sinks", "partly", "floats"),
  grades: graded("respiratory.lungs"),
  lesion_size: fc.record(
    Object.fromEntries(lobes.map((lobe) => [lobe, fc.constantFrom("below-coin", "coin-or-more")])),
  ),
  consolidation: fc.record(
    Object.fromEntries(lobes.map((lobe) => [lobe, share.filter((value) => value > 0)])),
  ),
  caudal_cranial_part: fc.record({ left: share, right: share }),
});
const snouts = fc.record({
  section: fc.constantFrom("premolar-1", "between-premolars-1-2", "premolar-2"),
  left: fc.record({ dorsal: grade, ventral: grade }),
  right: fc.record({ dorsal: grade, ventral: grade }),
  septum: fc.constantFrom("straight", "slight", "marked"),
  grades: fc.record({
    "maff-1978": fc.integer({ min: 0, max: 5 }),
    "embrapa-1993": fc.integer({ min: 0, max: 3 }),
    "collins-1989-grade": fc.integer({ min: 0, max: 3 }),
    "correge-2013": fc.integer({ min: 0, max: 20 }),
  }),
  measured: fc.record({
    perimeter_ratio: fc.record({ total: fc.integer({ min: 0, max: 200 }).map((value) => value / 100) }),
    concha_area_fraction: fc.record({ total: fc.integer({ min: 0, max: 100 }).map((value) => value / 100) }),
    free_area_percent: fc.record({ total: share }),
  }),
});
const side = fc.constantFrom("none", "cranioventral", "dorsocaudal-focal", "dorsocaudal-extensive");
const pleura = fc.record({
  pleurisy: fc.record({ left: side, right: side }),
  adhering_area: share,
  grades: graded("respiratory.pleura"),
});
const gradesOnly = (place: string) => fc.record({ findings, grades: graded(place) });
const entries: Record<string, fc.Arbitrary<Json>> = {
  "respiratory.lungs": lung,
  "respiratory.turbinates": snouts,
  "respiratory.pleura": pleura,
  "external.skin": gradesOnly("external.skin"),
  "external.subcutis": gradesOnly("external.subcutis"),
  "lymphoid.superficial_inguinal_nodes": gradesOnly("lymphoid.superficial_inguinal_nodes"),
  "locomotor.joints": gradesOnly("locomotor.joints"),
  "external.snout": fc.record({ findings, brachygnathia: millimetres(-60, 100) }),
  "external.ears": fc.record({
    rim_wound: fc.record({ left: share, right: share }),
    lost: fc.record({ left: share, right: share }),
  }),
  "external.tail": fc.record({
    lost: share,
    wound: fc.constantFrom("none", "healed", "scratch", "open"),
    wound_size: millimetres(0, 100),
    wound_swollen: fc.constantFrom("no", "yes"),
  }),
  "cardiovascular.pericardium": fc.record({
    findings,
    pericarditis: fc.constantFrom("none", "mild", "severe"),
  }),
  "stomach.pars_oesophagea": fc.record({
    keratin: share,
    erosion: share,
    ulcer: share,
    grades: graded("stomach.pars_oesophagea"),
  }),
  "liver_pancreas.liver": fc.record({
    milk_spots: fc.integer({ min: 0, max: 1000 }),
    grades: graded("liver_pancreas.liver"),
  }),
  pig: fc.record({ condition: fc.integer({ min: 1, max: 5 }), crown_rump: millimetres(30, 300) }),
};

/** Where the source gives no grade, between three quarters and the entire lobe, there is no score. */
const nowhereUngraded = (entry: Json): Json => ({
  ...entry,
  consolidation: Object.fromEntries(
    Object.entries(entry.consolidation as Record<string, number>).map(([lobe, value]) => [
      lobe,
      value > 75 && value < 100 ? 75 : value,
    ]),
  ),
});

const read = (scale: string, entry: Json) =>
  scoreCase(pig(organ(scaleNamed(scale).organ, entry)), scaleNamed(scale));

const entryOf = (scale: string): fc.Arbitrary<Json> => {
  const entry = entries[scaleNamed(scale).organ];
  if (entry === undefined) throw new Error(`no arbitrary for the organ of ${scale}`);
  return scale === "madec-leneveu-2011" ? entry.map(nowhereUngraded) : entry;
};

test.each([...scales.keys()])("%s: a complete record has a score within the range", (id) => {
  const [lowest, highest] = scaleNamed(id).range;
  fc.assert(
    fc.property(entryOf(id), (entry) => {
      const score = read(id, entry);
      expect(score.missing).toEqual([]);
      expect(score.value).toBeGreaterThanOrEqual(lowest);
      expect(score.value).toBeLessThanOrEqual(highest);
    }),
    { numRuns: runs(25) },
  );
});

test.each([...scales.keys()])(
  "%s: take out any one thing it reads, and that is named and nothing guessed",
  (id) => {
    const scale = scaleNamed(id);
    const reads = [
      ...Object.keys(scale.requires ?? {}),
      ...Object.values(scale.parts)
        .filter((part) => part.zero_unless === undefined)
        .map((part) => part.read),
    ];
    fc.assert(
      fc.property(entryOf(id), fc.constantFrom(...reads), (entry, path) => {
        const score = read(id, without(entry, path));
        expect(score.value).toBeNull();
        expect(score.class).toBeNull();
        expect(score.missing).toEqual([`${scale.organ}.${path}`]);
      }),
      { numRuns: runs(25) },
    );
  },
);

test.each(["madec-kobisch-1982", "madec-kobisch-1982-six-lobes", "christensen-1999", "goodwin-1971"])(
  "%s: more consolidation never lowers the score",
  (id) => {
    fc.assert(
      fc.property(lung, fc.constantFrom(...lobes), share, (entry, lobe, more) => {
        const before = entry.consolidation[lobe] ?? 0;
        const worse = { ...entry.consolidation, [lobe]: Math.max(before, more) };
        const less = read(id, entry).value ?? Number.NaN;
        const greater = read(id, { ...entry, consolidation: worse }).value ?? Number.NaN;
        expect(greater).toBeGreaterThanOrEqual(less);
      }),
      { numRuns: runs(60) },
    );
  },
);

test.each(
  [...scales.values()].filter((scale) => Object.values(scale.parts).some((part) => part.zero_unless)),
)("$id: what counts only under a condition is missed only while the condition holds", (scale) => {
  const conditional = Object.values(scale.parts).filter((part) => part.zero_unless !== undefined);
  fc.assert(
    fc.property(entryOf(scale.id), fc.constantFrom(...conditional), (entry, part) => {
      const score = read(scale.id, without(entry, part.read));
      if (conditionHolds(part.zero_unless, entry)) {
        expect(score.value).toBeNull();
        expect(score.missing).toEqual([`${scale.organ}.${part.read}`]);
      } else expect(score.value).toBe(read(scale.id, entry).value);
    }),
    { numRuns: runs(60) },
  );
});

function conditionHolds(condition: ScalePart["zero_unless"], entry: Json): boolean {
  const keys = condition?.read.split(".") ?? [];
  const value = keys.reduce<unknown>((below, key) => (below as Json)[key], entry);
  if (condition?.is !== undefined) return condition.is.includes(String(value));
  const { above = Number.NEGATIVE_INFINITY, below = Number.POSITIVE_INFINITY } = condition ?? {};
  return Number(value) > above && Number(value) < below;
}

test.each(["swaby-gregory-2012", "polish-stomach-2024", "brazil-stomach-2014", "stomach-index-2016"])(
  "%s: a larger ulcer never lowers the grade",
  (id) => {
    fc.assert(
      fc.property(entryOf(id), share, (entry, more) => {
        const worse = { ...entry, ulcer: Math.max(Number(entry.ulcer), more) };
        expect(read(id, worse).value ?? Number.NaN).toBeGreaterThanOrEqual(
          read(id, entry).value ?? Number.NaN,
        );
      }),
      { numRuns: runs(60) },
    );
  },
);

test("polloni-2018: more loss of a concha never lowers the score", () => {
  fc.assert(
    fc.property(snouts, grade, (entry, more) => {
      const worse = { ...entry, left: { ...entry.left, dorsal: Math.max(more, entry.left.dorsal) } };
      expect(read("polloni-2018", worse).value ?? Number.NaN).toBeGreaterThanOrEqual(
        read("polloni-2018", entry).value ?? Number.NaN,
      );
    }),
    { numRuns: runs(60) },
  );
});

test("dottori-2007: both sides count alike, and a worse side never lowers the score", () => {
  const order = ["none", "cranioventral", "dorsocaudal-focal", "dorsocaudal-extensive"];
  fc.assert(
    fc.property(side, side, side, (left, right, other) => {
      const worse = order.indexOf(other) > order.indexOf(left) ? other : left;
      const value = (a: string, b: string) =>
        read("dottori-2007", { pleurisy: { left: a, right: b } }).value ?? Number.NaN;
      expect(value(left, right)).toBe(value(right, left));
      expect(value(worse, right)).toBeGreaterThanOrEqual(value(left, right));
    }),
    { numRuns: runs(60) },
  );
});

test("weighted scores are the exact decimal of whole percentages, free of binary rounding", () => {
  const scale = scaleNamed("christensen-1999");
  fc.assert(
    fc.property(lung, (entry) => {
      const hundredths = Object.values(scale.parts).reduce((sum, { read: path, weight }) => {
        const lobe = path.split(".")[1] as (typeof lobes)[number];
        return sum + (weight ?? Number.NaN) * (entry.consolidation[lobe] ?? Number.NaN);
      }, 0);
      expect(read("christensen-1999", entry).value).toBe(hundredths / 100);
    }),
    { numRuns: runs(200) },
  );
});
