/** The head of a table: titles above it, names of columns in one line or in two. */
import { type Cell, isFilled, letters, noCell, type Table, TableFault } from "./table.ts";

export interface HeadColumn {
  /** As written; of a merged head both lines. */
  readonly head: string;
  readonly column: number;
  /** Its place, for what is wrong with it. */
  readonly cell: Cell;
  /** What stands below it, without the blanks. */
  readonly below: readonly Cell[];
}

export interface Head {
  readonly columns: readonly HeadColumn[];
  /** The rows below it. */
  readonly rows: readonly (readonly Cell[])[];
  /** Lines of the text, from 1: of the titles, of the head. */
  readonly titles: number;
  readonly isDouble: boolean;
  readonly line: number;
}

/** @throws TableFault where a column has cells and no head */
export function headOf(table: Table): Head {
  const filled = table.rows.filter((cells) => cells.some(isFilled));
  const isWide = (cells: readonly Cell[]): boolean => cells.filter(isFilled).length > 1;
  const at = Math.max(0, filled.findIndex(isWide));
  const upper = filled[at] ?? [];
  const lower = filled[at + 1] ?? [];
  const isDouble = isSecondLine(upper, lower, filled.slice(at + 2));
  const rows = filled.slice(at + (isDouble ? 2 : 1));
  const names = isDouble ? joined(upper, lower) : upper;
  const width = Math.max(names.length, ...rows.map(({ length }) => length));
  const columns = Array.from({ length: width }, (_, column): HeadColumn | undefined => {
    const below = rows.flatMap((cells) => cells[column] ?? []).filter(isFilled);
    const cell = names[column];
    if (cell === undefined || cell.text === "") {
      const [first] = below;
      if (first === undefined) return undefined;
      throw new TableFault([
        table.fault(
          first,
          `column ${letters(column)} has no head; write above it what it holds, or empty the column`,
        ),
      ]);
    }
    return { head: cell.text.replaceAll(/\s+/g, " "), column, cell, below };
  });
  return {
    columns: columns.filter((one) => one !== undefined),
    rows,
    titles: at,
    isDouble,
    line: table.line(upper[0]?.start ?? 0),
  };
}

/** A line without any digit, which names what the line above it, with its merged cells, leaves open. */
function isSecondLine(
  upper: readonly Cell[],
  lower: readonly Cell[],
  rows: readonly (readonly Cell[])[],
): boolean {
  const opens = upper.some((cell, column) => !isFilled(cell) && lower[column]?.text);
  const closes = lower.some((cell, column) => isFilled(cell) && upper[column]?.text);
  return opens && closes && rows.length > 0 && !lower.some(({ text }) => /\d/.test(text));
}

/** A merged cell stands in the first of its columns and counts for the blank ones behind it that have a name below. */
function joined(upper: readonly Cell[], lower: readonly Cell[]): Cell[] {
  let over = "";
  return Array.from({ length: Math.max(upper.length, lower.length) }, (_, column) => {
    const [above = noCell, below = noCell] = [upper[column], lower[column]];
    if (isFilled(above)) over = above.text;
    const text = isFilled(below) ? `${over} ${below.text}`.trim() : above.text;
    return { ...(isFilled(below) ? below : above), column, text };
  });
}
