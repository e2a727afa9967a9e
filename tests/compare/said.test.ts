/** What compare says of three visits and more, and of the arms of a trial: a list of all sentences with their conditions. */
import { describe, expect, test } from "vitest";
import { type CompareOptions, type CompareReport, compareCases } from "../../src/compare/index.ts";
import { compareCsv } from "../../src/formats/compare/csv.ts";
import { compareMarkdown, compareText } from "../../src/formats/compare/document.ts";
import { compareJson } from "../../src/formats/compare/json.ts";
import { numberTexts } from "../../src/formats/compare/numbers.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { displayWidth, wrapped } from "../../src/formats/page/width.ts";
import { grouped } from "../../src/words/grouped.ts";
import { affected, farmOf, type Pig } from "./farm.ts";

const snout: CompareOptions = { indicators: ["snout-grade-2-up"] };
const grade: CompareOptions = { scales: ["maff-1978"] };
const days = ["2026-01-01", "2026-01-31", "2026-03-02"];
const graded = (grades: readonly number[], some: Partial<Pig> = {}): Pig[] =>
  grades.map((one) => ({ grade: one, ...some }));
const penned = (sick: readonly number[], from = 1, group = "a"): Pig[] =>
  sick.flatMap((yes, at) => affected(yes, 4, { pen: from + at, group }));

interface Said {
  readonly when: string;
  readonly report: CompareReport;
}

/** Three visits, each a list of pigs, asked of shares and of scores. */
const visits = (when: string, ...pigs: readonly (readonly Pig[])[]): Said[] =>
  [snout, grade].map((asked) => ({
    when: `three visits, ${asked === snout ? "shares" : "scores"}, ${when}`,
    report: compareCases(farmOf(Object.fromEntries(days.map((day, at) => [day, pigs[at] ?? []]))), asked),
  }));

const mixed = (one: readonly number[], other: readonly number[]): Pig[] => [
  ...graded(one, { group: "a" }),
  ...graded(other, { group: "b" }),
];

const ofVisits: readonly Said[] = [
  ...visits("falling", graded([3, 3, 4, 2, 3, 5]), graded([1, 3, 2, 0, 2, 3]), graded([0, 0, 1, 1, 0, 2])),
  ...visits("rising", graded([0, 0, 1, 1, 0]), graded([1, 3, 2, 0, 2]), graded([3, 3, 4, 2, 3])),
  ...visits("no trend", graded([0, 3, 1, 2, 0]), graded([2, 0, 3, 1, 1]), graded([1, 2, 0, 3, 1])),
  ...visits("all alike", graded([0, 0, 0, 0, 0]), graded([0, 0, 0, 0, 0]), graded([0, 0, 0, 0, 0])),
  ...visits("one pig each", graded([3]), graded([1]), graded([0])),
  ...visits(
    "first and last apart, the visit between on neither way",
    graded([2, 2, 3, 2, 1, 3, 2, 2]),
    graded([4, 4, 4, 3, 4, 4, 4, 4]),
    graded([1, 0, 1, 1, 0, 1, 2, 1]),
  ),
  ...visits(
    "another mix of groups, falling within them",
    mixed([3, 4, 3, 4, 5, 4], [2, 2, 3]),
    mixed([2, 2, 3, 2], [1, 2, 1, 0]),
    mixed([1, 0, 1], [0, 0, 0, 1, 0, 0]),
  ),
  ...visits(
    "no group twice",
    graded([3, 2], { group: "a" }),
    graded([1, 2], { group: "b" }),
    graded([0, 1], { group: "c" }),
  ),
  ...visits(
    "shared pens, falling",
    penned([4, 3, 4, 2, 3]),
    penned([2, 3, 1, 2, 2]),
    penned([1, 0, 2, 0, 1]),
  ),
  ...visits(
    "shared pens, no trend",
    penned([4, 0, 2, 3, 1]),
    penned([2, 3, 1, 2, 2]),
    penned([1, 4, 2, 0, 3]),
  ),
  ...visits(
    "shared pens, all alike",
    penned([0, 0, 0, 0, 0]),
    penned([0, 0, 0, 0, 0]),
    penned([0, 0, 0, 0, 0]),
  ),
  ...visits("shared pens, fewer than five", penned([4, 3]), penned([2, 3]), penned([1, 0])),
  ...visits(
    "shared pens in another mix of groups",
    [...penned([4, 3, 4, 2], 1, "a"), ...penned([2, 1], 1, "b")],
    [...penned([2, 3, 1], 1, "a"), ...penned([1, 2, 1], 1, "b")],
    [...penned([1, 0], 1, "a"), ...penned([0, 1, 0, 0], 1, "b")],
  ),
];

