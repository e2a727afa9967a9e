/** Text made safe for Markdown: nothing in it is taken for markup, HTML or a table border. */
import { visible } from "../../words/visible.ts";

/** One line of running text or a table cell. */
export const markdownText = (text: string): string =>
  visible(text)
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replace(/[\\`*_[\]{}#|~!]/g, "\\$&");

/** Lines of a table, with its columns aligned right where asked. */
export function markdownTable(
  columns: readonly { readonly head: string; readonly right?: boolean }[],
  rows: readonly (readonly string[])[],
): string[] {
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return [
    line(columns.map(({ head }) => markdownText(head))),
    line(columns.map(({ right }) => (right === true ? "---:" : "---"))),
    ...rows.map((cells) => line(cells.map(markdownText))),
  ];
}
