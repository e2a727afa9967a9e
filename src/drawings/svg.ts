/** Pieces of SVG for figures of scales and for the sheet: readable on light and dark paper, without scripts or outside files. */
import { escapedMarkup } from "../words/markup.ts";

export const width = 720;

/** A drawing that is still to be put on the page, with the height it takes. */
export interface Piece {
  readonly height: number;
  readonly body: string;
}

const style = `
  .ink { fill: #1f2328; } .soft { fill: #57606a; } .strong { font-weight: 600; }
  text { font: 14px system-ui, sans-serif; }
  .line { stroke: #57606a; stroke-width: 1.2; fill: none; }
  .grid { stroke: #d0d4d8; stroke-width: 1; fill: none; }
  .mark { stroke: #1f5f78; stroke-width: 4; fill: none; }
  .dot { fill: #1f5f78; stroke: #1f5f78; stroke-width: 2; } .ring { fill: #ffffff; stroke: #1f5f78; stroke-width: 2; }
  .body { fill: #ece7e1; stroke: #6e655c; stroke-width: 1.6; }
  .bone { fill: #faf7ef; stroke: #6e655c; stroke-width: 1.4; }
  .air { fill: #ffffff; stroke: #6e655c; stroke-width: 1.4; }
  .water { fill: #e3eef2; stroke: none; }
  .rest { fill: #e4dfd8; stroke: #6e655c; stroke-width: 1.4; }
  .read { fill: #78b1c8; stroke: #1f5f78; stroke-width: 1.8; }
  .edge, .tissue, .seen, .trace { fill: none; stroke-linecap: round; stroke-linejoin: round; }
  .edge { stroke: #4f463e; } .tissue { stroke: #ddd6cd; } .seen { stroke: #78b1c8; }
  .trace { stroke: #1f5f78; }
  .dashed { stroke-dasharray: 5 4; }
  @media (prefers-color-scheme: dark) {
    .ink { fill: #e6e9ec; } .soft { fill: #a3abb4; }
    .line { stroke: #a3abb4; } .grid { stroke: #3b4148; } .mark { stroke: #9fd3e6; }
    .dot { fill: #9fd3e6; stroke: #9fd3e6; } .ring { fill: #16191c; stroke: #9fd3e6; }
    .body { fill: #2c2f33; stroke: #8d96a0; }
    .bone { fill: #6a6f75; stroke: #b3bac1; }
    .air { fill: #0f1215; stroke: #8d96a0; }
    .water { fill: #1d2b33; }
    .rest { fill: #3a3f45; stroke: #8d96a0; }
    .read { fill: #2b7390; stroke: #9fd3e6; }
    .edge { stroke: #c4cbd2; } .tissue { stroke: #494f56; } .seen { stroke: #3489aa; }
    .trace { stroke: #9fd3e6; }
  }`;

/** Pieces one below the other, with a title and a description for those who cannot see them. */
export function document(title: string, description: string, pieces: readonly Piece[]): string {
  let y = 10;
  const stacked = pieces.map(({ height, body }) => {
    const at = placed(body, 0, y);
    y += height + 10;
    return at;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${y}" role="img" aria-labelledby="title desc">
<title id="title">${escapedMarkup(title)}</title>
<desc id="desc">${escapedMarkup(description)}</desc>
<style>${style}
</style>
${stacked.join("\n")}
</svg>
`;
}

export interface TextOptions {
  readonly class?: string;
  readonly anchor?: "start" | "middle" | "end";
}

export const text = (x: number, y: number, content: string, options: TextOptions = {}): string =>
  `<text x="${round(x)}" y="${round(y)}" class="${options.class ?? "ink"}"${options.anchor === undefined ? "" : ` text-anchor="${options.anchor}"`}>${escapedMarkup(content)}</text>`;

export const path = (d: string, name: string): string => `<path d="${d}" class="${name}"/>`;

export const line = (x1: number, y1: number, x2: number, y2: number, name = "line"): string =>
  path(`M${round(x1)} ${round(y1)}L${round(x2)} ${round(y2)}`, name);

export type Point = readonly [number, number];

const curves = (points: readonly Point[], count: number, at: (index: number) => Point): string => {
  const parts = Array.from({ length: count }, (_, index) => {
    const [a, b, c, d] = [at(index - 1), at(index), at(index + 1), at(index + 2)];
    const first = [b[0] + (c[0] - a[0]) / 6, b[1] + (c[1] - a[1]) / 6];
    const second = [c[0] - (d[0] - b[0]) / 6, c[1] - (d[1] - b[1]) / 6];
    return `C${[...first, ...second, ...c].map(round).join(" ")}`;
  });
  const [x, y] = points[0] ?? [0, 0];
  return `M${round(x)} ${round(y)}${parts.join("")}`;
};

/** A smooth closed outline through points (Catmull-Rom as Bézier curves). */
export const outline = (points: readonly Point[]): string =>
  `${curves(points, points.length, (index) => points[(index + points.length) % points.length] ?? [0, 0])}Z`;

/** A smooth open line through points. */
export const curve = (points: readonly Point[]): string =>
  curves(
    points,
    points.length - 1,
    (index) => points[Math.max(0, Math.min(points.length - 1, index))] ?? [0, 0],
  );

/** A line of its own thickness, as lamellae of bone and mucosa are drawn. */
export const stroke = (d: string, thickness: number, name: string): string =>
  `<path d="${d}" class="${name}" stroke-width="${round(thickness)}"/>`;

/** What is drawn, moved to a place and made larger or smaller. */
export const placed = (body: string, x: number, y: number, scale = 1): string =>
  `<g transform="translate(${round(x)} ${round(y)}) scale(${scale})">\n${body}\n</g>`;

export const round = (value: number): number => Math.round(value * 10) / 10;

/** Lines of at most `most` characters. */
export function wrapped(content: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of content.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
