/** Figures, notes and names that cannot be right, at their limits. */
import { describe, expect, it } from "vitest";
import type { Example } from "../../src/lint/index.ts";
import { lintExample } from "./lay-example.ts";

const lint = (example: Example) => lintExample(example).findings.map(({ rule, path }) => `${rule} ${path}`);
const only = (rule: string, example: Example) => lint(example).filter((one) => one.startsWith(`${rule} `));
const messages = (rule: string, example: Example): string[] =>
  lintExample(example).findings.flatMap((one) => (one.rule === rule ? [one.message] : []));

describe("size-implausible", () => {
  const node = (organ: string, size: string): Example => ({
    case: `lymphoid: {${organ}: [{process: enlargement, distribution: diffuse, size: ${size}, colour: tan, consistency: firm, severity: marked, duration: chronic}]}`,
  });

  it.each([
    ["bronchial_nodes", "22 cm", 1],
    ["bronchial_nodes", "151 mm", 1],
    ["bronchial_nodes", "150 mm", 0],
    ["submandibular_nodes", "2 x 16 cm", 1],
    ["mesenteric_nodes", "22 cm", 0],
    ["mesenteric_nodes", "61 cm", 1],
  ])("%s of %s: %i", (organ, size, count) => {
    expect(only("size-implausible", node(organ, size))).toHaveLength(count);
  });
});

describe("volume-implausible", () => {
  const nose = (volume: string, weight = "17.5 kg"): Example => ({
    case: `pig: {weight: ${weight}}\nrespiratory: {nares: [{process: discharge, distribution: diffuse, volume: ${volume}, exudate: purulent}]}`,
  });

  // 0.5 % of the body weight, and 500 ml whatever the pig weighs.
  it.each([
    ["2 l", "17.5 kg", 1],
    ["88 ml", "17.5 kg", 1],
    ["87 ml", "17.5 kg", 0],
    ["501 ml", "", 1],
    ["500 ml", "", 0],
  ])("%s from the nose of a pig of %s: %i", (volume, weight, count) => {
    expect(only("volume-implausible", nose(volume, weight))).toHaveLength(count);
  });

  it("needs no weight to know the nose, and says whose fluid it is", () => {
    expect(messages("volume-implausible", nose("2 l", ""))).toEqual([
      "respiratory.nares[0].volume: 2 l from the nares of a pig. Check ml and l.",
    ]);
  });
});

describe("reading-implausible", () => {
  it.each([
    ["ammonia", "2200 ppm", 1],
    ["ammonia", "300 ppm", 0],
    ["carbon_dioxide", "40001 ppm", 1],
    ["carbon_dioxide", "9000 ppm", 0],
    ["dust", "5100 mg/m3", 1],
    ["dust", "100 mg/m3", 0],
    ["temperature", "240 °C", 1],
    ["temperature", "-12 °C", 0],
  ])("%s %s: %i", (key, value, count) => {
    const visit = `environment: [{group: nursery-2, at: 2026-04-20T08:30, ${key}: ${value}}]`;
    expect(only("reading-implausible", { visit })).toHaveLength(count);
  });
});

describe("onset-before-birth", () => {
  // The pig died on 2026-04-20.
  it.each([
    ["46 d", "2025-03-12", 1],
    ["58 d", "2026-02-20", 0],
    ["58 d", "3 mo", 1],
    ["58 d", "58 d", 0],
    ["8 wk", "63 d", 0],
    ["8 wk", "64 d", 1],
    ["12 h", "36 h", 0],
  ])("a pig of %s with signs since %s: %i", (age, onset, count) => {
    expect(
      only("onset-before-birth", { case: `pig: {age: ${age}, class: }\nselection: {onset: ${onset}}` }),
    ).toHaveLength(count);
  });

  it("is the one line about it", () => {
    expect(lint({ case: "selection: {onset: 2025-03-12}" })).toEqual(["onset-before-birth selection.onset"]);
  });
});

