/** Two parsers, one answer: where the quick one reads a text, the slow one reads the same values at the same places. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { decode } from "../../src/cases/files/read-text.ts";
import type { Path } from "../../src/cases/model/path.ts";
import type { SourceDocument } from "../../src/cases/yaml/document.ts";
import { quickTree, quickValue } from "../../src/cases/yaml/quick-tree.ts";
import { sourceFaults } from "../../src/cases/yaml/source-checks.ts";
import { PlacedDocument } from "../../src/cases/yaml/source-places.ts";
import { TextLines } from "../../src/cases/yaml/text-lines.ts";
import { parseSlowly } from "../../src/cases/yaml/yaml-document.ts";
import { runs } from "../random.ts";

const yamlIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.ya?ml$/.test(name))
    .map((name) => join(folder, name));

function quickly(text: string): SourceDocument | undefined {
  const tree = quickTree(text);
  if (tree === undefined || sourceFaults(tree).length > 0) return undefined;
  return new PlacedDocument(tree, new TextLines(text));
}

function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  const inside = Array.isArray(value)
    ? value.map((item, index) => [index, item] as const)
    : Object.entries(value);
  return [path, ...inside.flatMap(([key, item]) => pathsOf(item, [...path, key]))];
}

/** The same value, and every key and value at the same line and column. */
function expectSame(text: string): boolean {
  const quick = quickly(text);
  // Read without places, a text is right or left to the other parser, just as with them.
  expect(quickValue(text) === undefined, text).toBe(quick === undefined);
  if (quick === undefined) return false;
  const slow = parseSlowly(text);
  expect(slow.ok ? [] : slow.faults, text).toEqual([]);
  if (!slow.ok) return false;
  expect(quick.value).toEqual(slow.document.value);
  expect(quickValue(text)?.value).toEqual(slow.document.value);
  for (const path of [...pathsOf(quick.value), ["nowhere"]]) {
    const at = ({ line, column }: { line: number; column: number }): string =>
      `${path.join(".")} ${line}:${column}`;
    expect(at(quick.where(path))).toBe(at(slow.document.where(path)));
    expect(at(quick.whereKey(path))).toBe(at(slow.document.whereKey(path)));
  }
  return true;
}

