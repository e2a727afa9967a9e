/** Labels on their sheets, as SVG to print. */
import { type CodeKind, type LabelSheet, labelCodes } from "../../knowledge/label-sheets.ts";
import { labelAt, paperSizes } from "../../knowledge/paper.ts";
import type { Label } from "../../sending/labels.ts";
import { Html, html } from "../page/html.ts";
import { htmlFile } from "../page/html-file.ts";
import { brokenAt, cut } from "../sheet/page.ts";
import { codeOf } from "./label-code.ts";

export interface LabelWish {
  readonly sheet: LabelSheet;
  readonly code: CodeKind;
  /** The edges are drawn, for plain paper. */
  readonly edges: boolean;
}

/** mm from the edge of a label to what is printed: printers are off by so much. */
const margin = 1.8;
/** Between the code and the text. */
const gap = 1.6;
/** A code is no larger, and its squares neither; on a narrow label the text needs the room. */
const widest = 20;
const narrow = 50;
const largestSquare = (width: number): number => (width < narrow ? 0.5 : 0.9);
const point = 25.4 / 72;
/** Lines of a text, in points of the letters. */
const lead = 1.16;
/** Bold letters are wider. */
const bold = 1.2;
const idSizes = [12, 10, 8, 6.5] as const;
/** The largest in which nothing is cut. */
const textSizes = [9, 8, 7, 6, 5.5] as const;

interface DrawnLabel {
  readonly body: Html;
}

/** A label drawn from its upper left corner; or why it does not fit. */
export function drawLabel({ id, texts }: Label, { sheet, code: kind }: LabelWish): DrawnLabel | string {
  const { width, height } = sheet;
  const high = height - 2 * margin;
  const code = codeOf(kind, id);
  const { least, quiet } = labelCodes[kind];
  const all = code.squares + 2 * quiet;
  const square = Math.min(largestSquare(width), Math.min(high, widest, (width - 2 * margin) * 0.45) / all);
  if (square < least)
    return `its code needs ${all} squares of ${least} mm, and this label has room for squares of ${square.toFixed(2)} mm`;
  const side = square * code.squares;
  const white = square * quiet;
  const from = margin + side + white + Math.max(gap, white);
  const wide = width - margin - from;
  const numbersAt = (points: number): string[] => brokenAt(id, points * bold, wide);
  const size = idSizes.find((points) => numbersAt(points).length === 1) ?? idSizes[3];
  const numbers = numbersAt(size);
  const numberLead = size * point * lead;
  const left = high - numbers.length * numberLead;
  if (left < 0) return `its number alone takes ${numbers.length} lines`;
  const lines = [
    ...numbers.map((text) => ({ text, size, weight: "bold" })),
    ...textLines(texts, wide, left).map((line) => ({ ...line, weight: "normal" })),
  ];
  let y = margin;
  const drawn = lines.map(({ text, size: points, weight }) => {
    y += points * point * lead;
    return html`<text x="${mm(from)}" y="${mm(y - points * point * 0.24)}" font-size="${mm(points * point)}" font-weight="${weight}">${text}</text>`;
  });
  return {
    body: html`<svg class="code" x="${mm(margin + white)}" y="${mm(margin + white)}" width="${mm(side)}" height="${mm(side)}" viewBox="0 0 ${code.units} ${code.units}"><path d="${new Html(code.path)}" fill-rule="evenodd"/></svg>
${drawn}`,
  };
}

/** Texts in lines, in letters as large as leave them whole; in the smallest each has a line, and what does not fit is cut. */
function textLines(
  texts: readonly string[],
  wide: number,
  high: number,
): { readonly text: string; readonly size: number }[] {
  const room = (size: number): number => Math.floor(high / (size * point * lead) + 1e-9);
  const broken = (size: number): string[] => texts.flatMap((text) => brokenAt(text, size, wide));
  const whole = textSizes.find((size) => broken(size).length <= room(size));
  const size = whole ?? textSizes[4];
  return (whole === undefined ? inLines(texts, size, wide, room(size)) : broken(size)).map((text) => ({
    text,
    size,
  }));
}

/** Each text gets a line; what room is left goes to those that need more, the first first. */
function inLines(texts: readonly string[], size: number, wide: number, room: number): string[] {
  const kept = texts.slice(0, room);
  let spare = room - kept.length;
  return kept.flatMap((text) => {
    const lines = brokenAt(text, size, wide);
    const own = Math.min(lines.length, 1 + spare);
    spare -= own - 1;
    return lines.length <= own
      ? lines
      : [...lines.slice(0, own - 1), cut(lines.slice(own - 1).join(" "), size, wide, 1)];
  });
}

const mm = (value: number): string => String(Number(value.toFixed(3)));

/** A sheet as a picture; places without a label stay white. */
export function labelPage(
  labels: readonly (DrawnLabel | undefined)[],
  { sheet, edges }: LabelWish,
  title: string,
): Html {
  const [wide, high] = paperSizes[sheet.paper];
  const drawn = labels.flatMap((label, index) => {
    if (label === undefined) return [];
    const [x, y] = labelAt(sheet, index);
    const edge = edges
      ? html`<rect width="${mm(sheet.width)}" height="${mm(sheet.height)}" fill="none" stroke="#999" stroke-width="0.1"/>`
      : new Html("");
    return [html`<g class="label" transform="translate(${mm(x)} ${mm(y)})">${edge}${label.body}</g>`];
  });
  return html`<svg xmlns="http://www.w3.org/2000/svg" class="sheet" width="${wide}mm" height="${high}mm" viewBox="0 0 ${wide} ${high}" font-family="Arial, 'Liberation Sans', Helvetica, sans-serif">
<title>${title}</title>
${drawn}
</svg>`;
}

/** All sheets as one page to print. */
export function labelDocument(pages: readonly Html[], { sheet }: LabelWish, title: string): string {
  const [wide, high] = paperSizes[sheet.paper];
  return htmlFile(
    { madeBy: "samples labels", title },
    new Html(`
@page { size: ${wide}mm ${high}mm; margin: 0; }
body { margin: 0; background: #fff; }
.sheet { display: block; break-after: page; }
.sheet:last-child { break-after: auto; }
@media screen { body { background: #ddd; } .sheet { background: #fff; margin: 4mm auto; } }
`),
    pages,
  );
}
