/** Only what is certain is put right; comments, layout and every other value stay as they are. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { fixText } from "../../src/fix/index.ts";
import { runs } from "../random.ts";

const fixed = (text: string, schema?: string): string => fixText(text, { kind: "case", schema }).text;
const head = "format: 1\ncase: birch-01\n";
/** What becomes of one line below `pig:`. */
const pig = (line: string): string => fixed(`${head}pig:\n  ${line}\n`).slice(`${head}pig:\n  `.length, -1);

describe("units", () => {
  it.each([
    ["weight: 17.5kg", "weight: 17.5 kg"],
    ["weight: 17,5 kg", "weight: 17.5 kg"],
    ['weight: "17,5 kg"', "weight: 17.5 kg"],
    ["weight: 17.5 KG # scales", "weight: 17.5 kg # scales"],
    ["age: 8 weeks", "age: 8 wk"],
    ["age: 8w", "age: 8 wk"],
    ["age: 58 days", "age: 58 d"],
    ["age:   58d", "age:   58 d"],
    ["temperature: 40.4C", "temperature: 40.4 °C"],
    ["temperature: 40.4 C", "temperature: 40.4 °C"],
    ["temperature: 40.4°C", "temperature: 40.4 °C"],
    ["temperature: 40.4 deg C", "temperature: 40.4 °C"],
  ])("%s becomes %s", (before, after) => {
    expect(pig(before)).toBe(after);
  });

  it.each([
    "weight: 17.5",
    "weight: 1,500 g",
    "weight: 1.500,5 g",
    "weight: 17.5 lb",
    "weight: ca. 17 kg",
    "temperature: 104°",
    "temperature: 104 degrees",
    "temperature: 104 F",
    "age: 58",
    "age: 8-9 weeks",
    "tag: 58d",
    "pen: 14C",
    "weight: 17.5 kg",
  ])("%s stays: nobody can be sure what it should be", (line) => {
    expect(pig(line)).toBe(line);
  });

  it("sizes get their spaces, but a comma in them is not understood", () => {
    const skin = (size: string): string =>
      /size: (.*)\}\]/.exec(fixed(`${head}external: {skin: [{process: wound, size: ${size}}]}\n`))?.[1] ?? "";
    expect(skin("30x20mm")).toBe("30 x 20 mm");
    expect(skin("30×20 mm")).toBe("30 x 20 mm");
    expect(skin("25mm")).toBe("25 mm");
    expect(skin('"30,20 mm"')).toBe('"30,20 mm"');
  });

  it("a decimal comma that braces would tear apart is one number", () => {
    expect(fixed(`${head}pig: {weight: 17,5 kg, sex: female}\n`)).toBe(
      `${head}pig: {weight: 17.5 kg, sex: female}\n`,
    );
  });

  it("free text is free", () => {
    const text = `${head}examiner: Female\nhistory: 8 weeks\nnote: 17.5kg\n`;
    expect(fixed(text)).toBe(text);
  });
});

describe("words", () => {
  it.each([
    ["Respiratory.Lungs", "respiratory.lungs"],
    ["liver pancreas.liver", "liver_pancreas.liver"],
    ["Oral Fluid", "oral_fluid"],
    ["CSF", "csf"],
    ["Respiratory.Lung", "Respiratory.Lung"],
  ])("what a sample comes from: %s becomes %s", (before, after) => {
    expect(fixed(`${head}samples:\n  - {id: 01-A, from: ${before}}\n`)).toBe(
      `${head}samples:\n  - {id: 01-A, from: ${after}}\n`,
    );
  });

  it.each([
    ["sex: Female", "sex: female"],
    ["sex: 'FEMALE'", "sex: 'female'"],
    ["Sex: female", "sex: female"],
    ["crown rump: 17 cm", "crown_rump: 17 cm"],
    ["Crown-Rump: 17cm", "crown_rump: 17 cm"],
  ])("%s becomes %s", (before, after) => {
    expect(pig(before)).toBe(after);
  });

  it.each(["sex: F", "sex: femal", "sexe: female", "group: Nursery-2"])("%s stays", (line) => {
    expect(pig(line)).toBe(line);
  });

  it("in lists and findings", () => {
    const text = `${head}selection: {signs: [Sneezing, nasal discharge]}\nexternal: {skin: [{process: Wound, distribution: locally extensive}], feet: Normal}\n`;
    expect(fixed(text)).toBe(
      `${head}selection: {signs: [sneezing, nasal-discharge]}\nexternal: {skin: [{process: wound, distribution: locally-extensive}], feet: normal}\n`,
    );
  });

  it("a key is not renamed to one that is there already", () => {
    const text = `${head}pig: {sex: female, Sex: male}\n`;
    expect(fixed(text)).toBe(text);
    const two = `${head}pig: {SEX: female, Sex: male}\n`;
    expect(Object.keys(parse(fixed(two)).pig)).toHaveLength(2);
  });
});

