/** Bars: the grades with their meaning, the classes along the range, the cut points of what is observed. */
import type { Scale, ScalePart } from "../../knowledge/index.ts";
import { limitWords } from "../formula.ts";
import { box, line, type Piece, round, text, wrapped } from "./svg.ts";

const left = 40;
const right = 680;
const lineHeight = 17;

/** Every grade with a bar as long as its share of the highest, and what it means. */
export function gradeLadder({ meaning = {} }: Scale): Piece[] {
  const grades = Object.entries(meaning);
  if (grades.length === 0) return [];
  const highest = Math.max(...grades.map(([grade]) => Math.abs(Number(grade))));
  let y = 22;
  const rows = grades.map(([grade, words]) => {
    const lines = wrapped(words, 62);
    const height = Math.max(22, lines.length * lineHeight + 4);
    const share = highest > 0 ? Math.abs(Number(grade)) / highest : 0;
    const row = [
      text(left + 22, y + 14, grade, { class: "ink strong", anchor: "end" }),
      box(left + 32, y + 3, Math.max(2, share * 130), 14, "read"),
      ...lines.map((words, index) => text(left + 180, y + 14 + index * lineHeight, words)),
    ].join("\n");
    y += height;
    return row;
  });
  return [{ height: y, body: [text(left, 12, "Grades", { class: "soft" }), ...rows].join("\n") }];
}

interface Limit {
  readonly name: string;
  readonly at: number;
  readonly words: string;
}

/** A range from lowest to highest, with a box from each limit to the next. */
function axis(title: string, [lowest, highest]: readonly [number, number], limits: readonly Limit[]): Piece {
  const x = (value: number): number => left + ((value - lowest) / (highest - lowest)) * (right - left);
  // Names that would not fit between two limits stand on lines of their own, below.
  const boxes = limits.map(({ at }, index) => {
    const from = x(Math.max(lowest, at));
    const to = x(limits[index + 1]?.at ?? highest);
    return box(
      from,
      22,
      Math.max(3, to - from - 1),
      12 + (14 * (index + 1)) / limits.length,
      index === 0 ? "rest" : "read",
    );
  });
  const marks = limits.map(({ at }) =>
    text(Math.min(right, x(Math.max(lowest, at))), 66, String(round(at)), {
      class: "soft",
      anchor: "middle",
    }),
  );
  const spread = marks.filter((_, index) => {
    const before = limits[index - 1];
    return before === undefined || x(limits[index]?.at ?? 0) - x(before.at) > 24;
  });
  const names = limits.map(({ name, words }, index) =>
    text(left + (index % 2) * 330, 92 + Math.floor(index / 2) * lineHeight, `${words}: ${name}`),
  );
  const height = 92 + Math.ceil(limits.length / 2) * lineHeight;
  return {
    height,
    body: [
      text(left, 12, title, { class: "soft" }),
      ...boxes,
      line(left, 52, right, 52),
      ...spread,
      ...(limits.some(({ at }) => x(at) > right - 30)
        ? []
        : [text(right, 66, String(highest), { class: "soft", anchor: "middle" })]),
      ...names,
    ].join("\n"),
  };
}

const limitOf = (name: string, one: { readonly from?: number; readonly above?: number }): Limit => ({
  name,
  at: one.from ?? one.above ?? 0,
  words: limitWords(one),
});

/** The classes of the score along its range. */
export const classAxis = ({ classes = [], range, unit }: Scale): Piece[] =>
  classes.length === 0 || range[1] <= range[0]
    ? []
    : [
        axis(
          `Classes of the score${unit === undefined ? "" : ` (${unit})`}`,
          [range[0], range[1]],
          classes.map((one) => limitOf(one.name, one)),
        ),
      ];

/** Cut points of the observation: of all parts, of single parts, and of the total. */
export function cutPoints(scale: Scale): Piece[] {
  const [part] = Object.values(scale.parts);
  return [
    ...steps(`Cut points of each part (${part?.unit ?? "as observed"})`, scale.steps),
    ...Object.entries(scale.parts).flatMap(([name, one]) =>
      steps(`Cut points: ${name} (${one.unit ?? "as observed"})`, one.steps),
    ),
    ...steps("Cut points of the total", scale.total_steps),
  ];
}

function steps(title: string, list: ScalePart["steps"] = []): Piece[] {
  const last = list.at(-1);
  if (last === undefined) return [];
  const lowest = Math.min(0, ...list.map(({ from, above }) => from ?? above ?? 0));
  const highest = last.from ?? last.above ?? 0;
  const end = Math.max(highest * 1.25, highest + 1);
  const shown = highest > 50 && highest <= 100 ? 100 : end;
  return [
    axis(
      title,
      [lowest, shown],
      list.map((one) => limitOf(one.value === null ? "no grade" : `counts ${one.value}`, one)),
    ),
  ];
}

/** The parts of a scale that has neither meaning, classes nor cut points: a bar each, as long as it can count. */
export function partBars({ parts, range, combine }: Scale): Piece[] {
  const entries = Object.entries(parts).map(([name, part]) => ({
    name,
    most: Math.abs(part.weight ?? part.max ?? range[1]),
  }));
  const longest = Math.max(...entries.map(({ most }) => most));
  const rows = entries.flatMap(({ name, most }, index) => {
    const y = 22 + index * 24;
    return [
      text(left + 230, y + 13, name, { anchor: "end" }),
      box(left + 240, y + 2, Math.max(2, (most / longest) * 330), 14, "read"),
      text(left + 580, y + 13, String(most), { class: "ink strong" }),
    ];
  });
  return [
    {
      height: 22 + entries.length * 24,
      body: [
        text(left, 12, combine === "linear" ? "Factor of each part" : "What each part can count", {
          class: "soft",
        }),
        ...rows,
      ].join("\n"),
    },
  ];
}
