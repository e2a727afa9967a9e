/** Columns in plain text, separated by two blanks; numbers to the right. */

export interface Column {
  readonly head: string;
  readonly right?: boolean;
}

/**
 * Lines of a table, head first.
 * @param rows cells as shown, one row a line; missing cells are blank
 */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[]): string[] {
  const widths = columns.map((column, index) =>
    Math.max(column.head.length, ...rows.map((row) => (row[index] ?? "").length)),
  );
  const line = (cells: readonly string[]): string =>
    columns
      .map((column, index) => {
        const cell = cells[index] ?? "";
        const width = widths[index] ?? 0;
        return column.right === true ? cell.padStart(width) : cell.padEnd(width);
      })
      .join("  ")
      .trimEnd();
  return [line(columns.map((column) => column.head)), ...rows.map(line)];
}
