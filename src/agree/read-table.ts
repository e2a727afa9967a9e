/** A table of values separated by commas, as RFC 4180 has it, with the line that each row begins at. */
import { CsvError, parse } from "csv-parse/sync";
import { ReadingError } from "./reading.ts";

export interface Row {
  readonly cells: readonly string[];
  /** Line of the text, from 1. */
  readonly line: number;
}

/**
 * Rows of a table, blank lines left out, blanks around cells taken off. Cells are separated by commas, or by
 * semicolons when the first line has semicolons and no comma.
 * @throws ReadingError when a quoted cell is not closed, or closed in its midst
 */
export function readTable(file: string, text: string): Row[] {
  const first = text.slice(0, text.search(/[\r\n]|$/));
  try {
    const rows = parse(text, {
      bom: true,
      delimiter: first.includes(";") && !first.includes(",") ? ";" : ",",
      record_delimiter: ["\r\n", "\n", "\r"],
      relax_column_count: true,
      trim: true,
      raw: true,
      info: true,
    }) as unknown as readonly { record: readonly string[]; raw: string; info: { lines: number } }[];
    return rows
      .map(({ record, raw, info }) => ({ cells: record, line: info.lines - lineEnds(raw) }))
      .filter(({ cells }) => cells.some((cell) => cell !== ""));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const reason =
      error.code === "CSV_QUOTE_NOT_CLOSED"
        ? 'the table ends within a cell that begins with "; close it'
        : 'a " stands in the midst of a cell; write "" for it and put the cell in quotes';
    throw new ReadingError(`${file}:${error.lines}: ${reason}`);
  }
}

/** Line ends within a row, not the one that ends it. */
const lineEnds = (raw: string): number => raw.trimEnd().match(/\r\n?|\n/g)?.length ?? 0;
