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
const least = 2;
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
  let inline = columns.map(narrowed);
  const below: Shown[] = [];
  while (left(inline) < wanted) {
    const at = inline.findLastIndex(({ detail }) => detail);
    if (at < 0) break;
    below.unshift(...inline.splice(at, 1));
  }
  // Heads are left in one line where wrapping them makes room for no further label.
  const unwrapped = columns.slice(0, inline.length);
  const fitting = (width: number): number => label.cells.filter((cell) => displayWidth(cell) <= width).length;
  if (fitting(left(unwrapped)) === fitting(left(inline)) && left(unwrapped) >= least) inline = unwrapped;
  if (left(inline) >= (parts ? wanted : least) || inline.length < 2)
    return [{ label: beside(label, left(inline)), columns: widened(inline, label, room), below }];
  return inParts(label, inline, room).map((some, at, all) => ({
    label: beside(label, left(some)),
    columns: some,
    below: at === all.length - 1 ? below : [],
  }));
}

/** Heads of numbers in two lines, where that makes their column narrower. */
function narrowed(column: Shown): Shown {
  const { heads, cells, right, detail } = column;
  if (!right) return detail ? column : { ...column, width: Math.min(column.width, most) };
  const [head = "", second] = heads;
  if (second !== undefined) return column;
  const narrow = widest(cells);
  const widths = Array.from({ length: Math.max(0, column.width - narrow) }, (_, more) => narrow + more);
  const width = widths.find((one) => one >= widest(wordsOf(head)) && folded(head, one).length < 3);
  return width === undefined ? column : { ...column, heads: folded(head, width), width };
}

/** Words in the last column take what is left. */
function widened(columns: readonly Shown[], label: Shown, room: number): Shown[] {
  const last = columns.at(-1);
  if (last === undefined || last.right) return [...columns];
  const left = room - taken(columns) - label.width;
  return [...columns.slice(0, -1), { ...last, width: last.width + Math.max(0, left) }];
}

/** The first column as wide as the widest of its cells that fit. */
function beside(label: Shown, room: number): Shown {
  const fitting = [...label.heads, ...label.cells].map(displayWidth).filter((width) => width <= room);
  return { ...label, width: Math.max(0, ...fitting) };
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
    line(
      all,
      all.map(({ heads }) => heads[at - height + heads.length] ?? ""),
    ),
  );
  // One detail that every row has is named once, above all rows.
  const [only, ...more] = below;
  const once = only !== undefined && more.length === 0 && !only.cells.includes("");
  const body = Array.from({ length: rows }, (_, at) => [
    ...rowLines(all, at, room),
    ...(once ? detailLines([{ ...only, heads: [] }], at, room) : detailLines(below, at, room)),
  ]);
  return {
    head: [
      ...head.filter((one) => one !== ""),
      ...(once ? setIn(only.heads.join(" "), room - 4).map((one) => `    ${one}`) : []),
    ],
    body: body.flat(),
  };
}

function rowLines(all: readonly Shown[], at: number, room: number): string[] {
  const [label, ...columns] = all;
  if (label === undefined) return [];
  const name = label.cells[at] ?? "";
  const above = displayWidth(name) > label.width;
  const cells = columns.map(({ cells: some, width, right }) =>
    right ? [some[at] ?? ""] : folded(some[at] ?? "", width),
  );
  const height = Math.max(1, ...cells.map((lines) => lines.length));
  const lines = Array.from({ length: height }, (_, index) =>
    line(all, [above || index > 0 ? "" : name, ...cells.map((some) => some[index] ?? "")]),
  );
  return above ? [...setIn(name, room), ...lines.filter((one) => one !== "")] : lines;
}

/** What went below a row, each with its head. */
function detailLines(below: readonly Shown[], at: number, room: number): string[] {
  const said = below
    .map(({ heads, cells }) => [...heads, cells[at] ?? ""])
    .filter((words) => words.at(-1) !== "")
    .map((words) => words.join(" "));
  return said.length === 0 ? [] : setIn(said.join("; "), room - 4).map((one) => `    ${one}`);
}

/** Lines of which those after the first are set in. */
function setIn(text: string, room: number): string[] {
  const lines = folded(text, room);
  if (lines.length < 2) return lines;
  return folded(text, room - 2).map((one, index) => (index === 0 ? one : `  ${one}`));
}

const line = (columns: readonly Shown[], cells: readonly string[]): string =>
  columns
    .map(({ width, right }, at) => padded(cells[at] ?? "", width, right))
    .join(between)
    .trimEnd();
