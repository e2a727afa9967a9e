/** Where curves cross: polylines say that they do, and nearly where. */
import { crossingOf } from "./crossing.ts";
import { type Contour, type Cubic, extent, type Point } from "./curve.ts";
import { flatness, flatten } from "./flatten.ts";

/** Each round looks at about a sixteenth of what the last one looked at; six come to what a number can hold. */
const rounds = 6;
const halvings = 4;
/** More pieces than these near one place no drawing by hand has; there the first answer must do. */
const maxPieces = 2000;

/**
 * The first place from the left where outlines cross or touch, as exact as the numbers in which they are drawn; undefined
 * where they do not.
 */
export function crossingPlace(contours: readonly Contour[]): Point | undefined {
  let place = crossingOf(contours.map((contour) => ({ points: flatten(contour), closed: contour.closed })));
  let chains = contours;
  let reach = 2 * flatness * extent(contours.flatMap(({ curves }) => curves.flat()));
  for (let round = 0; place !== undefined && round < rounds; round++) {
    const here = place;
    chains = chains.flatMap((chain) => near(chain, here, reach));
    const curves = chains.flatMap((chain) => chain.curves);
    if (curves.length > maxPieces) break;
    const closer = crossingOf(chains.map((chain) => ({ points: flatten(chain), closed: chain.closed })));
    if (closer === undefined) break;
    place = closer;
    reach = 2 * flatness * Math.max(...chains.map((chain) => extent(chain.curves.flat())));
  }
  return place;
}

/** What of a chain comes near to a place, in pieces of its curves; pieces that follow one another stay together. */
function near({ curves, closed }: Contour, place: Point, reach: number): Contour[] {
  const isNear = (curve: Cubic): boolean => {
    const [xs, ys] = [curve.map(({ x }) => x), curve.map(({ y }) => y)];
    return (
      Math.min(...xs) <= place.x + reach &&
      Math.max(...xs) >= place.x - reach &&
      Math.min(...ys) <= place.y + reach &&
      Math.max(...ys) >= place.y - reach
    );
  };
  const chains: Cubic[][] = [[]];
  for (const curve of curves)
    for (const piece of isNear(curve) ? pieces(curve, halvings) : [curve])
      if (isNear(piece)) chains.at(-1)?.push(piece);
      else if (chains.at(-1)?.length !== 0) chains.push([]);
  const [first = []] = chains;
  const last = chains.at(-1) ?? [];
  // The chain runs on from its end to its beginning.
  const [begin, end] = [curves[0]?.[0], curves.at(-1)?.[3]];
  if (closed && chains.length > 1 && first[0]?.[0] === begin && last.at(-1)?.[3] === end) {
    chains[0] = [...last, ...first];
    chains.pop();
  }
  const whole = closed && chains.length === 1 && first.length >= curves.length * 2 ** halvings;
  return chains.filter((chain) => chain.length > 0).map((chain) => ({ curves: chain, closed: whole }));
}

function pieces(curve: Cubic, times: number): Cubic[] {
  if (times === 0) return [curve];
  const [a, b, c, d] = curve;
  const middle = (p: Point, q: Point): Point => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
  const [ab, bc, cd] = [middle(a, b), middle(b, c), middle(c, d)];
  const [abc, bcd] = [middle(ab, bc), middle(bc, cd)];
  const half = middle(abc, bcd);
  return [...pieces([a, ab, abc, half], times - 1), ...pieces([half, bcd, cd, d], times - 1)];
}
