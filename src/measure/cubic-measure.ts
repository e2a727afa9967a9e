/** Area under, and length of, one cubic Bézier curve. */
import { type Cubic, distance, type Point } from "./curve.ts";

/** Lengths are wanted to this share of the length of the control polygon. */
const tolerance = 1e-11;
/** Halving more often than this changes nothing that a number can hold. */
const maxHalvings = 40;

/**
 * Half the integral of x dy - y dx along the curve, seen from `origin`: what the curve adds to the area of its ring by
 * Green's theorem. For Bernstein polynomials of degree 3 the integral is a sum over the cross products of the control
 * points with the weights 6, 3, 1, 3, 3, 6 twentieths, so the value is exact but for rounding.
 */
export function greenTerm([a, b, c, d]: Cubic, origin: Point): number {
  const cross = (p: Point, q: Point): number =>
    (p.x - origin.x) * (q.y - origin.y) - (q.x - origin.x) * (p.y - origin.y);
  return (
    (6 * cross(a, b) + 3 * cross(a, c) + cross(a, d) + 3 * cross(b, c) + 3 * cross(b, d) + 6 * cross(c, d)) /
    20
  );
}

/**
 * Length of the curve in drawing units, by adaptive Gauss-Legendre integration of the speed: a piece is halved until
 * its two halves agree with the whole to 1e-11 of the control polygon.
 */
export function cubicLength(curve: Cubic): number {
  const [a, b, c, d] = curve;
  const hull = distance(a, b) + distance(b, c) + distance(c, d);
  if (hull === 0) return 0;
  const speed = (t: number): number => {
    const s = 1 - t;
    const slope = (p: number, q: number, r: number, u: number): number =>
      3 * (s * s * (q - p) + 2 * s * t * (r - q) + t * t * (u - r));
    return Math.hypot(slope(a.x, b.x, c.x, d.x), slope(a.y, b.y, c.y, d.y));
  };
  const piece = (from: number, to: number, whole: number, halvings: number): number => {
    const middle = (from + to) / 2;
    const [left, right] = [integrate(speed, from, middle), integrate(speed, middle, to)];
    if (halvings >= maxHalvings || Math.abs(left + right - whole) <= tolerance * hull * (to - from))
      return left + right;
    return piece(from, middle, left, halvings + 1) + piece(middle, to, right, halvings + 1);
  };
  return piece(0, 1, integrate(speed, 0, 1), 0);
}

interface Node {
  /** On the interval 0 to 1. */
  readonly at: number;
  readonly weight: number;
}

const order = 12;
const nodes: readonly Node[] = legendreNodes(order);

/**
 * The integral of a smooth function by Gauss-Legendre: exact for polynomials up to degree 2n - 1 (Abramowitz & Stegun
 * 1964, 25.4.29).
 */
function integrate(f: (t: number) => number, from: number, to: number): number {
  let sum = 0;
  for (const { at, weight } of nodes) sum += weight * f(from + (to - from) * at);
  return sum * (to - from);
}

/** Zeros of the Legendre polynomial by Newton's method, and their weights 2 / ((1 - x²) P'(x)²), on 0 to 1. */
function legendreNodes(n: number): Node[] {
  return Array.from({ length: n }, (_, index) => {
    let x = Math.cos((Math.PI * (index + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let round = 0; round < 20; round++) {
      let [before, value] = [1, x];
      for (let k = 2; k <= n; k++)
        [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
      slope = (n * (x * value - before)) / (x * x - 1);
      const step = value / slope;
      x -= step;
      if (Math.abs(step) < 1e-16) break;
    }
    return { at: (1 + x) / 2, weight: 1 / ((1 - x * x) * slope * slope) };
  });
}
