/** What a note affirms and what it denies, and the rules that read notes of alarm signs. */
import { describe, expect, it } from "vitest";
import { affirmed } from "../../src/notes/index.ts";
import { lintExample } from "./lay-example.ts";

const words = ["rash*", "scar*", "frothing", "striped"];
const said = (text: string): string[] => affirmed(text, words).map((word) => word.text);

describe("a note affirms", () => {
  it.each([
    ["rash on the belly", ["rash"]],
    ["striped, no frothing", ["striped"]],
    ["no frothing, striped", ["striped"]],
    ["no doubt a rash", ["rash"]],
    ["not normal: scars", ["scars"]],
    ["a rash cannot be excluded", ["rash"]],
    ["no change except scars on the ear", ["scars"]],
    ["rash on the ear, none on the belly", ["rash"]],
    ["no cough, scars on ear or tail", []],
    ["rash?", ["rash"]],
    ["it should be noted: scars", []],
    ["nicht gross, aber striped", ["striped"]],
  ])("in %j", (text, found) => {
    expect(said(text)).toEqual(found);
  });

  it.each([
    "no rash",
    "rash absent",
    "rash: none",
    "rash, none seen",
    "rash was not seen",
    "without scars",
    "looked for a rash, none",
    "free of frothing, scars and rashes",
    "no frothing, scars or rash",
    "keine rash",
    "scars: keine",
    "neither striped nor scarred",
    "call me if a rash is found on other pigs",
    "a crash",
  ])("nothing in %j", (text) => {
    expect(said(text)).toEqual([]);
  });
});

const alarm = (example: string, more: { readonly visit?: string } = {}): string[] =>
  lintExample({ case: example, ...more }).findings.flatMap(({ rule, path }) =>
    rule.startsWith("alarm-word") ? [`${rule} ${path}`] : [],
  );
const blank = (sign: string, look = "before_knife"): string => `alarm_check: {${look}: {${sign}: }}`;

describe("words of an alarm sign", () => {
  it.each([
    ["a sore with watery blisters round it", "vesicles", "before_knife"],
    ["die Kehle ist stark geschwollen", "throat_swelling", "before_knife"],
    ["blood runs from the anus", "bloody_orifices", "before_knife"],
    ["the spleen is huge and black", "dark_spleen", "at_knife"],
    ["hämorrhagische Lymphknoten: alle Lymphknoten blutig", "bloody_nodes", "at_knife"],
    ["turkey-egg kidneys with petechiae", "petechiae", "at_knife"],
    ["three button-like ulcers in the colon", "button_ulcers", "at_knife"],
    ["blood-stained fluid in the abdomen", "bloody_fluid", "at_knife"],
    ["heart muscle with tiger stripes", "pale_heart", "at_knife"],
  ])("ask for an answer where there is none: %s", (note, sign, look) => {
    const text = `note: ${JSON.stringify(note)}`;
    expect(alarm(`${text}\n${blank(sign, look)}`)).toEqual(["alarm-word-unrecorded note"]);
    expect(alarm(`${text}\nalarm_check: {${look}: {${sign}: not-looked-at}}`)).toEqual([
      "alarm-word-unrecorded note",
    ]);
    expect(alarm(`${text}\nalarm_check: {${look}: {${sign}: seen}}`)).toEqual([]);
    expect(alarm(text)).toEqual(["alarm-word-denied note"]);
  });

  it.each([
    "bloody froth at the nose",
    "no blood at nose or anus",
    "a blister pack of tablets lay in the pen",
    "vesicular glands small",
    "spleen weighed and put back",
    "a heart-shaped mark on the ear",
    "blood from the jugular for serology",
  ])("are none in %j", (note) => {
    for (const look of [
      "before_knife: {vesicles: , bloody_orifices: }",
      "at_knife: {dark_spleen: , pale_heart: }",
    ])
      expect(alarm(`note: ${JSON.stringify(note)}\nalarm_check: {${look}}`)).toEqual([]);
  });

  it("of the note of an organ need not name it", () => {
    const spleen = "lymphoid: {spleen: {state: normal, findings: , note: 'black, friable'}}";
    expect(alarm(`${spleen}\n${blank("dark_spleen", "at_knife")}`)).toEqual([
      "alarm-word-unrecorded lymphoid.spleen.note",
    ]);
  });

  it("of a visit are answered there, or by a case", () => {
    const visit = "complaint: blisters on two snouts";
    expect(alarm("{}", { visit })).toEqual(["alarm-word-in-visit complaint"]);
    expect(alarm("{}", { visit: `${visit}\nalarm_check: {vesicles: none}` })).toEqual([]);
    expect(alarm("alarm_check: {before_knife: {vesicles: seen}}", { visit })).toEqual([]);
  });

  it.each([
    ["{process: haemorrhage, distribution: multifocal, size: 15 mm, note: in streaks}", []],
    [
      "{process: oedema, distribution: diffuse, severity: marked, note: in streaks}",
      ["alarm-word-denied cardiovascular.heart[0].note"],
    ],
  ])("in the note of a finding that says what they are: %s", (finding, expected) => {
    expect(alarm(`cardiovascular: {heart: [${finding}]}`)).toEqual(expected);
    expect(alarm(`cardiovascular: {heart: [${finding}]}\nnote: the heart has pale streaks`)).toHaveLength(1);
  });
});