const arm = (control: readonly number[], treated: readonly number[]) => ({ arm: { control, treated } });
const lot = { trial: { treatment: "vaccine", allocated: "by-lot" } };

/** Pigs of one visit by the arms it names, asked of shares and of scores. */
const trial = (when: string, visit: object, pigs: readonly Pig[]): Said[] =>
  [snout, grade].map((asked) => ({
    when: `treatment, ${asked === snout ? "shares" : "scores"}, ${when}`,
    report: compareCases(farmOf({ "2026-01-01": pigs }, { "2026-01-01": visit }), {
      between: "treatment",
      ...asked,
    }),
  }));

const tenPens = { groups: { a: arm([1, 2, 3, 4, 5], [6, 7, 8, 9, 10]) } };
const down = [...penned([3, 2, 4, 2, 3]), ...penned([0, 1, 0, 1, 1], 6)];
const apart = [...penned([4, 4, 4, 4, 4]), ...penned([0, 0, 0, 0, 0], 6)];

const ofTrials: readonly Said[] = [
  ...trial("pens by lot, fewer in treated", { ...tenPens, ...lot }, down),
  ...trial("pens by lot, more in treated", { ...tenPens, ...lot }, [
    ...penned([0, 1, 0, 1, 1]),
    ...penned([3, 2, 4, 2, 3], 6),
  ]),
  ...trial("pens by lot, no difference", { ...tenPens, ...lot }, [
    ...penned([2, 1, 2, 0, 3]),
    ...penned([2, 2, 1, 1, 2], 6),
  ]),
  ...trial("pens by lot, near the limit", { ...tenPens, ...lot }, [
    ...penned([3, 2, 4, 1, 3]),
    ...penned([0, 1, 0, 1, 2], 6),
  ]),
  ...trial("pens by lot, no pen between all and none", { ...tenPens, ...lot }, apart),
  ...trial("no lot was said", { ...tenPens, trial: { treatment: "vaccine", allocated: "otherwise" } }, down),
  ...trial("no trial was described", tenPens, down),
  ...trial("one pen each", { ...tenPens, ...lot }, [...penned([3]), ...penned([0], 6)]),
  ...trial("three pens each", { ...tenPens, ...lot }, [...penned([3, 4, 2]), ...penned([0, 1, 0], 6)]),
  ...trial(
    "pens of two groups",
    { groups: { a: arm([1, 2, 3], [4, 5, 6]), b: arm([1, 2], [3, 4]) }, ...lot },
    [...penned([3, 4, 2, 0, 1, 1], 1, "a"), ...penned([4, 3, 2, 0], 1, "b")],
  ),
  ...trial(
    "all pens of a group alike",
    { groups: { a: arm([1, 2, 3], [99]), b: arm([99], [1, 2, 3]) }, ...lot },
    [...penned([3, 4, 2], 1, "a"), ...penned([0, 1, 0], 1, "b")],
  ),
  ...trial(
    "whole groups",
    {
      groups: { a: { arm: "control" }, b: { arm: "control" }, c: { arm: "treated" }, d: { arm: "treated" } },
      ...lot,
    },
    [
      ...penned([3, 4], 1, "a"),
      ...penned([2, 4], 1, "b"),
      ...penned([0, 1], 1, "c"),
      ...penned([1, 1], 1, "d"),
    ],
  ),
  ...trial(
    "a group and pens of another",
    { groups: { a: arm([1, 2], [3, 4]), b: { arm: "control" }, c: { arm: "treated" } }, ...lot },
    [...penned([3, 4, 0, 1], 1, "a"), ...penned([2, 4], 1, "b"), ...penned([1, 1], 1, "c")],
  ),
  ...trial("read from treatments", { treatments: [{ group: "b", with: "amoxicillin", route: "in-water" }] }, [
    ...penned([3, 4], 1, "a"),
    ...penned([2, 1], 1, "b"),
  ]),
  ...trial(
    "pigs chosen for signs",
    { ...tenPens, ...lot },
    down.map((pig) => ({ ...pig, basis: "clinical" })),
  ),
];

