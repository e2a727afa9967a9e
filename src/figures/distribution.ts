/** How many pigs have each grade, a row a group: bars of squares, one a pig, so that few pigs look like few. */
import { line } from "../drawings/svg.ts";
import { type Drawing, fitted, hinted, label, rect, widthOf } from "./canvas.ts";
import { inkOn, ramp, stepOfGrade } from "./ramp.ts";

export interface Distribution {
  readonly groups: readonly {
    readonly name: string;
    /** `n 12` */
    readonly number: string;
    /** Pigs by grade. */
    readonly counts: ReadonlyMap<number, number>;
    readonly hint: string;
  }[];
  /** The grades of the scale in their order. */
  readonly grades: readonly { readonly grade: number; readonly shown: string }[];
  readonly words: { readonly grade: string };
}

const wide = 640;
const row = 40;

/** Each row is as wide as all its pigs together; a grade takes its share, with the pigs counted in it. */
export function distribution({ groups, grades, words }: Distribution): Drawing {
  const most = Math.max(...grades.map(({ grade }) => grade), 1);
  const room = Math.min(270, Math.max(...groups.map(({ name }) => widthOf(name)), 60));
  const left = room + 70;
  const bar = wide - left - 10;
  const parts = groups.map(({ name, number, counts, hint }, index) => {
    const y = 8 + index * row;
    const total = [...counts.values()].reduce((sum, count) => sum + count, 0);
    let x = left;
    const cells = grades.flatMap(({ grade }) => {
      const count = counts.get(grade) ?? 0;
      if (count === 0 || total === 0) return [];
      const part = (count / total) * bar;
      const step = stepOfGrade(grade, most);
      const cell = [
        rect(x, y, part, 26, `style="fill:${ramp[step]};stroke:#4f463e"`),
        ...(part >= widthOf(String(count)) + 4
          ? [
              label(x + part / 2, y + 18, String(count), {
                anchor: "middle",
                class: "strong",
                fill: inkOn(step),
              }),
            ]
          : []),
      ].join("");
      x += part;
      return [cell];
    });
    return hinted(
      [
        label(room, y + 18, fitted(name, room), { anchor: "end" }),
        label(left - 8, y + 18, number, { anchor: "end", class: "small soft" }),
        ...cells,
      ].join("\n"),
      hint,
    );
  });
  const y = 8 + groups.length * row + 4;
  let x = left + widthOf(words.grade, 11) + 10;
  const key = grades.flatMap(({ grade, shown }) => {
    const part = 22 + widthOf(shown, 11) + 12;
    const at = x;
    x += part;
    return x > wide + 40
      ? []
      : [
          rect(at, y, 16, 12, `style="fill:${ramp[stepOfGrade(grade, most)]};stroke:#4f463e"`),
          label(at + 22, y + 10, shown, { class: "small" }),
        ];
  });
  return {
    width: wide,
    height: y + 22,
    body: [
      ...parts,
      line(left, 2, left, y - 4, "axis"),
      label(left, y + 10, words.grade, { class: "small soft" }),
      ...key,
    ].join("\n"),
  };
}
