/** What a seal is over: all that a record says, and nothing else that stands in its file. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { readCases } from "../../src/cases/index.ts";
import { valueAt } from "../../src/cases/model/path.ts";
import { fixFiles, withSeal } from "../../src/fix/index.ts";
import { changesOf } from "../../src/history/changes.ts";
import { mergeRecords } from "../../src/history/merge.ts";
import { sentence } from "../../src/history/sentence.ts";
import {
  fingerprintOf,
  fingerprintWith,
  namedFiles,
  otherFiles,
  sealedStateOf,
} from "../../src/seals/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { root } from "../end-to-end/run.ts";
import { runs } from "../random.ts";

const visit = `format: 1
visit: alder-a
date: 2026-03-14
defaults:
  opened: {at: 2026-03-14T09:00}
`;
const pig = `# a comment
format: 1
case: alder-a-01
pig: {tag: "7", sex: female}
respiratory:
  lungs: {consolidation: {left_cranial: 20}, tracing: lungs.svg, photos: [lungs.jpg]}
  trachea: normal
  pleura:
note: "ä, ß: \\"and\\" 猪"
`;
const files = { "visit.yaml": visit, "pig-01.yaml": pig, "lungs.svg": "<svg/>", "lungs.jpg": "JPEG" };
const entry = { by: "A. Berg", at: "2026-03-15T18:00" };

function caseIn(folder: string) {
  const { cases, unreadable } = readCases(["pig-01.yaml"], { from: folder });
  expect(unreadable).toEqual([]);
  const [one] = cases;
  return one ?? expect.fail();
}

/** The text of a case with one more seal. */
function signed(folder: string, more: { because?: string; signature?: string } = {}): string {
  const one = caseIn(folder);
  const { seals } = sealedStateOf(one);
  const unsigned = { ...entry, ...more };
  return (
    withSeal(one.document.text, { ...unsigned, sha256: fingerprintWith(one, [...seals, unsigned]) }) ??
    expect.fail()
  );
}

const stateIn = (folder: string) => sealedStateOf(caseIn(folder)).state;

function sealedFolder(): { readonly folder: string; readonly text: string } {
  const folder = temporaryFolder();
  put(folder, files);
  expect(stateIn(folder)).toBe("unsealed");
  const text = signed(folder);
  put(folder, { "pig-01.yaml": text });
  expect(stateIn(folder)).toBe("sealed");
  return { folder, text };
}

