/** Lesions over pigs on the outline of one: a circle a system, as large as the share of pigs that have one there. */
import { curve, outline, path } from "../drawings/svg.ts";
import { circle, type Drawing, fitted, hinted, label, widthOf } from "./canvas.ts";
import { earPoints, eye, outlinePoints, places, tail } from "./pig-outline.ts";
import { inkOn, ramp, stepOfShare } from "./ramp.ts";

export interface BodyMap {
  readonly systems: readonly {
    /** The system of the anatomy. */
    readonly id: string;
    readonly name: string;
    readonly affected: number;
    /** Pigs of which the system was looked at. */
    readonly examined: number;
    readonly hint: string;
  }[];
  readonly words: { readonly notExamined: string };
}

const wide = 620;

export function bodyMap({ systems, words }: BodyMap): Drawing {
  const shown = systems.filter(({ id }) => places[id] !== undefined);
  const marks = shown.map(({ id, affected, examined, hint }, index) => {
    const [x, y] = places[id] ?? [0, 0];
    const share = examined === 0 ? 0 : affected / examined;
    const step = stepOfShare(share);
    const radius = 9 + Math.sqrt(share) * 13;
    const look =
      examined === 0 ? 'class="blank"' : `style="fill:${ramp[step]};stroke:#4f463e;stroke-width:1.5"`;
    return hinted(
      `<circle cx="${x}" cy="${y}" r="${Math.round(radius * 10) / 10}" ${look}/>${label(x, y + 4, String(index + 1), { anchor: "middle", class: "small strong", fill: inkOn(step) })}`,
      hint,
    );
  });
  const column = wide / 2;
  const rows = Math.ceil(shown.length / 2);
  const list = shown.map(({ name, affected, examined }, index) => {
    const [x, y] = [Math.floor(index / rows) * column, 312 + (index % rows) * 18];
    const told = examined === 0 ? words.notExamined : `${affected}/${examined}`;
    return [
      label(x + 18, y, `${index + 1}`, { anchor: "end", class: "small strong" }),
      label(x + 26, y, fitted(name, column - 40 - widthOf(told, 11), 11), { class: "small" }),
      label(x + column - 12, y, told, { anchor: "end", class: "small soft" }),
    ].join("");
  });
  return {
    width: wide,
    height: 312 + rows * 18,
    body: [
      path(curve(tail), "line"),
      path(outline(outlinePoints), "body"),
      path(outline(earPoints), "rest"),
      circle(eye[0], eye[1], 3, "dot"),
      ...marks,
      ...list,
    ].join("\n"),
  };
}
