/** Drawings for the tests: written to a file and measured. */
import { join } from "node:path";
import { type Measured, type Measurement, measureTracing } from "../../src/measure/index.ts";
import { folderInTurns } from "../cases/temporary.ts";

const inTurns = folderInTurns();

/** A bar of 10 drawing units that stands for 10 mm, so that drawing units are millimetres. */
export const bar = '<line id="scale-bar-10-mm" x1="0" y1="90" x2="10" y2="90"/>';

export const svg = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg">\n${body}\n${bar}\n</svg>\n`;

/** Measures a file with this content. */
export function measuredFile(content: string | Uint8Array, name = "tracing.svg"): Measured {
  return measureTracing(name, join(inTurns({ [name]: content }), name));
}

/** The measurement of a file that must be sound. */
export function soundFile(content: string, name?: string): Measurement {
  const measured = measuredFile(content, name);
  if (!measured.ok) throw new Error(JSON.stringify(measured.problems, null, 2));
  return measured.measurement;
}

/** Area (mm²) and perimeter (mm) of the one shape of a drawing, which is to have the id cavity-left. */
export function sizeOf(body: string): { area: number; perimeter: number } {
  const outline = soundFile(svg(body)).outlines.find(({ part }) => part === "cavity-left");
  if (outline === undefined || outline.area_mm2 === null) throw new Error("no cavity-left");
  return { area: outline.area_mm2, perimeter: outline.perimeter_mm };
}

/** The names of what is wrong with a file, with their lines. */
export function problemsOf(content: string | Uint8Array, name?: string): string[] {
  const measured = measuredFile(content, name);
  return measured.ok ? [] : measured.problems.map(({ kind, line }) => `${kind} ${line}`);
}
