/** Templates of the practice: liquid over the data of a report. Nothing in one can read a file or run a program. */
import { Liquid, LiquidError } from "liquidjs";
import { unknownName } from "../../cases/index.ts";
import type { Audience, ReportResult, ReportWords, Term } from "../../report/index.ts";
import { listing } from "../../words/listing.ts";
import { nearest } from "../../words/nearest.ts";
import { type Html, html } from "../page/html.ts";
import { InertFault, inertHtml } from "./inert.ts";

/** What is wrong with a template, and where. */
export class TemplateFault extends Error {
  constructor(
    /** As the texts are named. */
    readonly file: string,
    message: string,
    /** Counted from 1; undefined where the whole file is meant. */
    readonly place?: { readonly line: number; readonly column: number },
  ) {
    super(message);
  }
}

/** Of what is not there, with what there is. */
class UnknownName extends Error {
  constructor(
    readonly unknown: string,
    readonly known: readonly string[],
  ) {
    super(unknown);
  }
}

/** What a template may take: characters and pieces that it puts together, milliseconds. */
const limits = { memoryLimit: 1_000_000, renderLimit: 2_000 };

/** Characters that all templates of a report may put out. */
const mostText = 2_000_000;

class TooMuch extends Error {}

/** `raw` would undo the escaping; with the others the same files would give another report. */
const withoutFilters = /^(?:raw|sample|date.*)$/;

const nameable: readonly Term["term"][] = ["indicators", "scales", "systems", "organs", "bases"];

/**
 * Makes the HTML of templates.
 * @param texts of all templates, by their path from the settings; they may render each other
 * @throws TemplateFault when it is given one that cannot be used
 */
export function templates(
  texts: ReadonlyMap<string, string>,
  report: ReportResult,
  words: ReportWords,
  audience: Audience,
): (file: string) => Html {
  const engine = engineFor(texts, words);
  const data = {
    ...report,
    title: words.tell(report.title),
    answer: report.answer.map((said) => words.tell(said)),
    language: words.language,
    reader: audience,
  };
  const known = Object.fromEntries(Object.entries(data).map(([key, value]) => [key, closed(value)]));
  return (file) => {
    try {
      return inertHtml(String(engine.renderFileSync(file, known)));
    } catch (error) {
      if (error instanceof InertFault) throw notInert(file, texts.get(file) ?? "", error);
      if (!LiquidError.is(error)) throw error;
      throw explained(file, error, texts, Object.keys(known), Object.keys(engine.filters));
    }
  };
}

function engineFor(texts: ReadonlyMap<string, string>, words: ReportWords): Liquid {
  let left = mostText;
  const engine = new Liquid({
    ...limits,
    outputEscape: (value) => {
      const text = textOf(value);
      left -= text.length;
      if (left < 0) throw new TooMuch();
      return html`${text}`.text;
    },
    strictVariables: true,
    strictFilters: true,
    ownPropertyOnly: true,
    templates: Object.fromEntries(texts),
    extname: "",
  });
  for (const name of Object.keys(engine.filters)) if (withoutFilters.test(name)) delete engine.filters[name];
  const numeric = (value: unknown, told: (number: number) => string): string =>
    value === null || value === "" ? "" : told(Number(value));
  engine.registerFilter("name", (id: unknown, kind: unknown) => {
    const term = nameable.find((one) => one === kind);
    if (term === undefined) throw new UnknownName(String(kind), nameable);
    return words.name(term, String(id ?? ""));
  });
  engine.registerFilter("day", (day: unknown) =>
    /^\d{4}-\d\d-\d\d/.test(String(day)) ? words.day(String(day).slice(0, 10)) : "",
  );
  engine.registerFilter("number", (value: unknown) => numeric(value, (number) => words.number(number)));
  engine.registerFilter("percent", (value: unknown) => numeric(value, words.percent));
  return engine;
}

function textOf(value: unknown): string {
  if (Array.isArray(value)) return value.map(textOf).join("");
  if (typeof value === "object" && value !== null)
    throw new Error(`there are several values here; write which: ${listing(Object.keys(value), "or")}`);
  return String(value ?? "");
}

/** Data that answers for its own keys alone, and says which there are when it is asked for another. */
function closed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(closed);
  if (typeof value !== "object" || value === null) return value;
  const own: Record<string, unknown> = Object.assign(Object.create(null), value);
  for (const key of Object.keys(own)) own[key] = closed(own[key]);
  return new Proxy(own, {
    getOwnPropertyDescriptor(target, key) {
      if (typeof key === "string" && !(key in target) && !/^(?:size|first|last)$/.test(key))
        throw new UnknownName(key, Object.keys(target));
      return Reflect.getOwnPropertyDescriptor(target, key);
    },
  });
}

function explained(
  asked: string,
  error: LiquidError,
  texts: ReadonlyMap<string, string>,
  names: readonly string[],
  filters: readonly string[],
): TemplateFault {
  const { token } = error;
  const file = [...texts].find(([, text]) => text === token.input)?.[0] ?? asked;
  const [line = 1, column = 1] = token.getPosition();
  return new TemplateFault(file, reason(error, [...texts.keys()], names, filters), { line, column });
}

function reason(
  error: LiquidError,
  files: readonly string[],
  names: readonly string[],
  filters: readonly string[],
): string {
  const cause: unknown = error.originalError;
  if (cause instanceof UnknownName) return unknown(cause);
  const message = cause instanceof Error ? cause.message : error.message;
  if (cause instanceof RangeError) return "it renders itself without end";
  const [, kind = "", name = ""] =
    /^(undefined variable|undefined filter|ENOENT|tag "(?=[^"]*" not found)):?(.*)/s.exec(message) ?? [];
  if (kind === "undefined variable") {
    const [first = "", ...rest] = name.trim().split(".");
    return rest.length > 0 && names.includes(first)
      ? `there is no "${name.trim()}"`
      : unknown(new UnknownName(first, names));
  }
  if (kind === "undefined filter") return unknownName(name.trim(), filters, "filter");
  if (kind === "ENOENT") return unknownName(/"(.*?)"/s.exec(name)?.[1] ?? "", files, "template");
  if (kind !== "") return `there is no tag "${name.split('"')[0]}"`;
  if (message.startsWith("template render limit"))
    return "it takes longer than two seconds; a loop is too long";
  if (cause instanceof TooMuch || message.startsWith("memory alloc limit"))
    return "it makes or holds too much text; a loop or a range is too long";
  return message
    .replace(/, file:.*/s, "")
    .split("\n", 1)
    .join("");
}

function unknown({ unknown: name, known }: UnknownName): string {
  const guess = nearest(name, known);
  const meant = guess === undefined ? "" : `Did you mean ${guess}? `;
  return `there is no name "${name}". ${meant}There are ${listing(known)}.`;
}

/** Where the template itself has what it must not make. */
function notInert(file: string, text: string, { message, sought }: InertFault): TemplateFault {
  const at = sought === "" ? -1 : text.toLowerCase().indexOf(sought.toLowerCase());
  if (at < 0) return new TemplateFault(file, message);
  const before = text.slice(0, at).split("\n");
  return new TemplateFault(file, message, { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 });
}
