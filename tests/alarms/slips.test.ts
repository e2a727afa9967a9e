/** A slip in the word of a lesion is a fault of the file; it does not silence the alarm. */
import { describe, expect, it } from "vitest";
import { openAlarms } from "../../src/alarms/index.ts";
import { alarmPatterns, systems } from "../../src/knowledge/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { every } from "../every.ts";
import { type AlarmFiles, readAlarmFiles } from "./alarm-archive.ts";

type Keyed = Record<string, unknown>;

const isKeyed = (value: unknown): value is Keyed =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The alarms of the files, and whether every fault of the format is still told. */
function read(files: AlarmFiles): { open: string[]; faults: number } {
  const { visits } = readAlarmFiles(files);
  return {
    open: [...new Set(visits.flatMap(openAlarms).map(({ pattern }) => pattern.id))],
    faults: visits.flatMap(({ faults, cases }) => [...faults, ...cases.flatMap((one) => one.faults)]).length,
  };
}
const readCase = (one: object): ReturnType<typeof read> => read({ cases: [one] });

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Every organ entry that is a list of findings, written another way. */
function organsAs(one: Keyed, rewrite: (findings: Keyed[]) => unknown): Keyed {
  const copy = structuredClone(one);
  for (const { id } of systems) {
    const system = copy[id];
    if (!isKeyed(system)) continue;
    for (const [organ, entry] of Object.entries(system))
      if (Array.isArray(entry)) system[organ] = rewrite(entry as Keyed[]);
  }
  return copy;
}

const keysAs = (value: Keyed, rewrite: (key: string) => string): Keyed =>
  Object.fromEntries(Object.entries(value).map(([key, entry]) => [rewrite(key), entry]));

const slips: Record<string, (one: Keyed) => Keyed> = {
  "a capital in the process": (one) =>
    organsAs(one, (findings) => findings.map((f) => ({ ...f, process: capital(String(f.process)) }))),
  "a plural": (one) =>
    organsAs(one, (findings) => findings.map((f) => ({ ...f, process: `${String(f.process)}s` }))),
  "the process in a list": (one) =>
    organsAs(one, (findings) => findings.map((f) => ({ ...f, process: [f.process, "scar"] }))),
  "a capital in the key": (one) =>
    organsAs(one, (findings) =>
      findings.map((f) => keysAs(f, (key) => (key === "process" ? "Process" : key))),
    ),
  "capitals in all words": (one) =>
    organsAs(one, (findings) =>
      findings.map((f) =>
        Object.fromEntries(
          Object.entries(f).map(([key, entry]) => [key, typeof entry === "string" ? capital(entry) : entry]),
        ),
      ),
    ),
  "every word in a list": (one) =>
    organsAs(one, (findings) =>
      findings.map((f) =>
        Object.fromEntries(
          Object.entries(f).map(([key, entry]) => [key, typeof entry === "string" ? [entry] : entry]),
        ),
      ),
    ),
  "a finding without its list": (one) =>
    organsAs(one, (findings) => (findings.length === 1 ? findings[0] : findings)),
  "a list in a list": (one) => organsAs(one, (findings) => [findings]),
  "findings without their list": (one) =>
    organsAs(one, (findings) => (findings.length === 1 ? { findings: findings[0] } : findings)),
  "a side of an organ": (one) => organsAs(one, (findings) => ({ left: findings })),
  "beside a state": (one) => organsAs(one, (findings) => ({ state: "changed", findings })),
  "a capital in the organ": (one) => {
    const copy = structuredClone(one);
    for (const { id } of systems) if (isKeyed(copy[id])) copy[id] = keysAs(copy[id], capital);
    return copy;
  },
  "a capital in the system": (one) =>
    keysAs(one, (key) => (systems.some(({ id }) => id === key) ? capital(key) : key)),
};

const firing = alarmPatterns.flatMap((pattern) =>
  pattern.examples
    .filter(({ expect: what }) => what === "fires")
    .map((example) => ({
      name: `${pattern.id}: ${example.name}`,
      id: pattern.id,
      visit: example.visit ?? {},
      settings: { notifiable: pattern.fires === "when-listed" ? [pattern.id] : [] },
      cases: example.cases as Keyed[],
    })),
);

const name = (one: { readonly name: string }): string => one.name;

