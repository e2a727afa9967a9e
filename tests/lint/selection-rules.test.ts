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

  it("is not held against a sign that cannot be read, which may be one of weeks", () => {
    expect(found({ case: "selection: {onset: 3 d, signs: [weight loss]}" })).not.toContain("onset-too-long");
    expect(found({ case: "selection: {onset: 3 d, signs: [cough]}" })).toContain("onset-too-long");
  });
});

describe("a pig that says untreated in a group under treatment", () => {
  const water = "group: nursery-2, with: amoxicillin, route: in-water, antimicrobial: yes";
  const said = (treatment: string, pig = "{treated: no}", more = ""): string[] =>
    lintExample({ visit: `treatments: [{${treatment}}]`, case: `selection: ${pig}\n${more}` })
      .findings.filter(({ rule }) => rule === "treated-against-visit")
      .map(({ path }) => path);

  // The pig died on 2026-04-20.
  it.each([
    `${water}, from: 2026-04-18, to: 2026-04-22`,
    `${water}, from: 2026-04-18`,
    `${water}, from: 2026-04-20, to: 2026-04-20`,
    "with: tiamulin, route: in-feed, antimicrobial: yes, from: 2026-04-01",
  ])("is contradicted by %s", (treatment) => {
    expect(said(treatment)).toEqual(["selection.treated"]);
  });

  it.each([
    `${water}, from: 2026-04-21`,
    `${water}, from: 2026-04-01, to: 2026-04-19`,
    `${water}`,
    "group: finisher-1, with: amoxicillin, route: in-water, antimicrobial: yes, from: 2026-04-18",
    "group: nursery-2, with: amoxicillin, route: by-injection, antimicrobial: yes, from: 2026-04-18",
    "group: nursery-2, with: electrolytes, route: in-water, antimicrobial: no, from: 2026-04-18",
  ])("is not by %s", (treatment) => {
    expect(said(treatment)).toEqual([]);
  });

  it("is not where it says what it got, or sucks", () => {
    const current = `${water}, from: 2026-04-18`;
    expect(said(current, "{treated: {with: amoxicillin, last: 3 h}}")).toEqual([]);
    expect(said(current, "{treated: {with: iron, antimicrobial: no}}")).toEqual(["selection.treated"]);
    expect(said(current, "{treated: no}", "pig: {age: 10 d}")).toEqual([]);
  });
});

describe("treatments of a visit", () => {
  it.each([
    ["treatments: [{group: nursery-22, with: amoxicillin}]", ["visit-group-unknown"]],
    ["treatments: [{group: nursery-2, with: amoxicillin, from: 2026-02-30}]", ["visit-date-impossible"]],
    ["treatments: [none, {group: nursery-2, with: amoxicillin}]", []],
  ])("%s", (visit, rules) => {
    expect(found({ visit })).toEqual(rules);
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
    ['morphologic: ["Spleen: empty, no lesion by eye"]', []],
    ['morphologic: ["Spleen: congestion, acute, mild, no infarct"]', ["diagnosis-without-lesion"]],
    ["aetiologic: [unknown]", []],
    ["aetiologic: [foreign body], basis: gross", []],
    ["aetiologic: [progressive atrophic rhinitis], basis: gross", ["progressive-without-toxin"]],
    ["aetiologic: [toxigenic Pasteurella multocida], basis: laboratory", []],
    ["aetiologic: [influenza A virus]", ["cause-without-laboratory"]],
  ])("%s", (text, rules) => {
    expect(found(diagnosis(text))).toEqual(rules);
  });
});

describe("litter, weaning and farrowing", () => {
  const rules = ["farrowing-impossible", "weaning-impossible", "litter-implausible", "visit-date-impossible"];
  const told = (example: Example): string[] => found(example).filter((rule) => rules.includes(rule));
  const sow = "age: 2 a, sex: female, weight: 220 kg";

  it.each([
    ["age: 58 d, since_weaning: 30 d", []],
    ["age: 58 d, since_weaning: 58 d", ["weaning-impossible"]],
    ["age: 150 d, since_weaning: 30 d", ["weaning-impossible"]],
    ["age: , class: stillborn, since_weaning: 3 d", ["weaning-impossible"]],
    [`${sow}, since_weaning: 3 d`, []],
    [`${sow}, parity: 3, since_farrowing: 5 d`, []],
    [`${sow}, parity: 0, since_farrowing: 5 d`, ["farrowing-impossible"]],
    [`${sow}, since_farrowing: 14 mo`, ["farrowing-impossible"]],
    ["age: 300 d, sex: female, since_farrowing: 30 d", ["farrowing-impossible"]],
    ["age: 2 a, sex: male, since_farrowing: 30 d", ["farrowing-impossible"]],
    ["age: 4 d, dam_parity: 1, litter_born: {alive: 16, stillborn: 2, mummified: 0}", []],
    ["litter_born: {alive: 36}", ["litter-implausible"]],
    ["litter_born: {alive: 30, stillborn: 16}", ["litter-implausible"]],
    ["age: , class: mummy, litter_born: {alive: 9, mummified: 0}", ["litter-implausible"]],
    ["age: , class: mummy, litter_born: {alive: 9, mummified: 1}", []],
  ])("%s", (pig, expected) => {
    expect(told({ case: `pig: {${pig}}` })).toEqual(expected);
  });

  it("asks for nothing, and takes feed and water of a group", () => {
    const group = (changed: string): Example => ({
      visit: `groups: {nursery-2: {since_weaning: 12 d, feed: {form: pellets, changed: ${changed}}, water: {from: nipples, works: no}}}`,
    });
    expect(found(group("2026-04-12"))).toEqual([]);
    expect(found(group("2026-02-30"))).toEqual(["visit-date-impossible"]);
  });
});
