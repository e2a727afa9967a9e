/**
 * Files that nobody wrote by hand, or that somebody wrote to do harm, are refused plainly. That the work for them grows no
 * faster than they do is counted in tests/hostile.
 */
import { describe, expect, it } from "vitest";
import { maxBytes } from "../../src/cases/files/read-text.ts";
import { reading, readingCase } from "./reading.ts";

const head = "format: 1\ncase: x-1\n";
const bytes = (...parts: (string | number[])[]): Uint8Array =>
  Uint8Array.from(
    parts.flatMap((part) => (typeof part === "string" ? [...new TextEncoder().encode(part)] : part)),
  );
const full = (unit: string): string => unit.repeat(Math.floor((maxBytes - 100) / unit.length));

describe("encodings", () => {
  it.each<[string, string | Uint8Array, string[]]>([
    ["UTF-8", `${head}note: ä 🐖\n`, []],
    ["UTF-8 with a byte order mark", `\ufeff${head}`, []],
    [
      "UTF-16, little end first",
      Uint8Array.from(Buffer.from(`\ufeff${head}`, "utf16le")),
      ["it is saved as UTF-16; save it as UTF-8"],
    ],
    [
      "UTF-16, big end first",
      Uint8Array.from(Buffer.from(`\ufeff${head}`, "utf16le").swap16()),
      ["it is saved as UTF-16; save it as UTF-8"],
    ],
    [
      "UTF-16 without a mark",
      Uint8Array.from(Buffer.from(head, "utf16le")),
      ["it is not a text file; a case is a text file saved as UTF-8"],
    ],
    [
      "a program",
      bytes([0x7f, 0x45, 0x4c, 0x46, 0, 0, 1]),
      ["it is not a text file; a case is a text file saved as UTF-8"],
    ],
    [
      "Latin-1",
      bytes(head, "note: m", [0xe4], "nnlich\n"),
      ["3:8 it is not saved as UTF-8, as the letters from here on show; save it as UTF-8"],
    ],
    [
      "UTF-8 cut in the middle of a letter",
      bytes(head, "note: ", [0xc3]),
      ["3:7 it is not saved as UTF-8, as the letters from here on show; save it as UTF-8"],
    ],
    [
      "UTF-8 in too many bytes",
      bytes([0xc0, 0xaf]),
      ["1:1 it is not saved as UTF-8, as the letters from here on show; save it as UTF-8"],
    ],
    [
      "Latin-1 after a real replacement character",
      bytes("note: \ufffd\nx: ", [0xe4], "\n"),
      ["2:4 it is not saved as UTF-8, as the letters from here on show; save it as UTF-8"],
    ],
    ["nothing", "", ["the file is empty"]],
    ["a byte order mark alone", "\ufeff", ["the file is empty"]],
    ["blank lines", "\n \r\n\t\n", ["the file is empty"]],
    [
      "old Macintosh line ends",
      "format: 1\rcase: x-1\r",
      ["1:10 its lines end as on an old Macintosh (CR alone); save it with LF or CRLF line ends"],
    ],
    [
      "escape codes",
      `${head}note: a\u001b[31mb\nhistory: \u0007\n`,
      [
        "3:8 this line holds a control character (U+001B); take it out",
        "4:10 this line holds a control character (U+0007); take it out",
      ],
    ],
    [
      "C1 control characters",
      `${head}note: \u009b31m\n`,
      ["3:7 this line holds a control character (U+009B); take it out"],
    ],
    [
      "text turned about",
      `${head}note: \u202egp.exe\n`,
      ["3:7 this line holds an invisible mark (U+202E); take it out"],
    ],
    [
      "a mark from right to left",
      `${head}note: a\u200fb\n`,
      ["3:8 this line holds an invisible mark (U+200F); take it out"],
    ],
    [
      "a line separator",
      `${head}note: a\u2028b\n`,
      ["3:8 this line holds an invisible mark (U+2028); take it out"],
    ],
    [
      "two byte order marks",
      `\ufeff\ufeff${head}`,
      ["1:1 this line holds an invisible mark (U+FEFF); take it out"],
    ],
  ])("%s", (_, content, messages) => {
    expect(reading(content).messages).toEqual(messages);
  });

  it("names no more than twenty lines with the same trouble", () => {
    expect(reading("a: \u0007\n".repeat(5000)).messages).toHaveLength(20);
  });
});

