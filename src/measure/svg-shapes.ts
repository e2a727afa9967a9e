/** The simple shapes of SVG as path data. */
import { type Place, TracingError } from "./problem.ts";
import type { SvgElement } from "./svg-elements.ts";

const shapeNames = ["path", "rect", "circle", "ellipse", "line", "polyline", "polygon"] as const;
export type ShapeName = (typeof shapeNames)[number];

export const isShape = (name: string): name is ShapeName => shapeNames.some((shape) => shape === name);

/**
 * Path data of a shape, by the definitions of SVG; an arc of half an ellipse each where the shape is round.
 * @throws TracingError for a number that cannot be read, or one with a unit
 */
export function pathData(element: SvgElement): string {
  const { attributes, place } = element;
  const get = (name: string, otherwise = 0): number => {
    const text = attributes.get(name);
    return text === undefined || text === "auto" ? otherwise : plainNumber(name, text, place);
  };
  switch (element.name) {
    case "path":
      return attributes.get("d") ?? "";
    case "line":
      return `M${get("x1")} ${get("y1")}L${get("x2")} ${get("y2")}`;
    case "circle":
      return ellipse(get("cx"), get("cy"), get("r"), get("r"));
    case "ellipse":
      return ellipse(get("cx"), get("cy"), get("rx", get("ry")), get("ry", get("rx")));
    case "rect":
      return rectangle(get);
    default: {
      const points = attributes.get("points")?.trim() ?? "";
      if (points === "" || points === "none") return "";
      return `M${points}${element.name === "polygon" ? "Z" : ""}`;
    }
  }
}

function ellipse(cx: number, cy: number, rx: number, ry: number): string {
  if (rx <= 0 || ry <= 0) return "";
  const half = `A${rx} ${ry} 0 0 1`;
  return `M${cx + rx} ${cy}${half} ${cx - rx} ${cy}${half} ${cx + rx} ${cy}Z`;
}

function rectangle(get: (name: string, otherwise?: number) => number): string {
  const [x, y, width, height] = [get("x"), get("y"), get("width"), get("height")];
  if (width <= 0 || height <= 0) return "";
  const rx = Math.min(Math.max(0, get("rx", get("ry"))), width / 2);
  const ry = Math.min(Math.max(0, get("ry", get("rx"))), height / 2);
  if (rx === 0 || ry === 0) return `M${x} ${y}H${x + width}V${y + height}H${x}Z`;
  const corner = `A${rx} ${ry} 0 0 1`;
  return [
    `M${x + rx} ${y}H${x + width - rx}${corner} ${x + width} ${y + ry}`,
    `V${y + height - ry}${corner} ${x + width - rx} ${y + height}`,
    `H${x + rx}${corner} ${x} ${y + height - ry}V${y + ry}${corner} ${x + rx} ${y}Z`,
  ].join("");
}

function plainNumber(name: string, text: string, place: Place): number {
  const [, digits, unit = ""] =
    /^([-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?)\s*([a-z%]*)$/i.exec(text.trim()) ?? [];
  if (digits === undefined)
    throw new TracingError(
      "number-unreadable",
      `${name}="${text.slice(0, 40)}" is no number; write a plain number.`,
      place,
    );
  if (unit !== "" && unit !== "px")
    throw new TracingError(
      "units-mixed",
      `${name}="${text.slice(0, 40)}" has a unit of its own beside drawing units; write a plain number. The scale bar alone says how long that is.`,
      place,
    );
  return Number(digits);
}
