/** The figure of a scale, drawn from its data: where it is read, what each part counts, where the cut points lie. */

import { document, outline, type Piece, type Point, path } from "../../drawings/svg.ts";
import type { Scale } from "../../knowledge/index.ts";
import { lineGraph } from "./line-graph.ts";
import { lungMap } from "./lungs.ts";
import { panels } from "./panels.ts";
import { pleuraFigure } from "./pleura.ts";
import { snoutFigure } from "./snout.ts";
import { stepGraphs } from "./step-graph.ts";

const turbinates = "respiratory.turbinates";
const lungs = "respiratory.lungs";

/** File name of the figure. */
export const figureName = ({ id }: Scale): string => `${id}.svg`;

/** What the figure shows, in one line. */
export const figureTitle = (scale: Scale): string => `${scale.title}: ${shows(scale)}`;

function shows(scale: Scale): string {
  if (scale.organ === turbinates) return "where the section of the snout is read";
  if (floatFigure(scale).length > 0) return "a piece of lung in water";
  if (scale.organ === lungs) return "what is read of the lungs, lobe by lobe";
  if (pleuraFigure(scale).length > 0) return "an example of each grade on the lungs";
  return lineGraph(scale).length > 0
    ? "the line of the formula"
    : "on which side of a cut point a value falls";
}

/**
 * The figure as SVG, with title and description, for light and dark paper.
 * Snout and lungs always have one. Of another organ there is none where it would only repeat the table of the grades.
 */
export function scaleFigure(scale: Scale): string | undefined {
  const pieces = [...pictures(scale), ...stepGraphs(scale), ...lineGraph(scale)];
  return pieces.length === 0 ? undefined : document(figureTitle(scale), description(scale), pieces);
}

function pictures(scale: Scale): Piece[] {
  if (scale.organ === turbinates) return snoutFigure(scale);
  const float = floatFigure(scale);
  if (float.length > 0) return float;
  return scale.organ === lungs ? [lungMap(scale)] : pleuraFigure(scale);
}

/** The same in words. */
function description(scale: Scale): string {
  const parts = Object.entries(scale.parts).map(([name, { weight, max }]) => {
    if (weight !== undefined) return `${name}: weight ${weight}`;
    return max === undefined ? name : `${name}: up to ${max}`;
  });
  const grades = Object.entries(scale.meaning ?? {}).map(([grade, words]) => `${grade} ${words}`);
  return [
    `Parts: ${parts.join("; ")}.`,
    ...(grades.length === 0 ? [] : [`Grades: ${grades.join("; ")}.`]),
  ].join(" ");
}

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

function floatFigure({ parts, map = {}, meaning = {} }: Scale): Piece[] {
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
