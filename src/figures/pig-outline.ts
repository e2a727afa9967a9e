/** A pig from its left side, drawn by hand for this project, and where each organ system is marked on it; 620 by 300. */
import type { Point } from "../drawings/svg.ts";

export const outlinePoints: readonly Point[] = [
  [22, 168],
  [18, 150],
  [30, 138],
  [60, 124],
  [84, 104],
  [104, 82],
  [128, 74],
  [156, 78],
  [200, 70],
  [270, 60],
  [350, 58],
  [430, 62],
  [500, 74],
  [548, 100],
  [566, 140],
  [562, 180],
  [548, 206],
  [544, 236],
  [546, 278],
  [514, 278],
  [508, 238],
  [496, 214],
  [440, 222],
  [360, 230],
  [290, 228],
  [232, 222],
  [226, 246],
  [226, 278],
  [194, 278],
  [188, 240],
  [176, 210],
  [140, 198],
  [104, 192],
  [70, 190],
  [40, 184],
];

export const earPoints: readonly Point[] = [
  [112, 84],
  [100, 66],
  [96, 44],
  [116, 52],
  [138, 62],
  [146, 80],
];

export const tail: readonly Point[] = [
  [560, 112],
  [580, 104],
  [592, 114],
  [584, 126],
  [574, 116],
  [590, 96],
];

export const eye: Point = [84, 128];

/** Where a system is marked; what lies on top of each other in the pig stands side by side. */
export const places: Readonly<Record<string, Point>> = {
  nervous: [122, 106],
  upper_digestive: [66, 166],
  respiratory: [226, 132],
  lymphoid: [150, 160],
  cardiovascular: [206, 186],
  liver_pancreas: [288, 160],
  stomach: [318, 196],
  serosa: [352, 128],
  intestine: [398, 188],
  endocrine: [398, 92],
  urinary: [436, 124],
  genital: [486, 158],
  placental: [452, 196],
  locomotor: [526, 226],
  external: [300, 84],
};
