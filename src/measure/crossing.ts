/** Does an outline cross or touch itself? A line sweeps over it from left to right (Shamos and Hoey 1976). */
import type { Point } from "./curve.ts";

/** One piece of a polyline; `ring` and `index` tell neighbours. */
interface Piece {
  readonly a: Point;
  readonly b: Point;
  readonly ring: number;
  readonly index: number;
  /** Pieces in the ring, so that the last is known as a neighbour of the first; 0 for an open chain. */
  readonly around: number;
  /** Whichever of `a` and `b` the sweep comes to first, and the other. */
  readonly from: Point;
  readonly to: Point;
}

/**
 * The first place from the left where polylines cross or touch themselves or one another; neighbours share their common
 * point only. The time it takes grows hardly faster than the number of corners.
 * @param rings corners of each polyline
 */
export function crossingOf(
  rings: readonly { readonly points: readonly Point[]; readonly closed: boolean }[],
): Point | undefined {
  const pieces = rings.flatMap(({ points, closed }, ring) =>
    points.flatMap((a, index): Piece[] => {
      const b = points[index + 1] ?? (closed ? points[0] : undefined);
      if (b === undefined) return [];
      const [from, to] = isBefore(b, a) ? [b, a] : [a, b];
      return [{ a, b, ring, index, around: closed ? points.length : 0, from, to }];
    }),
  );
  // At one point pieces begin before others end, so that those that only touch there stand side by side.
  const events = pieces
    .flatMap((piece) => [
      { piece, at: piece.from, ends: false },
      { piece, at: piece.to, ends: true },
    ])
    .sort(({ at: p, ends: first }, { at: q, ends: second }) => p.x - q.x || p.y - q.y || +first - +second);
  const swept = new Swept();
  for (const { piece, ends } of events) {
    const place = ends ? swept.end(piece) : swept.begin(piece);
    if (place !== undefined) return place;
  }
  return undefined;
}

const isBefore = (p: Point, q: Point): boolean => p.x < q.x || (p.x === q.x && p.y < q.y);

/** So many pieces lie in one row; a longer row is halved. */
const longestRow = 256;

/** The pieces that the sweeping line meets, in their order along it. Only neighbours in this order can be the first to meet. */
class Swept {
  /** Short rows, because putting a piece into a long one would move all behind it. */
  readonly #rows: Piece[][] = [[]];

  /** @returns where the piece meets one that it now lies beside */
  begin(piece: Piece): Point | undefined {
    const found = this.#find(piece);
    if ("x" in found) return found;
    const { row, at } = found;
    const place = this.#besides(found, 0).map((other) => meeting(other, piece));
    this.#rows[row]?.splice(at, 0, piece);
    this.#halve(row);
    return place.find((one) => one !== undefined);
  }

  /** @returns where the two meet that lay on either side of the piece */
  end(piece: Piece): Point | undefined {
    const found = this.#find(piece);
    if ("x" in found) return found;
    const { row, at } = found;
    const [one, other] = this.#besides(found, 1);
    this.#rows[row]?.splice(at, 1);
    if (this.#rows[row]?.length === 0 && this.#rows.length > 1) this.#rows.splice(row, 1);
    return one === undefined || other === undefined ? undefined : meeting(one, other);
  }

  /** Where a piece stands or belongs; or the point in which it touches another. */
  #find(piece: Piece): { readonly row: number; readonly at: number } | Point {
    const rows = this.#rows;
    const row = firstFrom(rows.length - 1, (index) => order(piece, rows[index]?.at(-1)));
    if (typeof row !== "number") return row;
    const inside = rows[row] ?? [];
    const at = firstFrom(inside.length, (index) => order(piece, inside[index]));
    return typeof at === "number" ? { row, at } : at;
  }

  /** The pieces before a place and behind it, as many as there are. */
  #besides({ row, at }: { readonly row: number; readonly at: number }, taken: number): Piece[] {
    const inside = this.#rows[row] ?? [];
    const before = inside[at - 1] ?? this.#rows[row - 1]?.at(-1);
    const behind = inside[at + taken] ?? this.#rows[row + 1]?.[0];
    return [before, behind].filter((piece) => piece !== undefined);
  }

  #halve(row: number): void {
    const long = this.#rows[row];
    if (long !== undefined && long.length > longestRow)
      this.#rows.splice(row + 1, 0, long.splice(longestRow / 2));
  }
}

/** The first index below `end` whose item does not lie below a piece, else `end`; a touch that is come upon instead. */
function firstFrom(end: number, orderAt: (index: number) => number | Point): number | Point {
  let [low, high] = [0, end];
  while (low < high) {
    const middle = (low + high) >> 1;
    const sign = orderAt(middle);
    if (typeof sign !== "number") return sign;
    if (sign > 0) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Whether a piece lies above another that the sweeping line meets too (1), below it (-1), or is it (0). */
function order(piece: Piece, other: Piece | undefined): number | Point {
  if (other === undefined || piece === other) return 0;
  if (isBefore(piece.from, other.from)) {
    const turned = order(other, piece);
    return typeof turned === "number" ? -turned : turned;
  }
  const begin = side(other.from, other.to, piece.from);
  if (begin !== 0) return begin;
  const place = meeting(other, piece);
  if (place !== undefined) return place;
  // Neighbours: both begin here, or the other ends where this begins.
  return side(other.from, other.to, piece.to) || 1;
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
    const [from, to] = [twist(c, d, a), twist(c, d, b)];
    const share = from / (from - to);
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
const side = (a: Point, b: Point, c: Point): number => Math.sign(twist(a, b, c));

/** Twice the area of the triangle, with the sign of the side on which c lies. */
const twist = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/** Whether a point on the line through a and b lies between them. */
const isInBox = (a: Point, b: Point, p: Point): boolean =>
  p.x >= Math.min(a.x, b.x) &&
  p.x <= Math.max(a.x, b.x) &&
  p.y >= Math.min(a.y, b.y) &&
  p.y <= Math.max(a.y, b.y);
