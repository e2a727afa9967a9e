/** What a table is: one object from which its rows, its columns in every format and the data dictionary are made. */
import { type Case, moment, type Visit } from "../cases/index.ts";
import type { Pseudonyms } from "./pseudonyms.ts";

/** What is tabled at once: the sound cases of one folder, and their visit if there is one. */
export interface TabledFolder {
  readonly cases: readonly Case[];
  readonly visit: Visit | undefined;
}

/** Where and when a row belongs. */
export interface Placed {
  readonly farm: string | undefined;
  readonly visit: string | undefined;
  readonly day: string | undefined;
}

export type Cell = string | number | boolean | null;

/** `year` is that of a day, so that it moves with it. */
export type ColumnType = "text" | "list" | "integer" | "number" | "boolean" | "date" | "datetime" | "year";

/**
 * What becomes of a value in pseudonyms: it stays; it is left out; it gets a pseudonym, or does so where the practice made
 * it up and it is no `known` word; `day` moves it with the days of its farm.
 */
type Shared<Source> =
  | { readonly as: "it is" | "nothing" | "day" }
  | {
      readonly as: "pseudonym" | "own";
      readonly kind: string;
      readonly known: ReadonlySet<string>;
      /** What the name is one of: of two farms, nursery-2 is not the same. */
      readonly within: (source: Source) => string | undefined;
    };

type Value = string | number | boolean | readonly string[] | undefined;

/** A column, for people and programs. */
export interface Column {
  readonly name: string;
  readonly title: string;
  readonly type: ColumnType;
  /** Where its value comes from: `case: pig.weight`, or how it is worked out. */
  readonly from: string;
  readonly unit: string | undefined;
  /** Words that it may hold; where there are none, the place in the schema says them. */
  readonly codes: readonly string[] | undefined;
  readonly isCode: boolean;
  readonly shared: Shared<never>["as"];
}

interface Field<Source> extends Omit<Column, "shared"> {
  readonly shared: Shared<Source>;
  readonly of: (source: Source) => Value;
}

/** A table of any rows. */
export interface Table {
  readonly name: string;
  readonly title: string;
  /** Columns that tell its rows apart; none where nothing does. */
  readonly key: readonly string[];
  /** @param shared whether names are pseudonyms and free text is left out */
  columns(shared: boolean): readonly Column[];
  /** Rows of a folder, their cells in the order of the columns. */
  rows(folder: TabledFolder, pseudonyms: Pseudonyms | undefined): Cell[][];
}

interface Definition<Source> extends Pick<Table, "name" | "title" | "key"> {
  readonly fields: readonly Field<Source>[];
  readonly rows: (folder: TabledFolder) => readonly Source[];
}

export function table<Source extends Placed>({ fields, rows, ...named }: Definition<Source>): Table {
  const all: readonly Field<Source>[] = [...placeFields(), ...fields];
  const kept = all.filter(({ shared }) => shared.as !== "nothing");
  const fieldsFor = (shared: boolean) => (shared ? kept : all);
  return {
    ...named,
    columns: (shared) =>
      fieldsFor(shared).map(({ of: _, shared: how, ...column }) => ({ ...column, shared: how.as })),
    rows: (folder, pseudonyms) =>
      rows(folder).map((source) =>
        fieldsFor(pseudonyms !== undefined).map((field) => cellOf(field, source, pseudonyms)),
      ),
  };
}

/** What every row begins with. */
const placeFields = <Source extends Placed>(): Field<Source>[] => [
  id("farm", "Farm", "farm: farm", "farm", ({ farm }) => farm),
  {
    ...column("year", "Year of the visit; without one, that of the opening or the death", "visit: date"),
    type: "year",
    shared: { as: "day" },
    of: ({ day }) => day,
  },
  id(
    "visit",
    "Visit",
    "visit: visit",
    "visit",
    ({ visit }) => visit,
    ({ farm }) => farm,
  ),
];

function cellOf<Source extends Placed>(
  { type, shared, of }: Field<Source>,
  source: Source,
  pseudonyms: Pseudonyms | undefined,
): Cell {
  const value = of(source);
  if (value === undefined) return null;
  if (type === "date" || type === "datetime" || type === "year") {
    const written = String(value);
    // There is no 31 February, and no program would read it.
    if (moment(written) === undefined) return null;
    return timeCell(type, pseudonyms?.moved(source.farm, written) ?? written);
  }
  const told = (one: string): string =>
    pseudonyms === undefined || !("kind" in shared) || shared.known.has(one)
      ? one
      : pseudonyms.name(shared.kind, shared.within(source), one);
  if (typeof value === "string") return told(value);
  if (typeof value === "number") return Number.isFinite(value) ? value : null;
  if (typeof value === "boolean") return value;
  return value.length === 0 ? null : value.map(told).join(";");
}

