/** An alarm is lifted by an entry that the authority released or excluded it, and by nothing else. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { alarmText, findAlarms, openAlarms } from "../../src/alarms/index.ts";
import { readCases } from "../../src/cases/index.ts";
import { selectionRules } from "../../src/knowledge/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { runs } from "../random.ts";
import { type AlarmFiles, readAlarmFiles } from "./alarm-archive.ts";

const lesions = {
  lymphoid: {
    spleen: [{ process: "enlargement", colour: "black", consistency: "friable" }],
    gastrohepatic_nodes: [{ process: "haemorrhage" }],
  },
};
const vesicles = { external: { snout: [{ process: "vesicle" }] } };
const inner = "dark-spleen-and-haemorrhagic-nodes";
const excluded = (at: string, ...alarms: string[]) => [
  { at, stands: "excluded", for: alarms.length === 0 ? [inner] : alarms, sample: "PCR of spleen" },
];
const released = { stands: "released", for: [inner], reached: "duty officer", ground: "looked at the herd" };

function open(files: AlarmFiles): string[] {
  const [visit] = readAlarmFiles(files).visits;
  return visit === undefined ? [] : openAlarms(visit).map(({ pattern }) => pattern.id);
}

describe("an alarm", () => {
  it("is open without an entry", () => {
    expect(open({ cases: [lesions] })).toEqual([inner]);
  });

  it("is lifted by an entry after the opening, in the case or in the visit", () => {
    expect(open({ cases: [{ ...lesions, authority: excluded("2026-04-20T10:00") }] })).toEqual([]);
    expect(open({ cases: [{ ...lesions, authority: excluded("2026-04-20") }] })).toEqual([]);
    expect(open({ visit: { authority: excluded("2026-04-20T10:00") }, cases: [lesions, lesions] })).toEqual(
      [],
    );
  });

  it("stays open when the call was made before the opening showed it", () => {
    expect(open({ cases: [{ ...lesions, authority: excluded("2026-04-20T09:20") }] })).toEqual([inner]);
    expect(open({ visit: { authority: excluded("2026-04-19T10:00") }, cases: [lesions] })).toEqual([inner]);
  });

  it("seen from outside is lifted by an entry before the opening, not before the death", () => {
    const at = (time: string) => open({ cases: [{ ...vesicles, authority: excluded(time, "vesicles") }] });
    expect(at("2026-04-20T09:20")).toEqual([]);
    expect(at("2026-04-20T08:00")).toEqual(["vesicles"]);
  });

  it("of one case is not lifted by the entry of another", () => {
    expect(open({ cases: [{ ...lesions, authority: excluded("2026-04-20T10:00") }, lesions] })).toEqual([
      inner,
    ]);
  });

  it("never looks at the diagnosis", () => {
    const diagnosis = { aetiologic: ["African swine fever"], differentials: ["foot-and-mouth disease"] };
    expect(open({ cases: [{ diagnosis }] })).toEqual([]);
    expect(open({ cases: [{ ...lesions, diagnosis: { aetiologic: ["PDNS"] } }] })).toEqual([inner]);
  });

  it("counts what is called an artefact: no word lifts it, only the call", () => {
    const artefact = { external: { snout: [{ process: "vesicle", certainty: "artefact" }] } };
    expect(open({ cases: [artefact] })).toEqual(["vesicles"]);
    expect(open({ cases: [{ ...artefact, authority: excluded("2026-04-20T10:00", "vesicles") }] })).toEqual(
      [],
    );
  });

  it("is lifted by released and excluded only, and only where it is named", () => {
    const stands = (...authority: object[]) => open({ cases: [{ ...lesions, authority }] });
    const at = "2026-04-20T10:00";
    expect(stands({ at, ...released })).toEqual([]);
    expect(stands({ at, stands: "reported", reached: "duty officer" })).toEqual([inner]);
    expect(stands({ at, stands: "restricted", reached: "duty officer", for: [inner] })).toEqual([inner]);
    expect(stands({ at, ...released, for: ["vesicles"] })).toEqual([inner]);
    for (const key of ["for", "reached", "ground"])
      expect(stands({ at, ...released, [key]: null })).toEqual([inner]);
    for (const key of ["for", "sample"]) expect(stands({ ...excluded(at)[0], [key]: null })).toEqual([inner]);
    expect(stands({ at, ...released, stands: "Released" })).toEqual([inner]);
  });

  it("follows the last entry about it", () => {
    const history = (...authority: object[]) => open({ cases: [{ ...lesions, authority }] });
    const reported = (at: string) => ({ at, stands: "reported" });
    const restricted = (at: string, ...alarms: string[]) => ({
      at,
      stands: "restricted",
      ...(alarms.length > 0 && { for: alarms }),
    });
    expect(history(reported("2026-04-20T10:00"), { at: "2026-04-22", ...released })).toEqual([]);
    expect(history({ at: "2026-04-22", ...released }, reported("2026-04-20T10:00"))).toEqual([]);
    expect(history({ at: "2026-04-21", ...released }, restricted("2026-04-22"))).toEqual([inner]);
    expect(history({ at: "2026-04-21", ...released }, restricted("2026-04-22", "vesicles"))).toEqual([]);
    expect(history({ at: "2026-04-21", ...released }, restricted("2026-04-21"))).toEqual([inner]);
    expect(
      open({
        visit: { authority: [restricted("2026-04-22")] },
        cases: [{ ...lesions, authority: [{ at: "2026-04-21", ...released }] }],
      }),
    ).toEqual([inner]);
  });

  it("of another kind stands again after a release", () => {
    expect(open({ cases: [{ ...lesions, ...vesicles, authority: excluded("2026-04-22") }] })).toEqual([
      "vesicles",
    ]);
  });

  it("is lifted by no words, whatever they say", () => {
    const words = fc.string({ unit: "grapheme", minLength: 1 });
    const saying = fc.constantFrom("released", "excluded", "go on", "no suspicion", "PCR negative", "lifted");
    fc.assert(
      fc.property(
        fc.oneof(words, saying),
        fc.constantFrom("reported", "restricted", "none", "free"),
        (text, stands) => {
          const entry = { at: "2026-04-20T10:00", reached: text, ground: text, sample: text, note: text };
          for (const authority of [
            [{ ...entry, stands, for: [inner] }],
            [{ ...entry, stands: text }],
            text,
            { ...entry, answer: text },
          ])
            expect(open({ cases: [{ ...lesions, note: text, authority }] })).toContain(inner);
        },
      ),
      { numRuns: runs(100) },
    );
  });

  it.each([
    [
      { stands: "released", for: [inner], reached: "duty officer" },
      "authority[0]",
      "Write ground: on what ground",
    ],
    [
      { stands: "excluded", for: [inner] },
      "authority[0]",
      "Write sample: which sample was negative, in which test",
    ],
    [
      { ...released, for: ["vesicle"] },
      "authority[0].for[0]",
      'there is no alarm "vesicle". Did you mean vesicles?',
    ],
  ])("a finding says what an entry lacks: %j", (entry, path, text) => {
    const authority = [{ at: "2026-04-20T10:00", ...entry }];
    for (const files of [
      { cases: [{ ...lesions, authority }] },
      { visit: { authority }, cases: [lesions] },
    ]) {
      const { findings } = lintCases(readAlarmFiles(files), { only: ["authority-entry-incomplete"] });
      expect(findings.map(({ path: at, level }) => [at, level])).toEqual([[path, "error"]]);
      expect(findings[0]?.message).toContain(text);
    }
  });

  it("without any day is not lifted: nothing says that the entry came after", () => {
    const record = { format: 1, case: "hazel-1", pig: { age: "58 d" }, ...lesions };
    const bytes = new TextEncoder().encode(stringify({ ...record, authority: excluded("2026-04-20T10:00") }));
    const { cases } = readCases(["-"], { input: { bytes, name: "hazel/pig.yaml" } });
    expect(cases.flatMap(openAlarms).map(({ pattern }) => pattern.id)).toEqual([inner]);
  });

  it.each([
    ["2026-08-18T00:00", []],
    ["2026-08-18T00:01", [inner]],
    ["2036-04-20T10:00", [inner]],
  ])("is lifted by an entry in the 120 days after the visit only: %s", (at, expected) => {
    expect(open({ cases: [{ ...lesions, authority: excluded(at) }] })).toEqual(expected);
    expect(open({ visit: { authority: excluded(at) }, cases: [lesions] })).toEqual(expected);
  });

  it("is held to the day of the visit where death and opening cannot be read", () => {
    const illegible = { death: { manner: "euthanised", at: "20.4.2026 9:10" }, opened: { at: "9:40" } };
    for (const [at, expected] of [
      ["2020-01-01T10:40", [inner]],
      ["2026-04-20", []],
      ["2026-04-21T08:00", []],
    ] as const)
      expect(open({ cases: [{ ...lesions, ...illegible, authority: excluded(at) }] })).toEqual(expected);
  });

  it("of a pig without a visit is held to its opening", () => {
    const record = {
      format: 1,
      case: "hazel-1",
      pig: { age: "58 d", sex: "female" },
      death: { manner: "euthanised", at: "2026-04-20T09:10" },
      opened: { at: "2026-04-20T09:40" },
      ...lesions,
    };
    for (const [at, alarms] of [
      ["2036-01-01T10:40", 1],
      ["2026-04-20T10:40", 0],
    ] as const) {
      const bytes = new TextEncoder().encode(stringify({ ...record, authority: excluded(at) }));
      const { findings } = lintCases(readCases(["-"], { input: { bytes, name: "hazel/pig.yaml" } }));
      expect(findings.filter(({ rule }) => rule === "alarm-pattern")).toHaveLength(alarms);
    }
  });

  it("the days after the visit are those of the data, and a finding says so", () => {
    expect(selectionRules.authority_days).toBe(120);
    const late = { authority: excluded("2026-08-19T10:00") };
    const messages = (files: AlarmFiles, rule: string): string[] =>
      lintCases(readAlarmFiles(files), { only: [rule] }).findings.map(({ message }) => message);
    for (const found of [
      messages({ cases: [late] }, "authority-before-death"),
      messages({ visit: late, cases: [{}] }, "authority-before-visit"),
    ])
      expect(found).toEqual([expect.stringContaining("more than 120 days after the visit (2026-04-20)")]);
  });

  it("is not lifted by an entry in universal time that is earlier as written", () => {
    expect(open({ cases: [{ ...lesions, authority: excluded("2026-04-20T08:00Z") }] })).toEqual([inner]);
    expect(open({ cases: [{ ...lesions, authority: excluded("2026-04-20T10:00Z") }] })).toEqual([]);
  });

  it("of several pigs is lifted by the visit, or by an entry for each of the pigs", () => {
    const settings = { notifiable: ["scour-in-all-ages"] };
    const young = { pig: { age: "5 d" }, selection: { signs: ["diarrhoea"] } };
    const grown = { pig: { age: "900 d" }, selection: { signs: ["diarrhoea"] } };
    const authority = excluded("2026-04-20T11:00", "scour-in-all-ages");
    expect(open({ settings, cases: [young, grown] })).toEqual(["scour-in-all-ages"]);
    expect(open({ settings, visit: { authority }, cases: [young, grown] })).toEqual([]);
    expect(open({ settings, cases: [{ ...young, authority }, grown] })).toEqual(["scour-in-all-ages"]);
    expect(
      open({
        settings,
        cases: [
          { ...young, authority },
          { ...grown, authority },
        ],
      }),
    ).toEqual([]);
  });

  it.each([
    [[{ at: "2026-04-20T09:20", stands: "reported" }], "No entry under authority is about this alarm"],
    [
      [{ at: "2026-04-20T10:00", stands: "reported" }],
      "It was reported (2026-04-20T10:00), and the stop stays",
    ],
    [
      [{ at: "2026-04-20T10:00", stands: "restricted" }],
      "The authority took over (2026-04-20T10:00), and the stop",
    ],
    [undefined, "Record the call under authority: [{at: …, reached: …, stands: reported}]"],
  ])("says where it stands: %j", (authority, text) => {
    const archive = readAlarmFiles({ cases: [{ ...lesions, authority }] });
    expect(archive.cases.flatMap(openAlarms).map(alarmText)).toEqual([expect.stringContaining(text)]);
  });

  it("names the authority of the settings", () => {
    const settings = { authority: { name: "District veterinary office", telephone: "0123 456789" } };
    const [one] = readAlarmFiles({ settings, cases: [lesions] }).cases;
    const texts = one === undefined ? [] : findAlarms(one).map(alarmText);
    expect(texts.join("\n")).toContain("call District veterinary office, telephone 0123 456789 now");
  });
});
