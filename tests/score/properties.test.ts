/** What must hold for every lung, snout and pleura. */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { ScalePart } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { type CaseScore, scoreCase } from "../../src/score/index.ts";
import { runs } from "../random.ts";
import { entryOf, grade, lung, share, side, snouts } from "./entries.ts";
import { type Json, lobes, organ, pig, scaleNamed, without } from "./pigs.ts";

const read = (scale: string, entry: Json) =>
  scoreCase(pig(organ(scaleNamed(scale).organ, entry)), scaleNamed(scale));

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
  "%s: take out any one thing it reads, and that is named, or could change nothing",
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
        missedOrCertain(score, read(id, entry).value, `${scale.organ}.${path}`);
      }),
      { numRuns: runs(25) },
    );
  },
);

/** A score without one observation: none, and that one is named; or the same as with it, and that one was not needed. */
function missedOrCertain(score: CaseScore, complete: number | null, path: string): void {
  if (score.value === null) expect(score).toMatchObject({ missing: [path] });
  else expect(score).toMatchObject({ value: complete, missing: [], not_needed: [path] });
}

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
      if (conditionHolds(part.zero_unless, entry))
        missedOrCertain(score, read(scale.id, entry).value, `${scale.organ}.${part.read}`);
      else expect(score.value).toBe(read(scale.id, entry).value);
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