describe.each(Object.entries(slips))("%s", (_, slip) => {
  every(
    "does not silence any alarm",
    firing,
    ({ id, visit, settings, cases }) => {
      const { open, faults } = read({ settings, visit, cases: cases.map(slip) });
      expect(open).toContain(id);
      const changed = cases.some((one) => JSON.stringify(slip(one)) !== JSON.stringify(one));
      expect(faults > 0).toBe(changed);
    },
    name,
  );
});

describe("a letter left out of a lesion", () => {
  every(
    "does not silence any alarm",
    firing,
    ({ id, visit, settings, cases }) => {
      const words = new Set(
        cases.flatMap((one) =>
          [...JSON.stringify(one).matchAll(/"process":"(\w{6,})"/g)].map(([, word]) => word ?? ""),
        ),
      );
      for (const word of words)
        for (let at = 0; at < word.length; at++) {
          const slipped = word.slice(0, at) + word.slice(at + 1);
          const written = JSON.stringify(cases).replaceAll(`"process":"${word}"`, `"process":"${slipped}"`);
          const { open } = read({ settings, visit, cases: JSON.parse(written) as object[] });
          expect({ slipped, open }).toEqual({ slipped, open: expect.arrayContaining([id]) });
        }
    },
    name,
  );
});

describe("a vesicle in other words", () => {
  it.each([
    { feet: [{ process: "blister" }] },
    { feet: [{ process: "Blisters" }] },
    { feet: [{ process: "aphthe" }] },
    { feet: [{ process: "Vesikel" }] },
    { feet: [{ process: "ruptured vesicles" }] },
    { feet: [{ process: "vesicular lesions" }] },
    { feet: [{ lesion: "vesicle" }] },
    { feet: ["vesicle"] },
    { feet: "vesicle" },
    { feet: "blisters at the coronary band" },
    { feet: { process: "vesicle", size: "10 mm" } },
    { feet: { vesicles: "present" } },
    { feet: { state: "vesicles" } },
    { feet: { left: [{ process: "vesicle" }] } },
    { feet: [[{ process: "vesicle" }]] },
    { feets: [{ process: "vesicle" }] },
    { Feet: [{ process: "vesicle" }], feet: "normal" },
    [{ process: "vesicle" }],
    "vesicles on the snout",
  ])("stops: %j", (external) => {
    const { open, faults } = readCase({ external });
    expect(open).toEqual(["vesicles"]);
    expect(faults).toBeGreaterThan(0);
  });

  it.each([
    { External: { feet: [{ process: "vesicle" }] }, external: { skin: "normal" } },
    { feet: [{ process: "vesicle" }] },
    { vesicles: "present" },
    { alarm_check: { vesicles: "Present" } },
    { alarm_check: { vesicles: "yes" } },
    { alarm_check: { vesicles: true } },
    { alarm_check: { vesicles: 3 } },
    { alarm_check: { vesicles: "suspected?" } },
    { alarm_check: { vesicles: { present: "yes" } } },
    { alarm_check: { vesicles: "two on the left hind foot" } },
    { alarm_check: { vesicle: "present" } },
    { alarm_check: ["vesicles"] },
    { alarm_check: "vesicles" },
  ])("stops wherever it stands: %j", (one) => {
    const { open, faults } = readCase(one);
    expect(open).toEqual(["vesicles"]);
    expect(faults).toBeGreaterThan(0);
  });
});

describe("an organ that stands elsewhere or under another name", () => {
  const vesicle = [{ process: "vesicle" }];

  it.each([
    { external: "normal", feet: vesicle },
    { external: "normal", Feet: vesicle },
    { external: "normal", locomotor: { feet: vesicle } },
    { upper_digestive: "normal", mouth: vesicle },
    { external: { claws: vesicle } },
    { external: { hooves: vesicle } },
    { external: { coronary_band: vesicle } },
    { external: { udder: vesicle } },
    { external: { tongue: vesicle } },
    { external: { process: "vesicle" } },
    { external: [{ feet: vesicle }, { skin: "normal" }] },
    { external: { vesicles: "present" } },
    { external: { vesicles: "present" }, alarm_check: { vesicles: "none" } },
    { external: { feet: "vesicel" } },
    { external: { feet: { "front-left": vesicle } } },
    { external: { feet: { lesions: vesicle } } },
    { external: { feet: { 1: vesicle[0] } } },
    { external: { feet: [{ vesicle: "coronary band" }] } },
    { external: { feet: { vesicle: "coronary band" } } },
  ])("stops: %j", (one) => {
    const { open, faults } = readCase(one);
    expect(open).toEqual(["vesicles"]);
    expect(faults).toBeGreaterThan(0);
  });

  it("stops for a spleen and nodes told in words", () => {
    const one = {
      lymphoid: { spleen: "black, enlarged, friable", mesenteric_lymph_nodes: [{ process: "hemmorrhage" }] },
    };
    expect(readCase(one).open).toEqual(["dark-spleen-and-haemorrhagic-nodes"]);
  });
});

