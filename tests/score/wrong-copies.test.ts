/** A scale that lacks what makes it trustworthy, or whose worked example does not come out, is found. */
import { describe, expect, test } from "vitest";
import { errorsOf } from "../../src/cases/faults/full-validator.ts";
import type { Scale } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { scoreOrgan } from "../../src/score/index.ts";
import { exampleFaults } from "../../src/score/worked-examples.ts";
import { every } from "../every.ts";
import { pig, scaleNamed } from "./pigs.ts";

/** What is wrong with a scale file: against the schema, and its examples worked out again. */
function faultsOf(scale: object): string[] {
  const errors = errorsOf("scale", scale as Record<string, unknown>);
  if (errors.length > 0) return errors.map(({ instancePath, keyword }) => `${instancePath} ${keyword}`);
  return exampleFaults(scale as Scale).map(({ message }) => message);
}

every("a scale as it ships has no fault", scales.values(), (scale) => {
  expect(faultsOf(scale)).toEqual([]);
});

type Change = (scale: Record<string, unknown>) => void;
const without =
  (...keys: string[]): Change =>
  (scale) => {
    const last = keys.at(-1) ?? "";
    const parent = keys.slice(0, -1).reduce((below, key) => below[key] as Record<string, unknown>, scale);
    delete parent[last];
  };
const firstExample =
  (change: (example: Record<string, unknown>) => void): Change =>
  ({ examples }) => {
    const [first] = examples as Record<string, unknown>[];
    if (first !== undefined) change(first);
  };

const wrong: [string, Change][] = [
  ["no source", without("source")],
  ["no citation", without("source", "cite")],
  ["no confidence", without("source", "confidence")],
  ["no boundary rule", without("boundary")],
  ["an empty boundary rule", (scale) => Object.assign(scale, { boundary: "none" })],
  ["no worked example", (scale) => Object.assign(scale, { examples: [] })],
  ["an example without a source", firstExample((example) => delete example.source)],
  [
    "an example with another value",
    firstExample((example) => Object.assign(example, { value: Number(example.value) + 1 })),
  ],
  [
    "an example with another class",
    firstExample((example) => Object.assign(example, { class: "of no scale" })),
  ],
  ["a key that the schema does not know", (scale) => Object.assign(scale, { cutpoints: [] })],
];

const ofOrgans = [...scales.values()].filter(({ organ }) => organ !== "pig");

describe.each(wrong)("a copy with %s", (_, change) => {
  every("is found", ofOrgans, (scale) => {
    const copy = structuredClone(scale) as unknown as Record<string, unknown>;
    change(copy);
    expect(faultsOf(copy).length).toBeGreaterThan(0);
  });
});

test("a cut point moved over an example is found", () => {
  const copy = structuredClone(scaleNamed("german-rule-liver"));
  const moved = {
    ...copy,
    steps: [
      { from: 0, value: 0 },
      { above: 6, value: 1 },
    ],
  };
  expect(faultsOf(moved)).toEqual([expect.stringContaining("it says 1, but the scale gives 0")]);
});

describe("what no scale that ships needs", () => {
  const gap: Scale = {
    ...structuredClone(scaleNamed("rutter-1984")),
    organ: "respiratory.turbinates",
    parts: { "left gap": { read: "gap.left", unit: "mm" }, "right gap": { read: "gap.right", unit: "mm" } },
    range: [0, 40],
    classes: [],
  };
  const state = pig({
    respiratory: { turbinates: { section: "premolar-1", gap: { left: "4 mm", right: "0.9 cm" } } },
  });
  const score = (combine: Scale["combine"], more: Partial<Scale> = {}) => {
    const organ = {
      id: "respiratory.turbinates",
      system: "respiratory",
      key: "turbinates",
      path: ["respiratory", "turbinates"] as const,
      index: 0,
      definition: { title: "", where: "", look: "", base: [] },
    };
    return scoreOrgan({ ...gap, combine, ...more }, state.organ(organ as Parameters<typeof state.organ>[0]));
  };

  test("a house scale may take the mean or the larger of two gaps, whatever unit they are written in", () => {
    expect(score("mean").value).toBe(6.5);
    expect(score("max").value).toBe(9);
    expect(score("sum").value).toBe(13);
  });

  test("cut points after the combination, and a bonus before them", () => {
    const total_steps = [
      { from: 0, value: 0 },
      { above: 6.5, value: 1 },
      { from: 10, value: null },
    ];
    expect(score("mean", { total_steps }).value).toBe(0);
    expect(score("max", { total_steps }).value).toBe(1);
    expect(score("sum", { total_steps })).toMatchObject({
      value: null,
      reason: expect.stringContaining("13"),
    });
    const bonus = [{ part: "right gap", above: 8, add: 2 }];
    expect(score("max", { bonus }).value).toBe(11);
    expect(score("max", { bonus: [{ part: "left gap", above: 4, add: 2 }] }).value).toBe(9);
  });

  test("a linear formula", () => {
    const parts = { "left gap": { read: "gap.left", unit: "cm", weight: 10 } } as const;
    expect(score("linear", { parts, offset: 1 }).value).toBe(5);
  });
});
