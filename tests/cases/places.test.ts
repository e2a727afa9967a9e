/** Places: every path has the line and column where a person finds it. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { decode } from "../../src/cases/files/read-text.ts";
import type { Place, SourceDocument } from "../../src/cases/yaml/document.ts";
import { parseYaml } from "../../src/cases/yaml/parse-yaml.ts";
import { runs } from "../random.ts";

function parsed(text: string): SourceDocument {
  const decoded = decode(new TextEncoder().encode(text));
  if (!decoded.ok) throw new Error(JSON.stringify(decoded.faults));
  const result = parseYaml(decoded.text);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.document;
}

/** `line:column` and the text that the place marks. */
const marked = (document: SourceDocument, { line, column, length }: Place): string =>
  `${line}:${column} ${document.line(line).slice(column - 1, column - 1 + length)}`;

const text = `# a comment
plain: value
"quoted key": "quoted value"
'single': 'it''s'
nested:
  deep:
    deeper: 1
empty:
list:
  - first
  - second: 2
    third: 3
  -
flow: {a: 1, b: [x, {c: y}], "d e": z}
block: |
  some text
  more
folded: >-
  folded text
Größe €: "ö" # ü
emoji 🐖: {schwein: 🐷, after: here}
anchor: &a {x: 1, y: [2, 3]}
alias: *a
aliases: [*a, *a]
number: 12
12: number as a key
`;

const places: readonly (readonly [path: (string | number)[], value: string, key: string])[] = [
  [["plain"], "2:8 value", "2:1 plain"],
  [["quoted key"], '3:15 "quoted value"', '3:1 "quoted key"'],
  [["single"], "4:11 'it''s'", "4:1 'single'"],
  [["nested"], "6:3 deep:", "5:1 nested"],
  [["nested", "deep", "deeper"], "7:13 1", "7:5 deeper"],
  [["empty"], "8:1 empty", "8:1 empty"],
  [["list"], "10:3 - first", "9:1 list"],
  [["list", 0], "10:5 first", "10:5 first"],
  [["list", 1], "11:5 second: 2", "11:5 second: 2"],
  [["list", 1, "second"], "11:13 2", "11:5 second"],
  [["list", 1, "third"], "12:12 3", "12:5 third"],
  [["flow", "a"], "14:11 1", "14:8 a"],
  [["flow", "b"], "14:17 [x, {c: y}]", "14:14 b"],
  [["flow", "b", 0], "14:18 x", "14:18 x"],
  [["flow", "b", 1, "c"], "14:25 y", "14:22 c"],
  [["flow", "d e"], "14:37 z", '14:30 "d e"'],
  [["block"], "15:8 |", "15:1 block"],
  [["folded"], "18:9 >-", "18:1 folded"],
  [["Größe €"], '20:10 "ö"', "20:1 Größe €"],
  [["emoji 🐖"], "21:11 {schwein: 🐷, after: here}", "21:1 emoji 🐖"],
  [["emoji 🐖", "schwein"], "21:21 🐷", "21:12 schwein"],
  [["emoji 🐖", "after"], "21:32 here", "21:25 after"],
  [["anchor", "y", 1], "22:26 3", "22:26 3"],
  [["alias"], "23:8 *a", "23:1 alias"],
  [["12"], "26:5 number as a key", "26:1 12"],
  [[12], "26:5 number as a key", "26:1 12"],
  // Behind a reference: the place where it is used.
  [["alias", "x"], "23:8 *a", "23:8 *a"],
  [["alias", "y", 1], "23:8 *a", "23:8 *a"],
  [["aliases", 1, "x"], "24:15 *a", "24:15 *a"],
  // What is not there: the key of the nearest parent that is.
  [["plain", "below", "text"], "2:1 plain", "2:1 plain"],
  [["nested", "deep", "missing"], "6:3 deep", "6:3 deep"],
  [["nested", "missing", "deeper"], "5:1 nested", "5:1 nested"],
  [["empty", "missing"], "8:1 empty", "8:1 empty"],
  [["list", 7], "9:1 list", "9:1 list"],
  [["list", 1, "missing"], "11:5 second: 2", "11:5 second: 2"],
  [["list", "word"], "9:1 list", "9:1 list"],
  [["flow", "b", 1, "missing"], "14:21 {c: y}", "14:21 {c: y}"],
];