describe("quotes", () => {
  it.each([
    ["tag: 0217", 'tag: "0217"'],
    ["tag: 1e3", 'tag: "1e3"'],
    ["pen: 014 # back", 'pen: "014" # back'],
    ["litter: 0x1f", 'litter: "0x1f"'],
  ])("%s becomes %s", (before, after) => {
    expect(pig(before)).toBe(after);
    expect(parse(after)).toEqual({ [after.split(":")[0] ?? ""]: /: (\S+)/.exec(before)?.[1] });
  });

  it.each([
    ["tag: yes", 'tag: "yes"'],
    ["tag: Off", 'tag: "Off"'],
    ["pen: 1_000", 'pen: "1_000"'],
    ["tag: 0b101", 'tag: "0b101"'],
    ["litter: 12:30", 'litter: "12:30"'],
  ])("%s becomes %s, which YAML 1.1 reads as a number or as true or false", (before, after) => {
    expect(pig(before)).toBe(after);
    expect(typeof parse(before.replace(/.*: /, ""), { version: "1.1" })).not.toBe("string");
    expect(parse(after, { version: "1.1" })).toEqual({
      [before.replace(/:.*/, "")]: before.replace(/^\w+: /, ""),
    });
  });

  it("words of the format need none", () => {
    const text = `${head}selection: {treated: no, typical: yes}\n`;
    expect(fixed(text)).toBe(text);
  });

  it.each(["tag: 2217", "tag: '0217'", "condition: 03", "tag: S-0217", "tag: 0"])("%s stays", (line) => {
    expect(pig(line)).toBe(line);
  });
});

describe("curly quotes", () => {
  it.each([
    ["tag: “2217”", 'tag: "2217"'],
    ["tag: ‘2217’", 'tag: "2217"'],
    ["sex: “Female”", 'sex: "female"'],
  ])("%s becomes %s", (before, after) => {
    expect(pig(before)).toBe(after);
  });

  it.each(["tag: “2217", "tag: “22” and “17”", "tag: “22\\17”", 'tag: "“2217”"'])("%s stays", (line) => {
    expect(pig(line)).toBe(line);
  });
});

describe("the order of keys", () => {
  it("is that of the format, each key with its lines", () => {
    expect(fixed("pig:\n  # as read\n  tag: a # b\ncase: birch-01\nnote: >\n  x\n\n  y\nformat: 1\n")).toBe(
      "format: 1\ncase: birch-01\npig:\n  # as read\n  tag: a # b\nnote: >\n  x\n\n  y\n",
    );
  });

  it.each([
    ["a comment between keys", "case: a\n# of what follows?\nformat: 1\n"],
    ["a comment at the end", "case: a\nformat: 1\n# of what?\n"],
    ["a comment at the top", "# of what?\ncase: a\nformat: 1\n"],
    ["an empty line", "case: a\n\nformat: 1\n"],
    ["a reference", "note: &n x\ncase: a\nhistory: *n\nformat: 1\n"],
    ["an unknown key", "case: a\nformat: 1\nwhat: 1\n"],
    ["braces", "{case: a, format: 1}\n"],
    ["a document mark", "---\ncase: a\nformat: 1\n"],
  ])("stays with %s", (_what, text) => {
    expect(fixed(text)).toBe(text);
  });
});

describe("the line for the editor and the last line end", () => {
  it("are added", () => {
    expect(fixed("format: 1\ncase: a", "../schemas/case.schema.json")).toBe(
      "# yaml-language-server: $schema=../schemas/case.schema.json\nformat: 1\ncase: a\n",
    );
    expect(fixed("format: 1\r\ncase: a", "s/case.schema.json")).toBe(
      "# yaml-language-server: $schema=s/case.schema.json\r\nformat: 1\r\ncase: a\r\n",
    );
  });

  it("are left alone where they are", () => {
    const text = "# yaml-language-server: $schema=elsewhere.json\nformat: 1\ncase: a\n";
    expect(fixed(text)).toBe(text);
  });

  it("change in nothing but the path", () => {
    const text =
      "# my first pig\r\n  # yaml-language-server: a $schema: elsewhere.json b\r\nformat: 1\r\ncase: a\r\n";
    expect(fixed(text, "../schemas/case.schema.json")).toBe(
      text.replace("elsewhere.json", "../schemas/case.schema.json"),
    );
  });
});

