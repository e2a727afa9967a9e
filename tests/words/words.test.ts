/** Words for people: listings, guesses, and text made safe to show. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hiddenCharacter, hiddenName } from "../../src/words/hidden-characters.ts";
import { count, listing } from "../../src/words/listing.ts";
import { nearest } from "../../src/words/nearest.ts";
import { visible } from "../../src/words/visible.ts";

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