describe("the quick parser", () => {
  it("agrees on every file of the examples, and reads most of them", () => {
    const files = [
      ...yamlIn("cases-example"),
      ...yamlIn("tests/fixtures/birch-farm"),
      ...yamlIn("src/knowledge"),
    ];
    const read = files.filter((file) => expectSame(readFileSync(file, "utf8")));
    console.log(`quick parser: ${read.length} of ${files.length} files, the rest left to the other`);
    expect(read.length).toBeGreaterThan(60);
  });

  it("accepts nothing that the other refuses", () => {
    const files = yamlIn("tests/fixtures/hostile");
    expect(files.length).toBeGreaterThan(20);
    for (const file of files) {
      const text = decode(readFileSync(file));
      if (text.ok) expectSame(text.text);
    }
  });

  it.each([
    "a: 1\nb: [1, 2\n",
    "a: b: c\n",
    'a: "x\n',
    "a: 'x''y'\nb: \"\\u00e9\"\n",
    "a: {b: 1, c: , d: 2}\n",
    "a: {weight: 17,5 kg}\n",
    "a:\n- 1\n- 2\n",
    "- a: 1\n  b: 2\n- c\n",
    "a: x\n  y\nb: 2\n",
    "a: 1 # one\n# two\nb: 2\n",
    "a: &x 1\nb: *x\n",
    "a: !!str 1\n",
    "a: |\n  text\nb: >-\n  more\n",
    "? a\n: b\n",
    "{a: 1, b: [c, d]}\n",
    "a: 0217\nb: 1e3\nc: .5\nd: 0x1f\ne: ~\nf: yes\ng: 12345678901234567890\n",
    "a: 1\na: 2\n",
    "a: 1\n b: 2\n",
    "a: [1, 2]]\n",
    "a: 'é'\nb: {c: \"ü\", d: x}\n",
    "a: 1\r\nb: {c: 2}\r\n",
    "a: x #y\nb: x#y\n",
    "a: http://x\nb: 12:30\n",
    "a: -\n",
    "a: [ ]\nb: { }\n",
    'key with spaces: v\n"quoted key": w\n',
    "1.0: x\n",
    "a: {-0: x, True: y}\n",
    "12: x\n",
    "a:\n- x\n-\n- y\n",
    "a:\n  - b: {c: d}\n  - \n",
    "a:\n  - # b\n",
    "a: @x\n",
    "a: `x`\n",
    "a: 'it\n",
    "a:b\n",
    "a: 1\n...\nb: 2\n",
    "a: >\n  x\n\n  y\n   z\nb: 1\n",
    "a: |+\n  x\n\n\nb: 1\n",
    "a:\n  - |\n    t\n  - 2\n- 3\n",
    "a:\n  - |\n    t\n  - 2\n",
    "a: >-  # c | d\n  x\nb: 2\n",
    "a:\n  |\n  x\nb: 2\n",
    "a: |2\n   x\nb: |-\n",
    "a: |\n  x\n # c\nb: 1\n",
    "a: |\n# c\n  x\n",
    "a: |\n\n\n",
    "a: |\r\n  x\r\n  y\r\nb: 2\r\n",
    "a: {b: |}\n",
    "a: |\n   x\n  y\n",
    "a: >\n  - x\n  - y: z\n",
  ])("says the same of %j, or leaves it to the other", (text) => {
    expectSame(text);
  });

  it("agrees on block texts of any lines", () => {
    const line = fc.stringMatching(/^ {0,3}[a-z#:>| -]{0,8}$/);
    const block = fc.tuple(
      fc.constantFrom("|", ">", "|-", ">+", "|2", "> # c"),
      fc.array(line, { maxLength: 6 }),
    );
    let read = 0;
    fc.assert(
      fc.property(fc.array(block, { minLength: 1, maxLength: 3 }), (blocks) => {
        const texts = blocks.map(
          ([sign, lines], at) => `k${at}: ${sign}\n${lines.map((one) => `  ${one}\n`).join("")}`,
        );
        if (expectSame(`${texts.join("")}last: 1\n`)) read++;
      }),
    );
    expect(read).toBeGreaterThan(20);
  });

  it("agrees on any data that the other writes", () => {
    const word = fc.stringMatching(/^[a-zA-Z0-9 _.:#,'"-]{0,12}$/);
    const leaf = fc.oneof(
      word,
      fc.integer(),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.boolean(),
      fc.constant(null),
    );
    const key = fc.stringMatching(/^[a-z_]{1,8}$/);
    const { tree } = fc.letrec((tie) => ({
      tree: fc.oneof(
        { maxDepth: 4 },
        leaf,
        fc.array(tie("tree"), { maxLength: 4 }),
        fc.dictionary(key, tie("tree"), { maxKeys: 5, noNullPrototype: true }),
      ),
    }));
    const style = fc.constantFrom<"any" | "flow" | "block">("any", "flow", "block");
    fc.assert(
      fc.property(
        fc.dictionary(key, tree, { minKeys: 1, maxKeys: 6, noNullPrototype: true }),
        style,
        fc.boolean(),
        (data, form, crlf) => {
          const text = stringify(data, { collectionStyle: form, lineWidth: 0 });
          expectSame(crlf ? text.replaceAll("\n", "\r\n") : text);
        },
      ),
      { numRuns: runs(500) },
    );
  });

  it("leaves an entry that is only a comment to the other parser", () => {
    expect(quickly("a:\n  - # b\n  - c\n")).toBeUndefined();
  });

  it("agrees on texts with a character changed", () => {
    const model = readFileSync("tests/fixtures/birch-farm/2026-04-20/pig-01.yaml", "utf8");
    const signs = fc.constantFrom(..." \n:-,{}[]\"'#&*!|>%@`?x0.~");
    fc.assert(
      fc.property(fc.nat(model.length - 1), signs, fc.boolean(), (at, sign, replace) => {
        expectSame(model.slice(0, at) + sign + model.slice(replace ? at + 1 : at));
      }),
      { numRuns: runs(800) },
    );
  });
});
