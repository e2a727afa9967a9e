/** Steps over what is observed: which grade a value has, and on which side of a cut point the cut point itself lies. */

import { line, type Piece, path, round, text, wrapped } from "../../drawings/svg.ts";
import type { Scale } from "../../knowledge/index.ts";
import { observationOf } from "./observation.ts";

const start = 190;
const end = 680;
const rowHeight = 24;

interface Limit {
  readonly from?: number;
  readonly above?: number;
}
interface Level extends Limit {
  readonly name: string;
}

const at = ({ from, above }: Limit): number => from ?? above ?? 0;
const dot = (x: number, y: number, filled: boolean): string =>
  `<circle cx="${round(x)}" cy="${round(y)}" r="4.5" class="${filled ? "dot" : "ring"}"/>`;

/** With fewer than three levels a sentence says as much. */
const fewest = 3;

/** Graphs of the cut points of a scale, and of its classes where the score is long. */
export function stepGraphs(scale: Scale): Piece[] {
  const stepped = Object.values(scale.parts).filter(
    ({ map, steps }) => map === undefined && steps === undefined,
  );
  const alike = new Set(stepped.map((part) => titleOf(scale, part)));
  const graphs = [
    ...graphOf([...alike].join("; "), scale.steps, "counts"),
    ...Object.values(scale.parts).flatMap((one) => graphOf(titleOf(scale, one), one.steps, "counts")),
    ...graphOf("Per cent of the lung, from the lobes and their weights", scale.total_steps, "grade"),
    ...classGraph(scale),
  ];
  const last = graphs.at(-1);
  if (last === undefined) return [];
  const words = "A filled dot: the value itself belongs here. A ring: it does not.";
  return [
    ...graphs.slice(0, -1),
    {
      height: last.height + 18,
      body: `${last.body}\n${text(20, last.height + 10, words, { class: "soft" })}`,
    },
  ];
}

const titleOf = (scale: Scale, part: Scale["parts"][string]): string => {
  const title = observationOf(scale, part)?.title ?? "As observed";
  return part.unit === undefined ? title : `${title} (${part.unit})`;
};

function graphOf(title: string, steps: Scale["steps"] = [], word: string): Piece[] {
  const limits = steps.map(at);
  const highest = Math.max(0, ...limits);
  if (highest === 0 || steps.length < fewest) return [];
  const percent = /per cent/i.test(title);
  return [
    graph(
      title,
      [Math.min(0, ...limits), percent ? 100 : highest * 1.6],
      steps.map(({ value, ...limit }) => ({
        ...limit,
        name: value === null ? "no grade" : `${word} ${value}`,
      })),
      percent,
    ),
  ];
}

/** A score of whole grades up to six needs no line: its table says the same. */
const classGraph = ({ classes = [], range: [lowest, highest], unit }: Scale): Piece[] =>
  classes.length < fewest || highest - lowest <= 6
    ? []
    : [
        graph(
          `Classes of the score${unit === undefined ? "" : ` (${unit})`}`,
          [lowest, highest],
          classes,
          true,
        ),
      ];

function graph(
  title: string,
  [lowest, highest]: readonly [number, number],
  levels: readonly Level[],
  closed: boolean,
): Piece {
  const x = (value: number): number => start + ((value - lowest) / (highest - lowest)) * (end - start);
  const heading = wrapped(title, 80);
  const top = 10 + heading.length * 18;
  const foot = top + levels.length * rowHeight;
  const rows = levels.flatMap((level, index) => {
    const y = foot - (index + 0.5) * rowHeight;
    const next = levels[index + 1];
    const [from, to] = [x(at(level)), x(next === undefined ? highest : at(next))];
    return [
      line(start, y, end, y, "grid"),
      text(start - 14, y + 5, level.name, { class: "ink strong", anchor: "end" }),
      ...(index === 0 ? [] : [line(from, y, from, foot, "line dashed")]),
      ...(to > from ? [line(from, y, to, y, "mark")] : []),
      dot(from, y, level.from !== undefined),
      ...(next === undefined ? (closed && to > from ? [dot(to, y, true)] : []) : []),
      ...(next !== undefined && to > from ? [dot(to, y, next.above !== undefined)] : []),
    ];
  });
  const marks = [...new Set([lowest, ...levels.map(at), ...(closed ? [highest] : [])])];
  return {
    height: foot + 26,
    body: [
      ...heading.map((words, index) => text(20, 16 + index * 18, words, { class: "soft strong" })),
      ...rows,
      path(`M${start} ${foot}H${end}`, "line"),
      ...marks.map((value) =>
        text(x(value), foot + 18, String(round(value)), { class: "soft", anchor: "middle" }),
      ),
    ].join("\n"),
  };
}