describe("an answer of the alarm check in other words", () => {
  it.each([
    "yes",
    "ja",
    "+",
    "some",
    "one",
    "1",
    "3",
    "None?",
    "not sure",
    "not excluded",
    "no doubt",
    "perhaps not",
    "(+)",
    "+/-",
    "none except feet",
    "none? one on snout",
    "no, but erosions",
    "on feet",
    "two on the left hind foot",
  ])("stops: %s", (vesicles) => {
    expect(readCase({ alarm_check: { vesicles } }).open).toEqual(["vesicles"]);
  });

  it.each([
    { snout: "none", feet: "suspected" },
    { feet: "present", snout: "none" },
  ])("stops: %j", (vesicles) => {
    expect(readCase({ alarm_check: { vesicles } }).open).toEqual(["vesicles"]);
  });

  it.each([
    "vesicles present",
    "blisters on snout",
    [{ vesicles: "present" }],
    { present: "vesicles" },
    { suspected: "vesicles" },
    { blisters: "present" },
  ])("stops: %j", (check) => {
    expect(readCase({ alarm_check: check }).open).toEqual(["vesicles"]);
  });

  it.each([{ swollen_throat: "present" }, { swelling: "present" }, { unclotted_blood: "yes" }])(
    "stops: %j",
    (check) => {
      expect(readCase({ alarm_check: check }).open).toEqual(["throat-oedema-or-bloody-orifices"]);
    },
  );

  it.each([
    "normal",
    "clean",
    "nad",
    "NAD",
    "clear",
    "all clear",
    "healthy",
    "good",
    "o.B.",
    "unauffällig",
    "negativ",
    "i.O.",
    "rien",
    "nada",
    "checked",
    "looked",
    "not looked",
    "not done",
    "-",
    "0",
    "n/a",
    { checked: true },
    { looked: true, seen: "none" },
    "scratches only",
    "hypostasis only",
  ])("is no alarm: %j", (answer) => {
    const check = {
      vesicles: answer,
      skin_haemorrhage: answer,
      throat_swelling: answer,
      bloody_orifices: answer,
    };
    const { open, faults } = readCase({ alarm_check: check });
    expect(open).toEqual([]);
    expect(faults).toBeGreaterThan(0);
  });

  it("is a finding of the alarm, too", () => {
    const found = lintCases(readAlarmFiles({ cases: [{ alarm_check: { vesicles: "yes" } }] }), {
      only: ["alarm-sign-recorded"],
    });
    expect(found.findings.map(({ path, level }) => [path, level])).toEqual([
      ["alarm_check.vesicles", "error"],
    ]);
  });
});

describe("signs and facts in other words", () => {
  const skin = { external: { skin: [{ process: "petechiae", distribution: "diffuse", number: "many" }] } };

  it.each([
    { signs: ["pyrexia"] },
    { signs: ["dullness, fever"] },
    { signs: { fever: true } },
    { signs: "high temperature" },
  ])("are a fever: %j", (selection) => {
    expect(readCase({ selection, ...skin }).open).toEqual(["skin-haemorrhages"]);
  });

  it.each(["41.2 °C rectal", "41-42 °C", "> 41 °C", "41.2 ℃"])("are a fever: %s", (temperature) => {
    expect(readCase({ pig: { temperature }, ...skin }).open).toEqual(["skin-haemorrhages"]);
  });

  it.each([
    ["14 pigs", "100 head"],
    ["14 of 100", "100"],
    ["14+", 100],
  ])("count the dead: %s of %s", (dead, at_risk) => {
    const visit = { groups: { "nursery-2": { at_risk, dead, onset: "2026-04-17" } } };
    expect(read({ visit, cases: [{ selection: { signs: ["fever"] } }] }).open).toEqual([
      "sudden-deaths-with-fever",
    ]);
  });

  it.each([
    { notifiable: "scour-in-all-ages" },
    { notifiable: ["scour_in_all_ages"] },
    { Notifiable: ["scour-in-all-ages"] },
  ])("list a pattern: %j", (settings) => {
    const cases = [
      { pig: { age: "5 d" }, selection: { signs: ["diarrhoea"] } },
      { pig: { age: "900 d" }, selection: { signs: ["diarrhoea"] } },
    ];
    expect(read({ settings, cases }).open).toEqual(["scour-in-all-ages"]);
  });
});