const deep = /^\d+:\d+ nested more than 100 levels deep, which no case file is; look for a bracket/;
const many = /^\d+:\d+ the file has more than 400000 words and marks, which no case file has$/;
const entries = /^\d+:\d+ this has \d+ entries, and more than 2000 no case file has; is it the right file\?$/;
const unfolded =
  /^\d+:\d+ with all references \(\*\) unfolded this holds more than 250000 values; write out what is meant$/;

const growing = (unit: string): string => {
  let text = "";
  for (let depth = 0; text.length < maxBytes - 5000; depth++) text += `${" ".repeat(depth)}${unit}\n`;
  return text;
};

const numbered = (make: (n: number) => string, count: number): string =>
  Array.from({ length: count }, (_, n) => make(n)).join("");

describe("shapes", () => {
  it.each<[string, () => string, RegExp]>([
    ["[[[[", () => full("["), deep],
    ["{{{{", () => full("{"), deep],
    ["a: {a: {", () => full("a: {"), deep],
    ["[{[{", () => full("[{"), deep],
    ["- - - -", () => full("- "), deep],
    ["? ? ? ?", () => full("? "), deep],
    ["- ? - ?", () => full("- ? "), deep],
    [": : : :", () => full(": "), deep],
    ["a: b: c:", () => `a: ${full("b: ")}`, deep],
    ["growing indentation of keys", () => growing("a:"), deep],
    ["growing indentation of entries", () => growing("-"), deep],
    ["120 levels of brackets", () => `note: ${"[".repeat(120)}${"]".repeat(120)}\n`, deep],
    [
      "depth through references",
      () => `a0: &a0 [x]\n${numbered((n) => `a${n + 1}: &a${n + 1} [[[*a${n}]]]\n`, 60)}`,
      deep,
    ],
    [
      "billion laughs",
      () =>
        `a0: &a0 [x,x,x,x,x,x,x,x,x,x]\n${numbered((n) => `a${n + 1}: &a${n + 1} [${"*a".concat(String(n), ",").repeat(10)}]\n`, 30)}`,
      unfolded,
    ],
    [
      "billion laughs of keys",
      () => `a0: &a0 {k: x, l: x}\n${numbered((n) => `a${n + 1}: &a${n + 1} {k: *a${n}, l: *a${n}}\n`, 60)}`,
      unfolded,
    ],
    [
      "one long list referred to often",
      () => `a: &a [${"x,".repeat(1900)}]\nb: [${"*a,".repeat(1900)}]\n`,
      unfolded,
    ],
    ["100,000 references", () => `a: &a x\nb: [${"*a,".repeat(100_000)}]\n`, entries],
    ["40,000 anchors", () => numbered((n) => `- &a${n} x\n`, 40_000), entries],
    ["40,000 keys", () => numbered((n) => `k${n}: 1\n`, 40_000), entries],
    [
      "10,000 findings",
      () =>
        `${head}liver_pancreas:\n  liver:\n${"    - {process: nodule, severity: mild, size: 3 mm}\n".repeat(10_000)}`,
      entries,
    ],
    [
      "100,000 times the same key",
      () => "note: a\n".repeat(40_000),
      /^\d+:\d+ (this key stands twice|this has 40000 entries)/,
    ],
    ["commas", () => `[${full(",")}`, many],
    ["entries on lines", () => full("- a\n"), many],
    ["documents", () => full("---\n"), many],
    ["comments", () => full("#\n"), many],
    ["colons on lines", () => full(":\n"), many],
    ["tabs", () => full("a:\n\tb\n"), many],
    ["380,000 commas on a line", () => `[${",".repeat(380_000)}`, /^1:1 this \[ is not closed/],
    ["60,000 quotes", () => '"a" '.repeat(60_000), /^1:5 this does not belong here/],
    ["40,000 open brackets on lines", () => "k: [a\n".repeat(40_000), /^1:1 this has 40000 entries/],
    [
      "texts over two lines",
      () => `${"- 'a\n  b'\n".repeat(1500)}${"- 'a\n  b' c\n".repeat(400)}`,
      /^3001:3 this quote is closed only on a later line/,
    ],
    ["50,000 wrong tags", () => "- !x a\n".repeat(50_000), /this has 50000 entries|is read as a tag/],
    ["an open quote", () => `note: "${full("a b ")}`, /^1:7 this quote is not closed$/],
    ["backslashes in an open quote", () => `note: "${full("\\x")}`, /^1:7 this quote is not closed$/],
    ["a key of 2 MB", () => `${full("k")}: 1\n`, /^1:1 a key of more than 1024 characters/],
  ])("%s", (_, make, message) => {
    const { messages } = reading(make());
    expect(messages[0]).toMatch(message);
    expect(messages.length).toBeLessThanOrEqual(101);
  });

  it.each<[string, () => string]>([
    ["a line of 100,000 characters", () => `note: ${"long word ".repeat(10_000)}\n`],
    ["a text of 20,000 lines", () => `note: |\n${"  line\n".repeat(20_000)}`],
    [
      "1,900 findings",
      () =>
        `liver_pancreas:\n  liver:\n${"    - {process: nodule, severity: mild, size: 3 mm}\n".repeat(1900)}`,
    ],
    ["500 references", () => `pig: {tag: &t a}\nphotos: [${"*t,".repeat(500)}]\n`],
    ["60 levels of blank brackets in a text", () => `note: "${"[".repeat(60)}"\n`],
  ])("%s is read", (_, make) => {
    expect(readingCase(make()).messages).toEqual([]);
  });

  it("1,900 wrong findings are 1,900 messages", () => {
    const { messages } = readingCase(
      `liver_pancreas:\n  liver:\n${"    - {process: nodul, severity: mild}\n".repeat(1900)}`,
    );
    expect(messages).toHaveLength(1900);
    expect(messages[1899]).toBe(
      '1904:17 liver_pancreas.liver[1899].process: "nodul" is not a word known here. Did you mean nodule?',
    );
  });

  it("a long value and a long key are cut in the message", () => {
    const { messages } = readingCase(`pig: {sex: ${"f".repeat(5000)}}\n? ${"k".repeat(900)}\n: 1\n`);
    expect(messages.filter((message) => /f{60}|k{60}/.test(message))).toEqual([]);
    expect(messages).toHaveLength(2);
  });

  it("a place deep in a wide file is found", () => {
    const keys = numbered((n) => `  g${n}: {head: x}\n`, 1900);
    expect(reading(`format: 1\nfarm: f\ngroups:\n${keys}`, "farm").messages[1899]).toBe(
      '1903:17 groups.g1899.head: "x" cannot be read here. Write a whole number.',
    );
  });
});

describe("names of JavaScript's own", () => {
  it("pollute nothing, as keys, as values and through references", () => {
    readingCase("__proto__: {polluted: yes}\n");
    readingCase('"__proto__": {polluted: yes}\n"constructor": {prototype: {polluted: yes}}\n');
    readingCase("pig: {tag: &k __proto__}\n? *k\n: {polluted: yes}\n");
    reading(
      "format: 1\nrules: {constructor: off, toString: off}\nprotocols: {valueOf: {add: [nervous]}}\n",
      "settings",
    );
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    expect(Object.keys(Object.prototype)).toEqual([]);
  });

  it("are plain words as values", () => {
    expect(readingCase("note: __proto__\npig: {tag: constructor, group: toString}\n")).toMatchObject({
      messages: [],
      record: { note: "__proto__", pig: { tag: "constructor", group: "toString" } },
    });
  });
});
