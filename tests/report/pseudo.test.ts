/** English with an accent on every letter, as one more language: what a report says without accents is nobody's to translate. */
import { IntlMessageFormat } from "intl-messageformat";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { reportHtml } from "../../src/formats/report/html.ts";
import { archivePages } from "../../src/formats/report/pages.ts";
import { messages } from "../../src/generated/knowledge/messages.ts";
import { definitions } from "../../src/knowledge/definitions.ts";
import { diseases } from "../../src/knowledge/diseases.ts";
import {
  indicators,
  organById,
  organs,
  sampleRules,
  selectionBases,
  systems,
} from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { audiences, type ReportResult, reportWords } from "../../src/report/index.ts";
import { isLanguage, wordsIn } from "../../src/sheet/index.ts";
import { reports } from "./made.ts";

const accented = (text: string): string =>
  text.replaceAll(/[a-z]/gi, (letter) => `${letter}\u0301`).normalize("NFC");

type Parts = ReturnType<IntlMessageFormat["getAst"]>;

/** What is said, and nothing of the syntax: 0 is a text to the parser. */
const accentedParts = (parts: Parts): Parts =>
  parts.map((part) => {
    const options = "options" in part ? Object.entries(part.options) : [];
    return {
      ...part,
      ...(part.type === 0 && { value: accented(part.value) }),
      ...(options.length > 0 && {
        options: Object.fromEntries(
          options.map(([name, option]) => [name, { ...option, value: accentedParts(option.value) }]),
        ),
      }),
    } as Parts[number];
  });

const lobes = Object.keys(
  organById("respiratory.lungs")?.definition.observations?.consolidation?.parts ?? {},
);
const english = wordsIn("en");
const reported = reportWords("en");
const named = (ids: Iterable<string>, nameOf: (id: string) => string): Record<string, string> =>
  Object.fromEntries([...ids].map((id) => [id, accented(nameOf(id))]));

/** As its file would say it. */
Object.assign(messages, {
  xx: {
    ...messages.en,
    id: "xx",
    report: Object.fromEntries(
      Object.entries(messages.en.report ?? {}).map(([key, text]) => [
        key,
        accentedParts(new IntlMessageFormat(text, "en").getAst()),
      ]),
    ),
    terms: {
      organs: named(
        organs.map(({ id }) => id),
        (id) => english.name("organs", id),
      ),
      materials: named(Object.keys(sampleRules.materials), (id) => english.name("materials", id)),
      containers: named(Object.keys(definitions.container), (id) => english.name("containers", id)),
      tests: named(Object.keys(definitions.test), (id) => english.name("tests", id)),
      indicators: named(indicators.keys(), (id) => reported.name("indicators", id)),
      scales: named(scales.keys(), (id) => reported.name("scales", id)),
      systems: named(
        systems.map(({ id }) => id),
        (id) => reported.name("systems", id),
      ),
      bases: named(["", ...Object.keys(selectionBases)], (id) => reported.name("bases", id)),
      lobes: named(lobes, (id) => reported.name("lobes", id)),
    },
  },
});

