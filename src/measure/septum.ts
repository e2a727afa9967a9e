/** How far the septum leaves the straight line between its ends. */
import { distance, type Point } from "./curve.ts";
import { flatten } from "./flatten.ts";
import { distanceToLine } from "./inside.ts";
import { TracingError } from "./problem.ts";
import type { Shape } from "./tracing.ts";

/** Cuts across a drawn band, and the share of its length at either end where the rounding of the end is left out. */
const cuts = 400;
const capShare = 0.02;
/** The direction of the band is found anew from its own midline this often. */
const rounds = 4;
/** Smooth lines are followed in steps of this share of their size. */
const fine = 2e-4;
export const septumStep = (size: number): number => Math.max(size * fine, Number.MIN_VALUE);

/**
 * Greatest distance of the septum's midline from the straight line between the ends of that midline, in drawing units,
 * not negative. An open line is the midline itself. Of a closed band the midline runs through the middles of cuts at
 * right angles to the line between its ends, 2 % of the length left out at either end. Our definition; no published
 * one is known to us.
 * @throws TracingError when a band folds back so that a cut meets it more than twice
 */
export function septumDeviation(shape: Shape): number {
  const [contour] = shape.contours;
  if (contour === undefined) return 0;
  const size = flatten(contour).reduce(
    (most, point, _, all) => Math.max(most, distance(point, all[0] ?? point)),
    0,
  );
  const points = flatten(contour, septumStep(size));
  const midline = contour.closed ? bandMidline(points, shape) : points;
  const first = midline[0];
  const last = midline.at(-1);
  if (first === undefined || last === undefined) return 0;
  return midline.reduce((most, point) => Math.max(most, distanceToLine(point, first, last)), 0);
}

function bandMidline(points: readonly Point[], shape: Shape): Point[] {
  let axis = longAxis(points);
  let midline: Point[] = [];
  for (let round = 0; round < rounds; round++) {
    midline = middles(points, axis, shape);
    const [first, last] = [midline[0], midline.at(-1)];
    if (first === undefined || last === undefined || distance(first, last) === 0) break;
    const length = distance(first, last);
    axis = { x: (last.x - first.x) / length, y: (last.y - first.y) / length };
  }
  return midline;
}

/** Direction in which the corners scatter most: the first principal axis. */
function longAxis(points: readonly Point[]): Point {
  const n = points.length;
  const mean = points.reduce((sum, { x, y }) => ({ x: sum.x + x / n, y: sum.y + y / n }), { x: 0, y: 0 });
  let [xx, xy, yy] = [0, 0, 0];
  for (const { x, y } of points) {
    xx += (x - mean.x) ** 2;
    xy += (x - mean.x) * (y - mean.y);
    yy += (y - mean.y) ** 2;
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return { x: Math.cos(angle), y: Math.sin(angle) };
}

/** Middles of the cuts across the band, from end to end. */
function middles(points: readonly Point[], axis: Point, { place }: Shape): Point[] {
  const turned = points.map(({ x, y }) => ({ x: x * axis.x + y * axis.y, y: y * axis.x - x * axis.y }));
  const along = turned.map(({ x }) => x);
  const low = along.reduce((a, b) => Math.min(a, b), Infinity);
  const length = along.reduce((a, b) => Math.max(a, b), -Infinity) - low;
  return Array.from({ length: cuts + 1 }, (_, index) => {
    const x = low + length * (capShare + ((1 - 2 * capShare) * index) / cuts);
    const met: number[] = [];
    for (const [position, a] of turned.entries()) {
      const b = turned[position + 1] ?? turned[0];
      if (b !== undefined && a.x > x !== b.x > x) met.push(a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x));
    }
    if (met.length !== 2)
      throw new TracingError(
        "septum-not-a-band",
        "the septum folds back on itself, so its midline cannot be found; draw the midline itself, as an open line with the id septum.",
        place,
      );
    const y = ((met[0] ?? 0) + (met[1] ?? 0)) / 2;
    return { x: x * axis.x - y * axis.y, y: x * axis.y + y * axis.x };
  });
}
