/** Every alarm pattern against its examples, and its words against the words of the case format. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { alarmText, findAlarms } from "../../src/alarms/index.ts";
import {
  type AlarmExample,
  type AlarmPattern,
  alarmPatterns,
  alarmSigns,
} from "../../src/knowledge/index.ts";
import { every } from "../every.ts";
import { unknownWords } from "../patterns/unknown-words.ts";
import { readAlarmFiles } from "./alarm-archive.ts";

const folder = new URL("../../src/knowledge/alarms/", import.meta.url);
function alarmsOf(example: AlarmExample, pattern: AlarmPattern) {
  const archive = readAlarmFiles({
    settings: pattern.fires === "when-listed" ? { notifiable: [pattern.id] } : {},
    visit: example.visit ?? {},
    cases: example.cases,
  });
  expect(archive.unreadable).toEqual([]);
  expect([...archive.visits, ...archive.cases].flatMap((one) => one.faults.map((f) => f.message))).toEqual(
    [],
  );
  expect(archive.cases.length).toBe(example.cases.length);
  return archive.visits.flatMap(findAlarms).filter((alarm) => alarm.pattern === pattern);
}

describe("the alarm patterns", () => {
  it("are one file each, named after its id", () => {
    const files = readdirSync(folder).sort();
    expect(alarmPatterns.map(({ id }) => `${id}.yaml`).sort()).toEqual(files);
    expect(alarmPatterns.length).toBeGreaterThanOrEqual(18);
  });

  it("know the look-alikes that must not be dismissed", () => {
    const names = alarmPatterns.flatMap((pattern) => pattern.look_alikes.map(({ name }) => name));
    for (const name of ["PDNS", "Senecavirus infection", "mulberry heart", "salmonellosis"])
      expect(names).toContain(name);
  });

  it("answer every sign of the alarm check", () => {
    const asked = JSON.stringify(alarmPatterns.map(({ pattern }) => pattern));
    for (const [name, { look }] of alarmSigns) {
      expect(asked).toContain(`"${name}"`);
      const one = {
        pig: { age: "20 d" },
        death: { manner: "found-dead" },
        alarm_check: { [look]: { [name]: "seen" } },
      };
      const found = readAlarmFiles({ cases: [one] }).cases.flatMap(findAlarms);
      if (look === "before_knife" || ["button_ulcers", "pale_heart"].includes(name))
        expect(found).toHaveLength(1);
    }
  });
});

/** The rows of CRITERIA.md, and whether their last column names something that keeps them silent. */
const criteria = readFileSync(new URL("../fixtures/outbreaks/CRITERIA.md", import.meta.url), "utf8")
  .split("\n")
  .flatMap((line) => {
    const cells = line.split("|").map((cell) => cell.trim());
    return /^[A-Z]\d$/.test(cells[1] ?? "") ? [{ row: cells[1] ?? "", silent: cells[4] !== "" }] : [];
  });

describe("the criteria", () => {
  it("are the rows that the patterns name, and no others", () => {
    expect(criteria.length).toBeGreaterThan(20);
    const named = new Set(alarmPatterns.flatMap((pattern) => pattern.criteria));
    expect([...named].sort()).toEqual(criteria.map(({ row }) => row).sort());
  });

  every(
    "have an example that fires, and one that their last column keeps silent",
    criteria,
    ({ row, silent }) => {
      const own = alarmPatterns
        .filter((pattern) => pattern.criteria.includes(row))
        .flatMap((pattern) => pattern.examples.filter(({ criterion }) => criterion === row));
      expect(own.map((one) => one.expect)).toContain("fires");
      if (silent) expect(own.map((one) => one.expect)).toContain("silent");
    },
  );
});

describe.each(alarmPatterns.map((pattern) => [pattern.id, pattern] as const))("%s", (_, pattern) => {
  it("uses words of the case format only", () => {
    expect(unknownWords(pattern.pattern)).toEqual([]);
  });

  it.each(pattern.examples.map((one) => [one.expect, one.name, one] as const))(
    "%s: %s",
    (_expect, _name, one) => {
      const alarms = alarmsOf(one, pattern);
      expect(alarms.length > 0).toBe(one.expect === "fires");
      const alike = pattern.look_alikes.find(({ name }) => name === one.look_alike);
      expect(alike === undefined).toBe(one.look_alike === undefined);
      if (one.criterion !== undefined) expect(pattern.criteria).toContain(one.criterion);
      for (const alarm of alarms) {
        expect(alarm.liftedBy).toEqual([]);
        const text = alarmText(alarm);
        expect(text).toContain("the competent veterinary authority");
        expect(text).toContain(pattern.exclude);
        if (alike !== undefined) expect(text).toMatch(/What is recorded does not separate it from/);
      }
    },
  );

  it("has a record that fires, and one for each look-alike", () => {
    expect(pattern.examples.some((one) => one.expect === "fires" && one.look_alike === undefined)).toBe(true);
    for (const { name, separated_by } of pattern.look_alikes) {
      const expected = separated_by === "record" ? "silent" : "fires";
      const own = pattern.examples.filter((one) => one.look_alike === name);
      expect(own.map((one) => one.expect)).toContain(expected);
    }
  });

  it("is silent where nothing is listed, if it fires only when listed", () => {
    if (pattern.fires !== "when-listed") return;
    for (const example of pattern.examples) {
      const archive = readAlarmFiles({ visit: example.visit ?? {}, cases: example.cases });
      expect(archive.visits.flatMap(findAlarms).filter((alarm) => alarm.pattern === pattern)).toEqual([]);
    }
  });
});
