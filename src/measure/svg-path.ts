/** Path data of SVG to contours in the coordinates of the whole drawing. */
import svgpath from "svgpath";
import { arcCurves } from "./arc.ts";
import { type Contour, type Cubic, fromQuadratic, type Point, straight } from "./curve.ts";
import { type Place, TracingError } from "./problem.ts";
import type { Matrix } from "./svg-transform.ts";
import { closedIfItMeets } from "./tracing.ts";

/** A tracing by hand has some hundred curves an outline; more is a picture that was traced by a program. */
const maxCurves = 20_000;

/**
 * The contours of path data.
 * @param matrix of the transforms of the path and what it stands in
 * @throws TracingError when the data cannot be read
 */
export function pathContours(data: string, matrix: Matrix | undefined, place: Place): Contour[] {
  const path = svgpath(data);
  // The library keeps what it could read and notes the error on the side; its types do not say so.
  const fault = "err" in path ? String(path.err) : "";
  if (fault !== "")
    throw new TracingError(
      "path-unreadable",
      `the data of this path cannot be read (${fault.replace("SvgPath: ", "")}); save the drawing again as plain SVG.`,
      place,
    );
  path.abs().unshort();
  fineArcs(path);
  if (matrix !== undefined) path.matrix([...matrix]);
  const contours = contoursOf(path);
  const count = contours.reduce((sum, { curves }) => sum + curves.length, 0);
  if (count > maxCurves)
    throw new TracingError(
      "too-many-points",
      `the outline has ${count} points, more than ${maxCurves}; simplify the path in the drawing program.`,
      place,
    );
  for (const { curves } of contours)
    for (const { x, y } of curves.flat())
      if (!Number.isFinite(x) || !Number.isFinite(y) || Math.abs(x) > 1e9 || Math.abs(y) > 1e9)
        throw new TracingError(
          "number-unreadable",
          "a coordinate of this outline is beyond all bounds.",
          place,
        );
  return contours;
}

/** Arcs become cubics before any transform, so that a transform only moves points. */
function fineArcs(path: ReturnType<typeof svgpath>): void {
  path.iterate((segment, _index, x, y) => {
    if (segment[0] !== "A") return undefined;
    const [, rx, ry, turn, large, sweep, toX, toY] = segment;
    const arc = { rx, ry, turn, large: large === 1, sweep: sweep === 1 };
    return arcCurves({ x, y }, { x: toX, y: toY }, arc).map(([, b, c, d]) => [
      "C",
      b.x,
      b.y,
      c.x,
      c.y,
      d.x,
      d.y,
    ]);
  });
}

function contoursOf(path: ReturnType<typeof svgpath>): Contour[] {
  const contours: Contour[] = [];
  let curves: Cubic[] = [];
  const finish = (closed: boolean): void => {
    if (curves.length > 0) contours.push(closedIfItMeets({ curves, closed }));
    curves = [];
  };
  path.iterate((segment, _index, x, y) => {
    const from = { x, y };
    const line = (to: Point): void => {
      if (to.x !== x || to.y !== y) curves.push(straight(from, to));
    };
    switch (segment[0]) {
      case "M":
        finish(false);
        break;
      case "L":
        line({ x: segment[1], y: segment[2] });
        break;
      case "H":
        line({ x: segment[1], y });
        break;
      case "V":
        line({ x, y: segment[1] });
        break;
      case "C":
        curves.push([
          from,
          { x: segment[1], y: segment[2] },
          { x: segment[3], y: segment[4] },
          { x: segment[5], y: segment[6] },
        ]);
        break;
      case "Q":
        curves.push(fromQuadratic(from, { x: segment[1], y: segment[2] }, { x: segment[3], y: segment[4] }));
        break;
      default: {
        // Z: back to where the contour began.
        const start = curves[0]?.[0];
        if (start !== undefined) line(start);
        finish(true);
      }
    }
  });
  finish(false);
  return contours;
}
