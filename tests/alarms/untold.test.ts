/** Where an alarm looks and the file cannot be read, that itself is a locked error. */
import { describe, expect, it } from "vitest";
import { openAlarmsOf } from "../../src/alarms/index.ts";
import { alarmNotice } from "../../src/formats/alarm-notice.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { alarmPatterns } from "../../src/knowledge/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { readAlarmFiles } from "./alarm-archive.ts";

const untold = (one: object, visit: object = {}): string[] =>
  lintCases(readAlarmFiles({ visit, cases: [one] }), { only: ["alarm-cannot-be-told"] }).findings.map(
    ({ path }) => path,
  );

describe("a slip where an alarm looks", () => {
  it.each([..."vesicle"].map((_, at) => `vesicle`.slice(0, at) + `vesicle`.slice(at + 1)))(
    "in the word of a lesion cannot be told: %s",
    (process) => {
      expect(untold({ external: { feet: [{ process }] } })).toEqual(["external.feet[0].process"]);
    },
  );

  it.each([
    [{ external: { Feet: [{ process: "vesicle" }] } }, "external.Feet"],
    [{ external: { feet: "vesicles" } }, "external.feet"],
    [{ external: { feet: { process: "vesicle" } } }, "external.feet.process"],
    [{ external: { claws: [{ process: "vesicle" }] } }, "external.claws"],
    [{ External: { feet: [{ process: "vesicle" }] } }, "External"],
    [{ external: "blisters" }, "external"],
    [{ lymphoid: { spleen: [{ process: "enlargement", colour: "blackish" }] } }, "lymphoid.spleen[0].colour"],
    [{ alarm_check: { before_knife: { vesicles: "yes" } } }, "alarm_check.before_knife.vesicles"],
    [{ alarm_check: { vesicles: "seen" } }, "alarm_check.vesicles"],
    [{ alarm_check: "none" }, "alarm_check"],
    [{ authority: { contacted: "2026-04-20", answer: "go on" } }, "authority"],
    [{ selection: { signs: ["feverish"] } }, "selection.signs[0]"],
    [{ pig: { temperature: "41,5" } }, "pig.temperature"],
    [{ pig: { age: "eight weeks" } }, "pig.age"],
    [{ selection: "fever" }, "selection"],
    [{ pig: "fever" }, "pig"],
    [{ death: { manner: "dead" } }, "death.manner"],
  ])("is told: %j", (one, path) => {
    expect(untold(one)).toEqual([path]);
  });

  it("of a visit is told", () => {
    expect(untold({}, { groups: { "nursery-2": { dead: "14 of 248" } } })).toEqual(["groups.nursery-2.dead"]);
    expect(untold({}, { signs: ["sudden deaths"] })).toEqual(["signs[0]"]);
  });

  it("elsewhere is an error of the format", () => {
    const one = { pig: { sex: "F" }, external: { feet: [{ process: "vesicle", size: "10" }] } };
    expect(untold(one)).toEqual([]);
    const { findings } = lintCases(readAlarmFiles({ cases: [one] }), {
      only: ["case-format", "alarm-pattern"],
    });
    expect(findings.map(({ rule }) => rule).sort()).toEqual(["alarm-pattern", "case-format", "case-format"]);
  });

  it("is looked for on every organ of a pattern", () => {
    const organs = new Set(
      JSON.stringify(alarmPatterns)
        .match(/"[a-z_]+\.[a-z_]+"/g)
        ?.map((id) => id.slice(1, -1)),
    );
    expect(organs.size).toBeGreaterThan(30);
    for (const id of organs) {
      const [system = "", organ = ""] = id.split(".");
      if (["alarm_check", "selection"].includes(system)) continue;
      expect([id, untold({ [system]: { [organ]: 3 } }).length]).toEqual([id, 1]);
    }
  });

  it("is said by every other command as well", () => {
    const archive = readAlarmFiles({ cases: [{ external: { feet: [{ process: "vesicel" }] } }] });
    expect(alarmNotice(openAlarmsOf(archive), makeStyle(false), 80)).toContain("CANNOT BE TOLD");
    expect(alarmNotice(openAlarmsOf(readAlarmFiles({ cases: [{}] })), makeStyle(false), 80)).toBe("");
  });
});
