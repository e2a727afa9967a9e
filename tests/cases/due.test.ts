/** Which organs an examination must cover. */
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { organsDue } from "../../src/cases/model/due.ts";
import { defaultSettings } from "../../src/cases/settings/settings.ts";
import { type AgeClass, organs, protocols, type Sex } from "../../src/knowledge/index.ts";
import { smallCase } from "./temporary.ts";

function due(
  protocol: string,
  ageClass?: AgeClass,
  sex?: Sex,
  signs: string[] = [],
  leave_out: string[] = [],
): string[] {
  const found = defaultSettings.protocols.get(protocol);
  if (found === undefined) throw new Error(protocol);
  return organsDue({ protocol: { ...found, leave_out }, ageClass, sex, signs }).due.map(({ id }) => id);
}

const classes: (AgeClass | undefined)[] = [
  undefined,
  "mummy",
  "aborted",
  "stillborn",
  "suckling",
  "weaner",
  "finisher",
  "adult",
];
const sexes: (Sex | undefined)[] = [undefined, "female", "male", "castrate"];

describe("organs due", () => {
  it.each<
    [
      organ: string,
      isDue: boolean,
      protocol: string,
      ageClass: AgeClass | undefined,
      sex: Sex | undefined,
      signs: string[],
    ]
  >([
    // Signs bring the brain into question at an age at which it is not due by itself.
    ["nervous.brain", true, "full", "weaner", undefined, []],
    ["nervous.brain", false, "full", "finisher", undefined, []],
    ["nervous.brain", true, "full", "finisher", undefined, ["tremor"]],
    ["nervous.brain", true, "full", "finisher", undefined, ["sudden-death"]],
    ["nervous.brain", false, "full", "finisher", undefined, ["cough"]],
    ["nervous.brain", true, "respiratory", "finisher", undefined, ["cough", "ataxia"]],
    ["nervous.brain", true, "neurological", "adult", undefined, []],
    ["nervous.brain", false, "full", "mummy", undefined, ["tremor"]],
    // A slaughter check does not follow signs.
    ["nervous.brain", false, "slaughter-check", "finisher", undefined, ["tremor"]],
    ["nervous.brain", false, "slaughter-check", "weaner", undefined, ["sudden-death"]],
    ["respiratory.lungs", true, "slaughter-check", "finisher", undefined, []],
    // Organs of one sex are due where the sex is known to be that one.
    ["genital.uterus", true, "full", "adult", "female", []],
    ["genital.uterus", false, "full", "adult", undefined, []],
    ["genital.uterus", false, "full", "adult", "male", []],
    ["genital.uterus", false, "full", "adult", "castrate", []],
    ["genital.uterus", true, "full", "finisher", "female", ["vulval-discharge"]],
    ["genital.uterus", false, "full", "finisher", undefined, ["vulval-discharge"]],
    ["genital.uterus", false, "full", "weaner", "female", ["vulval-discharge"]],
    ["genital.testes", true, "full", "adult", "male", []],
    ["genital.testes", false, "full", "adult", "castrate", []],
    ["genital.testes", false, "full", "adult", undefined, ["abortion"]],
    ["external.mammary_glands", true, "full", "adult", "female", []],
    ["external.mammary_glands", false, "full", "finisher", "female", []],
    // Organs of some ages.
    ["respiratory.turbinates", true, "full", "weaner", undefined, []],
    ["respiratory.turbinates", false, "full", "suckling", undefined, []],
    ["respiratory.turbinates", true, "full", "suckling", undefined, ["sneezing"]],
    ["respiratory.turbinates", true, "respiratory", "suckling", undefined, []],
    ["respiratory.turbinates", false, "respiratory", "stillborn", undefined, []],
    ["placental.placenta", true, "full", "aborted", undefined, []],
    ["placental.placenta", false, "perinatal", "suckling", undefined, []],
    ["endocrine.thyroid", true, "perinatal", "suckling", undefined, []],
    ["endocrine.adrenals", false, "full", "weaner", undefined, []],
    ["endocrine.adrenals", true, "full", "weaner", undefined, ["fever"]],
    // Without an age, the pig is taken for a weaned one.
    ["nervous.brain", true, "full", undefined, undefined, []],
    ["placental.placenta", false, "full", undefined, undefined, []],
    // [none] is no sign.
    ["nervous.brain", false, "full", "finisher", undefined, ["none"]],
    ["nervous.brain", false, "full", "finisher", undefined, ["constructor"]],
  ])("%s: %s (%s, %s, %s, %j)", (organ, isDue, protocol, ageClass, sex, signs) => {
    expect(due(protocol, ageClass, sex, signs).includes(organ)).toBe(isDue);
  });

  it("never hold an organ of one sex for an unknown or other sex, nor one that the age does not have", () => {
    const signs = ["abortion", "tremor", "cough", "fever", "paresis", "sudden-death"];
    for (const protocol of protocols.keys())
      for (const ageClass of classes)
        for (const sex of sexes)
          for (const id of due(protocol, ageClass, sex, signs)) {
            const definition = organs.find((organ) => organ.id === id)?.definition;
            if (definition?.sex !== undefined)
              expect([id, definition.sex.includes(sex ?? ("unknown" as Sex))]).toEqual([id, true]);
            if (definition?.exists !== undefined && ageClass !== undefined)
              expect([id, definition.exists.includes(ageClass)]).toEqual([id, true]);
          }
  });

  it("come in the order of the anatomy, each once", () => {
    const order = organs.map(({ id }) => id);
    for (const protocol of protocols.keys()) {
      const ids = due(protocol, "weaner", "female", ["cough", "tremor"]);
      expect(ids).toEqual(order.filter((id) => ids.includes(id)));
      expect(ids.length).toBeGreaterThan(0);
    }
  });

  it("do not hold what is left out, even when signs ask for it", () => {
    expect(due("full", "weaner", undefined, ["tremor"], ["nervous.brain"])).not.toContain("nervous.brain");
    expect(
      due("full", "weaner", undefined, ["tremor"], ["nervous"]).filter((id) => id.startsWith("nervous.")),
    ).toEqual([]);
  });

  it("grow with signs and never shrink", () => {
    for (const ageClass of classes) {
      const plain = due("full", ageClass);
      const asked = due("full", ageClass, undefined, ["tremor", "lameness", "fever"]);
      expect(plain.filter((id) => !asked.includes(id))).toEqual([]);
    }
  });
});

describe("organs due of a case", () => {
  it.each([
    ["pig: {age: 120 d}", "finisher", false],
    ["pig: {age: 120 d}\nselection: {signs: [tremor]}", "finisher", true],
    ["pig: {age: 120 d, class: weaner}", "weaner", true],
    ["pig: {age: 8 wk}", "weaner", true],
    ["", undefined, true],
    // A class or sign that cannot be read decides nothing.
    ["pig: {age: 120 d, class: fat}", "finisher", false],
    // What can be read beside it counts.
    ["pig: {age: 120 d}\nselection: {signs: [tremor, qqq]}", "finisher", true],
  ])("%s", (keys, ageClass, brain) => {
    const bytes = new TextEncoder().encode(smallCase("x", `${keys}\n`));
    const [one] = readCases(["-"], { input: { bytes, name: "x.yaml" } }).cases;
    expect([one?.ageClass, one?.due.some(({ id }) => id === "nervous.brain")]).toEqual([ageClass, brain]);
  });
});