describe("a text", () => {
  it.each([
    "pig: [",
    "pig: {sex: \ufeffF}",
    "",
    "- a\n- b",
    "just text",
    "a: 1\na: 2",
    "x: !t y",
    "name: x\nversion: 0217",
  ])("%j that is no readable case stays", (text) => {
    expect(fixText(text, { kind: "case", schema: "x.json" })).toEqual({ text, fixes: [] });
  });

  it("with references is fixed where the reference leads to the same", () => {
    const text = `${head}pig: {weight: &w 17.5kg, sex: Female}\nnote: *w\n`;
    expect(fixed(text)).toBe(`${head}pig: {weight: &w 17.5kg, sex: female}\nnote: *w\n`);
  });
});

const folder = new URL("../../cases-example/alder-farm/2026-03-14/", import.meta.url);
const cases = readdirSync(folder)
  .filter((name) => name.startsWith("pig-"))
  .map((name) => readFileSync(new URL(name, folder), "utf8"));

/** Ways to spell a scalar that mean the same. */
const sloppy: readonly ((text: string) => string)[] = [
  (text) => text.toUpperCase(),
  (text) => text.replaceAll("-", " "),
  (text) => text.replaceAll("-", "_"),
  (text) => text.replace(/^(\d+(?:\.\d+)?) (°C|kg|g|d|mm|h)$/, "$1$2"),
  (text) => text.replace(/^(\d+)\.(\d) (°C|kg|d|h)$/, '"$1,$2 $3"'),
  (text) => text.replace(/^(\d+) d$/, "$1 days"),
  (text) => text.replace(/^(-?\d+(?:\.\d+)?) °C$/, "$1C"),
];
const words =
  /(?<=: |\[|, )(?:normal|female|male|castrate|clinical|random|multifocal|cranioventral|dark-red|locally-extensive|mucopurulent|nasal-discharge|\d+(?:\.\d+)? (?:°C|kg|g|d|mm|h))(?=[\],}]|\n)/g;

/** Lines with free text, which is nobody's to change. */
const free = /^\s*- "|\b(?:note|comment|history|with|why|not_examined):/;

describe("whatever was spelled in another way", () => {
  it("is as before afterwards, with all comments, and fixing twice is fixing once", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...cases),
        fc.array(fc.tuple(fc.nat(7), fc.nat(sloppy.length - 1)), { minLength: 1, maxLength: 40 }),
        (text, choices) => {
          let index = 0;
          const sloppily = (line: string): string =>
            line.replaceAll(words, (word) => {
              const [skip, way] = choices[index++ % choices.length] ?? [1, 0];
              return skip > 3 ? word : (sloppy[way]?.(word) ?? word);
            });
          const messy = text.replaceAll(/^.*\n/gm, (line) => (free.test(line) ? line : sloppily(line)));
          const once = fixed(messy);
          expect(parse(once)).toEqual(parse(text));
          expect(once).toBe(text);
          expect(fixed(once)).toBe(once);
        },
      ),
      { numRuns: runs(60) },
    );
  });

  it("keeps comments byte for byte and changes nothing but what it reports, in any YAML", () => {
    const value = fc.letrec((tie) => ({
      scalar: fc.oneof(
        fc.constantFrom(
          "Normal",
          "17,5 kg",
          "8w",
          "0217",
          "?",
          "yes",
          "# no comment",
          "30x20mm",
          "*a",
          "",
          "a: b",
        ),
        fc.string({ maxLength: 12 }),
        fc.integer(),
        fc.boolean(),
        fc.constant(null),
      ),
      any: fc.oneof(
        { maxDepth: 3 },
        tie("scalar"),
        fc.array(tie("any"), { maxLength: 3 }),
        fc.dictionary(
          fc.constantFrom(
            "pig",
            "Pig",
            "weight",
            "Weight",
            "tag",
            "skin",
            "external",
            "left",
            "signs",
            "selection",
          ),
          tie("any"),
          { maxKeys: 4, noNullPrototype: true },
        ),
      ),
    })).any;
    fc.assert(
      fc.property(
        fc.dictionary(
          fc.constantFrom("case", "format", "pig", "Pig", "external", "selection", "note"),
          value,
          {
            noNullPrototype: true,
          },
        ),
        (record) => {
          const text = `${stringify(record)}# the end\n`;
          const { text: once, fixes } = fixText(text, { kind: "case" });
          expect(once.endsWith("# the end\n")).toBe(true);
          expect(fixText(once, { kind: "case" }).text).toBe(once);
          if (fixes.length === 0) expect(once).toBe(text);
          const changed = once.split("\n").filter((line, at) => line !== text.split("\n")[at]).length;
          expect(changed).toBeLessThanOrEqual(fixes.length);
        },
      ),
      { numRuns: runs(300) },
    );
  });
});
