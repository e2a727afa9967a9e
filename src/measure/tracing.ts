/** A tracing as read, whatever kind of file it came from. */
import { type Contour, distance, extent } from "./curve.ts";
import type { Place } from "./problem.ts";
import type { FillRule } from "./region.ts";

/** Something drawn under an agreed id. */
export interface Shape {
  readonly id: string;
  readonly contours: readonly Contour[];
  readonly rule: FillRule;
  readonly place: Place;
}

/** What a reader of files finds, in drawing units and unchecked. */
export interface Drawing {
  readonly outlines: readonly Shape[];
  /** Affected areas with the lobe each belongs to. */
  readonly affected: readonly (Shape & { readonly lobe: string })[];
  /** Conchae said to be gone. */
  readonly absent: readonly { readonly id: string; readonly place: Place }[];
  /** Millimetres in one drawing unit. */
  readonly scale: number;
  /** Ids of shapes that belong to no part and were not measured. */
  readonly passedOver: readonly string[];
}

/** Ends that are this near to each other, as a share of the outline's size, are one point. */
const sameEnd = 1e-6;

/** A contour whose ends meet, though it was not closed by its last command, is closed. */
export function closedIfItMeets(contour: Contour): Contour {
  const [first] = contour.curves;
  const last = contour.curves.at(-1);
  if (contour.closed || first === undefined || last === undefined) return contour;
  const gap = distance(first[0], last[3]);
  return gap <= sameEnd * extent(contour.curves.flat()) ? { ...contour, closed: true } : contour;
}
