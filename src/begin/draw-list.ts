/** The list that `carcase plan choose` wrote, as CSV or JSON: pigs in the order in which they were drawn, and the reserve. */

import { ReadingError, readTable } from "../agree/index.ts";
import { keyedDocument } from "../cases/files/read-file.ts";
import type { TextResult } from "../cases/files/read-text.ts";
import { formatPath, isKeyed, type Path } from "../cases/model/path.ts";

interface DrawnPig {
  /** From 1, in the order of the draw. */
  readonly order: number;
  /** Its ear tag, where tags were drawn. */
  readonly tag: string | undefined;
  readonly group: string | undefined;
  /** As the list calls it. */
  readonly name: string;
}

export interface DrawnList {
  readonly pigs: readonly DrawnPig[];
  /** To be used in this order. */
  readonly reserve: readonly DrawnPig[];
  readonly seed: number | undefined;
}

/** What is wrong with a list, with its file, line and column. */
export class DrawError extends Error {}

/** A row, and where each of its cells stands. */
interface Row {
  readonly cells: Readonly<Record<string, string>>;
  at(key: string): string;
}

const howToWrite = "write it with carcase plan choose LIST --pigs N --format csv -o draw.csv";

/** @param file as shown to people @throws DrawError when it is no such list, or a row cannot be read */
export function readDraw(file: string, text: string): DrawnList {
  const { rows, seed } = /^\s*[{[]/.test(text) ? fromJson(file, text) : fromCsv(file, text);
  const pigs: DrawnPig[] = [];
  const reserve: DrawnPig[] = [];
  const known = new Set<string>();
  for (const row of rows) {
    const fail = (key: string, message: string): never => {
      throw new DrawError(`${row.at(key)}: ${message}`);
    };
    const { use = "", drawn = "", tag = "", group = "" } = row.cells;
    const list = use === "examine" ? pigs : use === "reserve" ? reserve : undefined;
    if (list === undefined) return fail("use", `use: "${use}" is not one of examine, reserve`);
    if (!/^[1-9]\d{0,5}$/.test(drawn))
      return fail("drawn", `drawn: "${drawn}" is no number; write as which it was drawn, from 1`);
    const order = Number(drawn);
    if (list.some((other) => other.order === order))
      return fail("drawn", `drawn: ${drawn} stands twice among the pigs to ${use}; correct one of them`);
    if (tag === "") return fail("tag", "tag: it is left blank; write the pig that was drawn");
    if (known.has(tag)) return fail("tag", `tag: "${tag}" stands twice; take one line out`);
    known.add(tag);
    if ("group" in row.cells) {
      const [, of, kind] = /^(.*) (pig|pen) \d+$/.exec(tag) ?? [];
      if (kind === "pen")
        return fail("tag", `tag: "${tag}" is a pen; draw the pigs of that pen, and begin with their list`);
      if (of === undefined || of !== group)
        return fail("group", `group: "${group}" and "${tag}" do not go together; write the group of the pig`);
      list.push({ order, tag: undefined, group, name: tag });
    } else list.push({ order, tag, group: undefined, name: tag });
  }
  if (pigs.length === 0) throw new DrawError(`${file}: no pig to examine is in it; ${howToWrite}`);
  const inOrder = (a: DrawnPig, b: DrawnPig): number => a.order - b.order;
  return { pigs: pigs.sort(inOrder), reserve: reserve.sort(inOrder), seed };
}

interface Rows {
  readonly rows: readonly Row[];
  readonly seed: number | undefined;
}

const needed = ["use", "drawn", "tag"];

function fromCsv(file: string, text: string): Rows {
  const lines = text.split(/\r\n?|\n/);
  const [head, ...rows] = tableOf(file, text);
  const names = head?.cells ?? [];
  const missing = needed.find((name) => !names.includes(name));
  if (missing !== undefined)
    throw new DrawError(
      `${file}:1:1: there is no column ${missing}, so this is no list of a draw; ${howToWrite}`,
    );
  return {
    seed: undefined,
    rows: rows.map(({ cells, line }) => {
      if (cells.length !== names.length)
        throw new DrawError(`${file}:${line}:1: ${cells.length} cells under ${names.length} columns`);
      return {
        cells: Object.fromEntries(names.map((name, index) => [name, cells[index] ?? ""])),
        at: (key) => `${file}:${line}:${columnOf(lines[line - 1] ?? "", cells, names.indexOf(key))}`,
      };
    }),
  };
}

function tableOf(file: string, text: string) {
  try {
    return readTable(file, text);
  } catch (error) {
    throw error instanceof ReadingError ? new DrawError(error.message) : error;
  }
}

/** Counted from 1. */
function columnOf(line: string, cells: readonly string[], index: number): number {
  const before = cells.slice(0, index).reduce((from, cell) => line.indexOf(cell, from) + cell.length, 0);
  const found = line.indexOf(cells[index] ?? "", index > 0 ? before + 1 : 0);
  return Math.max(found, before) + 1;
}

function fromJson(file: string, text: string): Rows {
  const source: TextResult = { ok: true, text };
  const read = keyedDocument(file, source);
  if (!read.ok) {
    const [fault] = read.faults;
    throw new DrawError(`${file}:${fault?.line ?? 1}:${fault?.column ?? 1}: ${fault?.message}`);
  }
  const { document, value } = read.result;
  const at = (path: Path): string => {
    const { line, column } = document.where(path);
    return `${file}:${line}:${column}`;
  };
  const { table, asked } = value;
  if (value.plan !== "choose" || !Array.isArray(table))
    throw new DrawError(`${at(["plan"])}: this is no list of a draw; ${howToWrite}`);
  const seed = isKeyed(asked) && typeof asked.seed === "number" ? asked.seed : undefined;
  return {
    seed,
    rows: table.map((row: unknown, index) => {
      if (!isKeyed(row))
        throw new DrawError(`${at(["table", index])}: ${formatPath(["table", index])} is no row of a draw`);
      const cells = Object.entries(row).map(([key, cell]) => [key, String(cell ?? "")] as const);
      return { cells: Object.fromEntries(cells), at: (key) => at(["table", index, key]) };
    }),
  };
}
