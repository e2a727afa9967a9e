/** A table as a spreadsheet writes it: cells with their places, and what separates them. */

import { CsvError, parse } from "csv-parse/sync";
import { fileFault } from "../cases/faults/fault.ts";
import type { Fault } from "../cases/index.ts";
import { firstTrue } from "../statistics/first-true.ts";
import { hiddenCharacter, hiddenName } from "../words/hidden-characters.ts";
import { decodeTable } from "./decode.ts";

export interface Cell {
  readonly text: string;
  /** Its row and column, counted from 0 as the spreadsheet does from 1 and A. */
  readonly row: number;
  readonly column: number;
  /** Where it begins and ends, in bytes of the text. */
  readonly start: number;
  readonly end: number;
}

/** Where a table as a whole is meant. */
export const noCell: Cell = { text: "", row: 0, column: 0, start: 0, end: 0 };

/** A table that could not be read, or whose cells do not fit. */
export class TableFault extends Error {
  constructor(readonly faults: readonly Fault[]) {
    super(faults[0]?.message);
  }
}

const mostColumns = 500;
const mostCells = 200_000;

const separators = { ",": "commas", ";": "semicolons", "\t": "tabs", "|": "bars" } as const;
type Separator = keyof typeof separators;
const isSeparator = (text: string): text is Separator => Object.hasOwn(separators, text);

export class Table {
  readonly rows: readonly (readonly Cell[])[];
  /** `semicolons between the cells, UTF-8` */
  readonly said: string;
  readonly #file: string;
  readonly #bytes: Buffer;

  /** @throws TableFault when it cannot be read */
  constructor(file: string, bytes: Buffer) {
    this.#file = file;
    const decoded = decodeTable(bytes);
    if (typeof decoded === "string") throw this.#whole(decoded);
    // A line of its own, by which a spreadsheet tells another what separates cells.
    const [line = "", named = ""] = /^sep=(.)[ \t]*(?:\r\n?|\n)/.exec(decoded.text) ?? [];
    const text = decoded.text;
    this.#bytes = Buffer.from(text);
    if (text.trim() === "") throw this.#whole("the table is empty");
    const separator = isSeparator(named) ? named : likelySeparator(text);
    if (text.split(separator).length > mostCells)
      throw this.#whole(`it has more than ${mostCells} cells; a tally has some thousand`);
    const rows = this.#read(text, separator).slice(line === "" ? 0 : 1);
    this.rows = rows.map((cells, row) =>
      cells.map((cell) => ({ ...cell, row: row + (line === "" ? 0 : 1) })),
    );
    this.said = `${separators[separator]} between the cells, ${decoded.encoding}`;
    const widest = this.rows.find((cells) => cells.length > mostColumns);
    if (widest !== undefined)
      throw new TableFault([
        this.fault(
          widest[mostColumns] as Cell,
          `the row has ${widest.length} columns; ${mostColumns} is the limit`,
        ),
      ]);
    const hidden = this.rows.flat().find(({ text: one }) => hiddenCharacter.test(one));
    if (hidden !== undefined)
      throw new TableFault([
        this.fault(
          hidden,
          `this cell holds ${hiddenName(hiddenCharacter.exec(hidden.text)?.[0] ?? "")}; take it out`,
        ),
      ]);
  }