describe("what was not seen", () => {
  it.each([
    { external: { feet: { vesicles: 0 } } },
    { external: { feet: { vesicles: "0" } } },
    { external: { feet: { vesicles: "-" } } },
    { external: { feet: { vesicles: "neg" } } },
    { external: { feet: { vesicles: "n/a" } } },
    { external: { feet: { vesicles: [] } } },
    { external: { feet: { vesicles: {} } } },
    { external: { feet: "normall" } },
    { external: { feet: "clean" } },
    { external: { feet: "healed wound" } },
    { external: { skin: { state: "clean" } } },
    { lymphoid: { spleen: "dark" } },
    { liver_pancreas: { gall_bladder: "gall bladder full" } },
    { external: { feet: "no vesicles" } },
    { external: { feet: "without blisters" } },
    { external: { feet: "keine Blasen" } },
    { external: { feet: { vesicles: "none" } } },
    { external: { feet: { vesicles: false } } },
    { external: { feet: [{ process: "wnd" }] } },
    { external: { feet: { process: "no vesicles" } } },
    { alarm_check: { vesicles: "None" } },
    { alarm_check: { vesicles: "no" } },
    { alarm_check: { vesicles: false } },
    { alarm_check: { vesicles: 0 } },
    { alarm_check: { vesicles: "n/a" } },
    { alarm_check: { vesicles: "not looked for" } },
    { alarm_check: { present: "no" } },
    { alarm_check: "no vesicles" },
    { lymphoid: { spleen: { state: "normel" } } },
  ])("is a fault of the format and no alarm: %j", (one) => {
    const { open, faults } = readCase(one);
    expect(open).toEqual([]);
    expect(faults).toBeGreaterThan(0);
  });
});

describe("a spleen and nodes in slips of several kinds", () => {
  const nodes = { gastrohepatic_nodes: [{ process: "hemorrhage" }] };

  it.each([
    [{ process: "enlargement", colour: "blck" }],
    [{ process: "enlargement", colour: ["black", "red"] }],
    [{ process: "Enlarged", colour: "blackish" }],
    [{ process: "swelling", consistency: "crumbly" }],
    [{ process: "enlargement", color: "black" }],
  ])("stop: %j", (spleen) => {
    expect(readCase({ lymphoid: { spleen: [spleen], ...nodes } }).open).toEqual([
      "dark-spleen-and-haemorrhagic-nodes",
    ]);
  });
});

describe("a fever in another unit", () => {
  const skin = { external: { skin: [{ process: "petechiae", distribution: "diffuse", number: "many" }] } };

  it.each([41.2, "41.2", "41,2 °C", "106.2 °F", "106.2 F"])("is a fever: %j", (temperature) => {
    expect(readCase({ pig: { temperature }, ...skin }).open).toEqual(["skin-haemorrhages"]);
  });

  it.each([38.9, "102 °F", "412", "hot"])("is none: %j", (temperature) => {
    expect(readCase({ pig: { temperature }, ...skin }).open).toEqual([]);
  });

  it("is a fever among signs that are no list", () => {
    expect(readCase({ selection: { signs: "coughing, Fever" }, ...skin }).open).toEqual([
      "skin-haemorrhages",
    ]);
  });
});

describe("a visit with slips", () => {
  it("counts its dead and its signs", () => {
    const settings = { notifiable: ["scour-in-all-ages"] };
    const visit = {
      signs: ["Diarrhoea", "vomitting"],
      groups: { "nursery-2": { at_risk: "100", dead: "30", onset: "16.4.2026" } },
    };
    expect(read({ settings, visit, cases: [{ selection: { signs: "diarrhea" } }] }).open).toEqual([
      "scour-in-all-ages",
    ]);
  });
});
