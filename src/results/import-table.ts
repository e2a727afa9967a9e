/** A laboratory's table as a file of results: all of it, or what is wrong with it, cell by cell. */
import { basename, join, resolve } from "node:path";
import { validate } from "../cases/faults/validate.ts";
import { type Fault, readCases, type Visit } from "../cases/index.ts";
import { likelyResultColumn, resultColumn } from "../cases/settings/result-columns.ts";
import { type Form, type FormValue, formText } from "../cases/yaml/form.ts";
import { agentCalled, agents, testWords } from "../knowledge/agents.ts";
import { resultsOf, type TakenSample, takenSamples } from "../record/index.ts";
import {
  type Cell,
  cellValue,
  columnsOf,
  firstOf,
  headOf,
  isFilled,
  isUnread,
  type Manner,
  mannerOf,
  noCell,
  type Proposed,
  proposal,
  type ReadColumn,
  saidOfHead,
  schemaHead,
  Table,
  TableFault,
} from "../tally/index.ts";
import { count } from "../words/listing.ts";
import { nearest } from "../words/nearest.ts";

export interface ImportWish {
  /** The table, as shown to people. */
  readonly file: string;
  readonly bytes: Buffer;
  /** The folder of the visit. */
  readonly folder: string;
  readonly config: string | false | undefined;
  /** What rows without a test or an agent of their own are of. */
  readonly test: string | undefined;
  readonly agent: string | undefined;
}

export interface ImportedResults {
  /** How the table was read, in words. */
  readonly said: readonly string[];
  readonly name: string;
  readonly text: string;
  readonly entries: number;
  readonly samples: number;
}

export interface UnmappedResults {
  readonly said: readonly string[];
  readonly unknown: readonly Proposed[];
  readonly faults: readonly Fault[];
}

type Entry = Record<string, unknown>;

/** An entry with the cells that it was made of, by key. */
interface MadeEntry {
  readonly entry: Entry;
  readonly cells: ReadonlyMap<string, Cell>;
  readonly first: Cell;
}

/** @throws TableFault with all that is wrong; @throws RangeError for a folder or a word that does not fit */
export function importResults(wish: ImportWish): ImportedResults | UnmappedResults {
  const visit = visitOf(wish);
  const table = new Table(wish.file, wish.bytes);
  const head = headOf(table);
  const columns = columnsOf(head.columns, table, { own: visit.settings.resultsColumns, find: resultColumn });
  const said = [table.said, ...saidOfHead(head)];
  if (columns.unknown.length > 0)
    return {
      said,
      unknown: proposal(columns.unknown, likelyResultColumn),
      faults: columns.unknown.map(({ cell, head: name }) =>
        table.fault(cell, `nobody has said what "${name}" is`),
      ),
    };
  if (head.rows.length === 0)
    throw new TableFault([table.fault(noCell, "there is no row below the head; write one line a result")]);
  checkHead(columns.read, table, wish);
  const manner = mannerOf(columns.read);
  if (manner.unread.length > 0)
    throw new TableFault(manner.unread.map(({ cell, message }) => table.fault(cell, message)));
  const faults: Fault[] = [];
  const reader = new RowReader({ columns: columns.read, manner, table, wish, faults });
  const made = joined(head.rows.flatMap((row) => reader.entryOf(row) ?? []));
  faults.push(...unknownSamples(made, visit, table), ...twice(made, visit, table));
  const record = { format: 1, results: visit.id, entries: made.map(({ entry }) => entry) };
  for (const { path, message } of validate("results", record).faults) {
    const [, index, key] = path;
    const one = made[Number(index)];
    if (one === undefined || faults.some(({ line }) => line === table.line(one.first.start))) continue;
    faults.push(table.fault(one.cells.get(String(key)) ?? one.first, message));
  }
  if (faults.length > 0) throw new TableFault(firstOf(faults));
  const name = `results-${slug(wish.file)}.yaml`;
  return {
    said: [
      ...said,
      ...manner.said,
      ...(columns.skipped.length === 0 ? [] : [`${count(columns.skipped.length, "column")} skipped`]),
    ],
    name,
    text: schemaHead(join(wish.folder, name), "results") + textOf(record),
    entries: made.length,
    samples: new Set(made.flatMap(({ entry }) => samplesOf(entry))).size,
  };
}

