/** Outlines as chains of cubic Bézier curves: a straight line is a cubic whose control points lie at its thirds. */

/** A place in the drawing, in its own units. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Start, two control points, end. */
export type Cubic = readonly [Point, Point, Point, Point];

/** One chain of curves. An open one ends elsewhere than it begins. */
export interface Contour {
  readonly curves: readonly Cubic[];
  readonly closed: boolean;
}

/** The point at a share (0 to 1) of the way from one point to another. */
const between = (a: Point, b: Point, share: number): Point => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
});

export const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** The straight line between two points as a cubic, run through at constant speed. */
export const straight = (a: Point, b: Point): Cubic => [a, between(a, b, 1 / 3), between(a, b, 2 / 3), b];

/** The quadratic Bézier curve with one control point, raised to a cubic; the curve is the same. */
export const fromQuadratic = (a: Point, control: Point, b: Point): Cubic => [
  a,
  between(a, control, 2 / 3),
  between(b, control, 2 / 3),
  b,
];

/** The chain through the points, closed or not. Points that stand twice in a row count once. */
export function polygonal(points: readonly Point[], closed: boolean): Contour {
  const curves: Cubic[] = [];
  for (const [index, point] of points.entries()) {
    const next = points[index + 1] ?? (closed ? points[0] : undefined);
    if (next !== undefined && distance(point, next) > 0) curves.push(straight(point, next));
  }
  return { curves, closed };
}

/** The point of a curve at t, 0 to 1 (Bernstein form). */
export function pointAt([a, b, c, d]: Cubic, t: number): Point {
  const s = 1 - t;
  const [p, q, r, u] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  return { x: p * a.x + q * b.x + r * c.x + u * d.x, y: p * a.y + q * b.y + r * c.y + u * d.y };
}

/** The size of what holds all points: the diagonal of its upright box, in drawing units; 0 for no point. */
export function extent(points: readonly Point[]): number {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return right < left ? 0 : Math.hypot(right - left, bottom - top);
}
