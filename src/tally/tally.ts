/** A tally as cases: each row a pig, each column a value of its case. All of it, or what is wrong with it. */
import { basename, resolve } from "node:path";
import { ArchiveContext } from "../cases/files/archive-context.ts";
import { checkDocument, keyedDocument } from "../cases/files/read-file.ts";
import {
  type Case,
  type Fault,
  formatPath,
  type Path,
  pathsMeet,
  unknownName,
  valueAt,
} from "../cases/index.ts";
import { buildCase } from "../cases/model/build-case.ts";
import { withDefaults } from "../cases/model/defaults.ts";
import { isKeyed, type Keyed, put, remove } from "../cases/model/path.ts";
import { caseColumns } from "../cases/settings/case-columns.ts";
import type { CaseFile } from "../generated/case.types.ts";
import type { Defaults } from "../generated/visit.types.ts";
import { type SchemaKind, schemaLine, schemaPlace } from "../schemas/index.ts";
import { count } from "../words/listing.ts";
import { columnsOf, type ReadColumn } from "./columns.ts";
import { type Head, type HeadColumn, headOf } from "./head.ts";
import { recordText } from "./record-text.ts";
import { type Cell, isFilled, Table, TableFault } from "./table.ts";
import { cellValue, isUnread, type Manner, mannerOf, type Value } from "./values.ts";

export interface TallyWish {
  /** The table, as shown to people. */
  readonly file: string;
  readonly bytes: Buffer;
  /** The folder of the visit. */
  readonly folder: string;
  readonly config?: string | undefined;
  /** What a visit file that is not there yet is to say. */
  readonly visit?: string | undefined;
  readonly date?: string | undefined;
  readonly protocol?: string | undefined;
  /** Whether a file is there. */
  isThere(file: string): boolean;
}

interface NewFile {
  readonly file: string;
  readonly text: string;
}

interface NewCase extends NewFile {
  readonly id: string;
  readonly tag: string;
  /** Its line in the table. */
  readonly line: number;
}

export interface Tally {
  /** How the table was read, in words. */
  readonly said: readonly string[];
  readonly cases: readonly NewCase[];
  /** The visit file, where there is none yet. */
  readonly visit: NewFile | undefined;
  /** Cases that the visit must name itself, because its file is there already. */
  readonly unnamed: string | undefined;
  /** As they will be read, for the alarms. */
  readonly drafts: readonly Case[];
}

/** A table with columns of which nobody said what they are. */
export interface Unmapped {
  readonly said: readonly string[];
  readonly unknown: readonly HeadColumn[];
  readonly faults: readonly Fault[];
}

const mostRows = 5000;
/** More faults are not listed one by one. */
const mostFaults = 20;

/** @throws TableFault with all that is wrong, by line and column of the table; @throws RangeError for a wish that does not fit */
export function readTally(wish: TallyWish): Tally | Unmapped {
  const table = new Table(wish.file, wish.bytes);
  const head = headOf(table);
  const context = new ArchiveContext(".", wish.config, [wish.folder]);
  const columns = columnsOf(head.columns, table, context.settings(resolve(wish.folder)));
  if (context.unreadable.length > 0) throw new TableFault(context.unreadable);
  const [first] = head.rows;
  if (first === undefined)
    throw new TableFault([table.fault(noCell, "there is no row below the head; write one line a pig")]);
  if (head.rows.length > mostRows)
    throw new TableFault([
      table.fault(first[0] ?? noCell, `there are ${head.rows.length} rows below; ${mostRows} is the limit`),
    ]);
  const said = [table.said, ...saidOfHead(head)];
  if (columns.unknown.length > 0)
    return {
      said,
      unknown: columns.unknown,
      faults: columns.unknown.map(({ cell, head: name }) =>
        table.fault(cell, `nobody has said what "${name}" is`),
      ),
    };
  const manner = mannerOf(columns.read);
  if (manner.unread.length > 0)
    throw new TableFault(manner.unread.map(({ cell, message }) => table.fault(cell, message)));
  const rows = new Rows(table, columns.read, manner, head);
  const visit = new VisitOf(wish, context, rows.pigs);
  const made = rows.pigs.map((pig, index) => makeCase(pig, index, { wish, table, visit, context }));
  const faults = [
    ...rows.faults,

    ...made.flatMap((one) => one.faults),
    ...twice(made, table),
  ];
  if (faults.length > 0)
    throw new TableFault(
      faults
        .sort((a, b) => a.line - b.line || a.column - b.column)
        .slice(0, mostFaults)
        .map((fault, index) =>
          index === mostFaults - 1 && faults.length > mostFaults
            ? { ...fault, message: `${fault.message} (and ${faults.length - mostFaults} more like these)` }
            : fault,
        ),
    );
  return {
    said: [
      ...said,
      ...manner.said,
      ...(columns.skipped.length === 0 ? [] : [`${count(columns.skipped.length, "column")} skipped`]),
      ...rows.said,
    ],
    cases: made.map(({ file, text, id, tag, line }) => ({ file, text, id, tag, line })),
    visit: visit.file(made.map(({ id }) => id)),
    unnamed: visit.namesItsCases ? visit.known?.file : undefined,
    drafts: made.flatMap(({ draft }) => draft ?? []),
  };
}

