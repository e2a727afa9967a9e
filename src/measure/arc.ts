/** Elliptical arcs of SVG as fine cubic curves. */
import type { Cubic, Point } from "./curve.ts";
import { straight } from "./curve.ts";

/** An arc as a path writes it: radii, turn of the x axis in degrees, and which of the four arcs is meant. */
export interface Arc {
  readonly rx: number;
  readonly ry: number;
  readonly turn: number;
  readonly large: boolean;
  readonly sweep: boolean;
}

/**
 * A cubic for an angle θ misses the circle by about 2.7e-4 of the radius at 90° and by the sixth power of θ less
 * below that (Goldapp 1991): at 1/64 of a turn by 2e-11, far below any tracing.
 */
const step = Math.PI / 32;

/**
 * The curves from one point to another along an arc; by the implementation notes of SVG (F.6: from end points to the
 * centre; radii that are too small are enlarged; a radius of 0 is a straight line).
 */
export function arcCurves(from: Point, to: Point, arc: Arc): Cubic[] {
  let [rx, ry] = [Math.abs(arc.rx), Math.abs(arc.ry)];
  if (from.x === to.x && from.y === to.y) return [];
  if (rx === 0 || ry === 0) return [straight(from, to)];
  const phi = (arc.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
  const [dx, dy] = [(from.x - to.x) / 2, (from.y - to.y) / 2];
  const [px, py] = [cos * dx + sin * dy, cos * dy - sin * dx];
  const over = Math.hypot(px / rx, py / ry);
  if (over > 1) [rx, ry] = [rx * over, ry * over];
  // On the unit circle: the half chord, and the centre at right angles to it.
  const [ux, uy] = [px / rx, py / ry];
  const half = ux * ux + uy * uy;
  const away = (arc.large === arc.sweep ? -1 : 1) * Math.sqrt(Math.max(0, 1 / half - 1));
  const [cx, cy] = [away * uy, -away * ux];
  const start = Math.atan2(uy - cy, ux - cx);
  const end = Math.atan2(-uy - cy, -ux - cx);
  let angle = end - start;
  if (arc.sweep && angle < 0) angle += 2 * Math.PI;
  if (!arc.sweep && angle > 0) angle -= 2 * Math.PI;
  const [mx, my] = [(from.x + to.x) / 2, (from.y + to.y) / 2];
  const place = (x: number, y: number): Point => ({
    x: mx + cos * rx * (cx + x) - sin * ry * (cy + y),
    y: my + sin * rx * (cx + x) + cos * ry * (cy + y),
  });
  const count = Math.max(1, Math.ceil(Math.abs(angle) / step));
  const reach = (4 / 3) * Math.tan(angle / count / 4);
  const curves: Cubic[] = [];
  let last = from;
  for (let index = 0; index < count; index++) {
    const [a, b] = [start + (angle * index) / count, start + (angle * (index + 1)) / count];
    const next = index === count - 1 ? to : place(Math.cos(b), Math.sin(b));
    const first = place(Math.cos(a) - reach * Math.sin(a), Math.sin(a) + reach * Math.cos(a));
    const second = place(Math.cos(b) + reach * Math.sin(b), Math.sin(b) - reach * Math.cos(b));
    curves.push([last, first, second, next]);
    last = next;
  }
  return curves;
}
