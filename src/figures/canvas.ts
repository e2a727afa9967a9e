/** A figure as one SVG that stands alone or in a page: title and description for those who do not see it, fonts that any machine has. */

import { round } from "../drawings/svg.ts";
import { escapedMarkup } from "../words/markup.ts";
import { visible } from "../words/visible.ts";

/** What is drawn, in the units of its own box. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly body: string;
}

/** Names of a figure: an id that is its own on the page, and texts in the language of the reader. */
export interface Naming {
  readonly id: string;
  readonly title: string;
  /** What a person who does not see the figure should know of it, in sentences. */
  readonly description: string;
}

const style = `
.figure text { font: 13px Arial, "Liberation Sans", Helvetica, sans-serif; fill: #1f2328; }
.figure .soft { fill: #57606a; } .figure .small { font-size: 11px; } .figure .strong { font-weight: bold; }
.figure .line { stroke: #57606a; stroke-width: 1.2; fill: none; } .figure .grid { stroke: #d0d4d8; stroke-width: 1; fill: none; }
.figure .axis { stroke: #1f2328; stroke-width: 1.2; fill: none; }
.figure .mark { stroke: #1f5f78; stroke-width: 2; fill: none; } .figure .dot { fill: #1f5f78; stroke: #1f5f78; stroke-width: 1.5; }
.figure .ring { fill: #ffffff; stroke: #1f5f78; stroke-width: 1.5; }
.figure .body { fill: #ece7e1; stroke: #6e655c; stroke-width: 1.6; } .figure .bone { fill: #faf7ef; stroke: #6e655c; stroke-width: 1.4; }
.figure .air { fill: #ffffff; stroke: #6e655c; stroke-width: 1.4; } .figure .rest { fill: #e4dfd8; stroke: #6e655c; stroke-width: 1.4; }
.figure .edge, .figure .tissue, .figure .seen { fill: none; stroke-linecap: round; stroke-linejoin: round; }
.figure .edge { stroke: #4f463e; } .figure .tissue { stroke: #ddd6cd; } .figure .seen { stroke: #78b1c8; }
.figure .dashed { stroke-dasharray: 5 4; } .figure .cell { stroke: #ffffff; stroke-width: 1; }
.figure .blank { fill: #ffffff; stroke: #8d96a0; stroke-width: 1; stroke-dasharray: 2 2; }
.figure .lobe { stroke: #4f463e; stroke-width: 1.6; }
.figure .hatch { stroke: #1f2328; stroke-width: 1.6; fill: none; }
`;

/** The SVG document of a drawing. The same drawing and names give the same bytes. */
export function figure({ id, title, description }: Naming, { width, height, body }: Drawing): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" class="figure" viewBox="0 0 ${round(width)} ${round(height)}" role="img" aria-labelledby="${id}-title ${id}-desc">
<title id="${id}-title">${said(title)}</title>
<desc id="${id}-desc">${said(description)}</desc>
<style>${style}</style>
${body}
</svg>
`;
}

/** A word of a record, safe in markup. */
const said = (words: string): string => escapedMarkup(visible(words));

interface LabelOptions {
  readonly class?: string;
  readonly anchor?: "start" | "middle" | "end";
  readonly fill?: string;
}

export const label = (
  x: number,
  y: number,
  words: string,
  { class: name, anchor, fill }: LabelOptions = {},
): string =>
  `<text x="${round(x)}" y="${round(y)}"${name === undefined ? "" : ` class="${name}"`}${anchor === undefined ? "" : ` text-anchor="${anchor}"`}${fill === undefined ? "" : ` style="fill:${fill}"`}>${said(words)}</text>`;

export const rect = (x: number, y: number, wide: number, high: number, look: string): string =>
  `<rect x="${round(x)}" y="${round(y)}" width="${round(wide)}" height="${round(high)}" ${look}/>`;

export const circle = (x: number, y: number, radius: number, name: string): string =>
  `<circle cx="${round(x)}" cy="${round(y)}" r="${round(radius)}" class="${name}"/>`;

/** Says more where the pointer rests, and to a screen reader. */
export const hinted = (body: string, hint: string): string => `<g><title>${said(hint)}</title>${body}</g>`;

/** Shares of the type size; of the widest face that a machine may take for Arial (DejaVu Sans, measured), bold a tenth more. */
const charWidth = (char: string): number => {
  if (/[MWm@%…—]/.test(char)) return 1;
  if (/[ilj.,:;'|! ]/.test(char)) return 0.4;
  return /[\p{Lu}w]/u.test(char) ? 0.8 : 0.64;
};

/** At most how wide a text is, in px. */
export const widthOf = (words: string, size = 13): number =>
  [...words].reduce((sum, char) => sum + charWidth(char), 0) * size;

/** A text cut so that it takes no more than so many px. */
export function fitted(words: string, most: number, size = 13): string {
  if (widthOf(words, size) <= most) return words;
  let shown = "";
  for (const char of words) {
    if (widthOf(`${shown}${char}…`, size) > most) break;
    shown += char;
  }
  return `${shown}…`;
}

/** Lines of a text that each take no more than so many px. */
export function lines(words: string, most: number, size = 13): string[] {
  const found: string[] = [];
  for (const word of words.split(/\s+/)) {
    const last = found.at(-1);
    if (last !== undefined && widthOf(`${last} ${word}`, size) <= most)
      found[found.length - 1] = `${last} ${word}`;
    else found.push(fitted(word, most, size));
  }
  return found;
}
