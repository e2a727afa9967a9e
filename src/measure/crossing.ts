/** Does an outline cross or touch itself? */
import type { Point } from "./curve.ts";

/** One piece of a polyline; `ring` and `index` tell neighbours. */
interface Piece {
  readonly a: Point;
  readonly b: Point;
  readonly ring: number;
  readonly index: number;
  /** Pieces in the ring, so that the last is known as a neighbour of the first; 0 for an open chain. */
  readonly around: number;
}

const maxCells = 512;

/**
 * The first place where polylines cross or touch themselves or one another; neighbours share their common point only.
 * @param rings corners of each polyline
 */
export function crossingOf(
  rings: readonly { readonly points: readonly Point[]; readonly closed: boolean }[],
): Point | undefined {
  const pieces = rings.flatMap(({ points, closed }, ring) =>
    points.flatMap((a, index): Piece[] => {
      const b = points[index + 1] ?? (closed ? points[0] : undefined);
      return b === undefined ? [] : [{ a, b, ring, index, around: closed ? points.length : 0 }];
    }),
  );
  const grid = new Grid(rings.flatMap(({ points }) => points));
  // Each piece is held against those before it, so that a wild drawing is known at its first crossing.
  for (const piece of pieces)
    for (const cell of grid.cellsOf(piece)) {
      for (const other of cell) {
        const place = meeting(other, piece);
        if (place !== undefined) return place;
      }
      cell.push(piece);
    }
  return undefined;
}

/** Pieces by the square cells that they may run through: only pieces of one cell can meet. */
class Grid {
  readonly #left: number;
  readonly #top: number;
  readonly #size: number;
  readonly #cells = new Map<number, Piece[]>();

  constructor(points: readonly Point[]) {
    let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const { x, y } of points) {
      [left, right] = [Math.min(left, x), Math.max(right, x)];
      [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
    }
    [this.#left, this.#top] = [left, top];
    const across = Math.min(maxCells, Math.max(1, Math.ceil(Math.sqrt(points.length))));
    this.#size = Math.max(right - left, bottom - top) / across || 1;
  }

  /** The cells along a piece: column by column, and in each the rows that it runs through, a little more against rounding. */
  *cellsOf({ a, b }: Piece): Generator<Piece[]> {
    const [low, high] = a.x <= b.x ? [a, b] : [b, a];
    const column = (x: number): number => Math.floor((x - this.#left) / this.#size);
    const row = (y: number): number => (y - this.#top) / this.#size;
    for (let i = column(low.x); i <= column(high.x); i++) {
      const edge = (x: number): number =>
        high.x === low.x ? low.y : low.y + ((high.y - low.y) * (x - low.x)) / (high.x - low.x);
      const begin = edge(Math.max(low.x, this.#left + i * this.#size));
      const end = high.x === low.x ? high.y : edge(Math.min(high.x, this.#left + (i + 1) * this.#size));
      const from = Math.floor(row(Math.min(begin, end)) - 1e-6);
      const to = Math.floor(row(Math.max(begin, end)) + 1e-6);
      for (let j = from; j <= to; j++) yield this.#cell(i * (maxCells * 4) + j);
    }
  }

  #cell(key: number): Piece[] {
    const known = this.#cells.get(key);
    if (known !== undefined) return known;
    const fresh: Piece[] = [];
    this.#cells.set(key, fresh);
    return fresh;
  }
}

/** Where two pieces meet, other than as neighbours do. */
function meeting(one: Piece, other: Piece): Point | undefined {
  if (one.ring === other.ring) {
    const next = (piece: Piece): number =>
      piece.around === 0 ? piece.index + 1 : (piece.index + 1) % piece.around;
    if (next(one) === other.index) return runsBack(one, other) ? other.a : undefined;
    if (next(other) === one.index) return runsBack(other, one) ? one.a : undefined;
  }
  const [a, b, c, d] = [one.a, one.b, other.a, other.b];
  const [abc, abd, cda, cdb] = [side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)];
  if (abc * abd < 0 && cda * cdb < 0) {
    const share = cda / (cda - cdb);
    return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
  }
  if (abc === 0 && isInBox(a, b, c)) return c;
  if (abd === 0 && isInBox(a, b, d)) return d;
  if (cda === 0 && isInBox(c, d, a)) return a;
  if (cdb === 0 && isInBox(c, d, b)) return b;
  return undefined;
}

/** Whether the second of two neighbours lies on the first. */
const runsBack = (one: Piece, next: Piece): boolean =>
  side(one.a, one.b, next.b) === 0 &&
  (one.b.x - one.a.x) * (next.b.x - next.a.x) + (one.b.y - one.a.y) * (next.b.y - next.a.y) < 0;

/** Positive when c lies on one side of the line from a to b, negative on the other, 0 on it. */
const side = (a: Point, b: Point, c: Point): number =>
  Math.sign((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));

/** Whether a point on the line through a and b lies between them. */
const isInBox = (a: Point, b: Point, p: Point): boolean =>
  p.x >= Math.min(a.x, b.x) &&
  p.x <= Math.max(a.x, b.x) &&
  p.y >= Math.min(a.y, b.y) &&
  p.y <= Math.max(a.y, b.y);
