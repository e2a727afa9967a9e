/** Herd numbers as a picture, a table and Markdown: nothing too wide, nothing unescaped, nothing lost. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Case } from "../../src/cases/index.ts";
import { herdCsv } from "../../src/formats/herd/csv.ts";
import { herdMarkdown, herdText } from "../../src/formats/herd/document.ts";
import { herdPlot } from "../../src/formats/herd/plot.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { displayWidth, fitted } from "../../src/formats/page/width.ts";
import { type HerdOptions, type HerdReport, herdEstimates } from "../../src/herd/index.ts";
import { percent, percentRange } from "../../src/words/percent.ts";
import { runs } from "../random.ts";
import { consolidation, organ } from "../score/pigs.ts";
import { archiveOf, farm, visit } from "./archive.ts";

const plain = makeStyle(false);
const record = (ill: boolean, group: string, basis: string, pen?: number) => ({
  format: 1,
  pig: { group, ...(pen !== undefined && { pen }) },
  selection: { basis },
  ...organ("respiratory.lungs", { consolidation: consolidation({ left_cranial: ill ? 30 : 0 }) }),
});
const asked: HerdOptions = { indicators: ["lung-consolidation"], scales: ["madec-kobisch-1982"] };

function report(
  groups: readonly (readonly [group: string, basis: string, ill: number, well: number])[],
  title?: string,
  options: HerdOptions = {},
): HerdReport {
  const house = { title: title ?? "", score: { scale: "madec-kobisch-1982", at_least: 1 } };
  const { cases } = archiveOf({
    ...(title !== undefined && { "carcase.yaml": { format: 1, indicators: { own: house } } }),
    "farm.yaml": {
      ...farm("alder"),
      groups: Object.fromEntries(groups.map(([name]) => [name, { head: 90 }])),
    },
    "v/visit.yaml": visit("spring", "2026-03-14"),
    ...Object.fromEntries(
      groups.flatMap(([group, basis, ill, well], index) => [
        ...Array.from({ length: ill }, (_, i) => [
          `v/${index}-i${i}.yaml`,
          record(true, group, basis, 1 + (i % 2)),
        ]),
        ...Array.from({ length: well }, (_, i) => [
          `v/${index}-w${i}.yaml`,
          record(false, group, basis, 1 + (i % 3)),
        ]),
      ]),
    ),
  });
  return herdEstimates(cases as readonly Case[], {
    ...asked,
    ...(title !== undefined && { indicators: ["own"] }),
    ...options,
  });
}

const long = `nursery-${"x".repeat(90)}`;
const rows = (text: string): string[] => text.split("\n").filter((line) => /[=Ox.].* \d+\/\d+ /.test(line));

describe("the picture", () => {
  test("stays within 80 cells and plain characters, whatever the names are called", () => {
    const text = herdPlot(
      report([
        [long, "random", 3, 5],
        [long.replace("n", "m"), "convenience", 0, 6],
      ]),
      plain,
    );
    expect(text.split("\n").every((line) => line.length <= 80)).toBe(true);
    expect(text).toMatch(/^[\x20-\x7e\n]*$/);
    const [first = "", second = ""] = rows(text);
    expect(first).toMatch(/^ {2}nursery-x+\.\. random /);
    expect(second).toMatch(/^ {2}mursery-x*\.\. convenience /);
  });

  test("the line reaches from limit to limit, the mark stands at the estimate", () => {
    fc.assert(
      fc.property(fc.nat(9), fc.nat(9), fc.constantFrom("random", "clinical"), (ill, well, basis) => {
        fc.pre(ill + well > 1);
        const made = report([["a", basis, ill, well]]);
        const [found] = made.estimates;
        const text = herdPlot(made, plain);
        const [scale = ""] = text.split("\n").filter((line) => line.includes("100 %") && !line.includes("/"));
        const begin = scale.indexOf("0");
        const end = scale.length - 1;
        const [row = ""] = rows(text);
        const axis = row.slice(begin, end + 1);
        const place = (share: number | null) => Math.round((share ?? 0) * (axis.length - 1));
        const [lower, upper] = [found?.lower ?? found?.proportion, found?.upper ?? found?.proportion];
        expect(axis.search(/[=Ox]/)).toBe(place(lower ?? 0) + 0);
        expect(axis.length - 1 - [...axis].reverse().join("").search(/[=Ox]/)).toBe(place(upper ?? 0));
        expect(axis.indexOf(basis === "random" ? "O" : "x")).toBe(place(found?.proportion ?? 0));
        const limits = basis === "random" ? "[\\d.]+ to [\\d.]+ %" : "these pigs";
        expect(row.trimEnd()).toMatch(new RegExp(`  ${ill}/${ill + well} +[<>]?[\\d.]+ %  ${limits}$`));
      }),
      { numRuns: runs(15) },
    );
  });

  test("says that chosen pigs are no prevalence, and why an interval is what it is", () => {
    const text = herdPlot(
      report(
        [
          ["a", "random", 2, 3],
          ["a", "clinical", 3, 0],
        ],
        undefined,
        { finite: true },
      ),
      plain,
    );
    expect(text).toContain("x  share of the pigs examined: it says nothing of how common it is in the group");
    expect(text.replaceAll(/\s+/g, " ")).toContain(
      "the interval is for the 90 pigs of the group (farm.yaml)",
    );
  });

  test("draws the corrected share where a test was said to err", () => {
    const made = report([["a", "random", 6, 6]], undefined, { test: { sensitivity: 0.6, specificity: 1 } });
    expect(rows(herdPlot(made, plain))[0]).toContain("83.3 %");
  });

  test("one pig, nothing examined, no stratum", () => {
    const none = report([["a", "random", 1, 0]], undefined, { indicators: ["snout-grade-2-up"] });
    expect(herdPlot(none, plain)).toContain("not examined");
    const bare = report([["a", "random", 2, 2]], undefined, { by: [] });
    expect(rows(herdPlot(bare, plain))[0]).toMatch(/^ {2}random /);
  });
});

describe("widths in a terminal", () => {
  test("wide characters take two cells, marks none, and what is cut is cut visibly", () => {
    expect(["ab", "猪圈", "é", "e\u0301", "🐖", "돼지"].map(displayWidth)).toEqual([2, 4, 1, 1, 2, 4]);
    expect(fitted("猪圈猪圈", 7)).toBe("猪圈.. ".trimEnd().padEnd(5));
    fc.assert(
      fc.property(
        fc.string({ unit: "grapheme", maxLength: 30 }),
        fc.integer({ min: 2, max: 20 }),
        (text, width) => {
          const shown = fitted(text, width);
          expect(displayWidth(shown)).toBe(width);
          if (displayWidth(text) > width) expect(shown.trimEnd().endsWith("..")).toBe(true);
          else expect(shown.startsWith(text)).toBe(true);
        },
      ),
    );
  });
});

describe("text from a case", () => {
  const hostile = '=1+1|<b>"x",\u200b[31m*';
  const made = report(
    [
      ["a", "random", 2, 3],
      ["b", "random", 1, 3],
    ],
    hostile,
    { combine: true },
  );

  test("reaches no terminal as it is", () => {
    for (const text of [herdText(made, plain, { all: true }), herdPlot(made, plain)]) {
      expect(text).toContain("=1+1|<b>");
      expect(text).toContain("\\u{200b}");
      expect(text).not.toContain("\u200b");
    }
  });

  test("is no formula, and one cell, in CSV", () => {
    const lines = herdCsv(made).split("\r\n");
    expect(lines.filter((line) => line.includes("1+1")).length).toBe(3);
    for (const line of lines.filter((one) => one.includes("1+1")))
      expect(line).toContain(',"\'=1+1|<b>""x"",\\u{200b}[31m*",');
  });

  test("is no markup and no border in Markdown", () => {
    const text = herdMarkdown(made, { all: true });
    expect(text).not.toContain("<b>");
    expect(text).toContain("=1+1\\|&lt;b&gt;");
    const tables = text.split("\n\n").filter((part) => part.startsWith("|"));
    expect(tables.length).toBeGreaterThanOrEqual(4);
    for (const part of tables) {
      const columns = part
        .trim()
        .split("\n")
        .map((line) => line.replaceAll("\\|", "").split("|").length);
      expect(new Set(columns).size).toBe(1);
    }
  });
});

test("CSV has a row an estimate, with its numbers unrounded", () => {
  const made = report(
    [
      ["a", "random", 3, 9],
      ["b", "clinical", 3, 0],
    ],
    undefined,
    { test: { sensitivity: 0.9, specificity: 0.95 }, seed: 3 },
  );
  const [head = "", ...lines] = herdCsv(made).trimEnd().split("\r\n");
  expect(head).toBe(
    "measure,id,title,farm,visit,group,age_class,basis,examined,not_examined,affected,value,lower,upper,unit,level,method,confidence,source,note,one_sided,one_sided_limit,head,clusters,design_effect,effective_size,not_graded,of",
  );
  const measures = lines.map((line) => line.split(",")[0]);
  expect(measures).toEqual([
    ...["proportion", "true_prevalence", "proportion", "true_prevalence"],
    ...["mean", "mean_bootstrap", "median", "mean", "mean_bootstrap", "median"],
  ]);
  expect(lines[0]).toContain(
    `,spring,a,,random,12,0,3,0.25,${made.estimates[0]?.lower},${made.estimates[0]?.upper},share,0.95,clopper-pearson,`,
  );
});

test("CSV says what an interval was made of", () => {
  const table = (options: HerdOptions) => {
    const made = report(
      [
        ["a", "random", 3, 9],
        ["b", "random", 0, 5],
      ],
      undefined,
      options,
    );
    const [head = "", ...lines] = herdCsv(made).trimEnd().split("\r\n");
    const names = head.split(",");
    const cell = (line: string, name: string) => line.split(",").slice(names.indexOf(name) - names.length)[0];
    return { made, lines, cell };
  };
  const { lines, cell, made } = table({ finite: true, combine: true });
  const of = (measure: string, name: string) =>
    lines.filter((line) => line.startsWith(`${measure},`)).map((line) => cell(line, name));
  expect(of("proportion", "head")).toEqual(["90", "90"]);
  expect(of("proportion", "one_sided")).toEqual(["", "upper"]);
  expect(of("proportion", "one_sided_limit")).toEqual(["", String(made.estimates[1]?.one_sided?.value)]);
  expect(of("combined", "head")).toEqual(["180"]);
  expect(of("combined", "effective_size")).toEqual([String(made.combined?.[0]?.effective_size)]);
  const byPen = table({ cluster: "pen" });
  const [first = ""] = byPen.lines;
  const clusters = byPen.made.estimates[0]?.clusters;
  expect(clusters?.number).toBe(3);
  expect(byPen.cell(first, "clusters")).toBe("3");
  expect(byPen.cell(first, "design_effect")).toBe(String(clusters?.design_effect));
  expect(byPen.cell(first, "effective_size")).toBe(String(clusters?.effective_size));
});

test("the picture has a row for groups taken together, with the numbers of the table", () => {
  const groups = [
    ["a", "random", 2, 3],
    ["b", "random", 1, 3],
    ["a", "clinical", 1, 0],
  ] as const;
  const made = report(groups, undefined, { combine: true, by: ["visit"] });
  const [both] = (made.combined ?? []).filter(({ refused }) => refused === null);
  const text = herdPlot(made, plain);
  const drawn = rows(text);
  const at = drawn.findIndex((line) => line.includes("combined random"));
  expect(drawn).toHaveLength(3);
  expect(drawn[at]).toContain(`3/9  ${percent(both?.proportion ?? 0)}`);
  expect(drawn[at]?.replaceAll(/\s+/g, " ")).toContain(percentRange(both?.lower ?? 0, both?.upper ?? 0));
  expect(text.replaceAll(/\s+/g, " ")).toContain("not combined, because these pigs (chosen for signs)");
  for (const line of text.split("\n")) expect(displayWidth(line)).toBeLessThanOrEqual(80);
  // Without --combine the row of both groups is weighted as well, and there is no other.
  const alone = rows(herdPlot(report(groups, undefined, { by: ["visit"] }), plain));
  expect(alone).toHaveLength(2);
  expect(alone[0]).toContain(`3/9  ${percent(both?.proportion ?? 0)}`);
});

test("a withheld interval is said to be so in every format", () => {
  const test = { sensitivity: { right: 95, of: 100 }, specificity: { right: 98, of: 100 } };
  const made = report([["a", "random", 0, 2]], undefined, { test });
  for (const text of [
    herdText(made, plain, { all: true }),
    herdMarkdown(made, { all: true }),
    herdPlot(made, plain),
    herdCsv(made),
  ])
    expect(text.replaceAll(/\s+/g, " ")).toContain("corrected interval is withheld");
  expect(herdPlot(made, plain)).toMatch(/0\/2 +0 % +withheld/);
});

test("text and Markdown say what was assumed, what was combined and what was refused", () => {
  const made = report(
    [
      ["a", "random", 8, 12],
      ["b", "random", 1, 3],
      ["a", "clinical", 1, 0],
    ],
    undefined,
    { combine: true, finite: true, seed: 5 },
  );
  const text = herdText(made, plain, { all: true }).replaceAll(/\s+/g, " ");
  const markdown = herdMarkdown(made, { all: true });
  for (const words of [
    "for the 90 pigs of the group (farm.yaml)",
    "Not combined, because these pigs (chosen for signs)",
    "seed 5, 9999 resamples",
    "exact for a group of known size",
  ]) {
    expect(text).toContain(words);
    expect(markdown.replaceAll("\\", "")).toContain(words);
  }
  expect(text).toContain("8 of 20 a (90), 1 of 4 b (90)");
});
