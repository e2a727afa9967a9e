/** A piece of lung in water: lying on the ground, hanging in it, floating. */
import type { Scale } from "../../knowledge/index.ts";
import { panels } from "./panels.ts";
import { outline, type Piece, type Point, path } from "./svg.ts";

const glass = "M-62 8V128Q-62 138 -52 138H52Q62 138 62 128V8";
const water = "M-61 40H61V128Q61 137 52 137H-52Q-61 137 -61 128Z";
const piece: readonly Point[] = [
  [-28, 2],
  [-14, -12],
  [10, -13],
  [28, -4],
  [24, 11],
  [2, 15],
  [-20, 13],
];

/** How deep the middle of the piece lies, by the word that is recorded. */
const depth: Readonly<Record<string, number>> = { sinks: 121, partly: 84, floats: 38 };

export function floatFigure({ parts, map = {}, meaning = {} }: Scale): Piece[] {
  if (!Object.values(parts).some(({ read }) => read === "float")) return [];
  const list = Object.entries(map).map(([word, grade]) => ({
    name: `${word}: ${grade}`,
    words: meaning[String(grade)] ?? "",
    body: [
      path(water, "water"),
      path(outline(piece.map(([x, y]) => [x, y + (depth[word] ?? 0)])), "read"),
      path(glass, "line"),
    ].join("\n"),
  }));
  return [panels("A piece of lung in water", list, { across: 3, tall: 146, scale: 1 })];
}
