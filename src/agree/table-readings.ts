/** Readings from a table: columns pig and reader, and one for each scale. */
import { CsvError, parse } from "csv-parse/sync";
import { unknownScale } from "../score/index.ts";
import { type Reading, ReadingError } from "./reading.ts";

const example = "pig,reader,maff-1978";

/**
 * @param file as shown to people
 * @param text the table; a blank cell is no reading
 * @param known names of scales that may head a column
 * @throws ReadingError when a column or a value is not what it must be, with its line
 */
export function tableReadings(file: string, text: string, known: readonly string[]): Reading[] {
  const [head, ...rows] = readTable(file, text);
  const names = (head?.cells ?? []).map((name) => name.toLowerCase());
  const [pigs, readers] = ["pig", "reader"].map((name) => names.indexOf(name));
  if (pigs === undefined || readers === undefined || pigs < 0 || readers < 0)
    throw new ReadingError(
      `${file}:1: the first line must name the columns pig, reader and one for each scale, such as ${example}`,
    );
  const scales = names.flatMap((name, column) =>
    column === pigs || column === readers ? [] : [{ name, column }],
  );
  checkHead(
    file,
    names,
    scales.map(({ name }) => name),
    known,
  );
  return rows.flatMap(({ cells, line }) => {
    const at = `${file}:${line}`;
    if (cells.length > names.length)
      throw new ReadingError(`${at}: ${cells.length} cells under ${names.length} columns`);
    const [pig = "", reader = ""] = [cells[pigs], cells[readers]];
    if (pig === "" || reader === "")
      throw new ReadingError(`${at}: the ${pig === "" ? "pig" : "reader"} is missing`);
    return scales.flatMap(({ name, column }) => {
      const cell = cells[column] ?? "";
      return cell === "" ? [] : [{ pig, reader, scale: name, value: numberOf(cell, name, at), at }];
    });
  });
}

function checkHead(
  file: string,
  names: readonly string[],
  scales: readonly string[],
  known: readonly string[],
): void {
  const twice = names.find((name, column) => names.indexOf(name) !== column);
  if (twice !== undefined) throw new ReadingError(`${file}:1: there are two columns "${twice}"`);
  if (scales.length === 0)
    throw new ReadingError(`${file}:1: there is no column with the name of a scale, such as ${example}`);
  const unknown = scales.filter((name) => !known.includes(name));
  if (unknown.length > 0)
    throw new ReadingError(`${file}:1: ${unknown.map((name) => unknownScale(name, known)).join(" ")}`);
}

function numberOf(cell: string, scale: string, at: string): number {
  if (/^-?\d+(\.\d+)?$/.test(cell)) return Number(cell);
  const hint = /^-?\d+,\d+$/.test(cell) ? `; write ${cell.replace(",", ".")}` : "";
  throw new ReadingError(
    `${at}: ${scale}: "${cell}" is no number${hint}; leave the cell blank where nothing was read`,
  );
}

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
