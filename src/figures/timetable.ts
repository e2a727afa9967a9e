/** A herd problem in days: when it began, what was given and changed, when somebody came and what the laboratory said. */
import { scaleUtc } from "d3-scale";
import { line, round } from "../drawings/svg.ts";
import { circle, type Drawing, fitted, hinted, label, lines, rect, widthOf } from "./canvas.ts";

export interface Timetable {
  readonly rows: readonly {
    readonly name: string;
    readonly entries: readonly {
      /** A day, `2026-03-14`. */
      readonly from: string;
      /** The last day of what went on for some time. */
      readonly to?: string;
      readonly name: string;
    }[];
  }[];
  readonly day: (day: Date) => string;
  /** The same where they lie close together. */
  readonly near: (day: Date) => string;
}

const wide = 640;
const left = 130;
/** Half a year: below it months are not enough. */
const closeTogether = 183 * 86_400_000;

export function timetable({ rows, day: month, near }: Timetable): Drawing {
  const days = rows.flatMap(({ entries }) =>
    entries.flatMap(({ from, to }) => [Date.parse(from), Date.parse(to ?? from)]),
  );
  const [first, last] = [Math.min(...days), Math.max(...days)];
  const span = Math.max(last - first, 86_400_000);
  const scale = scaleUtc()
    .domain([new Date(first - span * 0.04), new Date(last + span * 0.04)])
    .range([left, wide - 10]);
  const day = span < closeTogether ? near : month;
  let y = 8;
  const drawn = rows.flatMap(({ name, entries }) => {
    const top = y;
    const told = entries.map(({ from, to, name: what }) => {
      const [start, end] = [round(scale(Date.parse(from))), round(scale(Date.parse(to ?? from)))];
      const middle = y + 11;
      // Words stand to the right of the mark, or to its left where they would leave the figure.
      const room = wide - 10 - end - 12;
      const toLeft = room < 150 && start - left > room;
      const space = toLeft ? start - left - 12 : room;
      const mark =
        end - start < 8
          ? circle(start, middle, 5, "dot")
          : rect(start, middle - 5, end - start, 10, 'fill="#78b1c8" stroke="#1f5f78"');
      y += 22;
      return hinted(
        `${mark}${label(toLeft ? start - 10 : Math.max(end, start + 4) + 8, middle + 4, fitted(what, space, 11), { class: "small", ...(toLeft && { anchor: "end" }) })}`,
        `${from}${to === undefined ? "" : ` – ${to}`}: ${what}`,
      );
    });
    if (entries.length === 0) y += 22;
    const head = lines(name, left - 14, 12)
      .slice(0, 2)
      .map((words, index) => label(0, top + 15 + index * 14, words, { class: "strong small" }));
    y = Math.max(y, top + 14 * head.length + 8) + 4;
    return [line(0, y - 2, wide, y - 2, "grid"), ...head, ...told];
  });
  const ticks = scale.ticks(5).map((tick) => {
    const x = round(scale(tick));
    return [
      line(x, 4, x, y, "grid"),
      ...(x + widthOf(day(tick), 11) / 2 > wide
        ? []
        : [label(x, y + 16, day(tick), { anchor: "middle", class: "small soft" })]),
    ].join("");
  });
  return { width: wide, height: y + 24, body: [...ticks, ...drawn].join("\n") };
}
