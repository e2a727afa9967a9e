/** The formats of an export. A writer gets the rows folder by folder and gives away pieces of files as they become ready. */
import type { parquetWriteBuffer } from "hyparquet-writer";
import { csvRows } from "../formats/page/csv.ts";
import { grouped } from "../words/grouped.ts";
import { escapedInJson } from "../words/visible.ts";
import type { Cell, Column, ColumnType, Table } from "./table.ts";

/** A file, or what a growing one goes on with. */
export interface Piece {
  readonly name: string;
  readonly text: string | Uint8Array;
  readonly grows?: true;
}

/** What became of a table. */
export interface Written {
  readonly paths: string | readonly string[];
  readonly format: ExportFormat;
  readonly mediatype: string;
}

export type ExportFormat = keyof typeof exportFormats;

interface TableWriter {
  /** @param rows cells in the order of the columns */
  add(rows: readonly (readonly Cell[])[]): Iterable<Piece>;
  end(): Iterable<Piece>;
  /** Undefined where there is no file, since there was no row. */
  written(): Written | undefined;
}

/** By format: how its writer is made. The library for Parquet is loaded only for it. */
export const exportFormats = {
  csv: async () => csvWriter,
  ndjson: async () => ndjsonWriter,
  parquet: async () => {
    const { parquetWriteBuffer: write } = await import("hyparquet-writer");
    return (table: Table, columns: readonly Column[]): TableWriter =>
      new ParquetWriter(table.name, columns, write);
  },
} as const;

/** Writes tables side by side. */
export async function writerOf(
  format: ExportFormat,
): Promise<(table: Table, shared: boolean) => TableWriter> {
  const make = await exportFormats[format]();
  return (table, shared) => make(table, table.columns(shared));
}

function csvWriter(table: Table, columns: readonly Column[]): TableWriter {
  const name = `${table.name}.csv`;
  let head = csvRows([columns.map((column) => column.name)]);
  const piece = (rows: readonly (readonly Cell[])[]): Piece => {
    const cells = rows.map((row) => row.map((cell) => (typeof cell === "boolean" ? String(cell) : cell)));
    const text = `${head}${csvRows(cells)}`;
    head = "";
    return { name, text, grows: true };
  };
  return {
    add: (rows) => (rows.length === 0 ? [] : [piece(rows)]),
    end: () => (head === "" ? [] : [piece([])]),
    written: () => ({ paths: name, format: "csv", mediatype: "text/csv" }),
  };
}

function ndjsonWriter(table: Table, columns: readonly Column[]): TableWriter {
  const name = `${table.name}.ndjson`;
  let isThere = false;
  const piece = (text: string): Piece => {
    isThere = true;
    return { name, text, grows: true };
  };
  const line = (row: readonly Cell[]): string =>
    `${escapedInJson(JSON.stringify(Object.fromEntries(columns.map((column, index) => [column.name, row[index]]))))}\n`;
  return {
    add: (rows) => (rows.length === 0 ? [] : [piece(rows.map(line).join(""))]),
    end: () => (isThere ? [] : [piece("")]),
    written: () => ({ paths: name, format: "ndjson", mediatype: "application/x-ndjson" }),
  };
}

/** What stands in the name of a folder for a value that is not known. */
const unknown = "__HIVE_DEFAULT_PARTITION__";
/** A file of a partition is written when it has so many rows. */
const mostRows = 100_000;

/** One folder a farm and year; a new file where rows of another partition came in between. */
class ParquetWriter implements TableWriter {
  readonly #name: string;
  readonly #columns: readonly Column[];
  readonly #write: typeof parquetWriteBuffer;
  #partition = "";
  #rows: (readonly Cell[])[] = [];
  /** By partition, in small letters, for there are file systems that know no others. */
  readonly #parts = new Map<string, number>();
  readonly #paths: string[] = [];

  constructor(name: string, columns: readonly Column[], write: typeof parquetWriteBuffer) {
    this.#name = name;
    this.#columns = columns;
    this.#write = write;
  }

  *add(rows: readonly (readonly Cell[])[]): Iterable<Piece> {
    const at = (name: string): number => this.#columns.findIndex((column) => column.name === name);
    const [farm, year] = [at("farm"), at("year")];
    const partitions = grouped(rows, (row) => `farm=${row[farm] ?? unknown}/year=${row[year] ?? unknown}`);
    for (const [partition, some] of partitions) {
      if (partition !== this.#partition || this.#rows.length + some.length > mostRows) yield* this.end();
      this.#partition = partition;
      this.#rows.push(...some);
    }
  }

  *end(): Iterable<Piece> {
    if (this.#rows.length === 0) return;
    const same = this.#partition.toLowerCase();
    const part = this.#parts.get(same) ?? 0;
    this.#parts.set(same, part + 1);
    const name = `${this.#name}/${this.#partition}/part-${part}.parquet`;
    this.#paths.push(name);
    yield { name, text: parquetBytes(this.#columns, this.#rows, this.#write) };
    this.#rows = [];
  }

  written(): Written | undefined {
    return this.#paths.length === 0
      ? undefined
      : { paths: this.#paths, format: "parquet", mediatype: "application/vnd.apache.parquet" };
  }
}

const parquetTypes = {
  text: { type: "BYTE_ARRAY", converted_type: "UTF8" },
  list: { type: "BYTE_ARRAY", converted_type: "UTF8" },
  integer: { type: "INT32" },
  number: { type: "DOUBLE" },
  boolean: { type: "BOOLEAN" },
  date: { type: "INT32", converted_type: "DATE" },
  datetime: { type: "INT64", logical_type: { type: "TIMESTAMP", isAdjustedToUTC: false, unit: "MILLIS" } },
  year: { type: "INT32" },
} as const;

function parquetBytes(
  all: readonly Column[],
  rows: readonly (readonly Cell[])[],
  write: typeof parquetWriteBuffer,
): Uint8Array {
  const columns = all
    .map((column, index) => ({ column, index }))
    .filter(({ column }) => !isPartition(column));
  const metadata = columns.map(({ column: { name, title, unit, from } }) => ({
    key: `column.${name}`,
    value: [title, ...(unit === undefined ? [] : [`unit: ${unit}`]), from].join("; "),
  }));
  return new Uint8Array(
    write({
      createdBy: "carcase",
      kvMetadata: metadata,
      schema: [
        { name: "row", num_children: columns.length },
        ...columns.map(({ column: { name, type } }) => ({
          name,
          repetition_type: "OPTIONAL" as const,
          ...parquetTypes[type],
        })),
      ],
      columnData: columns.map(({ column: { name, type }, index }) => ({
        name,
        data: rows.map((row) => stored(row[index] ?? null, type)),
      })),
    }),
  );
}

const isPartition = ({ name }: Column): boolean => name === "farm" || name === "year";

/** Days and times are those of the clock of the farm, taken as if it stood in Greenwich. */
const stored = (cell: Cell, type: ColumnType): Cell | Date =>
  typeof cell === "string" && (type === "date" || type === "datetime")
    ? new Date(type === "date" ? `${cell}T00:00:00Z` : `${cell}Z`)
    : cell;
