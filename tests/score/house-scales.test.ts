/** Scales of a practice: read where the settings name them, used like those that ship, checked, and never in the way of the rest. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Archive, readCases } from "../../src/cases/index.ts";
import { explain, houseScaleTopics } from "../../src/explain/index.ts";
import { checkHouseScales, herdEstimates } from "../../src/herd/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { lintCases } from "../../src/lint/index.ts";
import { exampleFaults, scoreCases } from "../../src/score/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";

const page = readFileSync(new URL("../../docs/scales/house-scales.md", import.meta.url), "utf8");
const blockOf = (info: string): string =>
  new RegExp(`^\`\`\`${info}\\n([\\s\\S]*?)^\`\`\`$`, "m").exec(page)?.[1] ?? "";
const gap = blockOf("yaml scale");
const settings = blockOf("yaml settings");

const pig = (id: string, turbinates: unknown): string =>
  JSON.stringify({ format: 1, case: id, respiratory: { turbinates } });

/** The example of the page, with other files over it. */
function archive(files: Readonly<Record<string, string>> = {}): Archive {
  const root = temporaryFolder();
  put(root, {
    "carcase.yaml": settings,
    "scales/our-gap.yaml": gap,
    "a.yaml": pig("a", { section: "premolar-1", gap: { left: "6 mm", right: "8 mm" } }),
    "b.yaml": pig("b", { section: "premolar-1", gap: { left: "2 mm", right: "9.5 mm" } }),
    "c.yaml": pig("c", { section: "premolar-1", grades: { "our-gap": 1 } }),
    ...files,
  });
  return readCases(["."], { from: root });
}

const findings = (from: Archive): string[] =>
  lintCases(checkHouseScales(from), {
    only: ["scale-format", "scale-example", "grade-scale-unknown"],
  }).findings.map(
    ({ rule, file, line, column, message }) => `${file}:${line}:${column} [${rule}] ${message}`,
  );
/** The line of a text in the example, counted from 1. */
const lineOf = (text: string, within = gap): number =>
  within.split("\n").findIndex((line) => line.includes(text)) + 1;

