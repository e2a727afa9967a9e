/** What sheets and reports say in each language: the same messages with the same gaps, a name for each thing, the cautions whole. */
import { IntlMessageFormat } from "intl-messageformat";
import { describe, expect, it } from "vitest";
import type { OpenAlarm } from "../../src/alarms/index.ts";
import { alarmNotice } from "../../src/formats/alarm-notice.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { messages } from "../../src/generated/knowledge/messages.ts";
import { definitions } from "../../src/knowledge/definitions.ts";
import {
  alarmPatterns,
  alarmSigns,
  indicators,
  organById,
  organs,
  sampleRules,
  scaleIds,
  selectionBases,
  systems,
} from "../../src/knowledge/index.ts";
import { necropsySteps } from "../../src/knowledge/knife.ts";
import { languages, wordsIn } from "../../src/sheet/index.ts";
import { stepsWithCautions } from "../../src/sheet/pig-sheet.ts";
import { capital } from "../../src/words/listing.ts";

const english = messages.en;
const others = languages.filter((language) => language !== "en");
const gaps = (text: string): string[] => [...text.matchAll(/\{(\w+)\}/g)].map(([, name = ""]) => name).sort();

type Parts = ReturnType<IntlMessageFormat["getAst"]>;

/** Kinds of gaps by the number that the parser gives them; 0 is text, 7 the number of a plural. */
const kinds = { 1: "word", 2: "number", 3: "date", 4: "time", 5: "choice", 6: "plural", 8: "tag" } as const;
const kindOf = (type: number): string | undefined => kinds[type as keyof typeof kinds];

/** `n: plural`, `stands: choice no yes`: each gap of a message in ICU syntax, with what it takes. */
function reportGaps(parts: Parts): string[] {
  const gaps = parts.flatMap((part) => {
    const kind = kindOf(part.type);
    if (kind === undefined || !("value" in part)) return [];
    const options = "options" in part ? Object.entries(part.options) : [];
    const chosen = kind === "choice" ? options.map(([option]) => option).sort() : [];
    return [
      [`${part.value}:`, kind, ...chosen].join(" "),
      ...options.flatMap(([, { value }]) => reportGaps(value)),
    ];
  });
  return [...new Set(gaps)].sort();
}

/** The forms of number of every plural in a message; a form for one figure, such as `=0`, is beside them. */
const pluralForms = (parts: Parts): string[][] =>
  parts.flatMap((part) => {
    const options = "options" in part ? Object.entries(part.options) : [];
    return [
      ...(kindOf(part.type) === "plural"
        ? [options.flatMap(([form]) => (form.startsWith("=") ? [] : [form])).sort()]
        : []),
      ...options.flatMap(([, { value }]) => pluralForms(value)),
    ];
  });

const parsed = (text: string, language: string): Parts => new IntlMessageFormat(text, language).getAst();

/** What must have a name, by kind. */
const named: Readonly<Record<string, readonly string[]>> = {
  materials: Object.keys(sampleRules.materials),
  steps: necropsySteps.map(({ id }) => id),
  containers: Object.keys(definitions.container),
  tests: Object.keys(definitions.test),
  alarm_signs: [...alarmSigns.keys()],
  diseases: [...new Set(alarmPatterns.flatMap(({ diseases }) => diseases))],
  indicators: [...indicators.keys()],
  scales: scaleIds,
  systems: systems.map(({ id }) => id),
  bases: ["", ...Object.keys(selectionBases)],
  lobes: Object.keys(organById("respiratory.lungs")?.definition.observations?.consolidation?.parts ?? {}),
};

describe.each(languages)("%s", (language) => {
  it("has each form of number that it needs, in every plural", () => {
    const forms = new Intl.PluralRules(language).resolvedOptions().pluralCategories.toSorted();
    const wrong = Object.entries(messages[language].report ?? {}).flatMap(([key, text]) =>
      pluralForms(parsed(text, language)).flatMap((has) =>
        has.join() === forms.join() ? [] : [`${key}: ${has.join(", ")} instead of ${forms.join(", ")}`],
      ),
    );
    expect(wrong).toEqual([]);
  });
});

describe.each(others)("%s", (language) => {
  const { say, terms, cautions, report = {} } = messages[language];

  it("says each message, and no other", () => {
    expect(Object.keys(say)).toEqual(Object.keys(english.say));
  });

  it("leaves the same gaps in each message", () => {
    for (const [key, text] of Object.entries(english.say))
      expect([key, gaps(say[key as keyof typeof say] ?? "")]).toEqual([key, gaps(text)]);
  });

  it("says each message of a report with the same gaps, and no other", () => {
    expect(Object.keys(report)).toEqual(Object.keys(english.report ?? {}));
    for (const [key, text] of Object.entries(english.report ?? {}))
      expect([key, reportGaps(parsed(report[key] ?? "", language))]).toEqual([
        key,
        reportGaps(parsed(text, "en")),
      ]);
  });

  it("names each thing, and no other", () => {
    expect(
      Object.keys(terms)
        .filter((kind) => kind !== "organs")
        .sort(),
    ).toEqual(Object.keys(named).sort());
    for (const [kind, ids] of Object.entries(named))
      expect(Object.keys(terms[kind] ?? {}).sort(), kind).toEqual([...ids].sort());
  });

  it("calls no two organs of a pig the same", () => {
    const names = organs.map(({ id }) => wordsIn(language).name("organs", id));
    expect(new Set(names).size).toBe(names.length);
    // In one place: the anatomy, where a note knows organs by names of this language, else the file of the language.
    const ofNotes = organs.flatMap(({ definition: { names } }) => Object.entries({ ...names }));
    const { organs: inFile = {} } = terms;
    const inAnatomy = ofNotes.flatMap(([key, [name]]) => (key === language ? capital(name ?? "") : []));
    expect([...Object.values(inFile), ...inAnatomy].sort()).toEqual(names.toSorted());
    expect(Object.keys(inFile).filter((id) => !organs.some((organ) => organ.id === id))).toEqual([]);
  });

  it("gives each caution of the knife", () => {
    expect(Object.keys(cautions ?? {}).sort()).toEqual([...stepsWithCautions].sort());
    for (const step of stepsWithCautions)
      expect(wordsIn(language).cautions(step), step).toHaveLength(wordsIn("en").cautions(step).length);
  });
});

describe("gaps of a report", () => {
  it("differ where a gap is missing, of another kind or with other choices", () => {
    const gapsIn = (text: string): string[] => reportGaps(parsed(text, "en"));
    const text = "{n, plural, one {# of {pig}} other {#}} {stands, select, yes {a} other {b}}";
    expect(gapsIn(text)).toEqual(["n: plural", "pig: word", "stands: choice other yes"]);
    expect(gapsIn("{share, number, ::percent} {day, date, whole}")).toEqual(["day: date", "share: number"]);
    expect(gapsIn("{share} {day}")).toEqual(["day: word", "share: word"]);
    expect(pluralForms(parsed(text, "en"))).toEqual([["one", "other"]]);
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
