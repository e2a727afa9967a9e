/** Gauss-Legendre integration: exact for polynomials up to degree 2n - 1 (Abramowitz & Stegun 1964, 25.4.29). */

interface Node {
  /** On the interval 0 to 1. */
  readonly at: number;
  readonly weight: number;
}

const order = 12;
const nodes: readonly Node[] = legendreNodes(order);

/** The integral of a smooth function from `from` to `to`, by 12 points. */
export function integrate(f: (t: number) => number, from: number, to: number): number {
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
