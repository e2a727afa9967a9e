/** Is a point inside an outline, and how far is it from its line? */
import type { Point } from "./curve.ts";

/** So many pieces of a polygon are looked at one by one. */
const few = 8;

/** A box around some pieces of a polygon that follow one another. */
interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** The first piece and the one behind the last. */
  readonly from: number;
  readonly to: number;
  /** Boxes around either half; none around few pieces. */
  readonly halves: readonly Box[];
}

/** A closed polygon in boxes within boxes, so that a question looks at the few pieces that matter for it. */
export class Polygon {
  readonly #points: readonly Point[];
  readonly #box: Box;

  constructor(points: readonly Point[]) {
    this.#points = points;
    this.#box = this.#around(0, points.length);
  }

  /** Whether a point lies inside (even-odd rule, by a ray to the right). */
  holds(point: Point): boolean {
    return this.#isOdd(point, this.#box);
  }

  /**
   * Distance from a point to the nearest place of the line, in drawing units; `most` where no place is nearer.
   * @param enough a distance that is no greater need not be the smallest
   */
  distance(point: Point, most: number, enough: number): number {
    return this.#nearest(point, this.#box, most, enough);
  }

  #around(from: number, to: number): Box {
    if (to - from > few) {
      const middle = (from + to) >> 1;
      const halves = [this.#around(from, middle), this.#around(middle, to)];
      return { ...boxOf(halves), from, to, halves };
    }
    const ends = Array.from({ length: to - from }, (_, index) => this.#piece(from + index)).flat();
    return { ...boxAround(ends), from, to, halves: [] };
  }

  /** The straight piece that begins at a corner. */
  #piece(index: number): readonly [Point, Point] {
    const from = this.#points[index] ?? nowhere;
    return [from, this.#points[index + 1] ?? this.#points[0] ?? nowhere];
  }

  /** Whether a ray to the right meets the pieces of a box an odd number of times. */
  #isOdd({ x, y }: Point, box: Box): boolean {
    if (box.right < x || box.top > y || box.bottom <= y) return false;
    // All of it lies to the right: only the two ends of the chain count.
    if (box.left > x) {
      const [first] = this.#piece(box.from);
      const [, last] = this.#piece(box.to - 1);
      return first.y > y !== last.y > y;
    }
    let odd = false;
    if (box.halves.length > 0) for (const half of box.halves) odd = this.#isOdd({ x, y }, half) !== odd;
    else
      for (let index = box.from; index < box.to; index++) {
        const [a, b] = this.#piece(index);
        if (b.y > y !== a.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) odd = !odd;
      }
    return odd;
  }

  #nearest(point: Point, box: Box, most: number, enough: number): number {
    if (most <= enough || toBox(point, box) >= most) return most;
    let nearest = most;
    if (box.halves.length > 0) {
      const nearFirst = [...box.halves].sort((a, b) => toBox(point, a) - toBox(point, b));
      for (const half of nearFirst) nearest = this.#nearest(point, half, nearest, enough);
    } else
      for (let index = box.from; index < box.to; index++)
        nearest = Math.min(nearest, distanceToPiece(point, ...this.#piece(index)));
    return nearest;
  }
}

const nowhere: Point = { x: Number.NaN, y: Number.NaN };

export type Sides = Pick<Box, "left" | "right" | "top" | "bottom">;

const boxOf = (parts: readonly Sides[]): Sides =>
  parts.reduce(
    (box, part) => ({
      left: Math.min(box.left, part.left),
      right: Math.max(box.right, part.right),
      top: Math.min(box.top, part.top),
      bottom: Math.max(box.bottom, part.bottom),
    }),
    { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity },
  );

export const boxAround = (points: readonly Point[]): Sides =>
  boxOf(points.map(({ x, y }) => ({ left: x, right: x, top: y, bottom: y })));

/** Distance from a point to a box, 0 inside it. */
const toBox = ({ x, y }: Point, { left, right, top, bottom }: Sides): number =>
  Math.hypot(Math.max(left - x, 0, x - right), Math.max(top - y, 0, y - bottom));

/** Whether a point lies in what several rings enclose: inside an odd number of them. */
export const isInsideRings = (point: Point, rings: readonly Polygon[]): boolean =>
  rings.filter((ring) => ring.holds(point)).length % 2 === 1;

/** Distance from a point to the nearest place of several rings, in drawing units; where it is `enough` or less, any. */
export const distanceToRings = (point: Point, rings: readonly Polygon[], enough: number): number =>
  rings.reduce((nearest, ring) => ring.distance(point, nearest, enough), Infinity);

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
