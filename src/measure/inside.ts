/** Is a point inside an outline, and how far is it from its line? */
import type { Point } from "./curve.ts";

/** Whether a point lies inside a closed polygon (even-odd rule, by a ray to the right). */
export function isInside({ x, y }: Point, polygon: readonly Point[]): boolean {
  let inside = false;
  let before = polygon.at(-1);
  for (const point of polygon) {
    if (before !== undefined && point.y > y !== before.y > y) {
      const at = before.x + ((point.x - before.x) * (y - before.y)) / (point.y - before.y);
      if (x < at) inside = !inside;
    }
    before = point;
  }
  return inside;
}

/** Whether a point lies in what several rings enclose: inside an odd number of them. */
export const isInsideRings = (point: Point, rings: readonly (readonly Point[])[]): boolean =>
  rings.filter((ring) => isInside(point, ring)).length % 2 === 1;

/** Distance from a point to the nearest place of closed polygons, in drawing units. */
export function distanceToRings(point: Point, rings: readonly (readonly Point[])[]): number {
  let nearest = Infinity;
  for (const ring of rings) {
    let before = ring.at(-1);
    for (const corner of ring) {
      if (before !== undefined) nearest = Math.min(nearest, distanceToPiece(point, before, corner));
      before = corner;
    }
  }
  return nearest;
}

/** Distance from a point to the straight piece from a to b. */
function distanceToPiece(point: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((point.x - a.x) * dx + (point.y - a.y) * dy) / square;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(point.x - a.x - share * dx, point.y - a.y - share * dy);
}

/** Distance from a point to the endless line through a and b; to a where the two are one. */
export function distanceToLine(point: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = Math.hypot(dx, dy);
  if (length === 0) return Math.hypot(point.x - a.x, point.y - a.y);
  return Math.abs((point.x - a.x) * dy - (point.y - a.y) * dx) / length;
}