/** A moment by the clock that was written down; its zone is left out. */
function timeCell(type: "date" | "datetime" | "year", written: string): Cell {
  if (type === "year") return Number(written.slice(0, 4));
  if (type === "date") return written.slice(0, 10);
  const [, minute, second = ":00"] = /^(\d{4}-\d\d-\d\dT\d\d:\d\d)(:\d\d)?/.exec(written) ?? [];
  return minute === undefined ? null : `${minute}${second}`;
}

const column = (name: string, title: string, from: string) => ({
  name,
  title,
  from,
  unit: undefined,
  codes: undefined,
  isCode: false,
});

/** Free text, or a path: never shared. */
export const text = <Source>(
  name: string,
  title: string,
  from: string,
  of: (source: Source) => string | undefined,
): Field<Source> => ({ ...column(name, title, from), type: "text", shared: { as: "nothing" }, of });

/** The name of something. @param kind names of one kind and place that are equal get one pseudonym, in all tables */
export const id = <Source>(
  name: string,
  title: string,
  from: string,
  kind: string,
  of: (source: Source) => string | number | undefined,
  within: (source: Source) => string | undefined = () => undefined,
): Field<Source> => ({
  ...column(name, title, from),
  type: "text",
  shared: { as: "pseudonym", kind, known: new Set(), within },
  of: (source) => {
    const value = of(source);
    return value === undefined ? undefined : String(value);
  },
});

/** Several names. */
export const ids = <Source>(
  name: string,
  title: string,
  from: string,
  kind: string,
  of: (source: Source) => readonly string[] | undefined,
  within: (source: Source) => string | undefined = () => undefined,
): Field<Source> => ({
  ...column(name, title, from),
  type: "list",
  shared: { as: "pseudonym", kind, known: new Set(), within },
  of,
});

/** A word of a list that the format closes. @param codes the list, where `from` leads to none in a schema */
export const code = <Source>(
  name: string,
  title: string,
  from: string,
  of: (source: Source) => string | undefined,
  codes?: readonly string[],
): Field<Source> => ({
  ...column(name, title, from),
  codes,
  isCode: true,
  type: "text",
  shared: { as: "it is" },
  of,
});

/** Several such words. */
export const codes = <Source>(
  name: string,
  title: string,
  from: string,
  of: (source: Source) => readonly string[] | undefined,
): Field<Source> => ({
  ...column(name, title, from),
  isCode: true,
  type: "list",
  shared: { as: "it is" },
  of,
});

/** A name that ships, or one that the practice gave itself: that gets a pseudonym. */
export const named = <Source>(
  name: string,
  title: string,
  from: string,
  kind: string,
  known: Iterable<string>,
  of: (source: Source) => string | undefined,
): Field<Source> => ({
  ...column(name, title, from),
  type: "text",
  shared: { as: "own", kind, known: new Set(known), within: () => undefined },
  of,
});

/** Several such names. */
export const nameds = <Source>(
  name: string,
  title: string,
  from: string,
  kind: string,
  known: Iterable<string>,
  of: (source: Source) => readonly string[] | undefined,
): Field<Source> => ({
  ...column(name, title, from),
  type: "list",
  shared: { as: "own", kind, known: new Set(known), within: () => undefined },
  of,
});

export const number = <Source>(
  name: string,
  title: string,
  from: string,
  unit: string | undefined,
  of: (source: Source) => number | undefined,
): Field<Source> => ({ ...column(name, title, from), unit, type: "number", shared: { as: "it is" }, of });

export const integer = <Source>(
  name: string,
  title: string,
  from: string,
  of: (source: Source) => number | undefined,
): Field<Source> => ({ ...column(name, title, from), type: "integer", shared: { as: "it is" }, of });

export const flag = <Source>(
  name: string,
  title: string,
  from: string,
  of: (source: Source) => boolean | undefined,
): Field<Source> => ({ ...column(name, title, from), type: "boolean", shared: { as: "it is" }, of });

export const day = <Source>(
  name: string,
  title: string,
  from: string,
  of: (source: Source) => string | undefined,
): Field<Source> => ({ ...column(name, title, from), type: "date", shared: { as: "day" }, of });

/** A day, and the time where it was written: two columns. */
export const moments = <Source>(
  name: string,
  title: string,
  from: string,
  of: (source: Source) => string | undefined,
): Field<Source>[] => [
  day(`${name}_on`, `${title}: the day`, from, of),
  {
    ...column(`${name}_at`, `${title}: day and time by the clock of the farm; empty for a mere day`, from),
    type: "datetime",
    shared: { as: "day" },
    of: (source) => {
      const value = of(source);
      return value?.includes("T") === true ? value : undefined;
    },
  },
];

/** `yes`, `no` and their short forms. */
export const asFlag = (answer: "yes" | "no" | boolean | undefined): boolean | undefined =>
  answer === undefined ? undefined : answer === "yes" || answer === true;
