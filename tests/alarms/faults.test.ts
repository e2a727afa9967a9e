/** Neither a typing error beside a lesion nor the settings silence an alarm. */
import { describe, expect, it } from "vitest";
import { callWhom, openAlarmsOf } from "../../src/alarms/index.ts";
import { lockedRules } from "../../src/cases/settings/locked-rules.ts";
import { lintCases, rules } from "../../src/lint/index.ts";
import { type AlarmFiles, readAlarmFiles } from "./alarm-archive.ts";

const lint = (files: AlarmFiles, only: readonly string[]): string[] =>
  lintCases(readAlarmFiles(files), { only }).findings.map(({ rule, path }) => `${rule} ${path}`);
const vesicle = (more: object): object => ({
  process: "vesicle",
  distribution: "multifocal",
  size: "10 mm",
  ...more,
});

describe("a typing error", () => {
  it.each([
    ["a wrong word", [vesicle({ distribution: "multifokal" })], "external.feet[0].distribution", 0],
    ["a size without unit", [vesicle({ size: 10 })], "external.feet[0].size", 0],
    ["an unknown key", [vesicle({ nubmer: 3 })], "external.feet[0].nubmer", 0],
    ["in the finding before", [{ process: "wnd" }, vesicle({})], "external.feet[0].process", 1],
    ["text where a finding must stand", ["wound", vesicle({})], "external.feet[0]", 1],
  ])("does not silence the alarm of its finding: %s", (_, feet, fault, index) => {
    const found = lint({ cases: [{ external: { feet } }] }, [
      "alarm-pattern",
      "alarm-cannot-be-told",
      "case-format",
    ]);
    const rule = ["size", "nubmer"].some((key) => fault.endsWith(key))
      ? "case-format"
      : "alarm-cannot-be-told";
    expect(found.sort()).toEqual([`alarm-pattern external.feet[${index}]`, `${rule} ${fault}`].sort());
  });

  it("in one sign leaves the others to be read", () => {
    const selection = { signs: ["coughh", "fever"] };
    const signs = readAlarmFiles({ cases: [{ selection }] }).cases[0]?.record.selection?.signs;
    expect(signs).toEqual(["fever"]);
  });
});

describe("the settings", () => {
  it("lock the same rules as the linter, all of them errors", () => {
    const locked = rules.filter((rule) => rule.locked);
    expect([...lockedRules].sort()).toEqual(locked.map(({ id }) => id).sort());
    expect(locked.filter(({ level }) => level !== "error")).toEqual([]);
  });

  it.each(["off", "note", "warning"])("cannot set a locked rule to %s", (level) => {
    const { unreadable } = readAlarmFiles({ settings: { rules: { "alarm-exclude": level } }, cases: [{}] });
    expect(unreadable.map(({ line, column, message }) => ({ line, column, message }))).toEqual([
      {
        line: 3,
        column: 18,
        message:
          "rules.alarm-exclude: alarm-exclude guards the alarms or the format and stays error. Take this line out.",
      },
    ]);
  });

  it("may say what holds anyway", () => {
    const settings = { rules: { "alarm-exclude": "error" } };
    expect(readAlarmFiles({ settings, cases: [{}] }).unreadable).toEqual([]);
  });
});

describe("settings with a fault", () => {
  const authority = { name: "District veterinary office", telephone: "01632 960199" };
  const scour = {
    visit: {
      signs: ["diarrhoea", "vomiting"],
      groups: { "nursery-2": { at_risk: 100, dead: 30, onset: "2026-04-16" } },
    },
    cases: [{ selection: { signs: ["diarrhoea"] } }],
  };
  const told = (settings: object): { whom: string[]; open: (string | undefined)[]; faults: number } => {
    const archive = readAlarmFiles({ settings, ...scour });
    return {
      whom: [...new Set(archive.visits.map((one) => callWhom(one.settings)))],
      open: openAlarmsOf(archive).map(({ pattern }) => pattern?.id),
      faults: archive.unreadable.length,
    };
  };
  const known = ["scour-in-all-ages"];

  it.each([
    ["a mistyped protocol", { protocol: "fulll" }],
    ["an unknown key", { protocl: "full" }],
    ["a level that does not exist", { rules: { "treated-pig": "loud" } }],
  ])("still say whom to call and what the list adds: %s", (_, fault) => {
    expect(told({ ...fault, authority, notifiable: known })).toEqual({
      whom: ["District veterinary office, telephone 01632 960199"],
      open: known,
      faults: 1,
    });
  });

  it("keep the listed patterns that exist, and the name without its number", () => {
    const { name } = authority;
    expect(told({ authority: { name }, notifiable: ["scour", ...known] })).toMatchObject({
      whom: [name],
      open: known,
    });
    expect(told({ authority: { name, telephone: 1632 }, notifiable: known })).toMatchObject({
      whom: [name],
      open: known,
    });
  });

  it("are not guessed at where nothing is legible", () => {
    expect(told({ authority: "the office", notifiable: "floods" })).toMatchObject({
      whom: ["the competent veterinary authority"],
      open: [],
    });
  });
});

describe("the entry of a visit", () => {
  const feet = [vesicle({})];
  const authority = (at: string): object => [{ at, stands: "reported" }];

  it.each([
    ["2026-04-19T18:00", ["authority-before-visit authority[0].at"]],
    ["2036-04-20T10:00", ["authority-before-visit authority[0].at"]],
    ["2026-04-20T10:00", []],
  ])("that cannot answer the alarm of a pig is reported: %s", (at, expected) => {
    const files = { visit: { authority: authority(at) }, cases: [{ external: { feet } }] };
    expect(lint(files, ["authority-before-visit"])).toEqual(expected);
  });
});

describe("an alarm of the level exclude", () => {
  it("fails like the others until the disease is excluded", () => {
    const node = { process: "necrosis", exudate: "caseous", distribution: "focal", size: "8 mm" };
    const one = { lymphoid: { submandibular_nodes: [node] } };
    const { findings } = lintCases(readAlarmFiles({ cases: [one] }), { only: ["alarm-exclude"] });
    expect(findings.map(({ rule, level }) => [rule, level])).toEqual([["alarm-exclude", "error"]]);
    const authority = [
      { at: "2026-04-20T10:00", stands: "excluded", for: ["caseous-nodes"], sample: "culture of the node" },
    ];
    expect(lint({ cases: [{ ...one, authority }] }, ["alarm-exclude"])).toEqual([]);
  });
});