describe("the example of the documentation", () => {
  it("is sound, scores, counts in the herd and is explained", () => {
    const read = archive();
    expect(read.unreadable).toEqual([]);
    expect(findings(read)).toEqual([]);
    const { cases } = scoreCases(read, { scales: ["our-gap"] });
    expect(cases.map((one) => one.scores.map(({ value, class: named }) => [value, named]))).toEqual([
      [[2, "to be watched"]],
      [[3, "to be watched"]],
      [[1, "fine"]],
    ]);
    const all = scoreCases(read).cases[0]?.scores.map(({ scale }) => scale);
    expect(all).toContain("our-gap");
    expect(all).toContain("maff-1978");
    const { estimates, scores } = herdEstimates(read, { indicators: ["gap-wide"], scales: ["our-gap"] });
    expect(estimates[0]).toMatchObject({ affected: 2, examined: 3, scale: { id: "our-gap" } });
    expect(scores[0]).toMatchObject({ n: 3, mean: 2, indices: [{ id: "mean-gap", value: 2 }] });
    const [told] = explain("our-gap", houseScaleTopics(read.scales));
    const text = JSON.stringify(told);
    for (const part of [
      "scales/our-gap.yaml",
      "the largest of left gap and right gap",
      "above 7",
      "H. Marlow",
    ])
      expect(text).toContain(part);
  });

  it("names all keys that it explains in the schema", () => {
    const schema = JSON.parse(
      readFileSync(new URL("../../src/schemas/knowledge.schema.json", import.meta.url), "utf8"),
    );
    const known = Object.keys(schema.$defs.scale.properties);
    const table = page.slice(page.indexOf("## What to write"));
    for (const [, cell = ""] of table.matchAll(/^\| (`[^|]*)\|/gm))
      for (const [, key = ""] of cell.matchAll(/`(\w+)`/g)) expect(known).toContain(key);
  });
});

describe("a scale file that is wrong", () => {
  const wrong = (from: string, to: string): string[] => {
    expect(gap).toContain(from);
    return findings(archive({ "scales/our-gap.yaml": gap.replace(from, to) }));
  };

  it.each([
    [
      "value: 2\n    class",
      "value: 1\n    class",
      "    value: 2\n",
      "scale-example",
      "it says 1, but the scale gives 2",
    ],
    [
      "class: fine\n    source",
      "class: bad\n    source",
      "class: fine",
      "scale-example",
      "it says bad, but 0 is classed fine",
    ],
    [
      "gap.right]\n",
      "gap.left]\n",
      "missing:",
      "scale-example",
      "but it is respiratory.turbinates.gap.right",
    ],
    [
      "left: 6 mm, right: 8 mm",
      "left: 6, right: 8 mm",
      "right: 8 mm",
      "scale-example",
      "does not fit the case format",
    ],
    ["id: our-gap", "id: maff-1978", "id: our-gap", "scale-format", "is the name of a scale that ships"],
    ["id: our-gap", "id: shipped", "id: our-gap", "scale-format", "is a word of the settings"],
    [
      "organ: respiratory.turbinates",
      "organ: turbinates",
      "organ:",
      "scale-format",
      "Did you mean respiratory.turbinates?",
    ],
    ["read: gap.left", "read: gap.lft", "read: gap.left", "scale-format", "Did you mean left?"],
    [
      "read: gap.left",
      "read: gape.left",
      "read: gap.left",
      "scale-format",
      'no observation of respiratory.turbinates "gape.left"',
    ],
    [
      "read: gap.left",
      "read: gap",
      "read: gap.left",
      "scale-format",
      "gap has parts; name one, such as gap.left.",
    ],
    [
      "{above: 7, value: 2}",
      "{above: 3, value: 2}",
      "{above: 7",
      "scale-format",
      "lies below the one before it",
    ],
    [
      "range: [0, 3]",
      "range: [3, 0]",
      "range:",
      "scale-format",
      "write the lowest score first: range: [0, 3]",
    ],
    ["range: [0, 3]", "range: [3, 3]", "range:", "scale-format", "it begins and ends at 3"],
    [
      "range: [0, 3]",
      "range: [0, 3]\nmarks: {worst: 3, because: our own picture}",
      "when_normal: 0",
      "scale-format",
      "write both, and not the same",
    ],
    [
      "combine: max\nwhole: true",
      "combine: max\nnominal: true",
      "statistic: mean",
      "scale-format",
      "only a share of pigs makes sense",
    ],
    ["id: our-gap", "id: constructor", "id: our-gap", "scale-format", "a word of the program's own language"],
    [
      "id: our-gap",
      "id: __proto__",
      "id: our-gap",
      "scale-format",
      "Write a name of small letters, digits and hyphens",
    ],
    ["id: our-gap", "id: Our Gap", "id: our-gap", "scale-format", "Did you mean our-gap?"],
    ["{above: 7, value: 2}", "{value: 2}", "{above: 7", "scale-format", "write either from"],
    ["[maff-1978]", "[maff-1987]", "not_comparable", "scale-format", "Did you mean maff-1978?"],
  ])("%j for %j is found at its line", (from, to, at, rule, message) => {
    const found = wrong(from, to).filter((one) => one.startsWith("scales/"));
    expect(found.join("\n")).toContain(message);
    const [first = ""] = found.filter((one) => one.includes(message));
    expect(first).toContain(`[${rule}]`);
    const line = Number(first.split(":")[1]);
    expect(line).toBe(lineOf(at.trimEnd()));
    expect(Number(first.split(":")[2]?.split(" ")[0])).toBeGreaterThan(0);
  });

  it.each([
    ["source", /source:\n {2}cite[\s\S]*?(?=meaning)/, "source is missing. Write who says so"],
    [
      "confidence",
      / {2}confidence: common-practice\n {2}note/,
      "source.confidence is missing. Write how sure it is",
    ],
    ["boundary", /boundary: .*\n/, "boundary is missing. Write what happens exactly at a cut point"],
    ["examples", /examples:\n[\s\S]*/, "examples is missing. Write one worked example"],
    ["class_source", /class_source: .*\n/, "who made these classes? Write class_source"],
  ])("without %s is found", (_, part, message) => {
    expect(gap).toMatch(part);
    const found = findings(
      archive({ "scales/our-gap.yaml": gap.replace(part, part.source.includes("note") ? "  note" : "") }),
    );
    expect(found.join("\n")).toContain(message);
    expect(found.join("\n")).toContain("[scale-format]");
  });

  it("hides nothing of the rest", () => {
    const read = archive({
      "carcase.yaml": settings.replace("scales/our-gap.yaml", "scales/"),
      "scales/broken.yaml": "format: 1\nid: [",
      "scales/half.yaml": gap.replace("our-gap", "half").replace(/boundary: .*\n/, ""),
    });
    expect(read.unreadable.map(({ file }) => file)).toEqual(["scales/broken.yaml"]);
    expect(read.scales.map(({ id, scale }) => [id, scale !== undefined])).toEqual([
      ["half", false],
      ["our-gap", true],
    ]);
    expect(read.cases.map((one) => one.settings.file)).toEqual([
      "carcase.yaml",
      "carcase.yaml",
      "carcase.yaml",
    ]);
    const scores = scoreCases(read).cases[0]?.scores ?? [];
    expect(scores.find(({ scale }) => scale === "our-gap")?.value).toBe(2);
    expect(scores.some(({ scale }) => scale === "half")).toBe(false);
  });

  it("keeps an indicator of it out of the herd numbers without a fault in the settings", () => {
    const read = archive({ "scales/our-gap.yaml": gap.replace(/boundary: .*\n/, "") });
    expect(read.unreadable).toEqual([]);
    expect(herdEstimates(read).estimates.some(({ indicator }) => indicator === "gap-wide")).toBe(false);
  });

  it("that is not there is said at its place, and the settings hold", () => {
    const read = archive({ "carcase.yaml": settings.replace("our-gap.yaml", "our-gape.yaml") });
    expect(read.unreadable.map(({ file, line, message }) => `${file}:${line} ${message}`)).toEqual([
      'carcase.yaml:2 scales[1]: there is no scale file at "scales/our-gape.yaml"; the path starts from the folder of carcase.yaml.',
    ]);
    expect(read.cases[0]?.settings.file).toBe("carcase.yaml");
  });

  it("with the name of another is refused, and the first one holds", () => {
    const read = archive({
      "carcase.yaml": settings.replace("scales/our-gap.yaml", "scales/"),
      "scales/z.yaml": gap.replace("0-3\n", "0-3, again\n"),
    });
    expect(findings(read).join("\n")).toContain(
      "scales/z.yaml:3:5 [scale-format] id: another of your scale files",
    );
    expect(scoreCases(read, { scales: ["our-gap"] }).cases[0]?.scores[0]?.title).toBe(
      "Gap below the ventral concha, our grades 0-3",
    );
  });
});

describe("two folders with scales of one name", () => {
  const one = (cut: number): string =>
    gap.replaceAll("above: 7", `above: ${cut}`).replace(
      /examples:[\s\S]*/,
      `examples:
  - {case: by hand, record: {section: premolar-1, gap: {left: 0 mm, right: 0 mm}}, value: 0, source: {cite: hand, confidence: derived}}
`,
    );
  const files = (second: string): Record<string, string> => ({
    "x/carcase.yaml": settings,
    "x/scales/our-gap.yaml": one(7),
    "x/p.yaml": pig("p", { section: "premolar-1", gap: { left: "8 mm", right: "8 mm" } }),
    "y/carcase.yaml": settings,
    "y/scales/our-gap.yaml": second,
    "y/q.yaml": pig("q", { section: "premolar-1", gap: { left: "8 mm", right: "8 mm" } }),
  });
  const herd = (second: string) => {
    const root = temporaryFolder();
    put(root, files(second));
    return herdEstimates(readCases(["."], { from: root }), {
      by: [],
      scales: ["our-gap"],
      indicators: ["gap-wide"],
    });
  };

  it("are never counted together", () => {
    const { scores, estimates } = herd(one(8.5));
    expect(scores.map(({ n, mean }) => [n, mean])).toEqual([
      [1, 2],
      [1, 1],
    ]);
    expect(estimates.map(({ affected, examined }) => [affected, examined])).toEqual([
      [1, 1],
      [0, 1],
    ]);
  });

  it("are one scale when both settings name the same file", () => {
    const root = temporaryFolder();
    const shared = settings.replace("scales/our-gap.yaml", "../scales/our-gap.yaml");
    put(root, {
      ...files(one(7)),
      "x/carcase.yaml": shared,
      "y/carcase.yaml": shared,
      "scales/our-gap.yaml": one(7),
    });
    const { scores } = herdEstimates(readCases(["."], { from: root }), { by: [], scales: ["our-gap"] });
    expect(scores.map(({ n }) => n)).toEqual([2]);
  });
});

describe("the scales that ship", () => {
  it.each([...scales.values()])("$id comes out as its examples say, by the same check", (scale) => {
    expect(exampleFaults(scale)).toEqual([]);
  });
});
