/** What must hold for every lung, snout and pleura. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { scales } from "../../src/knowledge/index.ts";
import { scoreCase } from "../../src/score/index.ts";
import { type Json, lobes, organ, pig, scaleNamed, without } from "./pigs.ts";

const share = fc.integer({ min: 0, max: 100 });
const grade = fc.integer({ min: 0, max: 4 });
const lung = fc.record({
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
  }),
});
const side = fc.constantFrom("none", "cranioventral", "dorsocaudal-focal", "dorsocaudal-extensive");
const pleura = fc.record({ pleurisy: fc.record({ left: side, right: side }) });
const entries: Record<string, fc.Arbitrary<Json>> = {
  "respiratory.lungs": lung,
  "respiratory.turbinates": snouts,
  "respiratory.pleura": pleura,
};

const read = (scale: string, entry: Json) =>
  scoreCase(pig(organ(scaleNamed(scale).organ, entry)), scaleNamed(scale));

const entryOf = (scale: string): fc.Arbitrary<Json> => {
  const entry = entries[scaleNamed(scale).organ];
  if (entry === undefined) throw new Error(`no arbitrary for the organ of ${scale}`);
  return entry;
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
    { numRuns: 60 },
  );
});

test.each([...scales.keys()])(
  "%s: take out any one thing it reads, and that is named and nothing guessed",
  (id) => {
    const scale = scaleNamed(id);
    const reads = [
      ...Object.keys(scale.requires ?? {}),
      ...Object.values(scale.parts).map((part) => part.read),
    ];
    fc.assert(
      fc.property(entryOf(id), fc.constantFrom(...reads), (entry, path) => {
        const score = read(id, without(entry, path));
        expect(score.value).toBeNull();
        expect(score.class).toBeNull();
        expect(score.missing).toEqual([`${scale.organ}.${path}`]);
      }),
      { numRuns: 60 },
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
      { numRuns: 60 },
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
    { numRuns: 60 },
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
    { numRuns: 60 },
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
    { numRuns: 200 },
  );
});