const noCell: Cell = { text: "", row: 0, column: 0, start: 0, end: 0 };

const saidOfHead = ({ titles, isDouble, line }: Head): string[] => [
  ...(titles === 0 ? [] : [`${count(titles, "line")} of titles`]),
  ...(isDouble
    ? [`head in the lines ${line} and ${line + 1}`]
    : titles === 0
      ? []
      : [`head in line ${line}`]),
];

/** A value of a pig with the cell that says it. */
interface Entry {
  readonly path: Path;
  readonly value: Value;
  readonly column: ReadColumn;
  readonly cell: Cell;
}

interface Pig {
  readonly entries: readonly Entry[];
  readonly serial: Entry | undefined;
  readonly first: Cell;
}

/** Rows that hold no pig but the name of a sum of them. */
const totals =
  /^(?:sum|total|totals|mean|average|median|count|summe|gesamt|mittelwert|durchschnitt|suma|promedio)$/i;

class Rows {
  readonly pigs: readonly Pig[];
  readonly faults: Fault[] = [];
  readonly said: string[] = [];

  constructor(table: Table, columns: readonly ReadColumn[], manner: Manner, head: Head) {
    let [blank, again] = [0, 0];
    const names = head.columns.map(({ cell }) => cell.text.toLowerCase());
    this.pigs = head.rows.flatMap((cells): Pig[] => {
      const first = cells.find(isFilled) ?? noCell;
      if (head.columns.every(({ column }, at) => (cells[column]?.text.toLowerCase() ?? "") === names[at])) {
        again++;
        return [];
      }
      const entries = columns.flatMap((column): Entry[] => {
        const cell = cells[column.column];
        if (cell === undefined || !isFilled(cell)) return [];
        const value = cellValue(cell, column, manner);
        if (isUnread(value)) {
          this.faults.push(table.fault(value.cell, `${column.head}: ${value.message}`));
          return [];
        }
        return [{ path: column.to.path, value, column, cell }];
      });
      const serial = entries.find(({ column }) => column.to.kind === "serial");
      const values = entries.filter((entry) => entry !== serial);
      if (values.length === 0 && cells.filter(isFilled).length <= 1) {
        blank++;
        return [];
      }
      if (totals.test(first.text)) {
        this.faults.push(
          table.fault(first, `"${first.text}" looks like a line of totals; take it out of the table`),
        );
        return [];
      }
      return [{ entries: values, serial, first }];
    });
    if (again > 0) this.said.push(`the head again in ${count(again, "line")}`);
    if (blank > 0) this.said.push(`${count(blank, "line")} left blank`);
    if (this.pigs.length === 0 && this.faults.length === 0)
      this.faults.push(
        table.fault(noCell, "no row below the head says anything of a pig; nothing is to be imported"),
      );
  }
}

const isoDay = /^\d{4}-\d{2}-\d{2}$/;
/** What a visit may hold for its cases. */
const ofTheDay = [
  "protocol",
  "examiner",
  "pig.group",
  "pig.age",
  "pig.class",
  "death.manner",
  "death.method",
  "death.at",
  "opened.at",
  "opened.ambient",
  "opened.place",
  "respiratory.turbinates.section",
];

/** The visit that the pigs belong to: the one that is there, or a new one with what all rows share. */
class VisitOf {
  readonly known;
  readonly id: string;
  readonly defaults: Defaults;
  readonly #wish: TallyWish;
  readonly #date: string;

