/** Blocks on the page of a terminal. */
import { visible } from "../../words/visible.ts";
import type { Block } from "./blocks.ts";
import type { Style } from "./style.ts";
import { tableParts } from "./text-table.ts";
import { folded, wrapped } from "./width.ts";

interface Page {
  readonly style: Style;
  /** Characters a line; no table is wider. */
  readonly width: number;
}

/** @param width characters a line; 80 unless given */
export const textOf = (blocks: readonly Block[], style: Style, width = 80): string =>
  blocks
    .flatMap((block, index) => [
      ...(needsGap(block, blocks[index - 1]) ? [""] : []),
      ...linesOf(block, { style, width }),
    ])
    .map((line) => `${line}\n`)
    .join("");

/** A blank line stands before each heading, but for one under another. */
function needsGap(block: Block, before: Block | undefined): boolean {
  if (before === undefined || before.kind === "gap") return false;
  if (block.kind === "list") return block.head !== null && block.indent === 0;
  return block.kind === "heading" && !(before.kind === "heading" && before.indent < block.indent);
}

function linesOf(block: Block, { style, width }: Page): string[] {
  switch (block.kind) {
    case "heading": {
      const indent = " ".repeat(block.indent);
      const lines = folded(visible(block.text), width - block.indent, "  ");
      return lines.map((line) => `${indent}${style.heading(line)}`);
    }
    case "text": {
      const first = " ".repeat(block.indent);
      const lines = wrapped(visible(block.text), first, width, `${first}${" ".repeat(block.hang)}`);
      return block.quiet ? lines.map((line) => style.quiet(line)) : lines;
    }
    case "list": {
      const { head, items, indent, bullet } = block;
      const first = " ".repeat(indent + (bullet === "" || indent === 0 ? 2 : 0));
      const shown = head === null ? "" : visible(head);
      return [
        ...(head === null
          ? []
          : [indent === 0 ? style.heading(shown) : `${" ".repeat(indent)}${style.quiet(shown)}`]),
        ...items.flatMap((item) => wrapped(visible(item), `${first}${bullet}`, width, `${first}  `)),
      ];
    }
    case "table": {
      const indent = " ".repeat(block.indent);
      return tableParts(block.table, width - block.indent).flatMap(({ head, body }) => [
        ...head.map((line) => `${indent}${style.quiet(line)}`),
        ...body.map((line) => `${indent}${line}`),
      ]);
    }
    case "tasks":
      return block.tasks.flatMap(({ task, notes }, index) => [
        ...(index === 0 ? [] : [""]),
        ...wrapped(visible(task), "  [ ] ", width),
        ...notes.flatMap((note) => wrapped(visible(note), "      ", width)),
      ]);
    case "verbatim":
      return [visible(block.text)];
    case "gap":
      return [""];
  }
}
