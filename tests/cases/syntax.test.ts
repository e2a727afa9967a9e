/** Texts that are no case file: what is wrong, where, and what to write instead. One mistake, one message. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { reading, readingCase } from "./reading.ts";

const folder = fileURLToPath(new URL("../fixtures/hostile/", import.meta.url));
const tag =
  "text that begins with ! is read as a tag, and tags are not read here; put it in quotes or take it out";

const expected: Readonly<Record<string, readonly string[]>> = {
  "alias-bomb.yaml": [
    "8:9 with all references (*) unfolded this holds more than 250000 values; write out what is meant",
  ],
  "ampersand-text.yaml": [
    "3:7 text that begins with & is read as an anchor, and nothing refers to it; put it in quotes, or take the anchor out",
  ],
  "apostrophe.yaml": [
    "3:16 the text ended at the quote before this; write an apostrophe inside single quotes twice (''), or use double quotes",
  ],
  "at-text.yaml": ["3:7 text cannot begin with this character; put it in quotes"],
  "backslash.yaml": [
    "3:10 a backslash inside double quotes begins a code; put the text in single quotes: 'C:\\photos'",
  ],
  "brace-extra.yaml": ["3:19 this bracket closes nothing; take it out, or add the one that opens it"],
  "brace-open.yaml": ["3:6 this { is not closed; write } after the last entry"],
  "bracket-open.yaml": ["3:20 this [ is not closed; write ] after the last entry"],
  "colon-glued.yaml": ["4:3 a space is missing after the colon; write skin: normal"],
  "colon-in-text.yaml": [
    "3:7 there is a second colon on this line; if it belongs to the text, put the text in quotes, else begin a new line",
  ],
  "colon-missing.yaml": ["4:3 a colon is missing on this line; write key: value"],
  "comma-missing.yaml": ["3:12 a comma is missing between two keys inside brackets"],
  "comments-only.yaml": ["1:1 the file holds nothing but comments"],
  "directive.yaml": [
    "1:1 a line that begins with % is read as a directive, which no case file has; take it out",
  ],
  "duplicates.yaml": [
    "3:20 this key stands twice in the same place; keep one",
    "5:1 this key stands twice in the same place; keep one",
  ],
  "escape-codes.yaml": [
    "3:7 this text holds a control character (U+001B); take it out",
    "4:1 this key holds a control character (U+001B); take it out",
    "5:12 this text holds an invisible mark (U+202E); take it out",
  ],
  "hash-glued.yaml": ["3:19 a space is missing before #; if # belongs to the text, put the text in quotes"],
  "indent-less.yaml": [
    "5:1 this line does not line up with the lines above; indent keys that belong together by the same number of spaces",
  ],
  "indent-more.yaml": [
    "5:5 this line is indented deeper than the line above, which has a value already; line it up with the keys it belongs to",
  ],
  "list-indent.yaml": [
    "5:1 this line does not line up; indent it like the first key of its list entry, or begin it with a hyphen",
  ],
  "list-key.yaml": ["3:1 a key must be a plain word", "4:3 a key must be a plain word"],
  "list-on-key-line.yaml": [
    "4:10 a list cannot begin on the line of its key; begin it on a new line, or write it in brackets: [a, b]",
  ],
  "list-top.yaml": ["1:1 the file begins with a list; it must begin with keys, such as format: 1"],
  "merge-key.yaml": ["5:3 merge keys (<<) are not read; write the keys out"],
  "no-content.yaml": ["1:1 the file is empty"],
  "null-key.yaml": ["3:1 a key is missing before the colon", "4:3 a key is missing before the colon"],
  "percent-text.yaml": ["3:7 text cannot begin with this character; put it in quotes"],
  "pipe.yaml": [
    "3:8 after | or > the text begins on the next line; if the sign belongs to the text, put the text in quotes",
  ],
  "proto.yaml": [
    '3:1 "__proto__" cannot be a key; take it out',
    '4:7 "constructor" cannot be a key; take it out',
    '4:23 "prototype" cannot be a key; take it out',
  ],
  "quote-late.yaml": ["3:7 this quote is not closed"],
  "quote-open.yaml": ["3:7 this quote is not closed"],
  "second-document.yaml": ["3:1 a second document begins here; write one case a file"],
  "self-reference.yaml": ["3:18 the reference *a leads back to itself; write out what is meant"],
  "several.yaml": [
    "3:6 this { is not closed; write } after the last entry",
    "5:3 a colon is missing on this line; write key: value",
    "7:7 text cannot begin with this character; put it in quotes",
    "8:1 a tab is used to indent; use spaces",
    "9:10 this quote is not closed",
  ],
  "star-text.yaml": [
    "3:7 *seen is read as a reference, and there is no anchor &seen above it; if it is text, put it in quotes",
  ],
  "tab-indent.yaml": ["5:1 a tab is used to indent; use spaces"],
  "tag-binary.yaml": [`3:7 ${tag}`],
  "tag-js.yaml": [`3:7 ${tag}`],
  "tag-own.yaml": [`3:6 ${tag}`],
  "tag-str.yaml": [`3:7 ${tag}`],
  "text-top.yaml": ["2:1 the file begins with text; it must begin with keys, such as format: 1"],
};

describe("hostile files", () => {
  const files = readdirSync(folder).filter((name) => name.endsWith(".yaml"));

  it.each(files)("%s", (name) => {
    expect(reading(readFileSync(`${folder}${name}`)).messages).toEqual(expected[name]);
  });

  it("are all there", () => {
    expect(Object.keys(expected).sort()).toEqual(files.sort());
  });
});

describe("syntax", () => {
  it.each([
    ["note: 'open\n", ["3:7 this quote is not closed"]],
    ["pig: {", ["3:6 this { is not closed; write } after the last entry"]],
    ["pig: {sex: female]\n", ["3:6 this { is not closed; write } after the last entry"]],
    ["photos: [a, [b, c]\nnote: x\n", ["3:9 this [ is not closed; write ] after the last entry"]],
    [
      'pig: {tag: "901,\n  sex: "female"}\n',
      ["3:12 this quote is closed only on a later line; is the closing quote missing on this one?"],
    ],
    ["photos: [a,, b]\n", ["3:12 there is a comma too many"]],
    ["photos: [a b: c d: e]\n", ["3:15 a comma is missing between two keys inside brackets"]],
    ["selection: {signs:\n  - cough\n}\n", ["4:3 a list inside brackets is written in brackets too: [a, b]"]],
    [
      "note: - a\n",
      [
        "3:7 a list cannot begin on the line of its key; begin it on a new line, or write it in brackets: [a, b]",
      ],
    ],
    ["note: `a\n", ["3:7 text cannot begin with this character; put it in quotes"]],
    ["note: & a\n", ["3:7 text that begins with * or & needs quotes"]],
    ["note: ! a\n", [`3:7 ${tag}`]],
    ["pig: !!set {a, b}\n", [`3:6 ${tag}`]],
    ["note: &n !x a\n", [`3:10 ${tag}`]],
    ['"a\\nb": 1\n', ["3:1 a key must stand on one line, without tabs"]],
    ['note: "\\ud800"\n', ["3:7 this text holds an invisible mark (U+D800); take it out"]],
    ['note: "\\0"\n', ["3:7 this text holds a control character (U+0000); take it out"]],
    ['"__pro\\x74o__": 1\n', ['3:1 "__proto__" cannot be a key; take it out']],
    [
      "note: *later\npig: &later {sex: female}\n",
      [
        "3:7 *later is read as a reference, and there is no anchor &later above it; if it is text, put it in quotes",
      ],
    ],
    ["note: &a x\n*a : 3\n", ["4:1 a key must be a plain word"]],
    ["pig: {sex: female,\n  tag: [a\nnote: x\n", ["4:8 this [ is not closed; write ] after the last entry"]],
    [
      "note: &see above\n",
      [
        "3:7 text that begins with & is read as an anchor, and nothing refers to it; put it in quotes, or take the anchor out",
      ],
    ],
    [
      "note: *see above\n",
      [
        "3:7 *see is read as a reference, and there is no anchor &see above it; if it is text, put it in quotes",
      ],
    ],
    ["pig: {sex: female, sex: male\nnote: x\n", ["3:6 this { is not closed; write } after the last entry"]],
    [
      "note: “swollen: left”\n",
      ['3:7 curly quotes do not hold a text together; write straight ones: "text"'],
    ],
    [
      "pig: sex: female\n",
      [
        "3:6 there is a second colon on this line; if it belongs to the text, put the text in quotes, else begin a new line",
      ],
    ],
    [
      "external:\n  skin: normal\n  - x\n",
      ["5:1 a list entry (-) stands among keys; indent it under the key that it belongs to"],
    ],
    ["- a\n", ["3:1 a list entry (-) stands among keys; indent it under the key that it belongs to"]],
    [
      "selection:\n  signs:\n   * cough\n   * fever\n",
      ["5:4 a list entry begins with a hyphen (-), not with a star"],
    ],
    ["note: [a] b\n", ["3:11 this does not belong here; is a quote, comma or bracket missing before it?"]],
    [
      "pig:\n  sex: female\n age: 3 d\n",
      [
        "5:1 this line does not line up with the lines above; indent keys that belong together by the same number of spaces",
      ],
    ],
    ["...\nmore: 1\n", ["4:1 a second document begins here; write one case a file"]],
    ["---\n", ["3:1 a second document begins here; write one case a file"]],
    [`${"k".repeat(1500)}: 1\n`, ["3:1 a key of more than 1024 characters; is a colon or a quote missing?"]],
    [
      "pig: {sex: female}\npig: {age: 3 d}\nnote: @x\n",
      [
        "4:1 this key stands twice in the same place; keep one",
        "5:7 text cannot begin with this character; put it in quotes",
      ],
    ],
  ] as const)("%j", (keys, messages) => {
    expect(readingCase(keys).messages).toEqual(messages);
  });

  it("reads what is unusual and sound", () => {
    const { messages, record } = readingCase(
      'photos: [ a.jpg , "b: c.jpg", ]\nnote: >-\n  folded: text [ { " \' with signs\n  - - - - - - -\n',
    );
    expect(messages).toEqual([]);
    expect(record).toMatchObject({
      photos: ["a.jpg", "b: c.jpg"],
      note: "folded: text [ { \" ' with signs - - - - - - -",
    });
  });

  it("does not take brackets inside many texts for depth", () => {
    const photos = Array.from({ length: 300 }, (_, i) => `  - "[ {${i}"`).join("\n");
    expect(readingCase(`photos:\n${photos}\n`).messages).toEqual([]);
  });

  it("sums up faults beyond a hundred", () => {
    const { messages } = readingCase("note: a\n".repeat(151));
    expect(messages).toHaveLength(101);
    expect(messages.at(-1)).toBe("104:1 there are more faults from here on");
  });
});

describe("values as written", () => {
  it.each([
    ["0217", "0217"],
    ["0x1f", "0x1f"],
    ["12e3", "12e3"],
    ["+5", "+5"],
    ["12345678901234567890", "12345678901234567890"],
    ["217", 217],
    ['"217"', "217"],
    ["yes", "yes"],
    ["2026-03-14", "2026-03-14"],
    ["12:30", "12:30"],
    ["1_000", "1_000"],
  ])("tag: %s", (written, value) => {
    expect(readingCase(`pig: {tag: ${written}}\n`)).toMatchObject({
      messages: [],
      record: { pig: { tag: value } },
    });
  });

  it("keeps keys that look like numbers or like JavaScript's own names", () => {
    const { messages } = readingCase("5: a\n5.0: b\ntrue: c\ntoString: d\nhasOwnProperty: e\nvalueOf: f\n");
    expect(messages.map((message) => message.split(": no such key.")[0])).toEqual([
      "3:1 5",
      '4:1 "5.0"',
      "5:1 true",
      "6:1 toString",
      "7:1 hasOwnProperty",
      "8:1 valueOf",
    ]);
  });

  it("puts a value back together that a decimal comma tore apart", () => {
    expect(
      readingCase(
        "pig: {weight: 17,5 kg, sex: female}\nrespiratory: {lungs: {consolidation: {left_cranial: 12,5, left_middle: 3}}}\n",
      ).messages,
    ).toEqual([
      '3:15 pig.weight: "17,5 kg" cannot be read. Did you mean 17.5 kg? Write a weight with its unit, g or kg, such as 17.5 kg.',
      '4:53 respiratory.lungs.consolidation.left_cranial: "12,5" cannot be read here. Write it with a point, not a comma: 12.5.',
    ]);
  });

  it("lets an anchor stand that nothing refers to, where no text loses its beginning", () => {
    const { messages, record } = readingCase('pig: {weight: &w 17.5 kg, tag: &t "2217", pen: &p 14}\n');
    expect(messages).toEqual([]);
    expect(record).toMatchObject({ pig: { weight: "17.5 kg", tag: "2217", pen: 14 } });
    expect(readingCase("pig: {group: &g nursery-2}\n").messages).toEqual([
      "3:14 text that begins with & is read as an anchor, and nothing refers to it; put it in quotes, or take the anchor out",
    ]);
  });

  it("follows a reference to a value that a decimal comma tore apart", () => {
    expect(readingCase("pig: {weight: &w 17,5kg}\nnote: *w\n").messages).toEqual([
      expect.stringMatching(/^3:18 pig\.weight: "17,5kg" cannot be read\. Did you mean 17\.5 kg\?/),
    ]);
    expect(readingCase("pig: {weight: &w 17,5kg, tag: *w}\n").messages).toHaveLength(1);
  });
});
