/** Curves as polylines, for questions of place: does it cross, is it inside? Areas and lengths are never taken from these. */
import { type Contour, type Cubic, distance, extent, type Point, pointAt } from "./curve.ts";

/** A polyline leaves its curve by at most this share of the size of the outline. */
export const flatness = 1e-4;
const maxPieces = 1000;

/**
 * The corners of a polyline along a contour; a closed one does not repeat its first point.
 * @param longest pieces are no longer than this, in drawing units
 */
export function flatten({ curves, closed }: Contour, longest = Infinity): Point[] {
  const tolerance = flatness * extent(curves.flat());
  const [first] = curves;
  const points: Point[] = first === undefined ? [] : [first[0]];
  for (const curve of curves) {
    const pieces = pieceCount(curve, tolerance, longest);
    for (let index = 1; index <= pieces; index++) {
      const point = index === pieces ? curve[3] : pointAt(curve, index / pieces);
      const last = points.at(-1);
      if (last === undefined || distance(last, point) > 0) points.push(point);
    }
  }
  // Steps of relative commands add up to the start but for rounding: what lies that near to it is the start.
  const [start] = points;
  for (let end = points.at(-1); closed && start !== undefined && end !== undefined; end = points.at(-1)) {
    if (points.length < 4 && distance(start, end) > 0) break;
    if (points.length < 2 || distance(start, end) > tolerance) break;
    points.pop();
  }
  return points;
}

/** How many corners `flatten` makes of a contour at most. */
export function cornerCount({ curves }: Contour, longest = Infinity): number {
  const tolerance = flatness * extent(curves.flat());
  return curves.reduce((sum, curve) => sum + pieceCount(curve, tolerance, longest), 1);
}

/** A chord over 1/n of a curve is off by at most max |B''| / (8 n²), and |B''| is at most 6 times a second difference. */
function pieceCount([a, b, c, d]: Cubic, tolerance: number, longest: number): number {
  const bend = (p: Point, q: Point, r: Point): number => Math.hypot(p.x - 2 * q.x + r.x, p.y - 2 * q.y + r.y);
  const bent = 6 * Math.max(bend(a, b, c), bend(b, c, d));
  const byBend = tolerance > 0 ? Math.sqrt(bent / (8 * tolerance)) : 1;
  const byLength = (distance(a, b) + distance(b, c) + distance(c, d)) / longest;
  return Math.min(maxPieces, Math.max(1, Math.ceil(byBend), Math.ceil(byLength)));
}
