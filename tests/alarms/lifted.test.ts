/** An alarm is lifted by a dated call to the authority, and by nothing else. */
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { alarmText, findAlarms, openAlarms } from "../../src/alarms/index.ts";
import { readCases } from "../../src/cases/index.ts";
import { selectionRules } from "../../src/knowledge/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { type AlarmFiles, readAlarmFiles } from "./alarm-archive.ts";

const lesions = {
  lymphoid: {
    spleen: [{ process: "enlargement", colour: "black", consistency: "friable" }],
    gastrohepatic_nodes: [{ process: "haemorrhage" }],
  },
};
const vesicles = { external: { snout: [{ process: "vesicle" }] } };
const call = (contacted: string) => ({ contacted, answer: "official veterinarian comes" });

function open(files: AlarmFiles): string[] {
  const [visit] = readAlarmFiles(files).visits;
  return visit === undefined ? [] : openAlarms(visit).map(({ pattern }) => pattern.id);
}

const inner = "dark-spleen-and-haemorrhagic-nodes";

describe("an alarm", () => {
  it("is open without a call", () => {
    expect(open({ cases: [lesions] })).toEqual([inner]);
  });

  it("is lifted by a call after the opening, in the case or in the visit", () => {
    expect(open({ cases: [{ ...lesions, authority: call("2026-04-20T10:00") }] })).toEqual([]);
    expect(open({ cases: [{ ...lesions, authority: call("2026-04-20") }] })).toEqual([]);
    expect(open({ visit: { authority: call("2026-04-20T10:00") }, cases: [lesions, lesions] })).toEqual([]);
  });

  it("stays open when the call was made before the opening showed it", () => {
    expect(open({ cases: [{ ...lesions, authority: call("2026-04-20T09:20") }] })).toEqual([inner]);
    expect(open({ visit: { authority: call("2026-04-19T10:00") }, cases: [lesions] })).toEqual([inner]);
  });

  it("seen from outside is lifted by a call before the opening, not before the death", () => {
    expect(open({ cases: [{ ...vesicles, authority: call("2026-04-20T09:20") }] })).toEqual([]);
    expect(open({ cases: [{ ...vesicles, authority: call("2026-04-20T08:00") }] })).toEqual(["vesicles"]);
  });

  it("of one case is not lifted by the entry of another", () => {
    expect(open({ cases: [{ ...lesions, authority: call("2026-04-20T10:00") }, lesions] })).toEqual([inner]);
  });

  it("never looks at the diagnosis", () => {
    const diagnosis = { aetiologic: ["African swine fever"], differentials: ["foot-and-mouth disease"] };
    expect(open({ cases: [{ diagnosis }] })).toEqual([]);
    expect(open({ cases: [{ ...lesions, diagnosis: { aetiologic: ["PDNS"] } }] })).toEqual([inner]);
  });

  it("counts what is called an artefact: no word lifts it, only the call", () => {
    const artefact = { external: { snout: [{ process: "vesicle", certainty: "artefact" }] } };
    expect(open({ cases: [artefact] })).toEqual(["vesicles"]);
    expect(open({ cases: [{ ...artefact, authority: call("2026-04-20T10:00") }] })).toEqual([]);
  });

  it.each([" ", "-", "...", "…", null, 3])("is not lifted by a call without an answer: %j", (answer) => {
    const authority = { contacted: "2026-04-20T10:00", answer };
    expect(open({ cases: [{ ...lesions, authority }] })).toEqual([inner]);
    const faults = readAlarmFiles({ cases: [{ authority }] }).cases.flatMap((one) => one.faults);
    expect(faults.map(({ path }) => path.join("."))).toEqual(["authority.answer"]);
  });

  it.each([
    "n/a",
    "0",
    "no",
    "tbd",
    "x",
    "xx",
    "unknown",
    "Yes.",
    "pending",
    "none yet",
    "keine Antwort",
    "rang, no reply",
    "rang at 10:20: no answer, left message",
    "voicemail",
    "Nicht erreicht",
    "2026-04-20",
    "they will come back to me",
    "decision follows",
    "wird geprüft",
    "spoke to the secretary, vet on holiday",
    "decision pending",
  ])("is not lifted by a call that nobody answered, and a finding says so: %s", (answer) => {
    const authority = { contacted: "2026-04-20T10:00", answer };
    for (const files of [
      { cases: [{ ...lesions, authority }] },
      { visit: { authority }, cases: [lesions] },
    ]) {
      expect(open(files)).toEqual([inner]);
      const { findings } = lintCases(readAlarmFiles(files), { only: ["authority-without-answer"] });
      expect(findings.map(({ path, level }) => [path, level])).toEqual([["authority.answer", "error"]]);
    }
  });

  it.each([
    "no suspicion",
    "none of the listed diseases suspected; go on",
    "go on",
    "official veterinarian takes blood; answers tomorrow",
    "kein Verdacht, Sektion darf weitergehen",
    "Freigabe",
    "farm closed, samples forwarded to the reference laboratory",
    "could not be reached at 9; at 10:00 Dr Hall: no suspicion",
    "suspicion lifted 2026-04-22, PCR negative",
  ])("is lifted by a decision: %s", (answer) => {
    const files = { cases: [{ ...lesions, authority: { contacted: "2026-04-20T10:00", answer } }] };
    expect(open(files)).toEqual([]);
    expect(lintCases(readAlarmFiles(files), { only: ["authority-without-answer"] }).findings).toEqual([]);
  });

  it("without any day is not lifted: nothing says that the call came after", () => {
    const record = { format: 1, case: "hazel-1", pig: { age: "58 d" }, ...lesions };
    const bytes = new TextEncoder().encode(stringify({ ...record, authority: call("2026-04-20T10:00") }));
    const { cases } = readCases(["-"], { input: { bytes, name: "hazel/pig.yaml" } });
    expect(cases.flatMap(openAlarms).map(({ pattern }) => pattern.id)).toEqual([inner]);
  });

  it.each([
    ["2026-05-20T00:00", []],
    ["2026-05-20T00:01", [inner]],
    ["2036-04-20T10:00", [inner]],
  ])("is lifted by a call in the 30 days after the visit only: %s", (contacted, expected) => {
    expect(open({ cases: [{ ...lesions, authority: call(contacted) }] })).toEqual(expected);
    expect(open({ visit: { authority: call(contacted) }, cases: [lesions] })).toEqual(expected);
  });

  it("is held to the day of the visit where death and opening cannot be read", () => {
    const illegible = { death: { manner: "euthanised", at: "20.4.2026 9:10" }, opened: { at: "9:40" } };
    for (const [contacted, expected] of [
      ["2020-01-01T10:40", [inner]],
      ["2026-04-20", []],
      ["2026-04-21T08:00", []],
    ] as const)
      expect(open({ cases: [{ ...lesions, ...illegible, authority: call(contacted) }] })).toEqual(expected);
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
    for (const [contacted, alarms] of [
      ["2036-01-01T10:40", 1],
      ["2026-04-20T10:40", 0],
    ] as const) {
      const bytes = new TextEncoder().encode(stringify({ ...record, authority: call(contacted) }));
      const { findings } = lintCases(readCases(["-"], { input: { bytes, name: "hazel/pig.yaml" } }));
      expect(findings.filter(({ rule }) => rule === "alarm-pattern")).toHaveLength(alarms);
    }
  });

  it("the days after the visit are those of the data, and a finding says so", () => {
    expect(selectionRules.call_days).toBe(30);
    const late = { authority: call("2026-05-21T10:00") };
    const messages = (files: AlarmFiles, rule: string): string[] =>
      lintCases(readAlarmFiles(files), { only: [rule] }).findings.map(({ message }) => message);
    for (const found of [
      messages({ cases: [late] }, "authority-before-death"),
      messages({ visit: late, cases: [{}] }, "authority-before-visit"),
    ])
      expect(found).toEqual([expect.stringContaining("more than 30 days after the visit (2026-04-20)")]);
  });

  it("is not lifted by a call in universal time that is earlier as written", () => {
    expect(open({ cases: [{ ...lesions, authority: call("2026-04-20T08:00Z") }] })).toEqual([inner]);
    expect(open({ cases: [{ ...lesions, authority: call("2026-04-20T10:00Z") }] })).toEqual([]);
  });

  it("of several pigs is lifted by the visit, or by a call for each of the pigs", () => {
    const settings = { notifiable: ["scour-in-all-ages"] };
    const young = { pig: { age: "5 d" }, selection: { signs: ["diarrhoea"] } };
    const grown = { pig: { age: "900 d" }, selection: { signs: ["diarrhoea"] } };
    const authority = call("2026-04-20T11:00");
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
    ["2026-04-20T09:20", "no suspicion", "was made before this was seen"],
    ["2026-04-20T10:00", "rang, no reply", 'has no decision ("rang, no reply")'],
    [undefined, "no suspicion", "Record the call under authority"],
  ])("says why a call does not count: %s %s", (contacted, answer, text) => {
    const archive = readAlarmFiles({ cases: [{ ...lesions, authority: { contacted, answer } }] });
    expect(archive.cases.flatMap(openAlarms).map(alarmText)).toEqual([expect.stringContaining(text)]);
  });

  it("names the authority of the settings", () => {
    const settings = { authority: { name: "District veterinary office", telephone: "0123 456789" } };
    const [one] = readAlarmFiles({ settings, cases: [lesions] }).cases;
    const texts = one === undefined ? [] : findAlarms(one).map(alarmText);
    expect(texts.join("\n")).toContain("call District veterinary office, telephone 0123 456789 now");
  });
});
