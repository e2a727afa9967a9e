/** The figure of a scale, drawn from its data: where it is read, what each part counts, where the cut points lie. */
import type { Scale } from "../../knowledge/index.ts";
import { floatFigure } from "./float.ts";
import { lineGraph } from "./line-graph.ts";
import { lungMap } from "./lungs.ts";
import { pleuraFigure } from "./pleura.ts";
import { snoutFigure } from "./snout.ts";
import { stepGraphs } from "./step-graph.ts";
import { document, type Piece } from "./svg.ts";

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
