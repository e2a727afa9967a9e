/** Blocks as Markdown. Nothing in their words is taken for markup, HTML or a table border. */
import { capital } from "../../words/listing.ts";
import { visible } from "../../words/visible.ts";
import type { Block, Table } from "./blocks.ts";

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
      return [safe(block.text)];
    case "list":
      return [
        ...(block.head === null ? [] : [`${safe(capital(block.head))}:`, ""]),
        ...block.items.map((item) => `- ${safe(item)}`),
      ];
    case "table":
      return tableLines(block.table);
    case "tasks":
      return block.tasks.flatMap(({ task, notes }) => [
        `- [ ] ${safe(task)}`,
        ...notes.map((note) => `  ${safe(note)}`),
      ]);
    case "verbatim":
      return [`    ${visible(block.text)}`];
    case "gap":
      return [];
  }
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
