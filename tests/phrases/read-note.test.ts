/** The grammar of a note: what it becomes, and what is said of what it cannot become. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { definitions } from "../../src/knowledge/definitions.ts";
import { organs } from "../../src/knowledge/index.ts";
import { joined, readNote } from "../../src/phrases/index.ts";
import { firstName, wordKeys } from "../../src/phrases/names.ts";
import { every } from "../every.ts";
import { runs } from "../random.ts";

/** What a note on one organ becomes, or what is said of it. */
function entryOf(note: string, before?: unknown): unknown {
  const { told, misread } = readNote(note);
  if (misread.length > 0) return misread.map(({ message }) => message).join("; ");
  const one = joined(before, told);
  return "fault" in one ? one.fault : one.entry;
}

describe("a note becomes", () => {
  every(
    "what stands beside it",
    [
      ["spleen 120 g enlarged", { findings: [{ process: "enlargement" }], weight: "120 g" }],
      ["lungs abscess 3 left caudal", [{ process: "abscess", number: 3, site: "left caudal" }]],
      ["lungs consolidation 15 left middle", { consolidation: { left_middle: 15 } }],
      [
        "lungs firm consolidation 15 % left middle, 10 right middle, accessory 0",
        {
          findings: [{ process: "consolidation", consistency: "firm" }],
          consolidation: { left_middle: 15, right_middle: 10, accessory: 0 },
        },
      ],
      ["turbinates normal, section: premolar-1", { state: "normal", section: "premolar-1" }],
      [
        "snout; turbinates left: dorsal 1 ventral 2",
        "nothing is said of snout. Write normal, what you see, or not examined: and why",
      ],
      [
        "turbinates left: dorsal 1 ventral 2, septum: straight",
        { left: { dorsal: 1, ventral: 2 }, septum: "straight" },
      ],
      [
        "pleura pleurisy: left cranioventral right none",
        { pleurisy: { left: ["cranioventral"], right: ["none"] } },
      ],
      ["liver milk_spots: 12", { milk_spots: 12 }],
      ["snout brachygnathia: 12 mm", { brachygnathia: "12 mm" }],
      ["kidneys left petechiae, right normal", { left: [{ process: "petechiae" }], right: "normal" }],
      ["left kidney cyst 1,5 cm", { left: [{ process: "cyst", size: "1.5 cm" }] }],
      ["skin wound both", [{ process: "wound", side: "both" }]],
      [
        "skin plaque 30mm rhomboid raised",
        [{ process: "plaque", size: "30 mm", shape: "rhomboid", contour: "raised" }],
      ],
      ["skin mass 30 x 20 mm shape: plaque", [{ process: "mass", size: "30 x 20 mm", shape: "plaque" }]],
      ["brain not examined: skull left closed, no saw", { not_examined: "skull left closed, no saw" }],
      ["Gehirn nicht untersucht: kein Befund", { not_examined: "kein Befund" }],
      [
        "heart haemorrhage epicardium, petechiae",
        [{ process: "haemorrhage", site: "epicardium" }, { process: "petechiae" }],
      ],
      ["liver: enlarged. \n congested", [{ process: "enlargement" }, { process: "congestion" }]],
      [
        "spleen enlarged note: 28 cm long, felt heavy",
        [{ process: "enlargement", note: "28 cm long, felt heavy" }],
      ],
      [
        "skin unchanged plaque",
        "unchanged has two meanings: write colour: unchanged or consistency: unchanged",
      ],
      ["", "the note is empty. Write an organ and what you see"],
      ["spleen enlarged, enlarged", "the same is told twice. Write it once"],
      ["kidneys left right petechiae", "two sides in one piece. Put a comma between them, or write both"],
      [
        "heart, liver enlarged",
        "nothing is said of heart. Write normal, what you see, or not examined: and why",
      ],
      [
        "lungs consolidation 15 left middle right middle",
        "one share for one lobe. Put a comma between them: 15 left middle, 10 right middle",
      ],
      ["liver necrosis 0", "0 has no unit: mm, cm, %, ml, l, g or kg. Without one it is how many there are"],
      [
        "liver necrosis colour: ultraviolet",
        '"ultraviolet" is no colour. carcase explain colour lists the words',
      ],
      [
        "liver necrosis hue: red",
        "there is no hue: of a finding of liver. Write process, distribution, colour, consistency, exudate, severity, duration, margin, contour, shape, certainty, site or note",
      ],
      ["turbinates left: dorsal 7", "left: dorsal: write a number from 0 to 4"],
      ["turbinates septum: bent", "septum: write straight, slight or marked"],
      ["brain not examined:", "write why behind not examined:"],
      ["liver necrosis site:", "nothing stands behind site:"],
      ["a".repeat(5001), "a note has at most 5000 characters. Write several"],
    ] as const,
    ([note, becomes]) => expect(entryOf(note)).toEqual(becomes),
    ([note]) => note.slice(0, 60),
  );

  it("entries of several organs named before normal", () => {
    const { told } = readNote("heart, liver and spleen normal");
    expect(told.map(({ organ }) => organ.key)).toEqual(["heart", "liver", "spleen"]);
  });
});

