/** Area and perimeter of a filled outline, with holes where its fill rule makes them. */
import { cubicLength, greenTerm } from "./cubic-measure.ts";
import type { Contour } from "./curve.ts";
import { flatten } from "./flatten.ts";
import { Polygon } from "./inside.ts";

/** How a path with several rings is filled, as SVG says it. */
export type FillRule = "nonzero" | "evenodd";

export interface Region {
  /** Square drawing units, not negative. */
  readonly area: number;
  /** Drawing units: the whole border of what is filled, edges of holes with it. */
  readonly perimeter: number;
}

/** Signed area of one ring: positive when it runs from the x axis to the y axis. */
function ringArea({ curves }: Contour): number {
  const [first] = curves;
  return first === undefined ? 0 : curves.reduce((sum, curve) => sum + greenTerm(curve, first[0]), 0);
}

/** Length of a chain of curves in drawing units. */
export const contourLength = ({ curves }: Contour): number =>
  curves.reduce((sum, curve) => sum + cubicLength(curve), 0);

/**
 * Area and perimeter of rings that neither cross themselves nor one another. A ring counts as border where it parts
 * filled from empty: by the winding number on both of its sides (nonzero), or by how many rings hold it (evenodd).
 */
export function regionOf(rings: readonly Contour[], rule: FillRule): Region {
  const parts = rings.map((ring) => ({ area: ringArea(ring), length: contourLength(ring), ring }));
  const polygons = rings.length === 1 ? [] : rings.map((ring) => new Polygon(flatten(ring)));
  let [area, perimeter] = [0, 0];
  for (const [index, part] of parts.entries()) {
    const start = part.ring.curves[0]?.[0];
    if (start === undefined || part.area === 0) continue;
    const around = parts.filter((_, other) => other !== index && polygons[other]?.holds(start));
    const outside = around.reduce((sum, other) => sum + Math.sign(other.area), 0);
    const filledOutside = rule === "evenodd" ? around.length % 2 === 1 : outside !== 0;
    const filledInside = rule === "evenodd" ? around.length % 2 === 0 : outside + Math.sign(part.area) !== 0;
    if (filledInside === filledOutside) continue;
    area += filledInside ? Math.abs(part.area) : -Math.abs(part.area);
    perimeter += part.length;
  }
  return { area, perimeter };
}
