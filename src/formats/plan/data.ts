/** A plan for scripts: JSON with everything, CSV with the table. Keys and columns are stable. */
import type { Plan } from "../../plan/index.ts";
import { csv } from "../page/csv.ts";
import { outputJson } from "../page/json.ts";

export function planJson({ plan, title, asked, answer, sentences, table, cautions, sources }: Plan): string {
  const rows = table.rows.map((row) =>
    Object.fromEntries(table.columns.map(({ key }) => [key, row[key] ?? null])),
  );
  return outputJson("plan", 1, { plan, title, asked, answer, sentences, table: rows, cautions, sources });
}

/** Shares are numbers from 0 to 1, not rounded; an empty cell is no number. */
export const planCsv = ({ table: { columns, rows } }: Plan): string =>
  csv(
    columns.map(({ key }) => key),
    rows.map((row) => columns.map(({ key }) => row[key] ?? null)),
  );
