/**
 * Blocks as Markdown, in lines of 80 columns but for headings and rows of tables, which Markdown wants in one. Nothing in
 * their words is taken for markup, HTML or a table border.
 */
import { capital } from "../../words/listing.ts";
import { visible } from "../../words/visible.ts";
import type { Block, Table } from "./blocks.ts";
import { wrapped } from "./width.ts";

/** Blocks with a blank line between them. */
export const markdownOf = (blocks: readonly Block[]): string =>
  blocks
    .filter(({ kind }) => kind !== "gap")
    .map((block) => `${linesOf(block).join("\n")}\n`)
    .join("\n");

function linesOf(block: Block): string[] {
  switch (block.kind) {
    case "heading":
      return [`${"#".repeat(block.level)} ${safe(block.text)}`];
    case "text":
      return lines(block.text);
    case "list":
      return [
        ...(block.head === null ? [] : [`${safe(capital(block.head))}:`, ""]),
        ...block.items.flatMap((item) => lines(item, "- ")),
      ];
    case "table":
      return tableLines(block.table);
    case "tasks":
      return block.tasks.flatMap(({ task, notes }) => [
        ...lines(task, "- [ ] ", "  "),
        ...notes.flatMap((note) => lines(note, "  ")),
      ]);
    case "verbatim":
      return [`    ${visible(block.text)}`];
    case "gap":
      return [];
  }
}

/** Running text in lines, none of which begins like a list or a rule where the text was broken. */
function lines(text: string, first = "", blanks = " ".repeat(first.length)): string[] {
  const width = 79 - blanks.length;
  const [begin = "", ...more] = wrapped(safe(text), first, width, "");
  const held = (line: string): string =>
    line.replace(/^[-+=]/, "\\$&").replace(/^(\d{1,9})([.)])(?=\s|$)/, "$1\\$2");
  return [begin, ...more.map((line) => `${blanks}${held(line)}`)];
}

/** One line of running text or a table cell. */
const safe = (text: string): string =>
  visible(text)
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replace(/[\\`*_[\]{}#|~!]/g, "\\$&");

function tableLines({ columns, rows }: Table): string[] {
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return [
    line(columns.map(({ head }) => safe([head].flat().join(" ")))),
    line(columns.map(({ right }) => (right === true ? "---:" : "---"))),
    ...rows.map((cells) => line(cells.map(safe))),
  ];
}
