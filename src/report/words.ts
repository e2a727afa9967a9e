/** A report in the language of its reader: sentences by ICU messages, names of things, numbers and days as written there. */
import { IntlMessageFormat } from "intl-messageformat";
import { type Language, messages, type ReportValues } from "../generated/knowledge/messages.ts";
import { indicators, selectionBases, systemTitle } from "../knowledge/index.ts";
import { scales } from "../knowledge/scales.ts";
import { wordsIn } from "../sheet/index.ts";
import type { Listing, Said, Term } from "./result.ts";

/** The English names of what only reports name; the sheet knows the others. */
const english = {
  indicators: (id: string, own: string) => indicators.get(id)?.title ?? own,
  scales: (id: string, own: string) => scales.get(id)?.title ?? own,
  systems: systemTitle,
  bases: (id: string) => selectionBases[id]?.title ?? (id === "" ? "basis not recorded" : id),
  lobes: (id: string) => id.replace("_", " "),
} satisfies Partial<Record<Term["term"], unknown>>;

const isOnlyOfReports = (term: Term["term"]): term is keyof typeof english => Object.hasOwn(english, term);

export interface ReportWords {
  readonly language: Language;
  /** One sentence. */
  tell(said: Said): string;
  say<Key extends keyof ReportValues>(
    key: Key,
    ...values: Record<never, never> extends ReportValues[Key] ? [] : [ReportValues[Key]]
  ): string;
  /** @param own its title, which stands where a practice made it and no language knows it */
  name(term: Term["term"], id: string, own?: string): string;
  list(parts: readonly string[]): string;
  number(value: number, digits?: number): string;
  percent(share: number): string;
  day(day: string): string;
  /** Month and year. */
  month(day: Date): string;
  /** Day and month. */
  dayOfMonth(day: Date): string;
}

/** English is that of the rest of the program. */
const localeOf = (language: Language): string => (language === "en" ? "en-GB" : language);

export function reportWords(language: Language): ReportWords {
  const locale = localeOf(language);
  const { report = {}, terms } = messages[language];
  const formats = new Map<string, IntlMessageFormat>();
  const messageOf = (key: string): IntlMessageFormat => {
    const known =
      formats.get(key) ??
      new IntlMessageFormat(report[key] ?? "", locale, {
        date: { whole: { dateStyle: "long", timeZone: "UTC" } },
      });
    formats.set(key, known);
    return known;
  };
  const sheet = wordsIn(language);
  const name = (term: Term["term"], id: string, own = id): string =>
    isOnlyOfReports(term) ? (terms[term]?.[id] ?? english[term](id, own)) : sheet.name(term, id);
  const joined = new Intl.ListFormat(locale, { type: "conjunction" });
  const value = (one: string | number | Term | Said | Listing): string | number => {
    if (typeof one === "number") return one;
    if (typeof one === "string") return one;
    if ("term" in one) return `${name(one.term, one.id, one.title)}${one.from_memory ? "*" : ""}`;
    if ("list" in one) return joined.format(one.list.map((part) => String(value(part))));
    return tell(one);
  };
  const format = (
    key: string,
    values: Readonly<Record<string, string | number | Term | Said | Listing>> = {},
  ): string =>
    String(
      messageOf(key).format(
        Object.fromEntries(
          Object.entries(values).map(([gap, one]) => [
            gap,
            gap === "day" ? new Date(`${String(one)}T00:00Z`) : value(one),
          ]),
        ),
      ),
    );
  const tell = ({ say, values }: Said): string => format(say, values);
  const number = (of: number, digits = 1): string =>
    new Intl.NumberFormat(locale, { maximumFractionDigits: digits }).format(of);
  return {
    language,
    tell,
    say: (key, ...values) => format(key, values[0]),
    name,
    list: (parts) => joined.format(parts),
    number,
    percent: (share) =>
      new Intl.NumberFormat(locale, { style: "percent", maximumFractionDigits: 1 }).format(share),
    day: (day) =>
      new Intl.DateTimeFormat(locale, { dateStyle: "long", timeZone: "UTC" }).format(
        new Date(`${day}T00:00Z`),
      ),
    dayOfMonth: (day) =>
      new Intl.DateTimeFormat(locale, { day: "numeric", month: "short", timeZone: "UTC" }).format(day),
    month: (day) =>
      new Intl.DateTimeFormat(locale, { month: "short", year: "numeric", timeZone: "UTC" }).format(day),
  };
}
