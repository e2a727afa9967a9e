/** Names of alarms that are gone: told where an old entry has one, and never used again. */
import { describe, expect, it } from "vitest";
import { goneAlarms } from "../../src/alarms/index.ts";
import { alarmPatterns } from "../../src/knowledge/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { readAlarmFiles } from "./alarm-archive.ts";

describe("an alarm that is gone", () => {
  const ids = alarmPatterns.map(({ id }) => id);

  it("gives its name to no other, and names one that there is", () => {
    expect(Object.keys(goneAlarms).filter((id) => ids.includes(id))).toEqual([]);
    expect(Object.values(goneAlarms).filter((id) => id !== undefined && !ids.includes(id))).toEqual([]);
  });

  it.each(Object.entries(goneAlarms))("%s is told as gone where an entry names it", (id, now) => {
    const entry = { at: "2026-04-20T10:00", stands: "excluded", for: [id], sample: "PCR of spleen" };
    const { findings } = lintCases(readAlarmFiles({ cases: [{ authority: [entry] }] }));
    const [told] = findings.filter(({ rule }) => rule === "authority-entry-incomplete");
    expect(told?.message).toContain(`the alarm "${id}" is gone`);
    if (now !== undefined) expect(told?.message).toContain(now);
  });
});
