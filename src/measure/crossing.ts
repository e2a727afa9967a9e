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
  for (const cell of cells(pieces).values())
    for (const [position, one] of cell.entries())
      for (const other of cell.slice(position + 1)) {
        const place = meeting(one, other);
        if (place !== undefined) return place;
      }
  return undefined;
}

/** Pieces by the cells of a grid that they may run through: only pieces of one cell can meet. */
function cells(pieces: readonly Piece[]): Map<number, Piece[]> {
  const xs = pieces.flatMap(({ a, b }) => [a.x, b.x]);
  const ys = pieces.flatMap(({ a, b }) => [a.y, b.y]);
  const least = (values: readonly number[]): number => values.reduce((x, y) => Math.min(x, y), Infinity);
  const most = (values: readonly number[]): number => values.reduce((x, y) => Math.max(x, y), -Infinity);
  const [left, top] = [least(xs), least(ys)];
  const across = Math.min(maxCells, Math.max(1, Math.ceil(Math.sqrt(pieces.length))));
  const size = Math.max(most(xs) - left, most(ys) - top) / across || 1;
  const grid = new Map<number, Piece[]>();
  for (const piece of pieces) {
    const { a, b } = piece;
    const [low, high] = a.x <= b.x ? [a, b] : [b, a];
    const column = (x: number): number => Math.floor((x - left) / size);
    for (let i = column(low.x); i <= column(high.x); i++) {
      // The part of the piece that lies in this column, a little wider against rounding.
      const at = (x: number): number =>
        high.x === low.x ? low.y : low.y + ((high.y - low.y) * (x - low.x)) / (high.x - low.x);
      const begin = high.x === low.x ? low.y : at(Math.max(low.x, left + i * size));
      const end = high.x === low.x ? high.y : at(Math.min(high.x, left + (i + 1) * size));
      const row = (y: number): number => (y - top) / size;
      const from = Math.floor(row(Math.min(begin, end)) - 1e-6);
      const to = Math.floor(row(Math.max(begin, end)) + 1e-6);
      for (let j = from; j <= to; j++) {
        const key = i * (maxCells * 4) + j;
        const cell = grid.get(key);
        if (cell === undefined) grid.set(key, [piece]);
        else cell.push(piece);
      }
    }
  }
  return grid;
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
  if (abc === 0 && within(a, b, c)) return c;
  if (abd === 0 && within(a, b, d)) return d;
  if (cda === 0 && within(c, d, a)) return a;
  if (cdb === 0 && within(c, d, b)) return b;
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
const within = (a: Point, b: Point, p: Point): boolean =>
  p.x >= Math.min(a.x, b.x) &&
  p.x <= Math.max(a.x, b.x) &&
  p.y >= Math.min(a.y, b.y) &&
  p.y <= Math.max(a.y, b.y);
