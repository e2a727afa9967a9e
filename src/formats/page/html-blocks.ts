/** Blocks as HTML. */
import type { Block, Table } from "./blocks.ts";
import { type Html, html } from "./html.ts";

/** @param under the heading they stand below: with it a table is told from others of its kind */
export function blocksHtml(blocks: readonly Block[], under = ""): Html[] {
  let head = under;
  const of = (block: Block): Html[] => {
    switch (block.kind) {
      case "heading":
        head = block.text;
        return [block.level === 2 ? html`<h2>${block.text}</h2>` : html`<h3>${block.text}</h3>`];
      case "text":
        return [html`<p>${block.text}</p>`];
      case "list":
        return [
          ...(block.head === null ? [] : [html`<p>${block.head}</p>`]),
          html`<ul>${block.items.map((item) => html`<li>${item}</li>`)}</ul>`,
        ];
      case "table":
        return [tableHtml(block.table, head)];
      case "tasks":
        return [
          html`<ul>${block.tasks.map(({ task, notes }) => html`<li>${[task, ...notes].join(" ")}</li>`)}</ul>`,
        ];
      case "verbatim":
        return [html`<pre>${block.text}</pre>`];
      case "gap":
        return [];
    }
  };
  return blocks.flatMap(of);
}

/** A table that is too wide for a telephone is moved with a finger or with the keys. */
function tableHtml({ columns, rows }: Table, of: string): Html {
  const heads = columns.map(({ head }) => [head].flat().join(" "));
  const label = [of, ...heads].filter((part) => part !== "").join(", ");
  const cells = (row: readonly string[]): Html[] =>
    row.map((cell, index) => (index === 0 ? html`<th scope="row">${cell}</th>` : html`<td>${cell}</td>`));
  return html`<div class="wide" tabindex="0" role="region" aria-label="${label}"><table><thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>${rows.map((row) => html`<tr>${cells(row)}</tr>`)}</tbody></table></div>`;
}
