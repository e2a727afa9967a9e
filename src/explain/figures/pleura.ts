/** Chronic pleurisy on the lungs: one example of each grade of the grid by place and extent. */

import { lungs } from "../../drawings/lungs.ts";
import { outline, type Piece, type Point, path } from "../../drawings/svg.ts";
import type { Scale } from "../../knowledge/index.ts";
import { panels } from "./panels.ts";

/** Chronic pleurisy on the right side in one example of each place and extent; on the left side, the mirror image. */
const pleurisy = {
  cranioventral: [
    [
      [92, 92],
      [108, 112],
      [116, 140],
      [104, 158],
      [92, 140],
      [86, 112],
    ],
    [
      [84, 163],
      [118, 162],
      [132, 192],
      [140, 234],
      [126, 240],
      [116, 204],
      [100, 180],
    ],
  ],
  focal: [
    [
      [72, 300],
      [92, 304],
      [98, 324],
      [84, 340],
      [66, 332],
      [60, 314],
    ],
  ],
  extensive: [
    [
      [36, 252],
      [74, 262],
      [116, 284],
      [138, 330],
      [142, 372],
      [112, 384],
      [74, 362],
      [42, 318],
    ],
  ],
} as const satisfies Record<string, readonly (readonly Point[])[]>;

type Kind = keyof typeof pleurisy | "none";

/** Left and right in each example; a grade that is reached in two ways has two. */
const grid: readonly { grade: number; left: Kind; right: Kind }[] = [
  { grade: 0, left: "none", right: "none" },
  { grade: 1, left: "cranioventral", right: "none" },
  { grade: 2, left: "none", right: "focal" },
  { grade: 3, left: "focal", right: "focal" },
  { grade: 3, left: "none", right: "extensive" },
  { grade: 4, left: "extensive", right: "extensive" },
];

export function pleuraFigure({ id, meaning = {} }: Scale): Piece[] {
  if (id !== "dottori-2007") return [];
  const list = grid.map(({ grade, left, right }, index) => ({
    name: `grade ${grade}`,
    words: way(meaning[String(grade)] ?? "", grid[index - 1]?.grade === grade ? 1 : 0),
    body: [lungs(() => "rest"), ...patches(left, -1), ...patches(right, 1)].join("\n"),
  }));
  return [
    panels(
      "Chronic pleurisy; dorsal view, head up, the pig's left on the left",
      list,
      { across: 3, tall: 434, scale: 0.5 },
      [
        "One example of each way to a grade, drawn for this page from the words of the grade; it is no limit.",
      ],
    ),
  ];
}

const patches = (kind: Kind, side: 1 | -1): string[] =>
  kind === "none"
    ? []
    : pleurisy[kind].map((points) => path(outline(points.map(([x, y]) => [side * x, y])), "read"));

/** Of words that name two ways to a grade, the one that is drawn. */
const way = (words: string, index: number): string => words.split(", or ")[index] ?? words;
