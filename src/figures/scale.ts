/** Scales of figures: the libraries reckon, the reader's language writes the numbers. */
import { scaleLinear } from "d3-scale";
import { line as drawnLine, round } from "../drawings/svg.ts";
import { label } from "./canvas.ts";

export interface Axis {
  /** The place of a value, in px. */
  at(value: number): number;
  readonly ticks: readonly number[];
}

/** From `low` to `high` over so many px, with about so many round numbers. */
export function axis(low: number, high: number, from: number, to: number, about = 5): Axis {
  const scale = scaleLinear().domain([low, high]).range([from, to]);
  return { at: (value) => round(scale(value)), ticks: scale.ticks(about) };
}

/** Round numbers below a figure with lines up through it. */
export function below(
  { at, ticks }: Axis,
  top: number,
  bottom: number,
  shown: (value: number) => string,
): string {
  return ticks
    .map((tick) =>
      [
        drawnLine(at(tick), top, at(tick), bottom, "grid"),
        label(at(tick), bottom + 16, shown(tick), { anchor: "middle", class: "small soft" }),
      ].join(""),
    )
    .join("\n");
}
