/**
 * Tables as comma-separated values: RFC 4180, with CRLF line ends and quotes where they are needed. A text that a
 * spreadsheet would take for a formula (it begins with = + - or @) gets an apostrophe in front; numbers are left alone.
 * One that begins like a command in a log (::) gets quotes.
 */
import { visible } from "../../words/visible.ts";

export type CsvCell = string | number | null;

/** @param head names of the columns; @param rows cells in their order, null for an empty one */
export const csv = (
  head: readonly string[],
  rows: readonly (readonly CsvCell[])[],
  separator: "," | ";" = ",",
): string => csvRows([head, ...rows], separator);

/** Rows alone, to go on with a table. */
export const csvRows = (rows: readonly (readonly CsvCell[])[], separator: "," | ";" = ","): string =>
  rows.map((cells) => `${cells.map((one) => cell(one, separator)).join(separator)}\r\n`).join("");

function cell(value: CsvCell, separator: string): string {
  if (value === null) return "";
  if (typeof value === "number") return String(value);
  const shown = visible(value);
  const safe = /^\s*[=+\-@]/.test(shown) ? `'${shown}` : shown;
  return safe.includes(separator) || /[",\r\n]|^\s|\s$|^::/.test(safe)
    ? `"${safe.replaceAll('"', '""')}"`
    : safe;
}
