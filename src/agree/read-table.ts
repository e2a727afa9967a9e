/** A table of values separated by commas, as RFC 4180 has it, with the line that each row begins at. */
import { ReadingError } from "./reading.ts";

export interface Row {
  readonly cells: readonly string[];
  /** Line of the text, from 1. */
  readonly line: number;
}

/**
 * Rows of a table, blank lines left out, blanks around cells taken off. Cells are separated by commas, or by
 * semicolons when the first line has semicolons and no comma.
 * @throws ReadingError when a quoted cell is not closed
 */
export function readTable(file: string, text: string): Row[] {
  const first = text.slice(0, text.search(/[\r\n]|$/));
  const separator = first.includes(";") && !first.includes(",") ? ";" : ",";
  const rows: Row[] = [];
  let cells: string[] = [];
  let cell = "";
  let quoted: number | null = null;
  let line = 1;
  let begin = 1;
  const endCell = () => {
    cells.push(cell.trim());
    cell = "";
  };
  const endRow = () => {
    endCell();
    if (cells.some((one) => one !== "")) rows.push({ cells, line: begin });
    cells = [];
    begin = line + 1;
  };
  const body = text.replace(/^\ufeff/, "").replaceAll(/\r\n?/g, "\n");
  for (let at = 0; at < body.length; at++) {
    const char = body[at] ?? "";
    if (quoted !== null) {
      if (char === '"' && body[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else if (char === '"') quoted = null;
      else cell += char;
    } else if (char === '"' && cell.trim() === "") {
      cell = "";
      quoted = line;
    } else if (char === separator) endCell();
    else if (char === "\n") endRow();
    else cell += char;
    if (char === "\n") line += 1;
  }
  if (quoted !== null) throw new ReadingError(`${file}:${quoted}: a cell begins with " and is not closed`);
  endRow();
  return rows;
}
