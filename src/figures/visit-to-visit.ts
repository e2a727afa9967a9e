/** Every pig of each visit as a dot at its grade, the middle pig marked: what changed, and out of how few. */
import { line } from "../drawings/svg.ts";
import { circle, type Drawing, fitted, hinted, label } from "./canvas.ts";
import { axis } from "./scale.ts";

export interface VisitToVisit {
  readonly visits: readonly {
    readonly name: string;
    /** `n 10` */
    readonly number: string;
    readonly pigs: readonly { readonly value: number; readonly hint: string; readonly stands: boolean }[];
    readonly median: number | undefined;
  }[];
  readonly least: number;
  readonly most: number;
  /** Whether there is nothing between whole grades. */
  readonly whole: boolean;
  readonly number: (value: number) => string;
  readonly words: {
    readonly median: string;
    readonly drawn: string;
    readonly chosen: string;
    readonly scale: string;
  };
}

const wide = 640;
const high = 260;

export function visitToVisit({ visits, least, most, whole, number, words }: VisitToVisit): Drawing {
  const left = 46;
  const scale = axis(least, most, high - 44, 26);
  const column = (wide - left - 10) / Math.max(1, visits.length);
  const grid = scale.ticks
    .filter((tick) => Number.isInteger(tick) || !whole)
    .map((tick) =>
      [
        line(left, scale.at(tick), wide - 10, scale.at(tick), "grid"),
        label(left - 8, scale.at(tick) + 4, number(tick), { anchor: "end", class: "small soft" }),
      ].join(""),
    );
  const drawn = visits.map(({ name, number: counted, pigs, median }, index) => {
    const middle = left + column * (index + 0.5);
    const rows = new Map<number, (typeof pigs)[number][]>();
    for (const pig of pigs) rows.set(pig.value, [...(rows.get(pig.value) ?? []), pig]);
    // Pigs of one grade stand side by side, closer where there are many.
    const dots = [...rows].flatMap(([value, some]) => {
      const step = Math.min(13, (column - 24) / some.length);
      return some.map(({ hint, stands }, place) =>
        hinted(
          circle(
            middle + (place - (some.length - 1) / 2) * step,
            scale.at(value),
            Math.min(5, Math.max(2, step / 2.2)),
            stands ? "dot" : "ring",
          ),
          hint,
        ),
      );
    });
    return [
      ...(median === undefined
        ? []
        : [
            line(
              middle - column * 0.4,
              scale.at(median),
              middle + column * 0.4,
              scale.at(median),
              "axis dashed",
            ),
          ]),
      ...dots,
      label(middle, high - 20, fitted(name, (column - 8) / 1.1), { anchor: "middle", class: "strong" }),
      label(middle, high - 5, counted, { anchor: "middle", class: "small soft" }),
    ].join("\n");
  });
  const key = [
    circle(left + 6, high + 14, 5, "dot"),
    label(left + 18, high + 18, words.drawn, { class: "small" }),
    circle(left + 6, high + 32, 5, "ring"),
    label(left + 18, high + 36, words.chosen, { class: "small" }),
    line(left + 300, high + 14, left + 330, high + 14, "axis dashed"),
    label(left + 338, high + 18, words.median, { class: "small" }),
  ];
  return {
    width: wide,
    height: high + 44,
    body: [
      label(0, 14, fitted(words.scale, wide, 11), { class: "small soft" }),
      ...grid,
      ...drawn,
      ...key,
    ].join("\n"),
  };
}