function visitOf({ folder, config }: ImportWish): Visit {
  const archive = readCases([folder], config === undefined ? {} : { config });
  if (archive.unreadable.length > 0) throw new TableFault(archive.unreadable);
  const visit = archive.visits.find((one) => resolve(one.folder) === resolve(folder));
  if (visit === undefined)
    throw new RangeError(
      `${folder}: there is no visit.yaml in it; name the folder of the visit that the samples are of`,
    );
  return visit;
}

function checkHead(columns: readonly ReadColumn[], table: Table, { test, agent }: ImportWish): void {
  const has = (id: string): boolean => columns.some(({ to }) => to.id === id);
  const faults: string[] = [];
  if (!has("sample"))
    faults.push(
      "no column is called sample; head the one with the numbers of the labels so, or map it in carcase.yaml",
    );
  if (!has("test") && test === undefined)
    faults.push("no column says which test it was; add one called test, or write --test pcr");
  if (faults.length > 0) throw new TableFault(faults.map((message) => table.fault(noCell, message)));
  if (test !== undefined && !testWords.includes(test))
    throw new RangeError(`--test: "${test}" is no test. ${suggestion(test, testWords)}`);
  if (agent !== undefined && agentCalled(agent) === undefined)
    throw new RangeError(`--agent: "${agent}" is no agent. ${agentSuggestion(agent)}`);
}

const suggestion = (word: string, known: readonly string[]): string => {
  const near = nearest(word, known);
  return near === undefined ? "carcase explain tests lists them." : `Did you mean ${near}?`;
};

interface Reading {
  readonly columns: readonly ReadColumn[];
  readonly manner: Manner;
  readonly table: Table;
  readonly wish: ImportWish;
  readonly faults: Fault[];
}

class RowReader {
  constructor(readonly reading: Reading) {}

  /** @returns undefined for a row without a result, and where a cell is at fault */
  entryOf(row: readonly Cell[]): MadeEntry | undefined {
    const { columns, manner, table, wish, faults } = this.reading;
    const cells = new Map<string, Cell>();
    const values: Entry = {};
    let isFaulty = false;
    for (const column of columns) {
      const cell = row[column.column];
      if (cell === undefined || !isFilled(cell)) continue;
      const value = cellValue(cell, column, manner);
      const read = isUnread(value) ? value.message : this.#read(column.to.id, value);
      if (typeof read === "string") {
        faults.push(table.fault(cell, read));
        isFaulty = true;
        continue;
      }
      for (const [key, one] of Object.entries(read.values)) {
        values[key] = one;
        cells.set(key, cell);
      }
    }
    const first = row.find(isFilled) ?? noCell;
    if (isFaulty || Object.keys(values).length === 0) return undefined;
    if (values.sample === undefined && values.pool === undefined) {
      faults.push(table.fault(first, "this row names no sample; write its number, or empty the row"));
      return undefined;
    }
    values.test ??= wish.test;
    values.agent ??=
      values.analyte === undefined && wish.agent !== undefined ? agentCalled(wish.agent) : undefined;
    if (values.test === undefined) {
      faults.push(table.fault(first, "this row names no test; write one, such as pcr"));
      return undefined;
    }
    return { entry: inOrder(values), cells, first };
  }