describe("pool-unnamed", () => {
  const taken = (text: string, more = ""): Example => ({
    case: `samples: [{id: 01-A, from: blood, ${text}, into: edta-tube, for: [pcr]${more}}]`,
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
  });

  it.each([
    ['site: "pooled with 02, left ear"', "", 1],
    ["note: pool of five littermates", "", 1],
    ["note: in one bag with birch-2026-04-20-02", "", 1],
    ["note: pooled from both jugular veins", "", 0],
    ["note: never pooled with 02", "", 0],
    ["note: pooled with 02", ", pooled_with: [birch-2026-04-20-02]", 0],
    ["note: pooled with 12 drops of saline", "", 0],
  ])("%s%s: %i", (text, more, count) => {
    expect(only("pool-unnamed", taken(text, more))).toHaveLength(count);
  });
});

describe("protocol-contradicts-death", () => {
  it("stands at the manner where the settings choose the protocol", () => {
    const settings = "protocol: slaughter-check";
    expect(only("protocol-contradicts-death", { case: "protocol: ", settings })).toEqual([
      "protocol-contradicts-death death.manner",
    ]);
  });

  it("holds for a protocol of the practice that starts from it", () => {
    const settings = "protocols: {line: {extends: slaughter-check}}";
    expect(only("protocol-contradicts-death", { case: "protocol: line", settings })).toHaveLength(1);
    const slaughtered = "death: {manner: slaughtered, method: exsanguination}\nselection: {basis: random}";
    expect(only("protocol-contradicts-death", { case: `protocol: line\n${slaughtered}`, settings })).toEqual(
      [],
    );
  });
});

describe("names", () => {
  it("a mistyped scale of another reader is told, with the nearest one", () => {
    const text = "readings: [{reader: B. Second, grades: {maff-1987: 3, embrapa-1993: 2}}]";
    expect(messages("grade-scale-unknown", { case: text })).toEqual([
      'readings[0].grades.maff-1987: there is no scale "maff-1987". Did you mean maff-1978?',
    ]);
  });

  it.each([
    ["maff-1978: 6", "readings[0].grades.maff-1978: 6 is out of range; maff-1978 goes from 0 to 5."],
    ["maff-1978: 2.5", "readings[0].grades.maff-1978: 2.5 is not a grade; maff-1978 has whole grades only."],
  ])("a grade of another reader that the scale does not have is told: %s", (grade, message) => {
    const text = `readings: [{reader: B. Second, grades: {${grade}}}]`;
    expect(messages("observation-out-of-range", { case: text })).toEqual([message]);
  });

  it("a rule with its words in another order is recognised", () => {
    const text = "accepted: [{rule: pig-treated, because: the only one ill}]";
    expect(messages("accepted-unknown-rule", { case: text })).toEqual([
      'accepted: there is no rule "pig-treated". Did you mean treated-pig?',
    ]);
  });

  it("a group as people write it is answered with the name that can stand here", () => {
    expect(messages("case-format", { case: "pig: {group: Nursery 2}" }).join()).toContain(
      "Did you mean nursery-2?",
    );
  });

  it.each([
    ["pig: {age: 400 d, weight: 180 kg, group: nursery-2}", "group-class-mismatch"],
    ["pig: {class: adult, age: 58 d}", "age-class-mismatch"],
  ])("no message says a adult: %s", (text, rule) => {
    const found = messages(rule, { case: text });
    expect(found.length).toBeGreaterThan(0);
    expect(found.join()).not.toMatch(/\ba [aeiou]/);
  });
});