describe("a seal", () => {
  it("stands behind the record, whose text stays as it is, a fact a line", () => {
    const { text } = sealedFolder();
    expect(text.startsWith(pig)).toBe(true);
    expect(text.slice(pig.length).replace(/[0-9a-f]{64}/, "…")).toBe(
      'seals:\n  - by: A. Berg\n    at: 2026-03-15T18:00\n    sha256: "…"\n',
    );
  });

  it.each<[string, (text: string) => string]>([
    ["comments", (text) => text.replace("# a comment\n", "# another\n").replace("normal", "normal  # seen")],
    ["line ends", (text) => text.replaceAll("\n", "\r\n")],
    ["a byte order mark", (text) => `\ufeff${text}`],
    ["a blank key that goes", (text) => text.replace("  pleura:\n", "")],
    ["quotes and braces", (text) => text.replace('{tag: "7", sex: female}', "\n  tag: '7'\n  sex: female")],
    [
      "the order of keys",
      (text) => text.replace("format: 1\ncase: alder-a-01\n", "case: alder-a-01\nformat: 1\n"),
    ],
    ["another way to write it all", (text) => stringify(parse(text))],
  ])("does not mind %s", (_, change) => {
    const { folder, text } = sealedFolder();
    expect(change(text)).not.toBe(text);
    put(folder, { "pig-01.yaml": change(text) });
    expect(stateIn(folder)).toBe("sealed");
  });

  it.each<[string, (text: string) => string]>([
    ["a value", (text) => text.replace("left_cranial: 20", "left_cranial: 21")],
    ["a key that does not exist", (text) => text.replace("note:", "nota: seen\nnote:")],
    ["a value that fits nowhere", (text) => text.replace("format: 1", "format: 1\ndeath: 7")],
    ["a key that was blank", (text) => text.replace("pleura:", "pleura: normal")],
    ["who signed", (text) => text.replace("A. Berg", "B. Berg")],
    ["when", (text) => text.replace("T18:00", "T17:00")],
    [
      "the fingerprint",
      (text) => text.replace(/sha256: "./, (at) => `${at.slice(0, -1)}${at.endsWith("0") ? 1 : 0}`),
    ],
    ["the kind of a value", (text) => text.replace('"7"', "7")],
  ])("is broken by %s", (_, change) => {
    const { folder, text } = sealedFolder();
    expect(change(text)).not.toBe(text);
    put(folder, { "pig-01.yaml": change(text) });
    expect(stateIn(folder)).toBe("broken");
  });

  it("is broken by any one value of a real record that is taken out or written over", () => {
    const folder = temporaryFolder();
    const name = join(root, "cases-example/alder-farm/2026-03-14/pig-03.yaml");
    put(folder, { "pig-01.yaml": readFileSync(name, "utf8") });
    put(folder, { "pig-01.yaml": signed(folder) });
    const record: unknown = parse(readFileSync(join(folder, "pig-01.yaml"), "utf8"));
    const paths = leaves(record);
    expect(paths.length).toBeGreaterThan(100);
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.boolean(), (path, isGone) => {
        const copy = structuredClone(record) as object;
        const parent = valueAt(copy, path.slice(0, -1)) as Record<string | number, unknown>;
        const last = path.at(-1) ?? expect.fail();
        if (!isGone) parent[last] = "other";
        else if (Array.isArray(parent)) parent.splice(Number(last), 1);
        else delete parent[last];
        // A file without case or format is read all the same when it is named.
        writeFileSync(join(folder, "pig-01.yaml"), JSON.stringify(copy));
        expect(stateIn(folder), `${path.join(".")} ${isGone}`).toBe(
          path[0] === "seals" && isGone && path.length < 3 ? "unsealed" : "broken",
        );
      }),
      { numRuns: runs(40) },
    );
  });

  it("holds for what the case has from its visit, and for nothing else of the visit", () => {
    const { folder } = sealedFolder();
    put(folder, { "visit.yaml": `${visit}note: a bitch barked\n` });
    expect(stateIn(folder)).toBe("sealed");
    put(folder, { "visit.yaml": visit.replace("09:00", "09:30") });
    expect(stateIn(folder)).toBe("broken");
  });

  it("stays whole where a default moves into the case", () => {
    const { folder, text } = sealedFolder();
    put(folder, {
      "visit.yaml": visit.replace(/defaults:[\s\S]*/, ""),
      "pig-01.yaml": text.replace("respiratory:", "opened: {at: 2026-03-14T09:00}\nrespiratory:"),
    });
    expect(stateIn(folder)).toBe("sealed");
  });

  it("of an amendment holds for all seals before it", () => {
    const { folder, text } = sealedFolder();
    const changed = text.replace("left_cranial: 20", "left_cranial: 25");
    put(folder, { "pig-01.yaml": changed });
    const amended = signed(folder, { because: "20 was of pig 2: the cards were swapped" });
    expect(amended.startsWith(changed)).toBe(true);
    put(folder, { "pig-01.yaml": amended });
    expect(stateIn(folder)).toBe("amended");
    for (const [from, to] of [
      ["A. Berg", "B. Berg"],
      ["the cards were swapped", "nobody knows why"],
      [/ {2}- by: [\s\S]*? {2}(?=- by)/, "  "],
    ] as const) {
      expect(amended.replace(from, to)).not.toBe(amended);
      put(folder, { "pig-01.yaml": amended.replace(from, to) });
      expect(stateIn(folder)).toBe("broken");
    }
  });

  it("knows the files that the record names, however large its list of keys", () => {
    const { folder } = sealedFolder();
    const one = { ...caseIn(folder), file: join(folder, "pig-01.yaml") };
    expect(namedFiles(one)).toEqual(["lungs.jpg", "lungs.svg"]);
    const prints = Object.fromEntries(
      namedFiles(one).map((file) => {
        const read = fingerprintOf(one, file);
        return [file, "sha256" in read ? read.sha256 : expect.fail()];
      }),
    );
    // As `printf JPEG | sha256sum` says.
    expect(prints["lungs.jpg"]).toBe("f4dc1c96a30fbdeb2a15cb6d4229469fff36c0266dc0c346599093c24d4c0a01");
    expect(otherFiles(one, { files: prints })).toEqual([]);
    writeFileSync(join(folder, "lungs.svg"), "<svg />");
    expect(otherFiles(one, { files: { "lungs.svg": prints["lungs.svg"] ?? "" } })).toEqual([
      { file: "lungs.svg", why: "it is not the file that was sealed" },
      { file: "lungs.jpg", why: "the seal says nothing of it" },
    ]);
  });

  it("is not put where something would be lost", () => {
    const seal = { ...entry, sha256: "0".repeat(64) };
    for (const text of [
      "{format: 1, case: x}\n",
      "format: 1\n...\n",
      "format: 1\nseals:\n",
      "format: 1\nseals: []\n",
    ])
      expect(withSeal(text, seal)).toBeUndefined();
    expect(withSeal("format: 1\r\ncase: x # here", seal)).toBe(
      `format: 1\r\ncase: x # here\r\nseals:\r\n  - by: A. Berg\r\n    at: 2026-03-15T18:00\r\n    sha256: "${seal.sha256}"\r\n`,
    );
  });

  it("keeps lint --fix away from what was signed", () => {
    const { folder, text } = sealedFolder();
    const fixed = (): readonly string[] =>
      fixFiles(readCases([folder]), [folder]).map(({ file, fixes }) => `${file.slice(-11)} ${fixes.length}`);
    const misspelt = pig.replace("sex: female", "sex: Female");
    put(folder, { "pig-01.yaml": misspelt });
    expect(fixed()).toEqual(["pig-01.yaml 1"]);
    put(folder, {
      "pig-01.yaml": text.replace("format: 1\ncase: alder-a-01\n", "case: alder-a-01\nformat: 1\n"),
    });
    expect(fixed()).toEqual([]);
  });
});