  /** What a value is as keys of an entry; a text says what is wrong with it. */
  #read(id: string, value: unknown): { readonly values: Entry } | string {
    const text = String(value).trim();
    switch (id) {
      case "sample": {
        const ids = text.split(/[+;,\s]+/).filter((one) => one !== "");
        return { values: ids.length === 1 ? { sample: ids[0] } : { pool: ids } };
      }
      case "test": {
        const word = text.toLowerCase().replaceAll(" ", "-");
        if (testWords.includes(word)) return { values: { test: word } };
        const meant = testsCalled.find(([pattern]) => pattern.test(text))?.[1];
        return meant === undefined
          ? `"${text}" is no test known here. ${suggestion(word, testWords)} Or map the word in carcase.yaml`
          : { values: { test: meant, method: text } };
      }
      case "agent": {
        const agent = agentCalled(text);
        return agent === undefined
          ? `"${text}" is no agent known here. ${agentSuggestion(text)} Or map the word in carcase.yaml`
          : { values: { agent } };
      }
      case "interpretation": {
        const said = interpretationOf(text);
        return said === undefined
          ? `"${text}" is neither positive nor negative, inconclusive or not-testable. Write one of them, or map the word in carcase.yaml`
          : { values: { interpretation: said } };
      }
      case "date":
        return { values: { date: text.slice(0, 10) } };
      case "category":
        return { values: { category: text.toUpperCase() } };
      case "mic":
      case "value":
      case "titre":
        return { values: { [id]: measured(value) } };
      default:
        return { values: { [id]: typeof value === "number" ? value : text } };
    }
  }
}

/** `<0,5` is `< 0.5`; a number stays one. */
function measured(value: unknown): number | string {
  if (typeof value === "number") return value;
  const text = String(value).trim().replace(",", ".");
  if (/^\d+(?:\.\d+)?$/.test(text)) return Number(text);
  const [, sign, rest] = /^(<=|>=|[<>≤≥])\s*(\S.*)$/.exec(text) ?? [];
  if (sign === undefined || rest === undefined) return text;
  return `${sign.replace("<=", "≤").replace(">=", "≥")} ${rest}`;
}

/** What laboratories call their tests; the words themselves stay as the method. */
const testsCalled: readonly (readonly [RegExp, string])[] = [
  [/pcr/i, "pcr"],
  [/elisa|antibod|antik|serolog|hemmtest|\bhi\b|\bsnt\b/i, "serology"],
  [/histolog|histopath/i, "histology"],
  [/\bihc\b|immunhisto|immunohisto/i, "immunohistochemistry"],
  [/cultur|kultur|cultiv|bakteriolog|bacteriolog/i, "culture"],
  [/antibiogram|\bmic\b|\bmhk\b|susceptib|resisten/i, "antibiogram"],
  [/sequen/i, "sequencing"],
  [/parasit|coprolog|flotation|mcmaster/i, "parasitology"],
];

const agentSuggestion = (text: string): string => {
  const near = nearest(
    text,
    [...agents.values()].flatMap(({ name, short = [] }) => [name, ...short]),
  );
  const id = near === undefined ? undefined : agentCalled(near);
  return id === undefined ? "carcase explain agents lists them." : `Did you mean ${id}?`;
};

function interpretationOf(text: string): string | undefined {
  const word = text.toLowerCase().replace(/[.:]$/, "").trim();
  const spaced = /\w/.test(word) ? word.replaceAll(/[\s_-]+/g, " ") : word;
  return interpretations.find(([, words]) => words.includes(spaced))?.[0];
}

const interpretations: readonly (readonly [string, readonly string[]])[] = [
  ["positive", ["positive", "pos", "+", "p", "detected", "positiv", "nachgewiesen", "positivo", "found"]],
  [
    "negative",
    [
      "negative",
      "neg",
      "-",
      "–",
      "n",
      "not detected",
      "nd",
      "negativ",
      "nicht nachgewiesen",
      "negativo",
      "not found",
      "no growth",
    ],
  ],
  [
    "inconclusive",
    ["inconclusive", "?", "+/-", "±", "suspect", "doubtful", "borderline", "fraglich", "dudoso", "equivocal"],
  ],
  ["not-testable", ["not testable", "not tested", "invalid", "unsuitable", "nicht auswertbar", "no apto"]],
];

const order = [
  "sample",
  "pool",
  "test",
  "method",
  "agent",
  "analyte",
  "value",
  "unit",
  "ct",
  "cut_off",
  "titre",
  "interpretation",
  "date",
  "reference",
  "antibiogram",
  "text",
  "note",
];
const drugKeys = ["drug", "mic", "zone", "category", "standard", "year"];

