import { describe, expect, it } from "vitest";
import { alarmSigns, interpretationWords, organById } from "../../src/knowledge/index.ts";
import { occurrences, wordIn } from "../../src/notes/words-in.ts";
import { namedOrgans } from "../../src/record/index.ts";

describe("a word in free text", () => {
  it.each([
    ["typical of PRRS", ["prrs"], "PRRS"],
    ["turkey-egg kidney", ["turkey egg"], "turkey-egg"],
    ["looks like S. suis", ["S. suis"], "S. suis"],
    ["a peduncle", ["PED"], undefined],
    ["cherryred", ["cherry"], undefined],
    ["Glässers", ["Glässer"], undefined],
    ["nothing of it", [], undefined],
    [undefined, ["PED"], undefined],
  ])("%s", (text, words, found) => {
    expect(wordIn(text, words)).toBe(found);
  });
});

describe("organs that a diagnosis names", () => {
  it.each([
    ["Lungs", "respiratory.lungs"],
    ["right lung", "respiratory.lungs"],
    ["Left ventral concha", "respiratory.turbinates"],
    ["Conchae", "respiratory.turbinates"],
    ["Nasal mucosa", "respiratory.turbinates"],
    ["Stomach, pars oesophagea", "stomach.pars_oesophagea"],
    ["Left hock", "locomotor.joints"],
    ["Bronchial nodes", "lymphoid.bronchial_nodes"],
    ["Kidney", "urinary.kidneys"],
    ["Heart", "cardiovascular.heart"],
    ["Small intestine", "intestine.jejunum"],
  ])("%s", (text, id) => {
    expect(namedOrgans(text).map((organ) => organ.id)).toContain(id);
  });

  it.each(["", "Pig", "the whole animal", "IMG_2041"])("none in %j", (text) => {
    expect(namedOrgans(text)).toEqual([]);
  });

  it("of the list of names all exist", () => {
    const ids = Object.values(interpretationWords.organ_names).flat();
    expect(ids.filter((id) => organById(id) === undefined)).toEqual([]);
  });
});

describe("a list of words", () => {
  const list = [
    "oedema*",
    "haemorrhag*",
    "vésicule*",
    "gelb",
    "colour*",
    "weiss",
    "dark red",
    "o. B.",
    "n/a",
    "ödem*",
    "hævet",
    "raw",
  ];

  it.each([
    ["edema", ["edema"]],
    ["OEDEMATOUS", ["OEDEMATOUS"]],
    ["Ödeme, Oedem", ["Ödeme", "Oedem"]],
    ["hämorrhagisch und hemorrhagic", ["hämorrhagisch", "hemorrhagic"]],
    ["vesicules, vésicule", ["vesicules", "vésicule"]],
    ["colored, colour", ["colored", "colour"]],
    ["weiß", ["weiß"]],
    ["dark-red, dark red", ["dark-red", "dark red"]],
    ["Lunge o. B.", ["o. B."]],
    ["n/a", ["n/a"]],
    ["haevet", ["haevet"]],
    ["raw", ["raw"]],
    ["rawhide, gelber, redema", []],
  ])("is found in %j in any spelling", (text, found) => {
    expect(occurrences(text, list).map((one) => one.text)).toEqual(found);
  });

  it("finds every word that ships, as it is written and in capitals", () => {
    const lists = [...alarmSigns.values()].flatMap(({ words, unless = [] }) => [...words.flat(), unless]);
    for (const words of lists)
      for (const word of words) {
        const plain = word.replaceAll("*", "");
        const inText = (text: string): boolean => occurrences(text, words).some(({ index }) => index === 4);
        expect([word, inText(`xyz ${plain}`), inText(`XYZ ${plain.toUpperCase()}`)]).toEqual([
          word,
          true,
          true,
        ]);
      }
  });
});