describe("places", () => {
  it.each(places)("%j", (path, value, key) => {
    const document = parsed(text);
    expect([marked(document, document.where(path)), marked(document, document.whereKey(path))]).toEqual([
      value,
      key,
    ]);
  });

  it("of an empty list entry are on the line of its hyphen", () => {
    expect(parsed(text).where(["list", 2]).line).toBe(13);
  });

  it("of what is missing at the top are the beginning of the keys", () => {
    expect(parsed("\n# x\nformat: 1\n").where(["missing"])).toEqual({ line: 3, column: 1, length: 9 });
    expect(parsed("format: 1\n").whereKey([])).toEqual({ line: 1, column: 1, length: 9 });
  });

  it.each([
    ["CRLF line ends", (one: string) => one.replaceAll("\n", "\r\n")],
    ["a byte order mark", (one: string) => `\ufeff${one}`],
    ["both", (one: string) => `\ufeff${one.replaceAll("\n", "\r\n")}`],
    ["a document start", (one: string) => `--- # begins\n${one}`],
    ["no line end at the end", (one: string) => one.slice(0, -1)],
  ])("are the same with %s", (name, change) => {
    const document = parsed(change(text));
    const extra = name === "a document start" ? 1 : 0;
    for (const [path] of places) {
      const [before, after] = [parsed(text), document].map((one) => [one.where(path), one.whereKey(path)]);
      expect(after).toEqual(before?.map((place) => ({ ...place, line: place.line + extra })));
    }
  });

  it("give lines without their line end, and nothing beyond the text", () => {
    const document = parsed("a: 1\r\nb: 2\r\n");
    expect([0, 1, 2, 3, 9].map((n) => document.line(n))).toEqual(["", "a: 1", "b: 2", "", ""]);
  });
});

/** Random data in which every key and every text is a word that stands nowhere else. */
interface Leaf {
  readonly path: (string | number)[];
  readonly word: string;
}

type Shape =
  | "leaf"
  | { readonly list: readonly Shape[] }
  | { readonly map: readonly (readonly [string, Shape])[] };

const affix = fc.constantFrom(
  "",
  " ö€",
  " 🐖",
  ": b",
  " #c",
  "'s",
  '"',
  "\\",
  " [",
  "-",
  "\tt",
  "*",
  "&",
  "!",
  "%",
  "@",
  "`",
);
const { shape } = fc.letrec<{ shape: Shape }>((tie) => ({
  shape: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    fc.constant("leaf" as const),
    fc.record({ list: fc.array(tie("shape"), { minLength: 1, maxLength: 4 }) }),
    fc.record({ map: fc.array(fc.tuple(affix, tie("shape")), { minLength: 1, maxLength: 4 }) }),
  ),
}));

function fill(top: Shape, endings: readonly string[]) {
  let count = 0;
  const values: Leaf[] = [];
  const keys: Leaf[] = [];
  const word = (): string => `w${String(count++).padStart(5, "0")}x`;
  const build = (one: Shape, path: (string | number)[]): unknown => {
    if (one === "leaf") {
      const leaf = word();
      values.push({ path, word: leaf });
      return `${leaf}${endings[count % endings.length]}`;
    }
    if ("list" in one) return one.list.map((item, index) => build(item, [...path, index]));
    return Object.fromEntries(
      one.map.map(([ending, item]) => {
        const key = word();
        const name = /[\t]/.test(ending) ? key : `${key}${ending}`;
        keys.push({ path: [...path, name], word: key });
        return [name, build(item, [...path, name])];
      }),
    );
  };
  return { data: build(top, []), values, keys };
}

describe("places of random data", () => {
  it("are where the words stand in the text", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(affix, shape), { minLength: 1, maxLength: 4 }),
        fc.array(affix, { minLength: 1, maxLength: 5 }),
        fc.record({
          collectionStyle: fc.constantFrom("any", "block", "flow"),
          defaultStringType: fc.constantFrom("PLAIN", "QUOTE_DOUBLE", "QUOTE_SINGLE"),
          indent: fc.integer({ min: 1, max: 6 }),
          indentSeq: fc.boolean(),
        } as const),
        fc.boolean(),
        (map, endings, style, windows) => {
          const { data, values, keys } = fill({ map }, endings);
          const written = stringify(data, { ...style, defaultKeyType: "PLAIN", lineWidth: 0 });
          const source = windows ? written.replaceAll("\n", "\r\n") : written;
          const document = parsed(source);
          expect(document.value).toEqual(data);
          const standsAt = (word: string, { line, column }: Place): boolean => {
            // The place of quoted text is its opening quote.
            const rest = document
              .line(line)
              .slice(column - 1)
              .replace(/^["']/, "");
            const before = source.slice(0, source.indexOf(word));
            return rest.startsWith(word) && before.split("\n").length === line;
          };
          expect(values.filter(({ path, word }) => !standsAt(word, document.where(path)))).toEqual([]);
          expect(keys.filter(({ path, word }) => !standsAt(word, document.whereKey(path)))).toEqual([]);
        },
      ),
      { numRuns: runs(400) },
    );
  });
});
