/** What the sheet says in each language: the same messages with the same gaps, a name for each thing, and the cautions whole. */
import { describe, expect, it } from "vitest";
import type { OpenAlarm } from "../../src/alarms/index.ts";
import { alarmNotice } from "../../src/formats/alarm-notice.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { messages } from "../../src/generated/knowledge/messages.ts";
import { definitions } from "../../src/knowledge/definitions.ts";
import { alarmPatterns, alarmSigns, organs, sampleRules } from "../../src/knowledge/index.ts";
import { necropsySteps } from "../../src/knowledge/knife.ts";
import { languages, wordsIn } from "../../src/sheet/index.ts";
import { stepsWithCautions } from "../../src/sheet/pig-sheet.ts";
import { capital } from "../../src/words/listing.ts";

const english = messages.en;
const others = languages.filter((language) => language !== "en");
const gaps = (text: string): string[] => [...text.matchAll(/\{(\w+)\}/g)].map(([, name = ""]) => name).sort();

/** What must have a name, by kind. */
const named: Readonly<Record<string, readonly string[]>> = {
  materials: Object.keys(sampleRules.materials),
  steps: necropsySteps.map(({ id }) => id),
  containers: Object.keys(definitions.container),
  tests: Object.keys(definitions.test),
  alarm_signs: [...alarmSigns.keys()],
  diseases: [...new Set(alarmPatterns.flatMap(({ diseases }) => diseases))],
};

describe.each(others)("%s", (language) => {
  const { say, terms, cautions } = messages[language];

  it("says each message, and no other", () => {
    expect(Object.keys(say)).toEqual(Object.keys(english.say));
  });

  it("leaves the same gaps in each message", () => {
    for (const [key, text] of Object.entries(english.say))
      expect([key, gaps(say[key as keyof typeof say] ?? "")]).toEqual([key, gaps(text)]);
  });

  it("names each thing, and no other", () => {
    expect(Object.keys(terms).sort()).toEqual(Object.keys(named).sort());
    for (const [kind, ids] of Object.entries(named))
      expect(Object.keys(terms[kind] ?? {}).sort(), kind).toEqual([...ids].sort());
  });

  it("calls no two organs of a pig the same", () => {
    const names = organs.map(({ id }) => wordsIn(language).name("organs", id));
    expect(new Set(names).size).toBe(names.length);
    // The name is one by which a note knows the organ.
    for (const { id, definition } of organs)
      expect(definition.names?.[language as "de" | "es"]?.map(capital), id).toContain(
        wordsIn(language).name("organs", id),
      );
  });

  it("gives each caution of the knife", () => {
    expect(Object.keys(cautions ?? {}).sort()).toEqual([...stepsWithCautions].sort());
    for (const step of stepsWithCautions)
      expect(wordsIn(language).cautions(step), step).toHaveLength(wordsIn("en").cautions(step).length);
  });
});

describe("English", () => {
  it("has its cautions from the order of the knife, and names none that does not exist", () => {
    for (const step of stepsWithCautions)
      expect(wordsIn("en").cautions(step).length, step).toBeGreaterThan(0);
    for (const [kind, terms] of Object.entries(english.terms))
      expect(Object.keys(terms).filter((id) => named[kind]?.includes(id) !== true)).toEqual([]);
  });

  it("gives the notice of an alarm in the words of every other command", () => {
    const whom = english.say.authority;
    const open = alarmPatterns.map(
      (pattern): OpenAlarm => ({ pattern, of: "case", id: "a", file: "a.yaml", said: undefined, whom }),
    );
    const untold: OpenAlarm = {
      pattern: undefined,
      of: "case",
      id: "a",
      file: "a.yaml",
      said: undefined,
      whom,
    };
    const notice = alarmNotice([...open, untold], makeStyle(false), 1000);
    const { stop, stop_orders, exclude, exclude_orders, call, untold: cannot, untold_orders } = english.say;
    for (const text of [
      stop,
      stop_orders,
      exclude,
      exclude_orders,
      call.replace("{whom}", whom),
      cannot,
      untold_orders,
    ])
      expect(notice).toContain(text);
  });
});