  /** What is wrong with a cell, at its line and column. */
  fault({ start, end, row, column }: Cell, message: string): Fault {
    const before = this.#bytes.lastIndexOf(0x0a, start - 1);
    const lineStart = start === 0 ? 0 : before + 1;
    const feed = this.#bytes.indexOf(0x0a, lineStart);
    const text = (from: number, to: number): string => this.#bytes.toString("utf8", from, to);
    return {
      file: this.#file,
      line: this.line(start),
      column: text(lineStart, start).length + 1,
      length: Math.max(1, text(start, Math.max(start, end)).split(/[\r\n]/)[0]?.length ?? 1),
      path: [],
      intended: [],
      message: `cell ${letters(column)}${row + 1}: ${message}`,
      excerpt: text(lineStart, feed < 0 ? this.#bytes.length : feed).replace(/\r$/, ""),
      kind: "unreadable",
      outOfRange: false,
    };
  }

  /** The line of a place, counted from 1. */
  line(start: number): number {
    this.#feeds ??= feedsIn(this.#bytes);
    const feeds = this.#feeds;
    return firstTrue(0, feeds.length, (at) => (feeds[at] ?? Number.POSITIVE_INFINITY) >= start) + 1;
  }
  #feeds: readonly number[] | undefined;

  #whole(message: string): TableFault {
    return new TableFault([fileFault(this.#file, message)]);
  }

  #read(text: string, delimiter: Separator): Cell[][] {
    let from = 0;
    try {
      const rows = parse(text, {
        ...options,
        delimiter,
        info: true,
        cast: (value, { bytes, index }) => ({
          text: value.replaceAll("\u00a0", " ").trim(),
          column: index,
          end: bytes,
        }),
      }) as unknown as readonly {
        readonly record: readonly Pick<Cell, "text" | "column" | "end">[];
        readonly info: { readonly bytes: number };
      }[];
      return rows.map(({ record, info }, row) => {
        const cells = record.map((cell) => {
          const start = from;
          from = cell.end + 1;
          return { ...cell, row, start };
        });
        from = info.bytes;
        return cells;
      });
    } catch (error) {
      if (!(error instanceof CsvError)) throw error;
      const isOpen = error.code === "CSV_QUOTE_NOT_CLOSED";
      const line = isOpen
        ? text.slice(0, openQuote(text)).split(/\r\n?|\n/).length
        : Number(error.lines ?? 1);
      const { excerpt: _none, ...whole } = this.#whole("").faults[0] ?? ({} as Fault);
      throw new TableFault([
        {
          ...whole,
          line,
          column: 1,
          length: 1,
          excerpt: text.split(/\r\n?|\n/)[line - 1] ?? "",
          message: isOpen
            ? 'a cell that begins with " is not closed; close it'
            : 'a " stands in the midst of a cell; write "" for it and put the cell in quotes',
        },
      ]);
    }
  }
}

function feedsIn(bytes: Buffer): number[] {
  const feeds: number[] = [];
  for (let at = bytes.indexOf(0x0a); at >= 0; at = bytes.indexOf(0x0a, at + 1)) feeds.push(at);
  return feeds;
}

/** The last one that is not half of two, which stand for one within a cell. */
function openQuote(text: string): number {
  let at = text.lastIndexOf('"');
  while (at > 1 && text[at - 1] === '"') at = text.lastIndexOf('"', at - 2);
  return Math.max(0, at);
}

const options = {
  record_delimiter: ["\r\n", "\n", "\r"],
  relax_column_count: true,
};

/** The separator by which most of the first rows have one width, of more than one column. */
function likelySeparator(text: string): Separator {
  const scored = (Object.keys(separators) as Separator[]).map((separator) => {
    const widths = new Map<number, number>();
    let rows: readonly (readonly string[])[] = [];
    try {
      rows = parse(text, { ...options, delimiter: separator, relax_quotes: true, to: 100 });
    } catch {
      // An open quote is told by the reader.
    }
    for (const { length } of rows) if (length > 1) widths.set(length, (widths.get(length) ?? 0) + 1);
    return { separator, score: Math.max(0, ...widths.values()) };
  });
  const best = Math.max(...scored.map(({ score }) => score));
  const [first] = text.split(/[\r\n]/);
  const isIn = ({ separator }: { separator: Separator }): boolean => first?.includes(separator) === true;
  const likely = scored.filter(({ score }) => score === best);
  return (likely.find(isIn) ?? likely[0])?.separator ?? ",";
}

/** `A`, `Z`, `AA`: as a spreadsheet calls a column. */
export function letters(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : letters(Math.floor(column / 26) - 1) + last;
}

export const isFilled = ({ text }: Cell): boolean => text !== "";
