/**
 * Lobes of the pig's lungs from above (dorsal view), head up, so that left is left; x from the midline. In the order of the data.
 * The accessory lobe belongs to the right lung and lies below, between the caudal lobes: dashed.
 */
import type { Point } from "./svg.ts";

interface Lobe {
  readonly points: readonly Point[];
  /** Where its figure stands. */
  readonly at: Point;
  /** How far down its name stands, beside the lungs. */
  readonly y: number;
}

export const lobes = {
  left_cranial: {
    points: [
      [-16, 150],
      [-17, 118],
      [-30, 92],
      [-54, 82],
      [-80, 96],
      [-102, 128],
      [-110, 156],
      [-84, 162],
      [-48, 162],
    ],
    at: [-62, 130],
    y: 112,
  },
  left_middle: {
    points: [
      [-50, 170],
      [-84, 171],
      [-115, 164],
      [-130, 196],
      [-138, 236],
      [-130, 258],
      [-104, 246],
      [-76, 218],
    ],
    at: [-103, 208],
    y: 196,
  },
  left_caudal: {
    points: [
      [-16, 172],
      [-42, 176],
      [-66, 222],
      [-98, 258],
      [-128, 272],
      [-150, 330],
      [-160, 392],
      [-152, 426],
      [-120, 418],
      [-74, 386],
      [-34, 342],
      [-14, 280],
      [-11, 220],
    ],
    at: [-100, 348],
    y: 352,
  },
  right_cranial: {
    points: [
      [16, 152],
      [15, 108],
      [24, 72],
      [48, 52],
      [78, 62],
      [104, 94],
      [118, 134],
      [114, 160],
      [84, 166],
      [46, 164],
    ],
    at: [66, 116],
    y: 96,
  },
  right_middle: {
    points: [
      [50, 172],
      [84, 175],
      [118, 168],
      [134, 198],
      [142, 238],
      [134, 260],
      [106, 250],
      [78, 222],
    ],
    at: [105, 212],
    y: 196,
  },
  right_caudal: {
    points: [
      [16, 172],
      [42, 178],
      [68, 226],
      [100, 262],
      [132, 276],
      [154, 334],
      [164, 396],
      [156, 430],
      [124, 422],
      [78, 390],
      [38, 346],
      [16, 282],
      [11, 220],
    ],
    at: [106, 352],
    y: 352,
  },
  accessory: {
    points: [
      [4, 232],
      [22, 248],
      [38, 288],
      [30, 322],
      [10, 336],
      [-8, 322],
      [-14, 288],
      [-6, 248],
    ],
    at: [12, 290],
    y: 440,
  },
} as const satisfies Record<string, Lobe>;

/** Windpipe with its two main bronchi, and the bronchus of the right cranial lobe, which in the pig leaves the windpipe itself. */
export const windpipe: readonly (readonly Point[])[] = [
  [
    [-8, 14],
    [-8, 150],
    [-24, 186],
  ],
  [
    [8, 14],
    [8, 98],
  ],
  [
    [8, 112],
    [8, 150],
    [24, 186],
  ],
  [
    [0, 160],
    [-14, 190],
  ],
  [
    [0, 160],
    [14, 190],
  ],
  [
    [8, 98],
    [30, 102],
  ],
  [
    [8, 112],
    [28, 116],
  ],
];

/** Where the cranial part of the right caudal lobe ends; of the left one, the mirror image. */
export const cranialCut: readonly [Point, Point] = [
  [4, 262],
  [158, 308],
];