describe("grade-contradicts-parts", () => {
  const lungs = (more: string): Example => ({ case: `respiratory: {lungs: {${more}}}` });

  it("names the grade and what the parts give", () => {
    expect(messages("grade-contradicts-parts", lungs("grades: {goodwin-1971: 40}"))).toEqual([
      "respiratory.lungs.grades.goodwin-1971: grade 40, but the parts recorded beside it give 13.75. Correct the grade or the part that is wrong; until then score gives neither.",
    ]);
  });

  it("is silent where a missing part may give the grade, or where the scale is for another organ", () => {
    const missing = (grade: number) =>
      lungs(`consolidation: {accessory: }, grades: {goodwin-1971: ${grade}}`);
    expect(only("grade-contradicts-parts", missing(15))).toEqual([]);
    expect(messages("grade-contradicts-parts", missing(40))).toEqual([
      expect.stringContaining("grade 40, but the parts recorded beside it give 13.3 to 18.3."),
    ]);
    expect(only("grade-contradicts-parts", lungs("grades: {valros-2020: 1}"))).toEqual([]);
  });

  it("is asked of every case, so that nothing is accepted in vain", () => {
    const text = "accepted: [{rule: grade-contradicts-parts, because: read twice}]";
    expect(lint({ case: text })).toEqual(["accepted-unused accepted[0].rule"]);
  });
});

describe("tests for the toxin", () => {
  const tests = (entry: string): string => `tests: [{test: toxin-gene, ${entry}}]`;
  const swab =
    "samples: [{id: 01-A, from: respiratory.nares, into: dry-swab, for: [pcr], at: 2026-04-20T10:05}]";

  it.each([
    ["result: positive, at: 2026-04-19", 1],
    ["result: positive, at: 2026-04-20", 0],
    ["result: pending, at: 2026-04-28", 1],
    ["result: pending", 0],
  ])("%s: %i", (entry, count) => {
    expect(only("toxin-test-misdated", { visit: tests(entry) })).toHaveLength(count);
  });

  it("an answer is not older than its first sample", () => {
    const later = swab.replace("04-20T10", "04-22T10");
    const visit = tests("result: positive, at: 2026-04-21");
    expect(only("toxin-test-misdated", { case: later, visit })).toEqual(["toxin-test-misdated tests[0].at"]);
    expect(only("toxin-test-misdated", { case: swab, visit })).toEqual([]);
  });

  it("a day that does not exist is told", () => {
    expect(only("visit-date-impossible", { visit: tests("result: positive, at: 2026-02-30") })).toEqual([
      "visit-date-impossible tests[0].at",
    ]);
  });

  it.each([
    ["lungs of three finishers", 1],
    ["blood", 1],
    ["nasal swabs of six weaners", 0],
    ["Tonsils", 0],
    ["isolate of pig 03", 0],
  ])("from %s: %i", (from, count) => {
    expect(only("toxin-test-material", { visit: tests(`from: ${from}, result: negative`) })).toHaveLength(
      count,
    );
  });

  const lost =
    "respiratory: {turbinates: {left: {dorsal: 3, ventral: 4}, right: {dorsal: 3, ventral: 4}, septum: marked, grades: {maff-1978: 5, embrapa-1993: 3}}}";

  it.each([
    ["positive", 0],
    ["negative", 0],
    ["pending", 0],
  ])("a test that is %s was asked for", (result, count) => {
    expect(only("toxin-gene-not-asked", { case: lost, visit: tests(`result: ${result}`) })).toHaveLength(
      count,
    );
    expect(only("toxin-gene-not-asked", { case: lost })).toHaveLength(1);
  });
});

describe("containers", () => {
  const blood = (tube: string, test: string): Example => ({
    case: `samples: [{id: 01-A, from: blood, into: ${tube}, for: [${test}]}]`,
  });

  it.each(["edta-tube", "heparin-tube", "citrate-tube"])("virus is isolated from blood in the %s", (tube) => {
    expect(only("virus-isolation-medium", blood(tube, "virus-isolation"))).toEqual([]);
  });

  it("heparin disturbs the PCR, EDTA does not", () => {
    expect(only("pcr-from-heparin", blood("heparin-tube", "pcr"))).toHaveLength(1);
    expect(only("pcr-from-heparin", blood("edta-tube", "pcr"))).toEqual([]);
  });

  it("what is frozen is frozen, not in frozen", () => {
    const text = "samples: [{id: 01-A, from: lymphoid.spleen, into: frozen, for: [histology]}]";
    expect(messages("histology-of-frozen", { case: text }).join()).toMatch(
      /^samples\[0\]\.into: 01-A is for histology but frozen: /,
    );
  });
});