describe("two people's work on a sealed case", () => {
  const { folder, text } = sealedFolder();
  const amended = (from: string, to: string, because: string): string => {
    put(folder, { "pig-01.yaml": text.replace(from, to) });
    return signed(folder, { because });
  };
  const ours = amended("left_cranial: 20", "left_cranial: 25", "read anew");
  const theirs = amended("sex: female", "sex: castrate", "seen again");

  it("comes together with all signatures, and is one that nobody has signed", () => {
    const merged = mergeRecords("case", { base: text, ours, theirs }, 7);
    if (!merged.ok) return expect.fail();
    expect(merged.conflicts).toEqual([]);
    put(folder, { "pig-01.yaml": merged.text });
    const { state, seals } = sealedStateOf(caseIn(folder));
    expect([state, seals.map(({ because }) => because)]).toEqual([
      "broken",
      [undefined, "read anew", "seen again"],
    ]);
    put(folder, { "pig-01.yaml": signed(folder, { because: "both" }) });
    expect(stateIn(folder)).toBe("amended");
  });

  it("is told in the words of a signature", () => {
    const told = (before: string, after: string): readonly string[] =>
      changesOf("case", parse(before), parse(after)).map((change) => sentence("case", change));
    expect(told(pig, text)).toEqual(["Signed by A. Berg on 2026-03-15"]);
    expect(told(text, pig)).toEqual(["Signature of A. Berg on 2026-03-15 taken out"]);
    expect(told(text, ours)).toContain("What was changed is signed by A. Berg on 2026-03-15: read anew");
  });
});

/** The paths of all values, at whatever depth. */
function leaves(value: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== "object" || value === null) return value === null ? [] : [path];
  return Object.entries(value).flatMap(([key, item]) =>
    leaves(item, [...path, Array.isArray(value) ? Number(key) : key]),
  );
}
