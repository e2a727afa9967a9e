/** What was probably meant by a word, a text or a value that does not fit the format. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { intendedWord, saysNothing } from "../../src/cases/faults/intended-word.ts";
import { suggestion } from "../../src/cases/faults/suggestion.ts";
import { vocabulary } from "../../src/generated/knowledge.ts";
import { ageClasses, slipWords } from "../../src/knowledge/index.ts";
import caseSchema from "../../src/schemas/case.schema.json" with { type: "json" };
import { readAlarmFiles } from "../alarms/alarm-archive.ts";

const protection: readonly string[] = caseSchema.$defs.safety.properties.protection.items.enum;

describe("the words that people write", () => {
  const { signs: _, ...lists } = vocabulary;
  const known = [
    ...Object.values(lists),
    Object.values(vocabulary.signs).flatMap(({ words }) => words),
    Object.keys(ageClasses.classes),
    ["euthanised", "found-dead", "slaughtered", "born-dead"],
    ["none", "seen", "not-looked-at"],
    ["normal"],
    ["female", "male", "castrate"],
    protection,
  ];

  it.each(Object.entries(slipWords.words))(
    "for %s stand for a word of the format, each for one of its list",
    (word, written) => {
      const own = known.filter((list) => list.includes(word));
      expect(own).not.toEqual([]);
      for (const one of written) {
        expect(one).toBe(one.toLowerCase());
        expect(own.flat()).not.toContain(one);
        const meant = Object.entries(slipWords.words).flatMap(([of, list]) =>
          list.includes(one) ? [of] : [],
        );
        for (const list of own) expect(meant.filter((of) => list.includes(of))).toEqual([word]);
      }
    },
  );
});

it("the list of slips is short, and stays so: the nearest word and the lists in the messages do the rest", () => {
  const values = (of: unknown): number =>
    Array.isArray(of)
      ? of.length
      : typeof of === "object" && of !== null
        ? Object.values(of).reduce((sum: number, one) => sum + values(one), 0)
        : 0;
  expect(values(parse(readFileSync("src/knowledge/slip-words.yaml", "utf8")))).toBeLessThanOrEqual(120);
});

describe("a word", () => {
  it.each([
    ["Vesicle", "vesicle"],
    ["blisters", "vesicle"],
    ["BULLAE", "vesicle"],
    ["hemorrhage", "haemorrhage"],
    ["hemorrhagic", "haemorrhage"],
    ["oedematous", "oedema"],
    ["swollen", "enlargement"],
    ["petechia", "petechiae"],
    ["vesicel", "vesicle"],
    ["frothy", "froth"],
    ["scab", "crust"],
    ["sloughing", "slough"],
    ["dilatation", "distension"],
    ["not collapsed", "failure-to-collapse"],
    ["does not collapse", "failure-to-collapse"],
    ["Nekrosen", "necrosis"],
    ["Abszess", "abscess"],
    ["Ödem", "oedema"],
    ["dehydrated", "dehydration"],
    ["necrotic", "necrosis"],
    ["blistered", "vesicle"],
    ["xylophone", undefined],
  ])("%s means %s", (written, intended) => {
    expect(intendedWord(written, vocabulary.process)).toBe(intended);
  });

  it.each([
    ["anorexia", "inappetence"],
    ["lethargy", "dullness"],
    ["scouring", "diarrhoea"],
    ["nervous signs", "nervous-signs"],
    ["shivering", "tremor"],
  ])("of the signs, %s means %s", (written, intended) => {
    expect(intendedWord(written, vocabulary.sign)).toBe(intended);
  });

  it.each([
    ["purulent", "suppurative"],
    ["pus", "suppurative"],
    ["mucopurulen", "mucopurulent"],
  ])("of an exudate, %s, means %s", (written, intended) => {
    expect(intendedWord(written, vocabulary.exudate)).toBe(intended);
  });

  it.each([
    ["glove", "gloves"],
    ["waterproof-gloves", undefined],
    ["cut-proof-gloves", "cut-proof-glove"],
  ])("of protection, %s, means %s", (written, intended) => {
    expect(intendedWord(written, protection)).toBe(intended);
  });

  it("is never one that does not stand there", () => {
    expect(intendedWord("blister", ["none", "seen"])).toBeUndefined();
  });
});

describe("a text", () => {
  it.each(["", "?", "0", "12", "x", "xx", "n/a", "N.A.", "Pending", "none yet.", "(unknown)"])(
    "%j says nothing",
    (text) => {
      expect(saysNothing(text)).toBe(true);
    },
  );

  it.each(["go on", "no suspicion", "ok, go on", "kein Verdacht", "nobody else may enter; comes at noon"])(
    "%j says something",
    (text) => {
      expect(saysNothing(text)).toBe(false);
    },
  );
});

describe("a quantity", () => {
  const mass = "^\\d+(\\.\\d+)?\\s*(g|kg)$";
  const size = "^\\d+(\\.\\d+)?(\\s*(x|×)\\s*\\d+(\\.\\d+)?){0,2}\\s*(mm|cm)$";
  const age = "^\\d+(\\.\\d+)?\\s*(h|d|wk|mo|a)$";
  // 1 lb = 0.45359237 kg, 1 oz = 28.349523125 g and 1 in = 25.4 mm, by definition.
  it.each([
    ["20 lb", mass, "9 kg"],
    ["17.5 lbs", mass, "7.9 kg"],
    ["3 lb.", mass, "1.4 kg"],
    ["250 pounds", mass, "113 kg"],
    ["8 oz", mass, "227 g"],
    ["2 in", size, "51 mm"],
    ['2"', size, "51 mm"],
    ["1 x 2 inches", size, "25 x 51 mm"],
    ["6 weeks", age, "6 wk"],
    ["6 Wochen", age, "6 wk"],
    ["6 semanas", age, "6 wk"],
    ["58 Tage", age, "58 d"],
    ["58 días", age, "58 d"],
    ["2 Jahre", age, "2 a"],
    ["20 lb", age, undefined],
    ["20 stone", mass, undefined],
  ])("%s in %s is %s", (written, pattern, intended) => {
    expect(suggestion(written, [pattern])).toBe(intended);
  });
});

describe("a temperature in Fahrenheit", () => {
  const patterns = ["^-?\\d+(\\.\\d+)?\\s*°C$"];
  // 104 °F = (104 - 32) x 5/9 = 40 °C
  it.each([
    ["104 °F", "40 °C"],
    ["104F", "40 °C"],
    ["32 °F", "0 °C"],
    ["105.8 deg F", "41 °C"],
    ["98.6 Fahrenheit", "37 °C"],
    ["104 m", undefined],
  ])("%s is %s", (written, intended) => {
    expect(suggestion(written, patterns)).toBe(intended);
  });
});

const diagnosed = (one: object) => ({ diagnosis: { disease: [{ text: "what it is", ...one }] } });

describe("a message", () => {
  const messages = (one: object): string[] =>
    readAlarmFiles({ cases: [one] }).cases.flatMap(({ faults }) => faults.map(({ message }) => message));

  it.each([
    [{ external: { feet: [{ process: "worms" }] } }, "parasites"],
    [
      { pig: { class: "Absetzer" } },
      "is not one of mummy, aborted, stillborn, suckling, weaner, finisher, adult.",
    ],
    [{ external: { feet: [{ process: "blister" }] } }, "Did you mean vesicle?"],
    [{ lymphoid: { spleen: [{ process: "swollen" }] } }, "Did you mean enlargement?"],
    [{ alarm_check: { before_knife: { vesicles: "yes" } } }, "Did you mean seen?"],
    [
      { external: { feet: "blisters at the coronary band" } },
      'findings such as [{process: …, note: "blisters at the coronary band"}]',
    ],
    [{ pig: { temperature: "104 °F" } }, "Did you mean 40 °C?"],
    [{ pig: { weight: "20 lb" } }, "Did you mean 9 kg?"],
    [{ pig: { sex: "gilt" } }, "Did you mean female?"],
    [{ pig: { sex: "barrow" } }, "Did you mean castrate?"],
    [{ pig: { class: "sow" } }, "Did you mean adult?"],
    [{ lymphoid: { spleen: "NAD" } }, "Did you mean normal?"],
    [{ urinary: "o.B." }, "Did you mean normal?"],
    [{ urinary: { kidneys: { left: "o.b.B.", right: "normal" } } }, "Did you mean normal?"],
    [{ stomach: { glandular_part: "ok" } }, "Did you mean normal?"],
    [diagnosed({ disease: "enzotic-pneumonia" }), "Did you mean enzootic-pneumonia?"],
    [diagnosed({ rests_on: { criteria: ["pcv2"] } }), "Did you mean pcv2-systemic-disease?"],
  ])("names it: %j", (one, text) => {
    expect(messages(one)).toEqual([expect.stringContaining(text)]);
  });
});
