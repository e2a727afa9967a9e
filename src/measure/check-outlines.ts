/** What must hold before anything is computed from outlines: closed, simple, and where they belong. */
import { crossingOf } from "./crossing.ts";
import { distance, extent, type Point } from "./curve.ts";
import { flatten } from "./flatten.ts";
import { distanceToRings, isInsideRings } from "./inside.ts";
import { lobeId, lobes, sides } from "./parts.ts";
import { type Problem, TracingError } from "./problem.ts";
import type { Drawing, Shape } from "./tracing.ts";

/**
 * A hand that follows the wall of the cavity leaves it here and there, and a scroll grows out of the wall: outlines may
 * reach over one another by this share of the size of the outline that holds or meets them.
 */
const handShare = 0.01;

/** A shape with its rings as polylines. */
interface Traced {
  readonly shape: Shape;
  readonly rings: readonly (readonly Point[])[];
  readonly size: number;
}

/** Everything that is wrong with the outlines of a drawing, in the order of the file. */
export function outlineErrors({ outlines, affected, scale }: Drawing): TracingError[] {
  const errors: TracingError[] = [];
  const sound: Traced[] = [];
  for (const shape of [...outlines, ...affected]) {
    const error = shapeError(shape, scale);
    if (error !== undefined) errors.push(error);
    else sound.push(traced(shape));
  }
  const byId = new Map(sound.map((one) => [one.shape.id, one]));
  const inLobe = (lobe: string): Traced[] =>
    sound.filter(({ shape }) => affected.some((one) => one === shape && one.lobe === lobe));
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
    ...lobes.flatMap((lobe) => pairs(inLobe(lobe))),
  ];
  for (const [one, other] of apart)
    if (one !== undefined && other !== undefined) errors.push(...overlapErrors(one, other));
  return errors.sort((a, b) => a.place.line - b.place.line);
}

const pairs = (all: readonly (Traced | undefined)[]): (readonly (Traced | undefined)[])[] =>
  all.flatMap((one, index) => all.slice(index + 1).map((other) => [one, other]));

function traced(shape: Shape): Traced {
  const size = extent(shape.contours.flatMap(({ curves }) => curves.flat()));
  return { shape, size, rings: shape.contours.map((contour) => flatten(contour, size * handShare)) };
}

function shapeError(shape: Shape, scale: number): TracingError | undefined {
  const { id, contours, place } = shape;
  if (extent(contours.flatMap(({ curves }) => curves.flat())) === 0)
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
  const crossing = crossingOf(
    contours.map((contour) => ({ points: flatten(contour), closed: contour.closed })),
  );
  if (crossing === undefined) return undefined;
  return new TracingError(
    "outline-crosses-itself",
    `${id} crosses or touches itself at x ${crossing.x.toPrecision(5)}, y ${crossing.y.toPrecision(5)} of the drawing; move the points there apart.`,
    place,
  );
}

/** The corner of one outline that lies deepest on the wrong side of another, in drawing units. */
function deepest(one: Traced, other: Traced, wrong: (inside: boolean) => boolean): number {
  let depth = 0;
  for (const point of one.rings.flat())
    if (wrong(isInsideRings(point, other.rings)))
      depth = Math.max(depth, distanceToRings(point, other.rings));
  return depth;
}

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

function overlapErrors(one: Traced, other: Traced): TracingError[] {
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
