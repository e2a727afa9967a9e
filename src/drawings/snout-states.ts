/**
 * How far the conchae are gone in the examples that are drawn for the grades.
 * The order of loss (lower scroll of the ventral concha first, then the upper, the dorsal concha last, the septum giving way late)
 * is from memory, as the figures say; which drawing stands for which grade is this project's reading of the words of the grade.
 */

/** A scroll that is left: its size, and how much of its turns, both as shares of the whole one. */
export interface Left {
  readonly size: number;
  readonly turns: number;
}

export interface Half {
  readonly dorsal: Left;
  readonly upper: Left;
  readonly lower: Left;
  /** How far the basal lamella reaches, as a share of its length. */
  readonly basal: number;
}

export interface State {
  readonly left: Half;
  readonly right: Half;
  /** How far the septum stands off the midline at its worst place, in units of the drawing; towards the pig's left if positive. */
  readonly septum: number;
  /** Lean of the bones, in degrees. */
  readonly lean: number;
}

const whole: Left = { size: 1, turns: 1 };
const none: Left = { size: 0, turns: 0 };
const left = (size: number, turns: number): Left => ({ size, turns });

/** Loss of both conchae of one side, from none to complete: the grades 0 to 4 of a concha. */
export const losses: readonly Half[] = [
  { dorsal: whole, upper: whole, lower: whole, basal: 1 },
  { dorsal: left(0.95, 0.8), upper: whole, lower: left(0.78, 0.8), basal: 1 },
  { dorsal: left(0.85, 0.6), upper: left(0.86, 0.8), lower: left(0.55, 0.6), basal: 1 },
  { dorsal: left(0.75, 0.3), upper: left(0.55, 0.55), lower: left(0.3, 0.35), basal: 0.85 },
  { dorsal: none, upper: none, lower: none, basal: 0.4 },
];

const [full = { dorsal: none, upper: none, lower: none, basal: 0 }] = losses;
const uneven: Half = { ...full, lower: left(0.9, 0.92) };
const lowerSmall: Half = { ...full, lower: left(0.7, 0.75) };
const lowerHalf: Half = { ...full, lower: left(0.52, 0.6) };
const lowerGone: Half = { ...full, upper: left(0.82, 0.75), lower: left(0.26, 0.3) };
const upperSmall: Half = {
  ...full,
  dorsal: left(0.9, 0.75),
  upper: left(0.62, 0.6),
  lower: none,
  basal: 0.95,
};
const stub: Half = { dorsal: left(0.75, 0.35), upper: left(0.3, 0.3), lower: none, basal: 0.72 };
const ridge: Half = { dorsal: left(0.6, 0.12), upper: none, lower: none, basal: 0.5 };
const empty: Half = { dorsal: none, upper: none, lower: none, basal: 0.36 };

const state = (right: Half, left: Half, septum = 0, lean = 0): State => ({ left, right, septum, lean });

export const normal: State = state(full, full);

/** One concha grade on both sides. */
export const bothAt = (half: Half, septum = 0): State => state(half, half, septum);

/** The three words for the septum. */
export const septa = { straight: 0, slight: 7, marked: 17 } as const;

const fourGrades: readonly State[] = [
  normal,
  state(lowerSmall, lowerHalf),
  state(upperSmall, lowerGone, 2),
  state(empty, ridge, 13, 2),
];

/** An example of each grade of a scale that grades the section as a whole, from grade 0 up. */
export const examples: Readonly<Record<string, readonly State[]>> = {
  "maff-1978": [
    normal,
    state(full, uneven),
    state(lowerSmall, lowerHalf),
    state(upperSmall, lowerGone, 2),
    state(ridge, stub, 9, 1),
    state(empty, empty, 18, 4),
  ],
  "embrapa-1993": fourGrades,
  "collins-1989-grade": fourGrades,
};
