/** Paper that is printed on, and how a grid of labels lies on it. Knows no sheet that ships. */
import type { LabelSheet } from "../generated/knowledge.types.ts";

export type Paper = LabelSheet["paper"];

/** Width and height in mm. */
export const paperSizes: Readonly<Record<Paper, readonly [number, number]>> = {
  a4: [210, 297],
  letter: [215.9, 279.4],
};

/** From the left edge of one label to that of the next, and downwards. */
const stepsOf = ({ width, height, across = width, down = height }: LabelSheet): readonly [number, number] => [
  across,
  down,
];

/** Width and height of the whole grid. */
function gridOf(sheet: LabelSheet): readonly [number, number] {
  const [across, down] = stepsOf(sheet);
  return [(sheet.columns - 1) * across + sheet.width, (sheet.rows - 1) * down + sheet.height];
}

/** Left and upper edge of a label, counted from 0 in lines, in mm. */
export function labelAt(sheet: LabelSheet, index: number): readonly [number, number] {
  const [wide, high] = gridOf(sheet);
  const [pageWide, pageHigh] = paperSizes[sheet.paper];
  const [across, down] = stepsOf(sheet);
  const { columns, left = (pageWide - wide) / 2, top = (pageHigh - high) / 2 } = sheet;
  return [left + (index % columns) * across, top + Math.floor(index / columns) * down];
}

/** What is wrong with the measures of a sheet, if anything: the key, and what to say. */
export function labelSheetFault(sheet: LabelSheet): readonly [keyof LabelSheet, string] | undefined {
  const { columns, rows, width, height, left = 0, top = 0, paper } = sheet;
  const [across, down] = stepsOf(sheet);
  const [wide, high] = gridOf(sheet);
  const [pageWide, pageHigh] = paperSizes[paper];
  if (across < width) return ["across", `labels of ${width} mm every ${across} mm lie over each other`];
  if (down < height) return ["down", `labels of ${height} mm every ${down} mm lie over each other`];
  if (left + wide > pageWide + slack)
    return ["columns", tooLarge(columns, "across", left + wide, "wide", pageWide)];
  if (top + high > pageHigh + slack) return ["rows", tooLarge(rows, "down", top + high, "high", pageHigh)];
  return undefined;
}

/** Sizes converted from inches add up to a little more than the paper. */
const slack = 0.1;

const tooLarge = (count: number, way: string, reach: number, how: string, paper: number): string =>
  `${count} labels ${way} reach to ${Number(reach.toFixed(1))} mm, and the paper is ${paper} mm ${how}`;