/** The keys in the order of the format; what belongs to a drug, under antibiogram. */
function inOrder(values: Entry): Entry {
  const drug = Object.fromEntries(
    drugKeys.flatMap((key) => (values[key] === undefined ? [] : [[key, values[key]]])),
  );
  const all: Entry = { ...values, ...(values.drug !== undefined && { antibiogram: [drug] }) };
  return Object.fromEntries(
    [...order, ...(values.drug === undefined ? drugKeys : [])].flatMap((key) =>
      all[key] === undefined ? [] : [[key, all[key]]],
    ),
  );
}

/** Rows of drugs for one isolate are one antibiogram. */
function joined(made: readonly MadeEntry[]): MadeEntry[] {
  const whole: MadeEntry[] = [];
  const bySubject = new Map<string, MadeEntry>();
  for (const one of made) {
    const { antibiogram, ...rest } = one.entry;
    const key = JSON.stringify(rest);
    const known = antibiogram === undefined ? undefined : bySubject.get(key);
    if (known === undefined) {
      whole.push(one);
      if (antibiogram !== undefined) bySubject.set(key, one);
    } else (known.entry.antibiogram as unknown[]).push(...(antibiogram as unknown[]));
  }
  return whole;
}

const samplesOf = ({ sample, pool }: Entry): readonly string[] =>
  Array.isArray(pool) ? pool.map(String) : [String(sample)];

function unknownSamples(made: readonly MadeEntry[], visit: Visit, table: Table): Fault[] {
  const taken: ReadonlyMap<string, TakenSample> = takenSamples(visit);
  return made.flatMap(({ entry, cells, first }) =>
    samplesOf(entry)
      .filter((id) => !taken.has(id))
      .map((id) => {
        const near = nearest(id, [...taken.keys()]);
        return table.fault(
          cells.get("sample") ?? cells.get("pool") ?? first,
          `no case of ${visit.id} has a sample ${id}. ${near === undefined ? "Correct the number, or write the sample into its case first" : `Did you mean ${near}?`}`,
        );
      }),
  );
}

/** Results that two rows tell, or that stand beside the visit already. */
function twice(made: readonly MadeEntry[], visit: Visit, table: Table): Fault[] {
  const keyOf = (entry: Entry): string =>
    JSON.stringify([
      samplesOf(entry),
      entry.test,
      entry.agent,
      entry.analyte,
      entry.antibiogram === undefined,
    ]);
  const known = new Map<string, string>();
  for (const { entry, file, path } of resultsOf(visit))
    known.set(keyOf({ ...entry }), `${file.file}:${file.document.where(path).line}`);
  return made.flatMap(({ entry, first }) => {
    const key = keyOf(entry);
    const before = known.get(key);
    known.set(key, before ?? `line ${table.line(first.start)}`);
    return before === undefined
      ? []
      : [table.fault(first, `this result stands in ${before} already; take one of them out`)];
  });
}

/** A name for the file from that of the table. */
const slug = (file: string): string =>
  basename(file)
    .replace(/\.[a-z]+$/i, "")
    .replace(/^results?[-_ ]*/i, "")
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-|-$/g, "")
    .slice(0, 60) || "table";

const textOf = ({
  results,
  entries,
}: {
  readonly results: string;
  readonly entries: readonly Entry[];
}): string =>
  formText([
    ["format", { word: "1" }],
    ["results", results],
    ["entries", { items: entries.map(formOf) }],
  ]);

const formOf = (entry: Entry): Form =>
  Object.entries(entry).map(([key, value]) => [key, formValue(value)] as const);

function formValue(value: unknown): FormValue {
  if (typeof value === "number") return { word: String(value) };
  if (!Array.isArray(value)) return String(value);
  return value.every((one) => typeof one === "object")
    ? { items: value.map((one) => formOf(one as Entry)) }
    : value.map(String);
}