/** Everything that stands in the text about a comparison, and what must be minded. */
const sentences = ({ report: { blocks, answer, between, level, cluster } }: Said): string[] => [
  answer,
  ...blocks.flatMap((block) => [
    ...block.comparisons.flatMap((one) => [
      ...(block.too_few ? [] : numberTexts(one, { between, level, cluster, adjustment: block.adjustment })),
      ...one.caveats.map(({ text }) => text),
    ]),
    ...block.cautions,
  ]),
];

const withoutNumbers = (text: string): string =>
  text
    .replaceAll(/95 %|of every 100|of 100/g, (words) => words.replace("95", "N").replace("100", "C"))
    .replaceAll(/\d{4}-\d\d-\d\d/g, "DATE")
    .replaceAll(/-?[<>]?\b\d+(?:\.\d+)?\b/g, "#")
    .replaceAll("N %", "95 %")
    .replaceAll(/of (every )?C\b/g, "of $1100");

const all = [...ofVisits, ...ofTrials];

describe("what is said of trends and arms", () => {
  test("never that a treatment works, nor a prevalence, and of a lot only where one was drawn", () => {
    for (const said of all) {
      const text = sentences(said).join(" ");
      expect(text, said.when).not.toMatch(/prevalence|effective|because of the treatment|thanks to/i);
      const drawn = said.report.blocks.some(({ trial: one }) => one?.allocated === "by-lot");
      expect(text.includes("Allocated by lot"), said.when).toBe(
        drawn && said.report.blocks[0]?.comparable === true,
      );
    }
  });

  test("nothing is claimed with fewer than two pens or groups in an arm, nor by any number of pigs", () => {
    for (const { when, report } of ofTrials)
      for (const { result, shown } of report.blocks.flatMap(({ comparisons }) => comparisons))
        if (result?.test === "unit-means" && result.clusters.some((units) => units < 2))
          expect(shown, when).toBe(false);
  });

  test("a claim has its p below the level, and none is made otherwise", () => {
    for (const { when, report } of all)
      for (const { p, shown, sentence } of report.blocks.flatMap(({ comparisons }) => comparisons)) {
        expect(shown, when).toBe(p !== null && p < 0.05);
        if (shown) expect(sentence, when).not.toMatch(/no (change|difference)/i);
        else expect(sentence, when).toMatch(/no (change|difference)/i);
      }
  });

  test("no line over 80 columns, and every format can be written", () => {
    for (const { when, report } of all) {
      const text = `${compareText(report, makeStyle(false))}${compareText(report, makeStyle(false), true)}`;
      for (const line of text.split("\n"))
        expect(displayWidth(line), `${when}: ${line}`).toBeLessThanOrEqual(80);
      for (const other of [compareMarkdown(report), compareCsv(report), compareJson(report)])
        expect(other, when).not.toMatch(/undefined|NaN/);
    }
  });

  test("the list of all sentences", async () => {
    const said = all.flatMap((one) =>
      sentences(one).map((text) => ({ text: withoutNumbers(text), when: one.when })),
    );
    const text = [...grouped(said, (one) => one.text)]
      .flatMap(([sentence, some]) => [
        ...wrapped(sentence, "", 80, "  "),
        ...[...new Set(some.map(({ when }) => when))].flatMap((when) => wrapped(`when ${when}`, "    ", 80)),
      ])
      .map((line) => `${line}\n`)
      .join("");
    await expect(text).toMatchFileSnapshot("../fixtures/golden/said-of-comparisons.txt");
  });
});
