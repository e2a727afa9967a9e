/** The figure of a scale, drawn from its data: where it is read, what each part counts, where the cut points lie. */
import type { Scale } from "../../knowledge/index.ts";
import { classAxis, cutPoints, gradeLadder, partBars } from "./bars.ts";
import { lungMap, readsLobes } from "./lungs.ts";
import { snoutSection } from "./snout.ts";
import { document, type Piece } from "./svg.ts";

const turbinates = "respiratory.turbinates";

/** File name of the figure. */
export const figureName = ({ id }: Scale): string => `${id}.svg`;

/** What the figure shows, in one line. */
export const figureTitle = (scale: Scale): string => `${scale.title}: ${shows(scale)}`;

function shows(scale: Scale): string {
  if (scale.organ === turbinates) return "where the section of the snout is read";
  if (readsLobes(scale)) return "what each lobe of the lungs counts";
  return "grades and cut points";
}

/** The figure as SVG, with title and description, for light and dark paper. */
export function scaleFigure(scale: Scale): string {
  const map: Piece[] = [
    ...(scale.organ === turbinates ? [snoutSection(scale)] : []),
    ...(readsLobes(scale) ? [lungMap(scale)] : []),
  ];
  const bars = [...cutPoints(scale), ...gradeLadder(scale), ...classAxis(scale)];
  const pieces = [...map, ...bars];
  return document(figureTitle(scale), description(scale), pieces.length > 0 ? pieces : partBars(scale));
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
