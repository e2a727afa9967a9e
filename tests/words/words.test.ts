/** Words for people: listings, guesses, and text made safe to show. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hiddenCharacter, hiddenName } from "../../src/words/hidden-characters.ts";
import { count, listing, withArticle } from "../../src/words/listing.ts";
import { nearest } from "../../src/words/nearest.ts";
import { decimalsApart, decimalsFor, levelPercent, percent } from "../../src/words/percent.ts";
import { escapedInJson, visible } from "../../src/words/visible.ts";

describe("listing", () => {
  it.each([
    [[], ""],
    [["a"], "a"],
    [["a", "b"], "a and b"],
    [["a", "b", "c"], "a, b and c"],
  ])("%j", (items, text) => {
    expect(listing(items)).toBe(text);
  });

  it("takes another last word", () => {
    expect(listing(["a", "b", "c"], "or")).toBe("a, b or c");
  });

  it.each([
    ["weaner", "a weaner"],
    ["adult", "an adult"],
  ])("%s has its article", (word, expected) => {
    expect(withArticle(word)).toBe(expected);
  });

  it("counts", () => {
    expect([
      count(0, "pig"),
      count(1, "pig"),
      count(2, "pig"),
      count(1, "piglet", "litter"),
      count(3, "loss", "losses"),
    ]).toEqual(["0 pigs", "1 pig", "2 pigs", "1 piglet", "3 losses"]);
  });
});

describe("per cent", () => {
  it.each([
    [0, 1, "0 %"],
    [1, 1, "100 %"],
    [0.259, 1, "25.9 %"],
    [0.0004, 1, "<0.1 %"],
    [0.9999, 1, ">99.9 %"],
    [0.99990123, 3, "99.990 %"],
    [0.9999999, 3, ">99.999 %"],
    [0.000001, 3, "<0.001 %"],
  ])("%d with %d decimals: %s", (share, decimals, text) => {
    expect(percent(share, decimals)).toBe(text);
  });

  it("a level keeps its digits, and is never 100 % when it is not", () => {
    expect([0.95, 0.9999999999, 0.999999999999, 0.07, 1 - 0.95].map(levelPercent)).toEqual([
      "95 %",
      "99.99999999 %",
      "99.9999999999 %",
      "7 %",
      "5 %",
    ]);
  });

  it("has enough decimals for a level, and for two shares to differ", () => {
    expect([0.8, 0.95, 0.99, 0.999, 0.9999, 0.999999999999].map(decimalsFor)).toEqual([1, 1, 1, 2, 3, 11]);
    expect(decimalsApart(0.9999, 0.99989, 1)).toBe(3);
    expect(decimalsApart(0.951, 0.948, 1)).toBe(1);
    expect(decimalsApart(0.5, 0.5, 1)).toBe(1);
  });
});

describe("nearest", () => {
  const organs = [
    "liver",
    "lungs",
    "gall_bladder",
    "liver_pancreas",
    "large-intestine",
    "kidneys",
    "cough",
    "milk-spots",
  ];
  it.each([
    ["liver", "liver"],
    ["LIVER", "liver"],
    ["Gall Bladder", "gall_bladder"],
    ["gall-bladder", "gall_bladder"],
    ["spots-milk", "milk-spots"],
    ["Pancreas liver", "liver_pancreas"],
    ["milkspots", "milk-spots"],
    ["lver", "liver"],
    ["livre", "liver"],
    ["kidny", "kidneys"],
    ["large", "large-intestine"],
    ["coughing", "cough"],
    ["coughs", "cough"],
    ["li", undefined],
    ["brain", undefined],
    ["", undefined],
    ["  ", undefined],
    ["cough and fever", undefined],
    ["liver with many milk spots on its surface", undefined],
    ["🐖", undefined],
    ["x".repeat(100_000), undefined],
  ])("%j is %s", (written, word) => {
    expect(nearest(written, organs)).toBe(word);
  });

  it("knows nothing among nothing", () => {
    expect(nearest("a", [])).toBeUndefined();
  });

  it("finds a word again after one mistake", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("consolidation", "haemorrhage", "retropharyngeal_nodes", "found-dead"),
        fc.nat(),
        fc.constantFrom("drop", "double", "swap"),
        (word, where, how) => {
          const at = where % (word.length - 1);
          const [before, one, next, rest] = [
            word.slice(0, at),
            word[at] ?? "",
            word[at + 1] ?? "",
            word.slice(at + 2),
          ];
          const written =
            how === "drop"
              ? before + next + rest
              : how === "double"
                ? before + one + one + next + rest
                : before + next + one + rest;
          expect(
            nearest(written, [
              "consolidation",
              "haemorrhage",
              "retropharyngeal_nodes",
              "found-dead",
              "female",
              "male",
            ]),
          ).toBe(word);
        },
      ),
    );
  });

  it("is one of the words or none", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: "grapheme", maxLength: 30 }),
        fc.array(fc.string({ maxLength: 12 }), { maxLength: 8 }),
        (written, known) => {
          const word = nearest(written, known);
          expect(word === undefined || known.includes(word)).toBe(true);
        },
      ),
    );
  });
});

describe("visible", () => {
  it.each([
    ["liver, größe, 猪 🐖 👩‍⚕️", "liver, größe, 猪 🐖 👩‍⚕️"],
    ["a\u001b[31mb", "a\\u{1b}[31mb"],
    ["a\nb\tc\rd", "a\\u{a}b\\u{9}c\\u{d}d"],
    ["a\u009bb\u007fc", "a\\u{9b}b\\u{7f}c"],
    ["a\u202eb\u2066c\u200fd\u061ce", "a\\u{202e}b\\u{2066}c\\u{200f}d\\u{61c}e"],
    ["li\u200bver \ufeffx\u00ad", "li\\u{200b}ver \\u{feff}x\\u{ad}"],
    ["\u2028\u2029", "\\u{2028}\\u{2029}"],
    ["maff\u200d-1978 li\u200cver", "maff\\u{200d}-1978 li\\u{200c}ver"],
    ["a\u180e\u3164\u2800\u2062\u034fb", "a\\u{180e}\\u{3164}\\u{2800}\\u{2062}\\u{34f}b"],
    ["می‌خواهم क्‍ष", "می‌خواهم क्‍ष"],
    ["\ud800", "\\u{d800}"],
  ])("%j", (text, shown) => {
    expect(visible(text)).toBe(shown);
  });

  it("leaves nothing that a terminal would obey", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 40 }), (text) => {
        expect(visible(text)).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
        expect(hiddenCharacter.test(visible(text))).toBe(false);
      }),
    );
  });
});

describe("JSON", () => {
  it("reads back as what it was, and shows what nobody sees as escapes", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 40 }), (text) => {
        const json = escapedInJson(JSON.stringify({ text }, null, 2));
        expect(JSON.parse(json)).toEqual({ text });
        expect(visible(json.replaceAll("\n", ""))).toBe(json.replaceAll("\n", ""));
      }),
    );
    expect(escapedInJson(JSON.stringify("a\u200b\u{e0041}"))).toBe('"a\\u200b\\udb40\\udc41"');
  });
});

describe("hidden characters", () => {
  it.each([
    ["\u001b", "a control character (U+001B)"],
    ["\u0085", "a control character (U+0085)"],
    ["\u202e", "an invisible mark (U+202E)"],
    ["\ufeff", "an invisible mark (U+FEFF)"],
    ["\ud800", "an invisible mark (U+D800)"],
  ])("%j", (character, name) => {
    expect(hiddenCharacter.exec(`ab${character}c`)?.[0]).toBe(character);
    expect(hiddenName(character)).toBe(name);
  });

  it.each(["a\tb\n", "a\r\n", "ä 猪 🐖", "👩‍⚕️", "سلام", "\u00a0"])("%j holds none", (text) => {
    expect(hiddenCharacter.test(text)).toBe(false);
  });

  it("are told when a carriage return stands alone", () => {
    expect(hiddenCharacter.exec("a\rb")?.[0]).toBe("\r");
  });
});
