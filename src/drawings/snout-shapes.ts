/**
 * Outlines of the snout sawn across behind the first upper premolar, seen from in front, nasal bones above and hard palate below.
 * Points of the pig's left half, which the reader sees on the right, x from the midline; the other half is the mirror image.
 * Drawn for this project from the anatomy: the ventral concha leaves the side wall with one basal lamella that splits into an
 * upper and a lower scroll; the dorsal concha hangs from the upper side wall and is small at this level.
 */
import type { Point } from "./svg.ts";

export const skin: readonly Point[] = [
  [0, -6],
  [48, -2],
  [92, 26],
  [118, 74],
  [131, 128],
  [143, 178],
  [150, 222],
  [145, 258],
  [126, 280],
  [104, 276],
  [80, 265],
  [40, 267],
  [0, 266],
];

/** Nasal bone, upper jaw and hard palate in one. */
export const bone: readonly Point[] = [
  [0, 26],
  [26, 25],
  [56, 38],
  [78, 68],
  [88, 106],
  [96, 144],
  [112, 172],
  [122, 202],
  [114, 234],
  [88, 250],
  [40, 254],
  [0, 253],
];

export const cavity: readonly Point[] = [
  [6, 44],
  [26, 41],
  [48, 54],
  [63, 82],
  [72, 116],
  [78, 150],
  [81, 182],
  [76, 212],
  [58, 230],
  [30, 236],
  [8, 234],
];

/** Root of the canine tooth in the upper jaw. */
export const tooth: readonly Point[] = [
  [100, 178],
  [110, 192],
  [111, 214],
  [102, 230],
  [93, 216],
  [91, 194],
];

/** The trough of bone that holds the septum below. */
export const vomer: readonly Point[] = [
  [7, 196],
  [6, 212],
  [9, 228],
  [18, 240],
  [0, 243],
];

/** Sutures between the nasal bones, and between nasal bone and upper jaw. */
export const sutures: readonly (readonly Point[])[] = [
  [
    [0, 26],
    [0, 41],
  ],
  [
    [68, 52],
    [53, 61],
  ],
];

/** A scroll: a lamella that leaves its root, reaches the rim of a spiral and turns inwards around its middle. */
export interface Scroll {
  /** Where it leaves wall or basal lamella, and on to where the spiral begins. */
  readonly root: readonly Point[];
  readonly middle: Point;
  /** Radius where the spiral begins and where it ends. */
  readonly radius: readonly [number, number];
  /** Angle where it begins, and through how many degrees it turns (clockwise on the page if positive). */
  readonly from: number;
  readonly through: number;
}

/** From the side wall to where the two scrolls part. */
export const basalLamella: readonly Point[] = [
  [77, 166],
  [66, 168],
  [50, 168],
  [31, 168],
];

export const scrolls = {
  dorsal: {
    root: [
      [50, 67],
      [45, 64],
      [38, 64],
    ],
    middle: [33, 83],
    radius: [17, 8],
    from: -100,
    through: -300,
  },
  upper: { root: [[31, 168]], middle: [44, 135], radius: [28, 11], from: 140, through: 400 },
  lower: { root: [[31, 168]], middle: [46, 201], radius: [29, 10], from: -140, through: -410 },
} as const satisfies Record<string, Scroll>;
