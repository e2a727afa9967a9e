/** Shares with their intervals, a row each; pigs that stand for nobody else get a ring and no interval. */
import { line } from "../drawings/svg.ts";
import { circle, type Drawing, fitted, hinted, label, widthOf } from "./canvas.ts";
import { axis, below } from "./scale.ts";

export interface ForestRow {
  readonly name: string;
  /** `7 of 10` */
  readonly counted: string;
  /** Between 0 and 1; undefined where nothing was read. */
  readonly share: number | undefined;
  /** Undefined for `of these pigs`. */
  readonly limits: readonly [number, number] | undefined;
  readonly hint: string;
}

export interface Forest {
  /** Rows under their heading. */
  readonly parts: readonly { readonly heading: string; readonly rows: readonly ForestRow[] }[];
  readonly percent: (share: number) => string;
  readonly words: { readonly limits: string; readonly thesePigs: string };
}

const wide = 640;
const row = 24;

export function forest({ parts, percent, words }: Forest): Drawing {
  const rows = parts.flatMap(({ rows: some }) => some);
  const counted = Math.max(...rows.map((one) => widthOf(one.counted, 11)), 40);
  const names = Math.min(290, Math.max(...rows.map(({ name }) => widthOf(name) + 12), 60));
  const from = names + counted + 24;
  const scale = axis(0, 1, from, wide - 22);
  let y = 6;
  const drawn = parts.flatMap(({ heading, rows: some }) => {
    y += 22;
    const head = label(0, y - 5, fitted(heading, wide / 1.1), { class: "strong" });
    return [
      head,
      ...some.map(({ name, counted: told, share, limits, hint }) => {
        const middle = y + row / 2;
        y += row;
        const marks =
          share === undefined
            ? ""
            : limits === undefined
              ? circle(scale.at(share), middle, 5, "ring")
              : [
                  line(scale.at(limits[0]), middle, scale.at(limits[1]), middle, "mark"),
                  line(scale.at(limits[0]), middle - 5, scale.at(limits[0]), middle + 5, "mark"),
                  line(scale.at(limits[1]), middle - 5, scale.at(limits[1]), middle + 5, "mark"),
                  circle(scale.at(share), middle, 5, "dot"),
                ].join("");
        return hinted(
          [
            label(8, middle + 4, fitted(name, names - 8)),
            label(from - 12, middle + 4, told, { anchor: "end", class: "small soft" }),
            marks,
          ].join(""),
          hint,
        );
      }),
    ];
  });
  const grid = below(scale, 24, y + 4, percent);
  const key = [
    line(0, y + 40, 26, y + 40, "mark"),
    circle(13, y + 40, 5, "dot"),
    label(34, y + 44, words.limits, { class: "small" }),
    circle(13, y + 60, 5, "ring"),
    label(34, y + 64, words.thesePigs, { class: "small" }),
  ];
  return { width: wide, height: y + 72, body: [grid, ...drawn, ...key].join("\n") };
}
