/**
 * How the work grows with the file, counted in steps and not in seconds: what is twice as long takes about twice as many.
 * Every way in which a file once hung the program is here.
 */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { svg } from "../measure/drawn.ts";
import { Program } from "./program.ts";

const program = new Program({ counted: true });
let folder = "";
beforeAll(() => {
  folder = temporaryFolder();
});
afterAll(() => program.stop());

/** Doubling what grows may take this many times as many further steps; sorting alone takes a little more than two. */
const most = 2.6;
/** Steps that come and go, such as those of a cache that is filled. */
const slack = 30_000;

interface Growing {
  readonly args: readonly string[];
  readonly name: string;
  /** The file with so many times what grows in it. */
  readonly make: (times: number) => string;
}

async function expectLinear({ args, name, make }: Growing, times: number): Promise<void> {
  const steps = async (count: number): Promise<number> => {
    put(folder, { [name]: make(count) });
    const done = await program.run({ args, cwd: folder });
    expect(done.err).not.toContain("internal fault");
    return done.steps ?? Number.NaN;
  };
  // The first time fills what is kept of words and expressions.
  await steps(times);
  const [once, twice, fourTimes] = [await steps(times), await steps(2 * times), await steps(4 * times)];
  const [first, second] = [twice - once, fourTimes - twice];
  expect(second, `${once}, ${twice} and ${fourTimes} steps`).toBeLessThan(most * Math.max(first, 0) + slack);
}

const inCase = (make: (times: number) => string): Growing => ({
  args: ["lint", "a.yaml"],
  name: "a.yaml",
  make: (times) => smallCase("a", make(times)),
});
const inDrawing = (make: (times: number) => string): Growing => ({
  args: ["measure", "t.svg"],
  name: "t.svg",
  make: (times) => svg(make(times)),
});
const said = (key: string, unit: string): Growing =>
  inCase((times) => `${key}: ${JSON.stringify(unit.repeat(times))}\n`);
const finding = (text: string): string =>
  `external: {feet: [{process: erosion, note: ${JSON.stringify(text)}}]}\n`;

/** A ring of corners with small teeth, so that no piece lies on another. */
const ring = (x: number, corners: number): string =>
  `M${Array.from({ length: corners }, (_, at) => {
    const [turn, radius] = [(2 * Math.PI * at) / corners, 100 + 2 * (at % 2)];
    return `${(x + radius * Math.cos(turn)).toFixed(4)} ${(radius * Math.sin(turn)).toFixed(4)}`;
  }).join("L")}Z`;
const outline = (id: string, path: string): string => `<path id="${id}" d="${path}"/>`;
const square = "M0 0h9v9h-9z";
const numbered = (count: number, make: (n: number) => string): string =>
  Array.from({ length: count }, (_, n) => make(n)).join("");