describe("what the case says already", () => {
  every(
    "is kept, or said",
    [
      [
        "spleen congested",
        [{ process: "enlargement" }],
        [{ process: "enlargement" }, { process: "congestion" }],
      ],
      ["spleen congested", null, [{ process: "congestion" }]],
      ["spleen congested", { weight: "90 g" }, { findings: [{ process: "congestion" }], weight: "90 g" }],
      [
        "spleen congested",
        "normal",
        "spleen is normal there, and cannot have a finding. Take one of the two out",
      ],
      ["spleen congested", { not_examined: "lost" }, "spleen is not examined there. Take that out first"],
      ["spleen congested", [{ process: "congestion" }], "that finding of spleen stands there already"],
      [
        "spleen normal",
        [{ process: "congestion" }],
        "spleen has a finding there, and cannot be normal. Take one of the two out",
      ],
      ["spleen normal", { weight: "90 g" }, { state: "normal", weight: "90 g" }],
      ["spleen 90 g", "normal", { state: "normal", weight: "90 g" }],
      [
        "spleen 90 g",
        { weight: "80 g" },
        'weight is "80 g" there already. Change it in the file if it is wrong',
      ],
      ["left kidney cyst", "normal", "the entry speaks of both sides: normal"],
      [
        "turbinates left: dorsal 1 ventral 2",
        { left: { dorsal: null, ventral: null }, septum: null },
        { left: { dorsal: 1, ventral: 2 }, septum: null },
      ],
    ] as const,
    ([note, before, becomes]) => expect(entryOf(note, before)).toEqual(becomes),
    ([note]) => note,
  );
});

/** A word under one of its names that has one meaning alone. */
const named = (names: readonly string[], isOne: (name: string) => boolean) =>
  fc.constantFrom(...names.map((name) => name.replaceAll("_", " ")).filter(isOne));
const hasOneMeaning = (name: string): boolean => firstName(name.split(" "))?.named.length === 1;
const ofWord = fc
  .constantFrom(...wordKeys.filter((key) => key !== "process" && key !== "certainty"))
  .chain((key) =>
    fc
      .constantFrom(...Object.entries(definitions[key]))
      .chain(([word, { also = [], de = [], es = [], short = [] }]) => {
        const names = [word, ...also, ...de, ...es, ...short].filter(hasOneMeaning);
        return fc.constantFrom(...(names.length === 0 ? [""] : names)).map((name) => ({ key, word, name }));
      }),
  )
  .filter(({ name }) => name !== "");
const ofProcess = fc
  .constantFrom(...Object.entries(definitions.process))
  .chain(([word, { also = [], de = [], es = [] }]) =>
    named([word, ...also, ...de, ...es], hasOneMeaning).map((name) => ({ word, name })),
  );
const ofOrgan = fc
  .constantFrom(...organs.filter(({ definition }) => definition.form !== "paired"))
  .chain((organ) => {
    const { en = [], de = [], es = [] } = organ.definition.names ?? {};
    return named([organ.key, ...en, ...de, ...es], hasOneMeaning).map((name) => ({ organ, name }));
  });
const size = fc
  .integer({ min: 1, max: 300 })
  .map((mm) => ({ key: "size", word: `${mm} mm`, name: `${mm} mm` }));
const describers = fc.uniqueArray(fc.oneof(ofWord, size), { maxLength: 4, selector: ({ key }) => key });

describe("random notes", () => {
  const note = fc.record({
    of: ofOrgan,
    is: ofProcess,
    looks: describers,
    order: fc.infiniteStream(fc.nat()),
  });

  it("become what was typed in any order, and nothing else", () => {
    fc.assert(
      fc.property(note, ({ of, is, looks, order }) => {
        const told = [is, ...looks].map(({ name }) => ({ name, rank: order.next().value ?? 0 }));
        told.sort((a, b) => a.rank - b.rank);
        // A comma keeps two names that make a third one apart.
        const text = `${of.name} ${told.map(({ name }) => name).join(" ")}`;
        fc.pre(wordsAlone(text, [of.name, ...told.map(({ name }) => name)]));
        const expected = {
          process: is.word,
          ...Object.fromEntries(looks.map(({ key, word }) => [key, word])),
        };
        expect(entryOf(text)).toEqual([expected]);
      }),
      { numRuns: runs(2000) },
    );
  });

  it("with one piece that means nothing are refused whole", () => {
    fc.assert(
      fc.property(note, fc.stringMatching(/^[bcdfghjkmpqvwxz]{6,9}$/), ({ of, is }, junk) => {
        const { told, misread } = readNote(`${of.name} ${is.name} ${junk}`);
        expect(told).toEqual([]);
        expect(misread.map(({ message }) => message).join()).toContain(junk);
      }),
      { numRuns: runs(500) },
    );
  });
});

/** Whether the names stay apart when they stand behind one another: `dark` and `red` would be one. */
function wordsAlone(text: string, names: readonly string[]): boolean {
  let rest = text.split(" ");
  return names.every((name) => {
    const match = firstName(rest);
    rest = rest.slice(name.split(" ").length);
    return /^\d/.test(name) || match?.length === name.split(" ").length;
  });
}
