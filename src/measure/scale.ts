/** The scale of a drawing, from its scale bar. */
import { type Contour, distance, extent } from "./curve.ts";
import { lengthOf, lengthUnits } from "./length.ts";
import { type Place, TracingError } from "./problem.ts";
import { contourLength } from "./region.ts";

/** What a tracing says about its scale bar. */
export interface ScaleBar {
  /** The bar as a line. */
  readonly line: Contour | undefined;
  /** Its lengths as written, in every place where one is. */
  readonly lengths: readonly string[];
  readonly place: Place;
}

/** A bar may be longer than the distance of its ends by this share. */
const bent = 0.01;
const how = 'Write the length into the id (scale-bar-10-mm), or as data-length="10 mm", or as its title';

/**
 * Millimetres in one drawing unit.
 * @throws TracingError when the bar has no length, no written length, or is no straight line
 */
export function scaleOf({ line, lengths, place }: ScaleBar): number {
  const known = lengths.map((text) => ({ text, size: lengthOf(text) }));
  const wrong = known.find(({ size }) => size === undefined);
  if (wrong !== undefined)
    throw new TracingError(
      "scale-bar-length-missing",
      `"${wrong.text}" is no length in ${lengthUnits.join(" or ")}. ${how}.`,
      place,
    );
  const sizes = known.flatMap(({ size }) => (size === undefined ? [] : [size]));
  const [size] = sizes;
  if (size === undefined)
    throw new TracingError(
      "scale-bar-length-missing",
      `the scale bar does not say how long it is. ${how}.`,
      place,
    );
  if (sizes.some((other) => Math.abs(other - size) > 1e-9 * size))
    throw new TracingError(
      "units-mixed",
      `the scale bar is said to be ${lengths.join(" and ")} long; leave the right one.`,
      place,
    );
  const drawn = line === undefined ? 0 : drawnLength(line, place);
  if (size === 0 || drawn === 0)
    throw new TracingError(
      "scale-bar-zero",
      `the scale bar ${size === 0 ? "is said to be 0 long" : "has no length in the drawing"}; draw it as long as the scale in the picture, and write that length.`,
      place,
    );
  return size / drawn;
}

function drawnLength(line: Contour, place: Place): number {
  const [first] = line.curves;
  const last = line.curves.at(-1);
  if (first === undefined || last === undefined) return 0;
  const ends = distance(first[0], last[3]);
  if (contourLength(line) > (1 + bent) * ends && extent(line.curves.flat()) > 0)
    throw new TracingError(
      "scale-bar-not-straight",
      "the scale bar is not one straight line; draw it as a line from end to end, or as a rectangle whose longer side is the length.",
      place,
    );
  return ends;
}