describe("the work grows like the file", () => {
  it.each<[string, Growing, number]>([
    [
      "dashes and blanks at the beginning of a line",
      inCase((n) => `x: 1\n${`-${" ".repeat(10)}`.repeat(n)}x`),
      500,
    ],
    ["open brackets", inCase((n) => `note: ${"[".repeat(19)}${"a, ".repeat(n)}\n`), 500],
    ["brackets that open and open", inCase((n) => `note: ${"[".repeat(n)}\n`), 200],
    ["a table of dashes in a note", inCase((n) => `note: |\n${`  - - - - - - - - - - |\n`.repeat(n)}`), 100],
    ["a sign with blanks in it", inCase((n) => `selection: {signs: "a${" ".repeat(n)}b"}\n`), 5000],
    ["a sign of many parts", inCase((n) => `selection: {signs: "${"a/".repeat(n)}"}\n`), 2000],
    [
      "a list of signs that is one text",
      inCase((n) => `selection: {signs: ["${numbered(n, (at) => `no ${at}, `)}"]}\n`),
      500,
    ],
    ["an organ that is one long text", inCase((n) => `external: {skin: "a${" ".repeat(n)}b/"}\n`), 5000],
    ["an alarm word over and over", said("note", "vesicles "), 400],
    ["an alarm word over and over, in parts", said("note", "vesicles, "), 400],
    ["an alarm word over and over, in sentences", said("note", "vesicles. "), 400],
    ["an alarm word denied over and over", said("note", "no vesicles, "), 400],
    ["an alarm word asked for over and over", said("note", "vesicles? no. "), 300],
    ["words of denial over and over", said("note", "no or not and "), 400],
    ["alarm words without a blank", said("note", "vesicles/"), 400],
    ["a disease and its alarm word over and over", said("note", "FMD: vesicles, "), 200],
    ["part of the name of an organ over and over", said("note", "lymph "), 400],
    ["an alarm word in a finding", inCase((n) => finding("blisters ".repeat(n))), 400],
    ["organs and alarm words", said("note", "feet vesicles snout blisters, "), 200],
    ["a lesion in a history", said("history", "pneumonia and diarrhoea in nursery pigs since May, "), 100],
    ["blanks in a note", inCase((n) => `note: "a${" ".repeat(n)}b"\n`), 5000],
    ["line ends in a note", said("note", "\n"), 3000],
    ["one letter over and over", said("note", "a"), 5000],
    ["digits in a note", said("note", "1"), 5000],
    ["brackets in a note", said("note", "(["), 2000],
    ["dashes in a note", said("note", " -- - "), 1000],
    ["findings", inCase((n) => `liver_pancreas:\n  liver:\n${"    - {process: nodule}\n".repeat(n)}`), 50],
    ["wrong words", inCase((n) => `external:\n  skin:\n${"    - {process: nodul}\n".repeat(n)}`), 50],
    ["keys", inCase((n) => numbered(n, (key) => `k${key}: 1\n`)), 100],
    [
      "samples",
      inCase(
        (n) =>
          `samples:\n${numbered(n, (id) => `  - {id: s${id}, from: respiratory.lungs, container: sterile pot, test: [culture]}\n`)}`,
      ),
      40,
    ],
    ["tags that are none", inCase((n) => `x:\n${"  - !a b\n".repeat(n)}`), 200],
    ["references", inCase((n) => `x: &a b\ny: [${"*a, ".repeat(n)}]\n`), 200],
    ["quotes", inCase((n) => `${"'a' ".repeat(n)}\n`), 500],
    ["tabs", inCase((n) => `note:${"\t".repeat(n)}x\n`), 2000],
    [
      "groups of a farm",
      {
        args: ["lint", "farm.yaml"],
        name: "farm.yaml",
        make: (n) => `format: 1\nfarm: f\ngroups:\n${numbered(n, (group) => `  g${group}: {head: x}\n`)}`,
      },
      50,
    ],
    [
      "indentation that grows",
      inCase((n) => numbered(Math.floor(Math.sqrt(n)), (at) => `${" ".repeat(at)}a:\n`)),
      4000,
    ],
    ["comments", inCase((n) => "# a\n".repeat(n)), 500],
  ])("%s", (_, growing, times) => expectLinear(growing, times));

  it.each<[string, Growing, number]>([
    [
      "one transform",
      inDrawing((n) => `<g transform="skewX(${"1".repeat(n)}!">${outline("septum", square)}</g>`),
      2000,
    ],
    [
      "a list of transforms",
      inDrawing((n) => `<g transform="${"scale(1) ".repeat(n)}">${outline("septum", square)}</g>`),
      250,
    ],
    [
      "a transform around many shapes",
      inDrawing((n) => `<g transform="${"scale(1)".repeat(n)}">${`<path d="${square}"/>`.repeat(n)}</g>`),
      200,
    ],
    [
      "a style around many shapes",
      inDrawing((n) => `<g style="${"a:b;".repeat(n)}">${`<use/>`.repeat(n)}</g>`),
      300,
    ],
    [
      "zeros and tabs in a width",
      inDrawing((n) => `<rect id="septum" width="${"0".repeat(n)}${"\t".repeat(n)}!"/>`),
      3000,
    ],
    [
      "corners of four outlines",
      inDrawing((n) =>
        ["left-cranial", "left-caudal", "right-cranial", "right-caudal"]
          .map((lobe, at) => outline(`lobe-${lobe}`, ring(210 * at, n)))
          .join(""),
      ),
      1000,
    ],
    [
      "corners that lie close together",
      inDrawing((n) =>
        outline(
          "cavity-left",
          `M0 0L1000 0L1000 1000L${numbered(n, (at) => `${500 - at / 1e6} ${500 + (at % 2) / 1e6} `)}Z`,
        ),
      ),
      1000,
    ],
    [
      "long pieces side by side",
      inDrawing((n) =>
        outline("cavity-left", `M0 0${numbered(n, (at) => `L${at} 50L${at + 0.5} 1`)}L${n} 0Z`),
      ),
      200,
    ],
    [
      "affected areas of a lobe",
      inDrawing(
        (n) =>
          `${outline("lobe-accessory", ring(0, 200))}${numbered(n, (at) => `<circle id="affected-accessory-${at}" cx="${(at % 16) * 8 - 60}" cy="${Math.floor(at / 16) * 8 - 60}" r="1"/>`)}`,
      ),
      40,
    ],
    [
      "rings of an outline",
      inDrawing((n) =>
        outline(
          "lobe-accessory",
          numbered(n, (at) => `M${at * 3} 0h2v2h-2z`),
        ),
      ),
      100,
    ],
    ["shapes without an id", inDrawing((n) => `<path d="${square}"/>`.repeat(n)), 500],
    ["attributes", inDrawing((n) => `<g ${numbered(n, (at) => `a${at}="1" `)}/>`), 200],
    ["a long id", inDrawing((n) => `<path id="${"cavity-left".repeat(n)}" d="${square}"/>`), 300],
    ["a long title", inDrawing((n) => `<title>${"1 mm ".repeat(n)}</title>`), 1000],
    ["style sheets", inDrawing((n) => `<style>a${"; ".repeat(n)}</style>`), 2000],
  ])("tracing: %s", (_, growing, times) => expectLinear(growing, times));

  it("GeoJSON: features and positions", async () => {
    const feature = (part: string, coordinates: unknown) => ({
      type: "Feature",
      properties: { part, unit: "mm" },
      geometry: { type: "Polygon", coordinates: [coordinates] },
    });
    const round = (count: number) =>
      Array.from({ length: count + 1 }, (_, at) => [
        Math.cos((2 * Math.PI * (at % count)) / count),
        Math.sin((2 * Math.PI * (at % count)) / count),
      ]);
    const make = (features: number, corners: number): string =>
      JSON.stringify({
        type: "FeatureCollection",
        features: [
          feature("cavity-left", round(corners)),
          ...Array.from({ length: features }, (_, at) => feature(`x${at}`, [])),
        ],
      });
    await expectLinear({ args: ["measure", "t.json"], name: "t.json", make: (n) => make(n, 8) }, 100);
    await expectLinear({ args: ["measure", "t.json"], name: "t.json", make: (n) => make(1, n) }, 500);
  });

  it("readings: rows, columns, quotes", async () => {
    const readings = (make: Growing["make"]): Growing => ({ args: ["agree", "r.csv"], name: "r.csv", make });
    const head = "pig,reader,maff-1978\n";
    await expectLinear(
      readings((n) => head + numbered(n, (pig) => `${pig},a,1\n${pig},b,2\n`)),
      300,
    );
    await expectLinear(
      readings((n) => `pig,reader,${"maff-1978,".repeat(n)}\n`),
      500,
    );
    await expectLinear(
      readings((n) => `${head}1,a,"${"\n".repeat(n)}`),
      1000,
    );
    await expectLinear(
      readings((n) => `${head}${" ".repeat(n)}1,a,${" ".repeat(n)}x`),
      1000,
    );
  });

  it("a tally: rows, columns, faults, quotes", async () => {
    const args = ["import", "t.csv", ".", "--visit", "a", "--date", "2026-03-14"];
    const tally = (make: Growing["make"]): Growing => ({ args, name: "t.csv", make });
    await expectLinear(
      tally((n) => `tag,septum,note\n${numbered(n, (pig) => `${pig},slight,x\n`)}`),
      100,
    );
    await expectLinear(
      tally((n) => `tag,septum\n${numbered(n, (pig) => `${pig},${pig}\n`)}`),
      200,
    );
    await expectLinear(
      tally((n) => `tag,${numbered(n, (column) => `L ${column},`)}\n1,2\n`),
      50,
    );
    await expectLinear(
      tally((n) => `tag,note\n1,"${'\n""'.repeat(n)}`),
      1000,
    );
  });

  it("a baseline, a list of tags, settings, files to pass over", async () => {
    put(folder, { "b.yaml": smallCase("b"), "tags.txt": "1\n" });
    await expectLinear(
      {
        args: ["lint", "--baseline", "b.json", "b.yaml"],
        name: "b.json",
        make: (n) => JSON.stringify({ findings: numbered(n, () => "[") }),
      },
      500,
    );
    await expectLinear(
      {
        args: ["plan", "choose", "--from", "tags.txt", "--n", "1", "--seed", "1"],
        name: "tags.txt",
        make: (n) => numbered(n, (tag) => `${tag}\n`),
      },
      500,
    );
    await expectLinear(
      {
        args: ["lint", "--config", "s.yaml", "b.yaml"],
        name: "s.yaml",
        make: (n) => `format: 1\nrules:\n${numbered(n, (rule) => `  rule-${rule}: note\n`)}`,
      },
      50,
    );
    await expectLinear(
      { args: ["lint", "."], name: ".gitignore", make: (n) => "a*b*".repeat(n) + "\n*.tmp".repeat(n) },
      50,
    );
  });
});

it("a drawing beyond the bounds says which bound it is", async () => {
  const message = async (body: string): Promise<string> => {
    put(folder, { "t.svg": svg(body) });
    return (await program.run({ args: ["measure", "t.svg"], cwd: folder })).err;
  };
  expect(await message(outline("septum", `M0 0${"h1".repeat(20_001)}`))).toContain("more than 20000");
  expect(
    await message(
      outline(
        "lobe-accessory",
        numbered(1001, (at) => `M${at * 3} 0h2v2h-2z`),
      ),
    ),
  ).toContain("1001 rings, more than 1000");
  expect(await message(numbered(1001, (at) => outline(`affected-accessory-${at}`, square)))).toContain(
    "1001 outlines, more than 1000",
  );
  // One that has no extent does not hide the others.
  const long = numbered(15_000, (at) => `L${at % 2 ? 900 : 0} ${at / 100}`);
  expect(
    await message(`${outline("septum", "M0 0h0")}${outline("lobe-accessory", `M0 0${long}`)}`),
  ).toContain("more than 200000 corners");
});
