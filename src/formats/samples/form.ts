/** The page that goes with samples: as text, Markdown, and one page to print. */
import { type Paper, paperSizes } from "../../knowledge/paper.ts";
import type { Form, FormSection, FormTable } from "../../sending/form.ts";
import { capital } from "../../words/listing.ts";
import { type Block, heading, text } from "../page/blocks.ts";
import { Html, html } from "../page/html.ts";
import { htmlFile } from "../page/html-file.ts";
import { linesOf } from "../sheet/page.ts";

export const formBlocks = (forms: readonly Form[]): Block[] =>
  forms.flatMap(({ visit, sections }) => [
    heading(`To copy into the laboratory's form: ${visit}`),
    ...sections.flatMap(({ title, facts, table: rows }) => [
      heading(title, { level: 3, indent: 2 }),
      ...facts.map(([asked, answer]) => text(`${asked}: ${answer}`, { indent: 4, hang: 2 })),
      ...(rows?.lines ?? []).map(([first, rest]) =>
        text(`${capital(first)}: ${rest}`, { indent: 4, hang: 2 }),
      ),
    ]),
  ]);

type Columns = Pick<FormTable, "columns" | "rows">;

/** Columns of which no cell says anything are left out. */
function told({ columns, rows }: FormTable): Columns {
  const kept = columns.map((_, index) => rows.some((row) => row[index] !== ""));
  const of = <One>(cells: readonly One[]): One[] => cells.filter((_, index) => kept[index]);
  return { columns: of(columns), rows: rows.map(of) };
}

const margin = 9;
const point = 25.4 / 72;
const lead = 1.25;
/** Points of the letters: the largest in which a form is one page. */
const sizes = [9, 8.5, 8, 7.5, 7, 6.5] as const;
const smallest = 6;
/** mm of the column that says what is asked. */
const asking = 24;

/** A form a page. Where one is longer even in small letters it runs on to the next. */
export function formDocument(forms: readonly Form[], paper: Paper): string {
  const [wide, high] = paperSizes[paper];
  const room = wide - 2 * margin;
  const pages = forms.map(({ visit, sections }) => {
    const size = sizes.find((points) => heightOf(sections, points, room) <= high - 2 * margin) ?? smallest;
    return html`<section class="page" style="font-size: ${size}pt">
<h1>To copy into the laboratory's form: ${visit}</h1>
${sections.map(sectionHtml)}
</section>`;
  });
  return htmlFile(
    { madeBy: "samples form", title: "Samples for the laboratory" },
    new Html(`
@page { size: ${wide}mm ${high}mm; margin: ${margin}mm; }
* { box-sizing: border-box; margin: 0; padding: 0; }
body { font-family: Arial, "Liberation Sans", Helvetica, sans-serif; line-height: ${lead}; color: #000; background: #fff; }
.page { width: ${room}mm; break-after: page; overflow-wrap: anywhere; }
.page:last-child { break-after: auto; }
@media screen { body { padding: ${margin}mm; } }
h1 { font-size: 1.35em; border-bottom: .4mm solid #000; }
h2 { font-size: 1.1em; margin-top: 1.2mm; }
dl { display: grid; grid-template-columns: ${asking}mm 1fr; }
dt { color: #444; }
table { border-collapse: collapse; width: 100%; }
th, td { border: .15mm solid #777; padding: 0 .8mm; text-align: left; vertical-align: top; }
th { font-weight: normal; color: #444; }
tr { break-inside: avoid; }
.short { white-space: nowrap; }
`),
    pages,
  );
}

function sectionHtml({ title, facts, table: all }: FormSection): Html {
  const rows = all === undefined ? undefined : told(all);
  return html`<h2>${title}</h2>
${facts.length === 0 ? [] : html`<dl>${facts.map(([asked, answer]) => html`<dt>${asked}</dt><dd>${answer}</dd>`)}</dl>`}
${rows === undefined || rows.rows.length === 0 ? [] : tableHtml(rows)}`;
}

/** Numbers, dates and tags are not broken. */
const unbroken = 16;
const isShort = ({ rows }: Columns, index: number): boolean =>
  rows.every((row) => (row[index] ?? "").length <= unbroken);

function tableHtml(all: Columns): Html {
  const cell = (tag: Html, text: string, index: number): Html =>
    html`<${tag}${new Html(isShort(all, index) ? ' class="short"' : "")}>${text}</${tag}>`;
  const row = (tag: string, cells: readonly string[]): Html =>
    html`<tr>${cells.map((text, index) => cell(new Html(tag), text, index))}</tr>`;
  return html`<table><thead>${row("th", all.columns)}</thead>
<tbody>${all.rows.map((cells) => row("td", cells))}</tbody></table>`;
}

/** Height in mm, reckoned; a table shares its width by what its columns hold. */
function heightOf(sections: readonly FormSection[], points: number, wide: number): number {
  const line = points * point * lead;
  return sections.reduce(
    (sum, { facts, table: all }) => {
      const rows = all === undefined ? undefined : told(all);
      const listed = facts.reduce(
        (lines, [asked, answer]) =>
          lines + Math.max(linesOf(asked, points, asking), linesOf(answer, points, wide - asking)),
        0,
      );
      return (
        sum + line * 1.1 + 1.2 + line * listed + (rows === undefined ? 0 : tableHeight(rows, points, wide))
      );
    },
    points * point * lead * 1.35 + 1,
  );
}

function tableHeight(all: Columns, points: number, wide: number): number {
  const { columns, rows } = all;
  const widths = columns.map((head, index) =>
    Math.max(...[head, ...rows.map((row) => row[index] ?? "")].map((cell) => cell.length)),
  );
  // Letters are about half as wide as they are high.
  const needs = (index: number): number => (widths[index] ?? 0) * 0.6 * points * point + 2;
  const fixed = columns.reduce((sum, _, index) => sum + (isShort(all, index) ? needs(index) : 0), 0);
  const long = columns.reduce((sum, _, index) => sum + (isShort(all, index) ? 0 : (widths[index] ?? 0)), 0);
  const lines = [columns, ...rows].map((row) =>
    Math.max(
      1,
      ...row.map((cell, index) =>
        isShort(all, index)
          ? 1
          : linesOf(cell, points, Math.max(8, ((wide - fixed) * (widths[index] ?? 0)) / long) - 1.8),
      ),
    ),
  );
  return lines.reduce((sum, one) => sum + one * points * point * lead + 0.2, 0);
}
