/** A formula that is a straight line over one measure, drawn where it holds. */

import { line, type Piece, round, text } from "../../drawings/svg.ts";
import type { Scale } from "../../knowledge/index.ts";

const start = 110;
const end = 660;
const top = 40;
const foot = 260;

/** Whole tens (or fives) within a range. */
const ticks = ([low, high]: readonly [number, number], every: number): number[] =>
  Array.from({ length: Math.floor(high / every) + 1 }, (_, index) => index * every).filter(
    (one) => one >= low,
  );

export function lineGraph({ title, parts, combine, offset = 0, unit = "" }: Scale): Piece[] {
  const [[name, part] = ["", undefined], ...others] = Object.entries(parts);
  if (combine !== "linear" || others.length > 0) return [];
  const { weight, min, max, unit: of = "" } = part ?? {};
  if (weight === undefined || min === undefined || max === undefined) return [];
  const value = (measure: number): number => offset + weight * measure;
  const highest = Math.ceil(value(max) / 20) * 20;
  const x = (measure: number): number => start + (measure / max) * (end - start);
  const y = (score: number): number => foot - (score / highest) * (foot - top);
  const ends = [min, max].map((one) => ({ measure: one, score: value(one) }));
  return [
    {
      height: foot + 56,
      body: [
        text(20, 18, `${title} (${unit})`, { class: "soft strong" }),
        ...ticks([0, highest], 20).flatMap((score) => [
          line(start, y(score), end, y(score), score === 0 ? "line" : "grid"),
          text(start - 12, y(score) + 5, String(score), { class: "soft", anchor: "end" }),
        ]),
        ...ticks([0, max], 5).map((one) =>
          text(x(one), foot + 20, String(one), { class: "soft", anchor: "middle" }),
        ),
        text((start + end) / 2, foot + 46, `${name} (${of})`, { class: "soft strong", anchor: "middle" }),
        line(x(min), y(value(min)), x(max), y(value(max)), "mark"),
        ...ends.map(
          ({ measure, score }) =>
            `<circle cx="${round(x(measure))}" cy="${round(y(score))}" r="4.5" class="dot"/>`,
        ),
        ...ends.map(({ measure, score }, index) =>
          text(
            x(measure) + (index === 0 ? 12 : -12),
            y(score) + (index === 0 ? 20 : -4),
            `${measure} ${of}: ${round(score)} ${unit}`,
            { class: "ink strong", anchor: index === 0 ? "start" : "end" },
          ),
        ),
      ].join("\n"),
    },
  ];
}
