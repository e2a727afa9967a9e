/** Slips that once passed in silence, and the honest records beside them. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { type Example, lintCases } from "../../src/lint/index.ts";
import { parcelExample } from "../../src/lint/shared/parcel-example.ts";
import { lintExample } from "./lay-example.ts";

const only = (rule: string, example: Example): string[] =>
  lintExample(example).findings.flatMap((one) => (one.rule === rule ? [one.path] : []));
const messages = (rule: string, example: Example): string[] =>
  lintExample(example).findings.flatMap((one) => (one.rule === rule ? [one.message] : []));

describe("figures", () => {
  it.each([
    ["humidity", "7.6 %", 1],
    ["humidity", "15 %", 0],
    ["humidity", "100 %", 0],
    ["carbon_dioxide", "34 ppm", 1],
    ["carbon_dioxide", "349 ppm", 1],
    ["carbon_dioxide", "410 ppm", 0],
  ])("%s of %s in a room: %i", (key, value, count) => {
    const visit = `environment: [{group: nursery-2, at: 2026-04-20T08:30, ${key}: ${value}}]`;
    expect(only("reading-implausible", { visit })).toHaveLength(count);
  });

  it.each([
    ["111 °C", 1],
    ["61 °C", 1],
    ["-46 °C", 1],
    ["60 °C", 0],
    ["-18 °C", 0],
  ])("a carcass that lay at %s: %i", (ambient, count) => {
    expect(only("temperature-implausible", { case: `opened: {ambient: ${ambient}}` })).toHaveLength(count);
  });

  it.each([
    ["3100 in 2 min", 1],
    ["601 in 2 min", 1],
    ["600 in 2 min", 0],
    ["64 in 2 min", 0],
    ["0 in 5 min", 0],
    ["4 in 0 min", 1],
  ])("%s: %i", (text, count) => {
    for (const key of ["sneezing", "coughing"])
      expect(
        only("cough-count-implausible", { visit: `groups: {nursery-2: {${key}: ${text}}}` }),
      ).toHaveLength(count);
  });

  it.each([
    [{ weight: "1200 kg" }, ["weight"]],
    [{ weight: "100 kg" }, []],
    [{ weight: "180 kg", by: "hand" }, []],
    [{ weight: "1200 kg", by: "hand" }, ["weight"]],
    [{ dry_ice: "2000 kg", coolant: "dry-ice", vented: "yes" }, ["dry_ice"]],
    [{ total_volume: "500 l" }, ["total_volume"]],
    [{ mark_side: "60 cm", outer_side: "250 mm" }, ["mark_side"]],
    [{ mark_side: "60 cm", outer_side: "" }, ["mark_side"]],
    [{ mark_side: "250 mm", outer_side: "250 mm" }, []],
    [{ mark_side: "60 mm", outer_side: "25 cm" }, []],
    [{ outer_side: "250 cm" }, ["outer_side"]],
  ])("a parcel with %j", (changes, keys) => {
    expect(only("parcel-figure-implausible", { visit: parcelExample(changes) })).toEqual(
      keys.map((key) => `parcels[0].${key}`),
    );
  });
});

describe("groups", () => {
  const group = (fields: string): Example => ({ visit: `groups: {nursery-2: {${fields}}}` });

  it.each([
    ["affected: 2, dead: 3", 1],
    ["affected: 3, dead: 3", 0],
    ["affected: , dead: 3", 0],
    ["affected: 0, dead: 3", 1],
    ["affected: 0, dead: 3, onset: ", 0],
    ["affected: 2, dead: 3, note: two were crushed", 0],
    ["affected: 2, dead: 3, note: noisy room", 1],
  ])("%s: %i", (fields, count) => {
    expect(only("group-dead-unaffected", group(fields))).toHaveLength(count);
  });

  it("more dead than pigs are told once", () => {
    const { findings } = lintExample(group("at_risk: 238, affected: 40, dead: 500"));
    // That so many died is an alarm, whatever is wrong with the counts.
    expect(findings.map(({ rule }) => rule)).toEqual(["alarm-in-herd-exclude", "group-counts-impossible"]);
  });

  // The visit was on 2026-04-20.
  it.each([
    ["onset: 2025-04-10", 1],
    ["onset: 2024-12-10", 1],
    ["onset: 2025-11-01", 0],
    ["onset: 2025-08-01", 0],
    ["onset: 2025-04-10, note: on and off since spring 2025", 0],
    ["onset: 2025-04-10, note: chronic", 0],
    ["onset: 2025-04-10, note: noisy", 1],
  ])("%s: %i", (fields, count) => {
    expect(only("group-onset-year", group(fields))).toHaveLength(count);
  });

  it("the year that was meant is shown", () => {
    expect(messages("group-onset-year", group("onset: 2025-04-10")).join()).toContain("(2026-04-10?)");
  });

  it.each([
    ["33", 1],
    ["'33'", 1],
    ["13", 1],
    ["12", 0],
    ["south 33", 0],
    ["B3", 0],
    ["", 0],
  ])("pen %s of twelve: %i", (pen, count) => {
    expect(only("pen-beyond-group", { case: `pig: {pen: ${pen}}` })).toHaveLength(count);
  });

  it("pens that run through the house are no slip", () => {
    const others = ["case: birch-2026-04-20-02\npig: {tag: '902', pen: 31}"];
    expect(only("pen-beyond-group", { case: "pig: {pen: 33}", others })).toEqual([]);
    expect(
      only("pen-beyond-group", { case: "pig: {pen: 33}", others: [`${others[0]}`.replace("31", "3")] }),
    ).toEqual(["pig.pen"]);
  });
});

describe("samples", () => {
  const sample = (fields: string): Example => ({ case: `samples: [{id: 01-A, ${fields}}]` });

  it.each([
    ["from: lymphoid.tonsil, into: dry-swab, for: [serology]", 1],
    ["from: lymphoid.tonsil, into: transport-medium, for: [pcr, serology]", 1],
    ["from: lymphoid.tonsil, into: dry-swab, for: [pcr]", 0],
    ["from: blood, into: dry-swab, for: [serology]", 0],
    ["from: oral_fluid, into: dry-swab, for: [serology]", 0],
    ["from: serosa.pleural_space, into: plain-tube, for: [serology]", 0],
  ])("serology, %s: %i", (fields, count) => {
    expect(only("test-impossible", sample(fields))).toHaveLength(count);
  });

  it.each([
    ["from: respiratory.lungs, into: frozen, for: [culture]", 1],
    ["from: respiratory.lungs, into: frozen, for: [pcr, culture]", 1],
    ["from: respiratory.lungs, into: frozen, for: [pcr, virus-isolation]", 0],
    ["from: respiratory.lungs, into: chilled, for: [culture]", 0],
  ])("culture, %s: %i", (fields, count) => {
    expect(only("culture-of-frozen", sample(fields))).toHaveLength(count);
  });
});

describe("a frozen carcass", () => {
  it.each([
    ["death: {at: 2026-04-20T09:15}", 1],
    ["death: {at: 2026-04-20T07:41}", 1],
    ["death: {at: 2026-04-20T07:40}", 0],
    ["death: {at: 2026-04-18T09:15}", 0],
    ["death: {manner: found-dead, method: , at: 2026-04-20T09:15}", 0],
    ["death: {at: 2026-04-20}", 0],
  ])("%s, opened at 9:40: %i", (death, count) => {
    expect(
      only("carcass-state-implausible", { case: `${death}\nopened: {state: frozen}\nsamples: ` }),
    ).toHaveLength(count);
  });
});

describe("one cause", () => {
  it("a carcass that cannot be frozen is told once, and nothing of its histology", () => {
    const text =
      "opened: {state: frozen}\nsamples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], at: 2026-04-20T10:00}]";
    expect(only("carcass-state-implausible", { case: text })).toHaveLength(1);
    expect(only("frozen-carcass-histology", { case: text })).toEqual([]);
    const later = `death: {at: 2026-04-18T09:10}\n${text}`;
    expect(only("frozen-carcass-histology", { case: later })).toHaveLength(1);
  });

  it("a temperature that cannot be says nothing of the worth of samples", () => {
    const late = (ambient: string): Example => ({
      case: `death: {at: 2026-04-19T23:40}\nopened: {ambient: ${ambient}, note: in the pen}\nsamples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [culture], at: 2026-04-20T10:00}]`,
    });
    expect(only("culture-late", late("38 °C"))).toHaveLength(1);
    expect(only("culture-late", late("111 °C"))).toEqual([]);
    expect(only("temperature-implausible", late("111 °C"))).toEqual(["opened.ambient"]);
  });
});

describe("lungs", () => {
  const lobes = (cranial: number, caudal: number, parts = 0): string =>
    `consolidation: {left_cranial: ${cranial}, left_middle: ${cranial}, left_caudal: ${caudal}, right_cranial: ${cranial}, right_middle: ${cranial}, right_caudal: ${caudal}, accessory: 0}, caudal_cranial_part: {left: ${parts}, right: ${parts}}`;
  const finding = (word: string, more = ""): string =>
    `{process: consolidation, distribution: ${word}, extent: 5 %, colour: dark-red, consistency: firm${more}}`;
  const lungs = (graded: string, findings: string, diagnosis = ""): Example => ({
    case: `respiratory: {lungs: {${graded}, findings: [${findings}]}}\ndiagnosis: {morphologic: [${diagnosis === "" ? "" : JSON.stringify(diagnosis)}]}`,
  });

  it.each([
    [lobes(30, 0), finding("caudodorsal"), 1],
    [lobes(30, 0), finding("cranioventral"), 0],
    [lobes(30, 5), finding("caudodorsal"), 0],
    [lobes(0, 30), finding("cranioventral"), 1],
    [lobes(0, 30, 40), finding("cranioventral"), 0],
    [lobes(0, 30), finding("caudodorsal"), 0],
    [lobes(30, 0), `${finding("caudodorsal")}, ${finding("cranioventral", ", severity: mild")}`, 0],
    [lobes(30, 0), finding("caudodorsal", ", certainty: artefact"), 0],
    [lobes(30, 0).replace("accessory: 0", "accessory: "), finding("caudodorsal"), 0],
  ])("%s beside %s: %i", (graded, findings, count) => {
    expect(only("distribution-contradicts-lobes", lungs(graded, findings))).toHaveLength(count);
  });

  it.each([
    [lobes(30, 0), "cranioventral", "Lungs: pleuropneumonia, caudodorsal, acute, marked", 1],
    [lobes(30, 0), "cranioventral", "caudodorsal pleuropneumonia", 1],
    [lobes(30, 0), "cranioventral", "Lungs: bronchopneumonia, cranioventral, acute, mild", 0],
    [lobes(30, 0), "cranioventral", "Lungs: pneumonia, cranioventral and caudodorsal, acute, mild", 0],
    [lobes(30, 0), "patchy, site: right caudal lobe", "Lungs: pleuropneumonia, caudodorsal, acute, mild", 0],
    [lobes(30, 10), "cranioventral", "Lungs: pleuropneumonia, caudodorsal, acute, marked", 0],
    [lobes(0, 30), "caudodorsal", "Lungs: bronchopneumonia, cranioventral, acute, mild", 1],
    [lobes(30, 0), "cranioventral", "Pleura: pleurisy, caudodorsal, chronic, mild", 0],
  ])("%s, a finding %s, and the diagnosis %s: %i", (graded, word, diagnosis, count) => {
    expect(only("diagnosis-against-lobes", lungs(graded, finding(word), diagnosis))).toHaveLength(count);
  });

  it("a necrosis without a place may be what the diagnosis speaks of", () => {
    const necrosis = (site: string): string =>
      `${finding("cranioventral")}, {process: necrosis, distribution: focal, size: 40 mm, colour: dark-red${site}}`;
    const told = (site: string): string[] =>
      only(
        "diagnosis-against-lobes",
        lungs(lobes(30, 0), necrosis(site), "Lungs: pleuropneumonia, caudodorsal, acute, marked"),
      );
    expect(told("")).toEqual([]);
    expect(told(", site: left middle lobe")).toEqual(["diagnosis.morphologic[0]"]);
  });

  it("pleurisy over the caudal lobes may be what the diagnosis speaks of", () => {
    const { case: text = "" } = lungs(
      lobes(30, 0),
      finding("cranioventral"),
      "Lungs: pleuropneumonia, caudodorsal, acute, marked",
    );
    const pleura = "{pleura: {state: , pleurisy: {left: none, right: dorsocaudal-focal}}, lungs";
    expect(only("diagnosis-against-lobes", { case: text.replace("{lungs", pleura) })).toEqual([]);
  });
});

describe("conchae", () => {
  const snout = (left: string, right: string, more: string): Example => ({
    case: `respiratory: {turbinates: {left: {${left}}, right: {${right}}, grades: , ${more}}}`,
  });
  const [much, slight, none] = ["dorsal: 1, ventral: 3", "dorsal: 0, ventral: 1", "dorsal: 0, ventral: 0"];

  it.each([
    [much, much, 'note: "atrophy, unilateral left"', 1],
    [much, much, "note: one-sided atrophy", 1],
    [much, much, "note: loss on the left only; left only atrophy", 1],
    [much, none, 'note: "atrophy, unilateral left"', 0],
    [much, slight, 'note: "atrophy, unilateral left"', 0],
    [slight, slight, 'note: "atrophy, unilateral left"', 1],
    [much, much, "note: atrophy not unilateral", 0],
    [much, much, "note: atrophy worse on the left", 0],
    [much, much, "note: unilateral discharge left beside the atrophy", 0],
    [much, much, "findings: [{process: atrophy, distribution: unilateral, site: left, severity: marked}]", 1],
    [much, none, "findings: [{process: atrophy, distribution: unilateral, site: left, severity: marked}]", 0],
    [much, much, "findings: [{process: atrophy, distribution: bilateral, severity: marked}]", 0],
  ])("left %s, right %s, %s: %i", (left, right, more, count) => {
    expect(only("unilateral-loss-contradiction", snout(left, right, more))).toHaveLength(count);
  });
});

describe("blood and its colour", () => {
  const sac = (fields: string): Example => ({
    case: `cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 5 ml, ${fields}}]}`,
  });

  it.each([
    ["exudate: haemorrhagic, colour: white", 1],
    ["exudate: haemorrhagic, colour: yellow", 1],
    ["exudate: haemorrhagic, colour: dark-red", 0],
    ["exudate: haemorrhagic, colour: grey", 0],
    ["exudate: haemorrhagic, colour: brown", 0],
    ["exudate: serosanguineous, colour: white", 1],
    ["exudate: serosanguineous, colour: yellow", 0],
    ["exudate: fibrinous, colour: white", 0],
    ["exudate: haemorrhagic", 0],
  ])("%s: %i", (fields, count) => {
    expect(only("process-impossible", sac(fields))).toHaveLength(count);
  });

  it("names the exudate", () => {
    expect(messages("process-impossible", sac("exudate: haemorrhagic, colour: white"))).toEqual([
      "cardiovascular.pericardium[0].colour: white does not go with haemorrhagic effusion; blood makes it red to brown. Correct the colour or the exudate.",
    ]);
  });
});

describe("tests for the toxin", () => {
  it.each([
    ["result: negative", 1],
    ["result: positive", 1],
    ["result: pending", 0],
    ["result: negative, at: 2036-04-28", 1],
    ["result: negative, at: 2027-04-22", 1],
    ["result: negative, at: 2027-04-21", 0],
    ["result: negative, at: 2026-06-01", 0],
  ])("%s: %i", (entry, count) => {
    const visit = `tests: [{test: toxin-gene, from: nasal swabs, ${entry}}]`;
    expect(only("toxin-test-misdated", { visit })).toHaveLength(count);
  });
});

describe("text-says-nothing", () => {
  const told = (example: Example): string[] => only("text-says-nothing", example);

  it.each([
    ['examiner: "?"', "examiner"],
    ["examiner: n/a", "examiner"],
    ["examiner: 'Unknown'", "examiner"],
    ["pig: {tag: '-'}", "pig.tag"],
    ["stomach: {pars_oesophagea: {not_examined: '???'}}", "stomach.pars_oesophagea.not_examined"],
    ["stomach: {pars_oesophagea: {not_examined: tbd}}", "stomach.pars_oesophagea.not_examined"],
    ["selection: {treated: {with: '...', last: 12 h}}", "selection.treated.with"],
    ["diagnosis: {differentials: ['?']}", "diagnosis.differentials[0]"],
    ["readings: [{reader: '-', grades: {maff-1978: 2}}]", "readings[0].reader"],
  ])("%s", (text, path) => {
    expect(told({ case: text })).toEqual([path]);
  });

  it.each([
    ['veterinarian: "-"', "veterinarian"],
    ["veterinarian: xxx", "veterinarian"],
    ["complaint: '??'", "complaint"],
    ["complaint: TBD", "complaint"],
    ["pigs: {few: '-'}", "pigs.few"],
    ["vaccinations: ['?']", "vaccinations[0]"],
  ])("of a visit: %s", (text, path) => {
    expect(told({ visit: text })).toEqual([path]);
  });

  it.each([
    "examiner: 李",
    "examiner: A. N. Other",
    "pig: {tag: none}",
    "stomach: {pars_oesophagea: {not_examined: unknown}}",
    "selection: {treated: {with: unknown, last: 12 h}}",
    "external: {skin: {state: normal, note: '?'}}",
    "diagnosis: {comment: n/a}",
  ])("%s is honest enough", (text) => {
    expect(told({ case: text })).toEqual([]);
  });

  it.each([
    ["01632 960114", 0],
    ["n/a", 1],
    ["'?'", 1],
  ])("contact %s: %i", (contact, count) => {
    expect(told({ visit: parcelExample({ contact }) })).toHaveLength(count);
  });

  it("a farm that reported nothing is an answer", () => {
    expect(told({ visit: "complaint: none" })).toEqual([]);
  });
});

describe("invisible-character", () => {
  it.each([
    ["2217\ufe0f", 1],
    ["22\u200b17", 1],
    ["22\u00ad17", 1],
    ["2217\u00a0", 1],
    ["22\u300017", 1],
    ["2217 ", 1],
    ["2217", 0],
    ["left 2217", 0],
    ["1\ufe0f\u20e3", 0],
  ])("tag %j: %i", (tag, count) => {
    expect(only("invisible-character", { case: `pig: {tag: ${JSON.stringify(tag)}}` })).toHaveLength(count);
  });

  it("stands in the visit as well", () => {
    expect(only("invisible-character", { visit: 'veterinarian: "R. Sal\u200blow"' })).toEqual([
      "veterinarian",
    ]);
  });
});

describe("farm.yaml", () => {
  const found = (line: string): string[] => {
    const folder = mkdtempSync(join(tmpdir(), "carcase-slips-"));
    try {
      cpSync("tests/fixtures/birch-farm", folder, { recursive: true });
      const file = join(folder, "farm.yaml");
      writeFileSync(file, `${readFileSync(file, "utf8")}${line}\n`);
      return lintCases(readCases([folder])).findings.map(
        (one) => `${one.rule} ${one.path} ${one.file === file ? "here" : "elsewhere"}`,
      );
    } finally {
      rmSync(folder, { recursive: true });
    }
  };

  it.each([
    ["name: Birch Farm", []],
    ['name: "?"', ["text-says-nothing name here"]],
    ["name: unknown", ["text-says-nothing name here"]],
    ['system: "farrow-\u200bto-finish"', ["invisible-character system here"]],
  ])("%j", (line, expected) => {
    expect(found(line)).toEqual(expected);
  });
});

describe("honest records stay silent", () => {
  it.each([
    ["temperature-implausible", { case: "pig: {age: 1 d, temperature: 32.8 °C}" }],
    ["invisible-character", { case: 'note: "auto\\u00adlysis"' }],
    ["text-says-nothing", { case: "examiner: Na" }],
    ["text-says-nothing", { visit: "veterinarian: Null" }],
    [
      "parcel-figure-implausible",
      {
        visit: parcelExample({
          by: "hand",
          total_volume: "65 l",
          largest_primary: "25 l",
          outer_side: "1600 mm",
        }),
      },
    ],
    ["parcel-figure-implausible", { visit: parcelExample({ weight: "120 kg" }) }],
    ...[
      "two overlain by the sow",
      "smothered",
      "euthanised, hernia",
      "put down",
      "zwei erdrückt",
      "verendet",
    ].map(
      (note) =>
        [
          "group-dead-unaffected",
          { visit: `groups: {nursery-2: {affected: 2, dead: 4, note: "${note}"}}` },
        ] as const,
    ),
    ...["since last spring", "ever since the new barn", "seit über einem Jahr"].map(
      (note) =>
        ["group-onset-year", { visit: `groups: {nursery-2: {onset: 2025-04-10, note: "${note}"}}` }] as const,
    ),
    ...[
      "ventral scroll wholly lost on the left only",
      "dorsal scroll lost on the left only, ventral on both",
      "epithelium lost on one side only",
      "atrophy on both, traced right only",
    ].map(
      (note) =>
        [
          "unilateral-loss-contradiction",
          {
            case: `respiratory: {turbinates: {left: {dorsal: 1, ventral: 4}, right: {dorsal: 1, ventral: 2}, grades: , note: "${note}"}}`,
          },
        ] as const,
    ),
  ] as const satisfies readonly (readonly [string, Example])[])("%s: %j", (rule, example) => {
    expect(only(rule, example)).toEqual([]);
  });

  it.each([
    ["text-says-nothing", { case: "examiner: na" }],
    ["text-says-nothing", { case: "examiner: nn" }],
    ["text-says-nothing", { case: "examiner: no name" }],
    ["text-says-nothing", { case: "stomach: {pars_oesophagea: {not_examined: later}}" }],
    ["text-says-nothing", { case: "diagnosis: {differentials: [xx]}" }],
    ["text-says-nothing", { visit: "complaint: unknown" }],
    ["temperature-implausible", { case: "pig: {age: 1 d, temperature: 24 °C}" }],
    ["temperature-implausible", { case: "pig: {age: 120 d, temperature: 29.3 °C}" }],
    ["invisible-character", { case: 'pig: {tag: "9\\u00ad01"}' }],
  ] as const satisfies readonly (readonly [string, Example])[])(
    "and %s is still told: %j",
    (rule, example) => {
      expect(only(rule, example)).toHaveLength(1);
    },
  );
});
