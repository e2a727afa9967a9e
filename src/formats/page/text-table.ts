/**
 * Tables in plain text, never wider than their page: columns separated by two blanks, numbers to the right and never
 * broken. Where the page is too narrow heads are wrapped, details go below their row, and what does not fit into the
 * first column stands on a line of its own above its numbers.
 */
import { visible } from "../../words/visible.ts";
import type { Column, Table } from "./blocks.ts";
import { displayWidth, folded, padded, wordsOf } from "./width.ts";

/** Lines of heads and lines of rows. */
export interface Part {
  readonly head: readonly string[];
  readonly body: readonly string[];
}

/** A column with its cells, as wide as its widest. */
interface Shown {
  readonly heads: readonly string[];
  readonly cells: readonly string[];
  readonly width: number;
  readonly right: boolean;
  readonly detail: boolean;
}

interface Layout {
  readonly label: Shown;
  readonly columns: readonly Shown[];
  readonly below: readonly Shown[];
}

const between = "  ";
/** Details go below their row before the first column has less. */
const comfortable = 20;
/** Columns go into a further part before the first column has less. */
const least = 4;
/** The first column where it is repeated, and columns of words where the page is too narrow. */
const most = 26;

/** @param room cells a line */
export const tableParts = ({ columns, rows, parts }: Table, room: number): Part[] =>
  layouts(
    columns.map((column, at) =>
      shown(
        column,
        rows.map((row) => visible(row[at] ?? "")),
      ),
    ),
    parts,
    room,
  ).map((layout) => printed(layout, rows.length, room));

function shown({ head, right = false, detail = false }: Column, cells: readonly string[]): Shown {
  const heads = [head].flat().map(visible);
  return { heads, cells, width: widest([...heads, ...cells]), right, detail };
}

const widest = (texts: readonly string[]): number => Math.max(0, ...texts.map(displayWidth));

/** What columns behind the first take. */
const taken = (columns: readonly Shown[]): number =>
  columns.reduce((sum, { width }) => sum + between.length + width, 0);

function layouts([label, ...columns]: readonly Shown[], parts: boolean, room: number): Layout[] {
  if (label === undefined) return [];
  if (label.width + taken(columns) <= room) return [{ label, columns, below: [] }];
  const wanted = Math.min(label.width, parts ? most : comfortable);
  const left = (some: readonly Shown[]): number => room - taken(some);
  const whole = [...columns];
  const narrow = columns.map(narrowed);
  const below: Shown[] = [];
  while (left(narrow) < wanted) {
    const at = whole.findLastIndex(({ detail }) => detail);
    if (at < 0) break;
    narrow.splice(at, 1);
    below.unshift(...whole.splice(at, 1));
  }
  // Heads are left in one line where wrapping them makes room for no further label.
  const labels = (width: number): number => label.cells.filter((cell) => displayWidth(cell) <= width).length;
  const inline = left(whole) >= least && labels(left(whole)) === labels(left(narrow)) ? whole : narrow;
  if (left(inline) >= (parts ? wanted : least) || inline.length < 2)
    return [{ label: beside(label, left(inline)), columns: widened(inline, label, room), below }];
  return inParts(label, inline, room).map((some, at, all) => ({
    label: beside(label, left(some)),
    columns: some,
    below: at === all.length - 1 ? below : [],
  }));
}

/** Words and heads no wider than they must be; heads of numbers in two lines where that makes their column narrower. */
function narrowed(column: Shown): Shown {
  const { heads, cells, width, right, detail } = column;
  if (!right) return detail ? column : ofWidth(column, Math.min(width, most));
  const numbers = widest(cells);
  const upper = Math.max(numbers, Math.min(width, most));
  const [head = "", second] = heads;
  const lower = second === undefined ? Math.max(numbers, Math.min(most, widest(wordsOf(head)))) : upper;
  const widths = Array.from({ length: upper - lower }, (_, more) => lower + more);
  return ofWidth(column, widths.find((one) => folded(head, one).length < 3) ?? upper);
}

const ofWidth = (column: Shown, width: number): Shown => ({
  ...column,
  heads: column.heads.flatMap((head) => folded(head, width)),
  width,
});

/** Words in the last column take what is left. */
function widened(columns: readonly Shown[], label: Shown, room: number): Shown[] {
  const last = columns.at(-1);
  if (last === undefined || last.right) return [...columns];
  const left = room - taken(columns) - label.width;
  return [...columns.slice(0, -1), ofWidth(last, last.width + Math.max(0, left))];
}

/** The first column as wide as the widest of its cells that fit. */
function beside(label: Shown, room: number): Shown {
  const { heads } = ofWidth(label, Math.max(least, room));
  const fitting = [...heads, ...label.cells].map(displayWidth).filter((width) => width <= room);
  return { ...label, heads, width: Math.max(0, ...fitting) };
}

/** As many columns in each part as fit, one at least. */
function inParts(label: Shown, columns: readonly Shown[], room: number): Shown[][] {
  const parts: Shown[][] = [];
  const width = Math.min(label.width, most);
  for (const column of columns) {
    const part = parts.at(-1);
    if (part !== undefined && width + taken([...part, column]) <= room) part.push(column);
    else parts.push([column]);
  }
  return parts;
}

function printed({ label, columns, below }: Layout, rows: number, room: number): Part {
  const all = [label, ...columns];
  const height = Math.max(...all.map(({ heads }) => heads.length));
  const head = Array.from({ length: height }, (_, at) =>
    line(all, ({ heads }) => heads[at - height + heads.length]),
  ).filter((one) => one !== "");
  // One detail that every row has is named once, above all rows.
  const [only, ...more] = below;
  const once = only !== undefined && more.length === 0 && !only.cells.includes("");
  const details = once ? [{ ...only, heads: [] }] : below;
  return {
    head: once ? [...head, ...detailLines(only.heads.join(" "), room)] : head,
    body: Array.from({ length: rows }, (_, at) => [
      ...rowLines(all, at, room),
      ...detailLines(
        details
          .flatMap(({ heads, cells }) => (cells[at] === "" ? [] : [...heads, cells[at]].join(" ")))
          .join("; "),
        room,
      ),
    ]).flat(),
  };
}

function rowLines(all: readonly Shown[], at: number, room: number): string[] {
  const name = all[0]?.cells[at] ?? "";
  const above = displayWidth(name) > (all[0]?.width ?? 0);
  const cells = new Map(
    all.map((column, place) => {
      const cell = place === 0 && above ? "" : (column.cells[at] ?? "");
      return [column, column.right ? [cell] : folded(cell, Math.max(least, column.width))];
    }),
  );
  const height = Math.max(...[...cells.values()].map((lines) => lines.length));
  const lines = Array.from({ length: height }, (_, index) => line(all, (one) => cells.get(one)?.[index]));
  return above ? [...folded(name, room, "  "), ...lines.filter((one) => one !== "")] : lines;
}

/** What went below a row, set in. */
const detailLines = (said: string, room: number): string[] =>
  said === "" ? [] : folded(said, room - 4, "  ").map((one) => `    ${one}`);

const line = (columns: readonly Shown[], cellOf: (column: Shown) => string | undefined): string =>
  columns
    .map((column) => padded(cellOf(column) ?? "", column.width, column.right))
    .join(between)
    .trimEnd();
