/** Every scale file is complete and computes its own examples. */
import { describe, expect, test } from "vitest";
import { indicators, organById, type Scale } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { every } from "../every.ts";
import { organ, scoreOf } from "./pigs.ts";

test("the scales that the guide promises are there", () => {
  expect([...scales.keys()]).toEqual(
    expect.arrayContaining([
      "christensen-1999",
      "dottori-2007",
      "embrapa-1993",
      "goodwin-1971",
      "madec-kobisch-1982",
      "madec-kobisch-1982-six-lobes",
      "maff-1978",
      "polloni-2018",
    ]),
  );
});

describe("every scale", () => {
  const all = [...scales.values()];
  const sourcesOf = (scale: Scale) => [
    scale.source,
    ...(scale.class_source === undefined ? [] : [scale.class_source]),
    ...(scale.indices ?? []).map(({ source }) => source),
    ...(scale.references ?? []).map(({ source }) => source),
    ...scale.examples.map(({ source }) => source),
    ...(scale.herd_examples ?? []).map(({ source }) => source),
  ];
  const limitsOf = (scale: Scale) => [
    scale.steps,
    scale.total_steps,
    ...Object.values(scale.parts).map(({ steps }) => steps),
    scale.classes,
    ...(scale.indices ?? []).map(({ classes }) => classes),
  ];

  every("names source, confidence, boundary and at least one example", all, (scale) => {
    for (const { cite, confidence } of sourcesOf(scale)) {
      expect(cite.length).toBeGreaterThan(3);
      expect(["verified", "derived", "common-practice", "from-memory"]).toContain(confidence);
    }
    expect(scale.boundary.length).toBeGreaterThan(10);
    expect(scale.examples.length).toBeGreaterThan(0);
    expect(scale.examples.some(({ value }) => value !== null)).toBe(true);
  });

  every("what is worked out from memory is from memory", all, (scale) => {
    if (scale.source.confidence !== "from-memory") return;
    expect(sourcesOf(scale).filter(({ confidence }) => confidence === "derived")).toEqual([]);
  });

  every("classes have a source of their own or that of the scale, and limits rise", all, (scale) => {
    if (scale.classes !== undefined) expect(scale.class_source).toBeDefined();
    for (const list of limitsOf(scale)) {
      let before = Number.NEGATIVE_INFINITY;
      for (const { from, above } of list ?? []) {
        expect((from === undefined) !== (above === undefined)).toBe(true);
        const limit = from ?? above ?? Number.NaN;
        expect(limit).toBeGreaterThanOrEqual(before);
        before = limit;
      }
    }
  });

  every("reads what the anatomy has, and names scales that exist", all, (scale) => {
    const observations = organById(scale.organ)?.definition.observations ?? {};
    const reads = Object.values(scale.parts).flatMap((part) => [
      part.read,
      part.zero_if_zero ?? part.read,
      part.zero_unless?.read ?? part.read,
    ]);
    for (const read of [...reads, ...Object.keys(scale.requires ?? {})]) {
      if (read === `grades.${scale.id}` || scale.organ === "pig") continue;
      const [key = "", ...below] = read.split(".");
      expect(Object.keys(observations)).toContain(key);
      const figure = observations[key]?.figures?.[below[0] ?? ""];
      const parts = figure?.parts ?? observations[key]?.parts;
      const part = figure === undefined ? below[0] : below[1];
      expect(part === undefined).toBe(parts === undefined);
      if (part !== undefined) expect(Object.keys(parts ?? {})).toContain(part);
    }
    for (const other of scale.not_comparable ?? []) expect(scales.has(other)).toBe(true);
  });

  every("a weighted scale reaches its maximum when every part is full", all, (scale) => {
    if (scale.combine !== "weighted-sum") return;
    const weights = Object.values(scale.parts).map(({ weight }) => weight ?? Number.NaN);
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBe(
      scale.total_steps === undefined ? scale.range[1] : 100,
    );
  });

  const examples = all.flatMap((scale) => scale.examples.map((example) => ({ scale, example })));
  every(
    "works out its own examples",
    examples,
    ({ scale, example }) => {
      const score = scoreOf(scale.id, organ(scale.organ, example.record));
      expect(score.value).toBe(example.value);
      expect(score.missing).toEqual(example.missing ?? []);
      if (example.class !== undefined) expect(score.class).toBe(example.class);
      if (example.value === null && score.bounds === undefined) expect(score.class).toBeNull();
      if (example.bounds !== undefined) expect(score.bounds).toEqual(example.bounds);
      if (example.parts !== undefined) expect(score.parts).toEqual(example.parts);
      expect(score.source).toBe(scale.source.cite);
      expect(score.confidence).toBe(scale.source.confidence);
    },
    ({ scale, example }) => `${scale.id}: ${example.case}`,
  );
});

test("no two scales share an index, so that a name means one number", () => {
  const ids = [...scales.values()].flatMap(({ indices }) => (indices ?? []).map(({ id }) => id));
  expect(ids.filter((id, place) => ids.indexOf(id) !== place)).toEqual([]);
});

test("what must not be compared is said on both sides", () => {
  const oneSided = [...scales.values()].flatMap(({ id, not_comparable: others }) =>
    (others ?? [])
      .filter((other) => !scales.get(other)?.not_comparable?.includes(id))
      .map((other) => [id, other]),
  );
  expect(oneSided).toEqual([]);
});

test("a weak memory is off unless named", () => {
  const weak = [...scales.values()].filter(({ source }) => /weak memory/.test(source.note ?? ""));
  expect(weak.length).toBeGreaterThanOrEqual(5);
  for (const { by_default: when } of weak) expect(when).toBe("when-named");
});

test.each([...indicators])(
  "indicator %s names a scale or organ that exists, and its source",
  (_, indicator) => {
    const { score, finding, source } = indicator;
    if (score !== undefined) expect(scales.has(score.scale)).toBe(true);
    if (finding !== undefined) expect(organById(finding.organ)).toBeDefined();
    expect(score ?? finding).toBeDefined();
    expect(source?.cite).toBeTruthy();
  },
);
