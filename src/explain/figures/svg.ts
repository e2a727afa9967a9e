/** Pieces of SVG for the figures of the scales: readable on light and dark paper, without scripts or outside files. */

export const width = 720;

/** A drawing that is still to be put on the page, with the height it takes. */
export interface Piece {
  readonly height: number;
  readonly body: string;
}

export const escapeXml = (text: string): string =>
  text.replaceAll(/[&<>"]/g, (char) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;" })[char] ?? "&quot;");

const style = `
  .ink { fill: #1f2328; } .soft { fill: #57606a; } .strong { font-weight: 600; }
  text { font: 13px system-ui, sans-serif; }
  .line { stroke: #57606a; stroke-width: 1.2; fill: none; }
  .body { fill: #ece7e1; stroke: #6e655c; stroke-width: 1.6; }
  .air { fill: #ffffff; stroke: #6e655c; stroke-width: 1.4; }
  .rest { fill: #d3ccc3; stroke: #6e655c; stroke-width: 1.4; }
  .read { fill: #8fc1d4; stroke: #1f5f78; stroke-width: 1.8; }
  .dashed { stroke-dasharray: 5 4; }
  @media (prefers-color-scheme: dark) {
    .ink { fill: #e6e9ec; } .soft { fill: #a3abb4; }
    .line { stroke: #a3abb4; }
    .body { fill: #2c2f33; stroke: #8d96a0; }
    .air { fill: #16191c; stroke: #8d96a0; }
    .rest { fill: #494f56; stroke: #8d96a0; }
    .read { fill: #2f7691; stroke: #9fd3e6; }
  }`;

/** Pieces one below the other, with a title and a description for those who cannot see them. */
export function document(title: string, description: string, pieces: readonly Piece[]): string {
  let y = 10;
  const placed = pieces.map(({ height, body }) => {
    const at = `<g transform="translate(0 ${y})">\n${body}\n</g>`;
    y += height + 10;
    return at;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${y}" role="img" aria-labelledby="title desc">
<title id="title">${escapeXml(title)}</title>
<desc id="desc">${escapeXml(description)}</desc>
<style>${style}
</style>
${placed.join("\n")}
</svg>
`;
}

export interface TextOptions {
  readonly class?: string;
  readonly anchor?: "start" | "middle" | "end";
}

export const text = (x: number, y: number, content: string, options: TextOptions = {}): string =>
  `<text x="${round(x)}" y="${round(y)}" class="${options.class ?? "ink"}"${options.anchor === undefined ? "" : ` text-anchor="${options.anchor}"`}>${escapeXml(content)}</text>`;

export const path = (d: string, name: string): string => `<path d="${d}" class="${name}"/>`;

export const line = (x1: number, y1: number, x2: number, y2: number, name = "line"): string =>
  path(`M${round(x1)} ${round(y1)}L${round(x2)} ${round(y2)}`, name);

export const box = (x: number, y: number, w: number, h: number, name: string): string =>
  `<rect x="${round(x)}" y="${round(y)}" width="${round(w)}" height="${round(h)}" rx="3" class="${name}"/>`;

export type Point = readonly [number, number];

/** A smooth closed outline through points (Catmull-Rom as Bézier curves). */
export function outline(points: readonly Point[]): string {
  const at = (index: number): Point => points[(index + points.length) % points.length] ?? [0, 0];
  const curves = points.map((_, index) => {
    const [a, b, c, d] = [at(index - 1), at(index), at(index + 1), at(index + 2)];
    const first = [b[0] + (c[0] - a[0]) / 6, b[1] + (c[1] - a[1]) / 6];
    const second = [c[0] - (d[0] - b[0]) / 6, c[1] - (d[1] - b[1]) / 6];
    return `C${[...first, ...second, ...c].map(round).join(" ")}`;
  });
  const [x, y] = at(0);
  return `M${round(x)} ${round(y)}${curves.join("")}Z`;
}

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
