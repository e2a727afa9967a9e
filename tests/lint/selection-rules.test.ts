/** Edges of the rules about selection, history, visit, photographs and diagnosis, beyond their examples. */
import { describe, expect, it } from "vitest";
import type { Example } from "../../src/lint/index.ts";
import { lintExample } from "./lay-example.ts";

const found = (example: Example): string[] => [
  ...new Set(lintExample(example).findings.map(({ rule }) => rule)),
];

describe("onset", () => {
  it.each([
    ["48 h", []],
    ["49 h", ["onset-too-long"]],
    ["3 d", ["onset-too-long"]],
    ["2026-04-18", []], // at least 33 h, at most 57 h: the doubt is the pig's
    ["2026-04-16", ["onset-too-long"]],
    ["unknown", []],
  ])("%s", (onset, rules) => {
    expect(found({ case: `selection: {onset: ${onset}}` })).toEqual(rules);
  });
});

describe("pigs for a syndrome", () => {
  const cases = "cases: [birch-2026-04-20-01, birch-2026-04-20-02]";
  const other = (signs: string): string =>
    `case: birch-2026-04-20-02\npig: {tag: '902', pen: 5}\nselection: {signs: [${signs}]}`;

  it("share a family of signs", () => {
    const { findings } = lintExample({ visit: `${cases}\npigs: {few: }`, others: [other("cough")] });
    expect(findings.map(({ message }) => message)).toEqual([
      expect.stringContaining("2 pigs opened for sneezing and cough."),
    ]);
  });

  it("count apart when they share none", () => {
    const { findings } = lintExample({ visit: `${cases}\npigs: {few: }`, others: [other("itching")] });
    expect(findings.filter(({ rule }) => rule === "few-pigs-for-syndrome")).toHaveLength(2);
  });
});

describe("photographs", () => {
  it("of an organ are looked for too", () => {
    expect(found({ case: "lymphoid: {spleen: {state: normal, photos: [spleen.jpg]}}" })).toEqual([
      "photo-absent",
    ]);
  });

  it("on the net are not looked for", () => {
    expect(found({ case: "photos: ['https://example.org/lungs.jpg']" })).toEqual(["picture-elsewhere"]);
  });

  it("say what they show by their name", () => {
    expect(found({ case: "photos: [photos/01-lungs.jpg]", files: ["photos/01-lungs.jpg"] })).toEqual([]);
  });

  it("of an organ without its system are told the system", () => {
    const { findings } = lintExample({
      case: "photos: [{file: 1.jpg, shows: lungs, scale: yes}]",
      files: ["1.jpg"],
    });
    expect(findings[0]?.message).toContain("Write respiratory.lungs.");
  });
});

describe("diagnoses", () => {
  const diagnosis = (text: string): Example => ({ case: `diagnosis: {${text}}` });

  it.each([
    ['morphologic: ["Conchae: atrophy, bilateral, chronic, moderate, not progressive"]', []],
    ['morphologic: ["Pig: thin, chronic"]', []],
    ['morphologic: ["Spleen: infarcts, multifocal, acute, mild"]', ["diagnosis-without-lesion"]],
    ["aetiologic: [unknown]", []],
    ["aetiologic: [foreign body], basis: gross", []],
    ["aetiologic: [progressive atrophic rhinitis], basis: gross", ["progressive-without-toxin"]],
    ["aetiologic: [toxigenic Pasteurella multocida], basis: laboratory", []],
    ["aetiologic: [influenza A virus]", ["cause-without-laboratory"]],
  ])("%s", (text, rules) => {
    expect(found(diagnosis(text))).toEqual(rules);
  });
});