/** What people wrote, and what names a source: as it is, in every language. */
function ownWords({ farm, by, made_by, visits, pigs, shares, scales: told, files }: ReportResult): string[] {
  const texts = [
    farm,
    by,
    made_by,
    visits.map(({ chosen: _, changes, ...visit }) => [
      visit,
      changes,
      // A change stands beside its day.
      changes.map((change) => change.replace(/\d{4}-\d{2}-\d{2}/, "").trim()),
    ]),
    pigs.map(({ id, visit, group, findings, systems: of, steps, samples, diagnosis }) => [
      id,
      visit,
      group,
      findings.map(({ words }) => words),
      Object.values(of).map(({ reason }) => reason),
      steps.map(({ what }) => what).filter((what) => what !== "opened" && what !== "gut_fixed"),
      // Agents have Latin names; a pathologist's text is the record's own.
      samples.map((sample) => [
        sample.id,
        sample.at,
        sample.results.map(({ of, said }) => [
          of,
          ["positive", "negative", "inconclusive"].includes(said ?? "") ? null : said,
        ]),
      ]),
      diagnosis,
    ]),
    // What no file of a language can name: questions and scales that a practice made itself.
    shares.map(({ indicator, title, source }) => [source, indicators.has(indicator) ? null : title]),
    told.map(({ scale, title, source }) => [source, scales.has(scale) ? null : title]),
    // Diseases and what the knowledge says of them are English, and counted in other languages.
    [...diseases.values()].map(({ name }) => name),
    files,
    "carcase",
  ];
  const flat = (one: unknown): string[] =>
    typeof one === "string"
      ? [one]
      : typeof one === "object" && one !== null
        ? Object.values(one).flatMap(flat)
        : [];
  return [...new Set(flat(texts))].filter((text) => /[a-z]/i.test(text)).sort((a, b) => b.length - a.length);
}

const entities = { "&lt;": "<", "&gt;": ">", "&quot;": '"', "&#39;": "'", "&amp;": "&" };

/** Everything that is read or heard on a page. */
const textsOf = (html: string): string[] =>
  [
    ...html
      .replaceAll(/<style>[\s\S]*?<\/style>/g, "")
      .replaceAll(/<[^>]*?\s(?:aria-label|alt|title)="([^"]*)"[^>]*>/g, "\n$1\n")
      .replaceAll(/<[^>]*>/g, "\n")
      .replaceAll(/&(?:lt|gt|quot|#39|amp);/g, (entity) => entities[entity as keyof typeof entities])
      .split("\n"),
  ]
    .map((text) => text.trim())
    .filter((text) => text !== "");

/** What the locale of a language gives by itself. */
const ofTheLocale = /\b(?:and|(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sept?|Oct|Nov|Dec)[a-z]*)\b/g;
const escaped = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&");

/** Letters without an accent that nobody of the farm wrote; in a figure long words are cut. */
function untranslated(report: ReportResult, html: string): string[] {
  const own = ownWords(report);
  const whole = own.map((text) => new RegExp(`(?<![a-z])${escaped(text)}(?![a-z])`, "gi"));
  const isCut = (text: string): boolean =>
    text.endsWith("…") && own.some((one) => one.startsWith(text.slice(0, -1)));
  const rest = (text: string): string =>
    whole
      .reduce((left, words) => left.replaceAll(words, ""), text)
      .replaceAll(ofTheLocale, "")
      .replaceAll(/[a-z]\u0301/gi, "");
  return [...new Set(textsOf(html))].filter((text) => !isCut(text) && /[a-z]/i.test(rest(text)));
}

const pages = (["case", "visit", "farm"] as const).flatMap((of) =>
  audiences.map((audience) => ({ of, audience })),
);

describe("a language that is one more file", () => {
  const language: string = "xx";
  if (!isLanguage(language)) throw new Error("the accented language is not there");
  const words = reportWords(language);

  it.each(pages)("is all that a report of a $of for a $audience says", ({ of, audience }) => {
    expect(untranslated(reports[of], reportHtml(reports[of], audience, words))).toEqual([]);
  });

  it("is all that the pages of an archive say", () => {
    const pages = [
      ...archivePages(readCases(["cases-example/alder-farm"]), {
        version: reports.farm.made_by,
        filesOf: () => reports.farm.files,
        words,
      }),
    ].filter(({ name }) => name.endsWith(".html"));
    expect(pages.map(({ name }) => name)).toContain("index.html");
    expect(pages.flatMap(({ text }) => untranslated(reports.farm, text))).toEqual([]);
  });

  it("would see an English word", () => {
    const seen = untranslated(reports.farm, reportHtml(reports.farm, "colleague", reportWords("en")));
    for (const text of ["The answer", "Respiratory system", "Snout grade 0-5"])
      expect(
        seen.some((one) => one.includes(text)),
        text,
      ).toBe(true);
  });
});
