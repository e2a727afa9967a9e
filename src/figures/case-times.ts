/** From death to fixation: when each step was done, with the limits after which a sample loses its worth. */
import { line } from "../drawings/svg.ts";
import { circle, type Drawing, fitted, hinted, label, rect, widthOf } from "./canvas.ts";
import { axis, below } from "./scale.ts";

export interface CaseTimes {
  /** Hours after death, with what was done then. */
  readonly steps: readonly {
    readonly hours: number;
    readonly name: string;
    readonly hint: string;
    readonly late: boolean;
  }[];
  /** Hours within which a kind of test keeps its worth. */
  readonly limits: readonly { readonly hours: number; readonly name: string }[];
  readonly hours: (value: number) => string;
  readonly words: { readonly hours: string; readonly limit: string };
}

const wide = 640;
const row = 22;

export function caseTimes({ steps, limits, hours, words }: CaseTimes): Drawing {
  const most = Math.max(...steps.map((step) => step.hours), ...limits.map((limit) => limit.hours), 1);
  const left = Math.min(230, Math.max(...[...steps, ...limits].map(({ name }) => widthOf(name)), 80) + 16);
  const scale = axis(0, most * 1.05, left, wide - 24, 6);
  const first = 10;
  const bands = limits.map(({ hours: limit, name }, index) => {
    const y = first + index * row;
    return [
      rect(left, y + 5, scale.at(limit) - left, 12, 'fill="#dbe7ec" stroke="#8fb3c2"'),
      label(left - 10, y + 15, fitted(name, left - 12), { anchor: "end", class: "soft" }),
    ].join("");
  });
  const from = first + limits.length * row;
  const done = steps.map(({ hours: at, name, hint, late }, index) => {
    const y = from + index * row + 11;
    return hinted(
      [
        label(left - 10, y + 4, fitted(name, left - 12), { anchor: "end" }),
        line(left, y, scale.at(at), y, "line"),
        circle(scale.at(at), y, 5, late ? "ring" : "dot"),
      ].join(""),
      hint,
    );
  });
  const bottom = from + steps.length * row + 4;
  return {
    width: wide,
    height: bottom + 44,
    body: [
      below(scale, 4, bottom, hours),
      line(left, 4, left, bottom, "axis"),
      ...bands,
      ...done,
      label(wide - 24, bottom + 34, words.hours, { anchor: "end", class: "small soft" }),
      rect(0, bottom + 24, 16, 12, 'fill="#dbe7ec" stroke="#8fb3c2"'),
      label(22, bottom + 34, words.limit, { class: "small" }),
    ].join("\n"),
  };
}
