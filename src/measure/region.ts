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

/** Signed area of one ring in square drawing units: positive when it runs from the x axis to the y axis. */
function ringArea({ curves }: Contour): number {
  const [first] = curves;
  return first === undefined ? 0 : curves.reduce((sum, curve) => sum + greenTerm(curve, first[0]), 0);
}

/** Length of a chain of curves in drawing units. */
export const contourLength = ({ curves }: Contour): number =>
  curves.reduce((sum, curve) => sum + cubicLength(curve), 0);

/** The ring, run through so that its area is positive. */
export function forwards(ring: Contour): Contour {
  return ringArea(ring) < 0 ? backwards(ring) : ring;
}

/** The ring, run through the other way. */
export const backwards = ({ curves, closed }: Contour): Contour => ({
  curves: [...curves].reverse().map(([a, b, c, d]) => [d, c, b, a]),
  closed,
});

/** Of rings that were asked for already: an outline is checked before it is measured. */
const known = new WeakMap<
  readonly Contour[],
  { readonly rule: FillRule; readonly borders: readonly Border[] }
>();

interface Border {
  readonly ring: Contour;
  /** Square drawing units; negative for the edge of a hole. */
  readonly area: number;
}

/**
 * The rings that part filled from empty: by the winding number on both of their sides (nonzero), or by how many rings hold
 * them (evenodd).
 * @param rings that neither cross themselves nor one another
 */
export function bordersOf(rings: readonly Contour[], rule: FillRule): readonly Border[] {
  const before = known.get(rings);
  if (before?.rule === rule) return before.borders;
  const borders = bordersAmong(rings, rule);
  known.set(rings, { rule, borders });
  return borders;
}

function bordersAmong(rings: readonly Contour[], rule: FillRule): Border[] {
  const parts = rings.map((ring) => ({ area: ringArea(ring), ring }));
  const polygons = rings.length === 1 ? [] : rings.map((ring) => new Polygon(flatten(ring)));
  return parts.flatMap(({ area, ring }, index): Border[] => {
    const start = ring.curves[0]?.[0];
    if (start === undefined || area === 0) return [];
    const around = parts.filter((_, other) => other !== index && polygons[other]?.holds(start));
    const outside = around.reduce((sum, other) => sum + Math.sign(other.area), 0);
    const filledOutside = rule === "evenodd" ? around.length % 2 === 1 : outside !== 0;
    const filledInside = rule === "evenodd" ? around.length % 2 === 0 : outside + Math.sign(area) !== 0;
    if (filledInside === filledOutside) return [];
    return [{ ring, area: filledInside ? Math.abs(area) : -Math.abs(area) }];
  });
}

/** Area and perimeter of rings that neither cross themselves nor one another. */
export function regionOf(rings: readonly Contour[], rule: FillRule): Region {
  const borders = bordersOf(rings, rule);
  return {
    area: borders.reduce((sum, { area }) => sum + area, 0),
    perimeter: borders.reduce((sum, { ring }) => sum + contourLength(ring), 0),
  };
}