  constructor(wish: TallyWish, context: ArchiveContext, pigs: readonly Pig[]) {
    this.#wish = wish;
    this.known = context.visit(resolve(wish.folder));
    const faults = [...context.unreadable, ...(this.known?.faults ?? [])];
    if (faults.length > 0) throw new TableFault(faults);
    const days = new Set(
      pigs.flatMap(({ entries }) =>
        entries
          .filter(({ path }) => formatPath(path) === "opened.at")
          .map(({ value }) => String(value).slice(0, 10)),
      ),
    );
    const named = basename(resolve(wish.folder));
    const [day = ""] = days.size === 1 ? days : [];
    this.#date = wish.date ?? (isoDay.test(named) ? named : day);
    const farm = context.farm(resolve(wish.folder))?.id;
    this.id = this.known?.id ?? wish.visit ?? (farm === undefined ? "" : `${farm}-${this.#date}`);
    if (this.known === undefined && this.#date === "")
      throw new RangeError(
        `there is no visit.yaml in ${wish.folder}, and no one day under "opened at"; say it, such as --date 2026-03-14`,
      );
    if (this.id === "")
      throw new RangeError(
        `there is no visit.yaml in ${wish.folder}, nor a farm.yaml above it; name the visit, such as --visit alder-${this.#date}`,
      );
    const { protocol } = wish;
    const names = [...context.settings(resolve(wish.folder)).protocols.keys()];
    if (protocol !== undefined && this.known !== undefined)
      throw new RangeError(
        `--protocol: ${this.known.file} is there already; write protocol: ${protocol} under its defaults`,
      );
    if (protocol !== undefined && !names.includes(protocol))
      throw new RangeError(`--protocol: ${unknownName(protocol, names, "protocol")}`);
    this.defaults =
      this.known === undefined
        ? { ...(protocol !== undefined && { protocol }), ...shared(pigs) }
        : (this.known.record.defaults ?? {});
  }

  get namesItsCases(): boolean {
    return this.known?.record.cases !== undefined;
  }

  file(cases: readonly string[]): NewFile | undefined {
    if (this.known !== undefined) return undefined;
    const file = `${this.#wish.folder}/visit.yaml`;
    const defaults = Object.keys(this.defaults).length === 0 ? {} : { defaults: this.defaults };
    return {
      file,
      text: `${schemaHead(file, "visit")}${recordText({ format: 1, visit: this.id, date: this.#date, ...defaults, cases })}`,
    };
  }
}

/** What every row says alike. One pig shares nothing. */
function shared(pigs: readonly Pig[]): Defaults {
  const defaults = {};
  if (pigs.length < 2) return defaults;
  for (const id of ofTheDay) {
    const said = pigs.map(({ entries }) => entries.find(({ column }) => column.to.id === id));
    const [first] = said;
    if (first === undefined) continue;
    if (said.every((one) => JSON.stringify(one?.value) === JSON.stringify(first.value)))
      lay(defaults, first.path, first.value);
  }
  return defaults;
}

/** Puts a value at a path, making the groups between; an organ that has a word gets it as a key. */
function lay(into: object, path: Path, value: Value): void {
  for (let depth = 1; depth < path.length; depth++) {
    const at = path.slice(0, depth);
    const there = valueAt(into, at);
    if (!isKeyed(there)) put(into, at, there === undefined ? {} : { state: there });
  }
  const there = valueAt(into, path);
  if (isKeyed(there) && !isKeyed(value)) there.state = value;
  else put(into, path, value);
}

interface Around {
  readonly wish: TallyWish;
  readonly table: Table;
  readonly visit: VisitOf;
  readonly context: ArchiveContext;
}

interface Made extends NewCase {
  readonly faults: readonly Fault[];
  readonly draft: Case | undefined;
  readonly pig: Pig;
}

function makeCase(pig: Pig, index: number, { wish, table, visit, context }: Around): Made {
  const { entries, serial, first } = pig;
  const faults: Fault[] = [];
  const at = serial?.cell ?? first;
  const numbered = String(serial?.value ?? index + 1);
  if (!/^\d{1,4}$/.test(numbered))
    faults.push(
      table.fault(
        at,
        `${serial?.column.head}: "${numbered}" is not the number of a pig in its visit, 1, 2, 3; what stands on the ear goes under tag`,
      ),
    );
  const number = numbered.padStart(2, "0");
  const own = entries.find(({ column }) => column.to.id === "case");
  const id = String(own?.value ?? `${visit.id}-${number}`);
  const record: Keyed = { format: 1, case: id };
  for (const entry of entries.toSorted((a, b) => placeOf(a) - placeOf(b))) {
    const { path, value, cell, column } = entry;
    const closed = entries.find(
      (other) =>
        other !== entry && isKeyed(other.value) && other.path.every((step, depth) => path[depth] === step),
    );
    if (closed === undefined) lay(record, path, value);
    else
      faults.push(
        table.fault(
          cell,
          `${column.head}: this was not examined, as column "${closed.column.head}" says; empty one of the two cells`,
        ),
      );
  }
  const file = `${wish.folder}/pig-${number}.yaml`;
  if (wish.isThere(file))
    faults.push(
      table.fault(
        at,
        `${file} is there already, and no case is overwritten; number the pigs on from the last, in a column "pig"`,
      ),
    );
  const read = drafted(file, record, { wish, visit, context });
  if (faults.length === 0)
    for (const fault of read.faults) {
      const entry = entries
        .filter(({ path }) => pathsMeet(path, fault.path) || pathsMeet(path, fault.intended))
        .toSorted((a, b) => b.path.length - a.path.length)[0];
      const bare = fault.message
        .replace(`${formatPath(fault.path)}: `, "")
        .replace(`${formatPath(fault.path)} `, "");
      const said = entry === undefined ? fault.message : `${entry.column.head}: ${bare}${unitHint(entry)}`;
      faults.push(table.fault(entry?.cell ?? at, said.split("\n")[0] ?? ""));
    }
  const kept = withoutDefaults(record, read.record, visit.defaults);
  return {
    file,
    text: `${schemaHead(file, "case")}${recordText(kept)}`,
    id,
    tag: String(entries.find(({ column }) => column.to.id === "pig.tag")?.value ?? ""),
    line: table.line(first.start),
    faults,
    draft: read.draft,
    pig,
  };
}

/** The order of a case. */
const places = new Map(caseColumns.map(({ id }, at) => [id, at]));
const placeOf = ({ column }: Entry): number => places.get(column.to.id) ?? places.size;

const unitHint = ({ column, value }: Entry): string =>
  column.to.kind === "quantity" && /^-?\d+(?:\.\d+)?$/.test(String(value))
    ? ` Or write the unit into the head: ${column.head} (${column.to.unit}).`
    : "";

function schemaHead(file: string, kind: SchemaKind): string {
  const schema = schemaPlace(file, kind);
  return schema === undefined ? "" : `${schemaLine(schema)}\n`;
}

/** The case as it will be read. */
function drafted(file: string, record: Keyed, { wish, visit, context }: Omit<Around, "table">) {
  const read = keyedDocument(file, { ok: true, text: recordText(record) });
  if (!read.ok) return { faults: read.faults, record: {} as CaseFile, draft: undefined };
  const { placed, record: valid, raw } = checkDocument("case", file, read.result);
  const settings = context.settings(resolve(wish.folder));
  const draft = buildCase({
    file,
    document: read.result.document,
    record: valid as unknown as CaseFile,
    raw,
    faults: placed,
    settings,
    visit: visit.known,
    farm: context.farm(resolve(wish.folder)),
  });
  return { faults: placed, record: valid as unknown as CaseFile, draft };
}

/** Leaves out what the case inherits all the same. */
function withoutDefaults(record: Keyed, valid: CaseFile, defaults: Defaults): Keyed {
  const alike = ofTheDay
    .map((id) => id.split("."))
    .filter((path) => {
      const said = valueAt(defaults, path);
      return said !== undefined && JSON.stringify(said) === JSON.stringify(valueAt(record, path));
    });
  const shorter = structuredClone(valid);
  for (const path of alike) remove(shorter, path);
  const { record: completed } = withDefaults({ record: shorter, raw: shorter }, [], defaults);
  const kept = structuredClone(record);
  for (const path of alike)
    if (JSON.stringify(valueAt(completed, path)) === JSON.stringify(valueAt(record, path))) {
      remove(kept, path);
      for (let depth = path.length - 1; depth > 0; depth--) {
        const above = valueAt(kept, path.slice(0, depth));
        if (isKeyed(above) && Object.keys(above).length === 0) remove(kept, path.slice(0, depth));
      }
    }
  return kept;
}

/** Pigs that two rows tell of. */
function twice(made: readonly Made[], table: Table): Fault[] {
  const known = new Map<string, Made>();
  return made.flatMap((one) => {
    const group = one.pig.entries.find(({ column }) => column.to.id === "pig.group")?.value;
    return [
      `case ${one.id}`,
      `file ${one.file}`,
      ...(one.tag === "" ? [] : [`tag ${one.tag} ${String(group)}`]),
    ].flatMap((key) => {
      const other = known.get(key);
      known.set(key, other ?? one);
      if (other === undefined || key.startsWith("file ")) return [];
      const what = key.startsWith("tag ") ? `the tag ${one.tag}` : `the case ${one.id}`;
      const entry =
        one.pig.entries.find(
          ({ column }) => column.to.id === (key.startsWith("tag ") ? "pig.tag" : "case"),
        ) ?? one.pig.serial;
      return [
        table.fault(
          entry?.cell ?? one.pig.first,
          `${what} stands in line ${other.line} already; correct one of them`,
        ),
      ];
    });
  });
}
