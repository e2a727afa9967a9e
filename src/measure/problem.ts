/** What is wrong with a tracing: every kind has a name, a place where there is one, and a sentence what to do. */

export const problemKinds = [
  "file-unreadable",
  "file-too-large",
  "not-a-tracing",
  "not-svg",
  "not-geojson",
  "raster-only",
  "no-parts",
  "entity-declared",
  "external-reference",
  "use-element",
  "style-sheet-geometry",
  "nested-drawing",
  "part-not-drawn",
  "part-hidden",
  "transform-unreadable",
  "path-unreadable",
  "number-unreadable",
  "too-many-points",
  "part-unknown",
  "part-twice",
  "outline-open",
  "outline-empty",
  "outline-crosses-itself",
  "concha-outside-cavity",
  "affected-outside-lobe",
  "outlines-overlap",
  "septum-not-a-band",
  "scale-bar-missing",
  "scale-bar-zero",
  "scale-bar-not-straight",
  "scale-bar-length-missing",
  "units-mixed",
  "other-organ",
] as const;
export type ProblemKind = (typeof problemKinds)[number];

export interface Problem {
  readonly kind: ProblemKind;
  /** The tracing, as it was named. */
  readonly file: string;
  /** Counted from 1; 0 when the whole file is meant. */
  readonly line: number;
  readonly column: number;
  /** What is wrong, and what to do. */
  readonly message: string;
}

/** A place in the text of a tracing. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

export const wholeFile: Place = { line: 0, column: 0 };

/** Thrown inside this room where reading cannot go on; `readTracing` turns it into a problem. */
export class TracingError extends Error {
  readonly kind: ProblemKind;
  readonly place: Place;

  constructor(kind: ProblemKind, message: string, place: Place = wholeFile) {
    super(message);
    this.kind = kind;
    this.place = place;
  }
}
