/** What must hold before anything is computed from outlines: closed, simple, and where they belong. */
import { crossingPlace } from "./crossing-place.ts";
import { distance, extent, type Point } from "./curve.ts";
import { cornerCount, flatten } from "./flatten.ts";
import { boxAround, distanceToRings, isInsideRings, Polygon, type Sides } from "./inside.ts";
import { lobeId, lobes, sides } from "./parts.ts";
import { type Problem, TracingError } from "./problem.ts";
import { bordersOf } from "./region.ts";
import { septumStep } from "./septum.ts";
import type { Drawing, Shape } from "./tracing.ts";

/**
 * A hand that follows the wall of the cavity leaves it here and there, and a scroll grows out of the wall: outlines may
 * reach over one another by this share of the size of the outline that holds or meets them.
 */
const handShare = 0.01;

/** More corners than these, with the curves followed closely, no drawing by hand has. */
const maxCorners = 200_000;
/** Nor has it more affected areas, or an outline more rings. */
const maxAreas = 1000;

/** A shape with its rings as polylines. */
interface Traced {
  readonly shape: Shape;
  readonly corners: readonly Point[];
  readonly rings: readonly Polygon[];
  readonly size: number;
  readonly box: Sides;
}

/** Everything that is wrong with the outlines of a drawing, in the order of the file. */
export function outlineErrors({ outlines, affected, scale }: Drawing): TracingError[] {
  const tooMany = beyondBounds([...outlines, ...affected]);
  if (tooMany !== undefined) return [tooMany];
  const errors: TracingError[] = [];
  const sound: Traced[] = [];
  for (const shape of [...outlines, ...affected]) {
    const error = shapeError(shape, scale);
    if (error !== undefined) errors.push(error);
    else sound.push(traced(shape));
  }
  const byId = new Map(sound.map((one) => [one.shape.id, one]));
  const lobeOf = new Map<Shape, string>(affected.map((shape) => [shape, shape.lobe]));
  const inLobe = (lobe: string): Traced[] => sound.filter(({ shape }) => lobeOf.get(shape) === lobe);
  const nested = [
    ...sides.flatMap((side) =>
      [`dorsal-${side}`, `ventral-${side}`].map((id) => ({
        inner: byId.get(id),
        outer: byId.get(`cavity-${side}`),
        kind: "concha-outside-cavity" as const,
      })),
    ),
    ...lobes.flatMap((lobe) =>
      inLobe(lobe).map((inner) => ({
        inner,
        outer: byId.get(lobeId(lobe)),
        kind: "affected-outside-lobe" as const,
      })),
    ),
  ];
  for (const { inner, outer, kind } of nested)
    if (inner !== undefined && outer !== undefined) errors.push(...insideErrors(inner, outer, kind));
  const apart = [
    ...sides.map((side) => [byId.get(`dorsal-${side}`), byId.get(`ventral-${side}`)]),
    [byId.get("cavity-left"), byId.get("cavity-right")],
    ...pairs(lobes.map((lobe) => byId.get(lobeId(lobe)))),
  ];
  for (const [one, other] of apart)
    if (one !== undefined && other !== undefined) errors.push(...overlapErrors(one, other));
  for (const lobe of lobes) errors.push(...areaErrors(inLobe(lobe)));
  return errors.sort((a, b) => a.place.line - b.place.line);
}

const pairs = (all: readonly (Traced | undefined)[]): (readonly (Traced | undefined)[])[] =>
  all.flatMap((one, index) => all.slice(index + 1).map((other) => [one, other]));

const sizeOf = ({ contours }: Shape): number => extent(contours.flatMap(({ curves }) => curves.flat()));

function traced(shape: Shape): Traced {
  const size = sizeOf(shape);
  const borders = bordersOf(shape.contours, shape.rule);
  const rings = borders.map(({ ring }) => flatten(ring, size * handShare));
  return {
    shape,
    size,
    corners: rings.flat(),
    rings: rings.map((ring) => new Polygon(ring)),
    box: boxAround(rings.flat()),
  };
}

/** What no hand has drawn, and would take too long to hold against itself. */
function beyondBounds(shapes: readonly Shape[]): TracingError | undefined {
  const tooMany = (message: string, { place }: Shape): TracingError =>
    new TracingError("too-many-points", message, place);
  const last = shapes.at(-1);
  if (last !== undefined && shapes.length > maxAreas)
    return tooMany(
      `the drawing has ${shapes.length} outlines, more than ${maxAreas}; join the affected areas of a lobe to one path.`,
      last,
    );
  let corners = 0;
  for (const shape of shapes) {
    const { id, contours } = shape;
    if (contours.length > maxAreas)
      return tooMany(
        `${id} has ${contours.length} rings, more than ${maxAreas}; simplify the path in the drawing program.`,
        shape,
      );
    const size = sizeOf(shape);
    // What has no extent is named as that later.
    if (size === 0) continue;
    const step = id === "septum" ? septumStep(size) : size * handShare;
    for (const contour of contours) corners += cornerCount(contour, step) + cornerCount(contour);
    if (corners > maxCorners)
      return tooMany(
        `with ${id} the outlines have more than ${maxCorners} corners where their curves are followed; simplify the paths in the drawing program.`,
        shape,
      );
  }
  return undefined;
}

