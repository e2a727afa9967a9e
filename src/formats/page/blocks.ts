/**
 * What a command says, before it is known whether a terminal or a report shows it: blocks in their order. Words in them
 * are as they were read; the printers make them safe to show.
 */

/** For people at a terminal, or as Markdown to go into a report. */
export type Form = "text" | "markdown";

export interface Column {
  /** Two lines where it is a pair. */
  readonly head: string | readonly string[];
  /** Numbers and intervals stand to the right and are never broken. */
  readonly right?: boolean;
  /** Goes below its row, with its head before it, where the page is too narrow. */
  readonly detail?: boolean;
}

export interface Table {
  readonly columns: readonly Column[];
  /** Cells as shown, a row each; the first says whose numbers they are. Missing ones are blank. */
  readonly rows: readonly (readonly string[])[];
  /** Columns that do not fit follow in a further part, with the first repeated. */
  readonly parts: boolean;
}

/** Something to do, why, and who says so. */
interface Task {
  readonly task: string;
  readonly notes: readonly string[];
}

/** `indent` counts blanks on the page of a terminal; a report has none. */
export type Block =
  | { readonly kind: "heading"; readonly text: string; readonly level: 2 | 3; readonly indent: number }
  | {
      readonly kind: "text";
      readonly text: string;
      readonly indent: number;
      readonly hang: number;
      readonly quiet: boolean;
    }
  | {
      readonly kind: "list";
      readonly head: string | null;
      readonly items: readonly string[];
      readonly indent: number;
      readonly bullet: string;
    }
  | { readonly kind: "table"; readonly table: Table; readonly indent: number }
  | { readonly kind: "tasks"; readonly tasks: readonly Task[] }
  | { readonly kind: "verbatim"; readonly text: string }
  | { readonly kind: "gap" };

export const heading = (text: string, { indent = 0, level = 2 as 2 | 3 } = {}): Block => ({
  kind: "heading",
  text,
  level,
  indent,
});

/** Running text. @param hang blanks more before its further lines */
export const text = (words: string, { indent = 2, hang = 0, quiet = false } = {}): Block => ({
  kind: "text",
  text: words,
  indent,
  hang,
  quiet,
});

/** What must be known beside numbers. */
export const remarks = (words: readonly string[], indent = 2): Block[] =>
  words.map((one) => text(one, { indent, quiet: true }));

/** Nothing without items. @param head a heading where it is not set in */
export const list = (
  head: string | null,
  items: readonly string[],
  { indent = 0, bullet = "" } = {},
): Block[] => (items.length === 0 ? [] : [{ kind: "list", head, items, indent, bullet }]);

/** Nothing without rows. */
export const table = (
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  { indent = 2, parts = false } = {},
): Block[] => (rows.length === 0 ? [] : [{ kind: "table", table: { columns, rows, parts }, indent }]);

/** A line that is shown as it is, for instance of YAML. */
export const verbatim = (line: string): Block => ({ kind: "verbatim", text: line });

/** A blank line between what belongs to one heading. */
export const gap: Block = { kind: "gap" };

export const right = (head: string): Column => ({ head, right: true });