function shapeError(shape: Shape, scale: number): TracingError | undefined {
  const { id, contours, place } = shape;
  if (sizeOf(shape) === 0)
    return new TracingError("outline-empty", `${id} has no extent; draw it anew, or take it out.`, place);
  const open = contours.find(({ closed }) => !closed);
  // The septum may be drawn as its midline.
  if (open !== undefined && !(id === "septum" && contours.length === 1)) {
    const [first, last] = [open.curves[0]?.[0], open.curves.at(-1)?.[3]];
    const gap = first === undefined || last === undefined ? 0 : distance(first, last) * scale;
    return new TracingError(
      "outline-open",
      `${id} is not closed: its ends lie ${gap.toPrecision(2)} mm apart. Close the path in the drawing program.`,
      place,
    );
  }
  const crossing = crossingPlace(contours);
  if (crossing === undefined) return undefined;
  return new TracingError(
    "outline-crosses-itself",
    `${id} crosses or touches itself at x ${coordinate(crossing.x)}, y ${coordinate(crossing.y)} of the drawing; move the points there apart.`,
    place,
  );
}

/** To a millionth of a drawing unit. */
const coordinate = (value: number): number => Number(value.toFixed(6)) + 0;

/** The corner of one outline that lies deepest on the wrong side of another, in drawing units. */
function deepest(one: Traced, other: Traced, wrong: (inside: boolean) => boolean): number {
  let depth = 0;
  for (const point of scattered(one.corners))
    if (wrong(isInsideRings(point, other.rings)))
      depth = Math.max(depth, distanceToRings(point, other.rings, depth));
  return depth;
}

/**
 * All corners, far from one another in turn: few of them are then the deepest so far, and only of those the distance is
 * looked for to its end.
 */
function* scattered(corners: readonly Point[]): Generator<Point> {
  const { length } = corners;
  let step = Math.max(1, Math.floor(length * 0.618));
  while (commonDivisor(step, length) > 1) step++;
  for (let count = 0, at = 0; count < length; count++, at = (at + step) % length) {
    const corner = corners[at];
    if (corner !== undefined) yield corner;
  }
}

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

function insideErrors(
  inner: Traced,
  outer: Traced,
  kind: "concha-outside-cavity" | "affected-outside-lobe",
): TracingError[] {
  const out = deepest(inner, outer, (inside) => !inside);
  if (out <= handShare * outer.size) return [];
  const [id, holder] = [inner.shape.id, outer.shape.id];
  const message = `${id} reaches out of ${holder}, by ${percent(out, outer)} of the size of ${holder}; 1 % is taken for the hand. Draw it inside, or correct ${holder}.`;
  return [new TracingError(kind, message, inner.shape.place)];
}

/** Affected areas of one lobe that lie over one another, each named once. */
function areaErrors(areas: readonly Traced[]): TracingError[] {
  const fromLeft = [...areas.entries()].sort(([, a], [, b]) => a.box.left - b.box.left);
  const named = new Map<Traced, TracingError>();
  for (const [index, [place, one]] of fromLeft.entries())
    for (let next = index + 1; next < fromLeft.length; next++) {
      const [otherPlace, other] = fromLeft[next] ?? [place, one];
      if (other.box.left > one.box.right) break;
      const [first, later] = place < otherPlace ? [one, other] : [other, one];
      const [error] = named.has(later) ? [] : overlapErrors(first, later);
      if (error !== undefined) named.set(later, error);
    }
  return [...named.values()];
}

function overlapErrors(one: Traced, other: Traced): TracingError[] {
  if (one.box.top > other.box.bottom || other.box.top > one.box.bottom) return [];
  const [less, more] = one.size <= other.size ? [one, other] : [other, one];
  const depth = Math.max(
    deepest(less, more, (inside) => inside),
    deepest(more, less, (inside) => inside),
  );
  if (depth <= handShare * more.size) return [];
  const message = `${other.shape.id} and ${one.shape.id} lie over one another, by ${percent(depth, more)} of the size of ${more.shape.id}; 1 % is taken for the hand. Draw each without the other.`;
  return [new TracingError("outlines-overlap", message, other.shape.place)];
}

const percent = (depth: number, { size }: Traced): string => `${((100 * depth) / size).toFixed(1)} %`;

/** An error of this room with the file it belongs to. */
export const problemIn = (file: string, { kind, message, place }: TracingError): Problem => ({
  kind,
  file,
  ...place,
  message,
});
