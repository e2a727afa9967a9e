/** Reads the file of a tracing: what kind it is, by its content, and every reason why it cannot be measured. */
import { isUtf8 } from "node:buffer";
import { readInput } from "../cases/files/input.ts";
import { Repository } from "../cases/files/repository.ts";
import { notShown } from "../cases/index.ts";
import { sha256 } from "../words/sha256.ts";
import { outlineErrors, problemIn } from "./check-outlines.ts";
import { geojsonDrawing } from "./geojson-tracing.ts";
import { type Problem, TracingError } from "./problem.ts";
import { svgDrawing } from "./svg-tracing.ts";
import type { Drawing } from "./tracing.ts";

export type ReadTracing =
  | { readonly ok: true; readonly drawing: Drawing; readonly sha256: string }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * @param file as shown to people
 * @param location where it lies
 * @param asked what was named on the command line: a tracing outside that repository is measured, and nothing of it shown
 */
export function readTracing(file: string, location = file, asked = location): ReadTracing {
  const isHidden = (): boolean => !new Repository(".", [asked]).holds(location);
  let bytes: Buffer | undefined;
  try {
    bytes = readBytes(location);
    const { drawing, errors } = drawingIn(bytes);
    const all = [...errors, ...outlineErrors(drawing)];
    if (all.length > 0) return refused(file, all, isHidden());
    // What shapes are called is content, too.
    const passedOver = drawing.passedOver.length > 0 && isHidden() ? [] : drawing.passedOver;
    return { ok: true, drawing: { ...drawing, passedOver }, sha256: sha256(bytes) };
  } catch (error) {
    if (error instanceof TracingError) return refused(file, [error], bytes !== undefined && isHidden());
    throw error;
  }
}

function refused(file: string, errors: readonly TracingError[], isHidden: boolean): ReadTracing {
  const problems = errors.map((error) => problemIn(file, error));
  return {
    ok: false,
    problems: isHidden ? problems.map((one) => ({ ...one, message: `${notShown}.` })) : problems,
  };
}

function readBytes(location: string): Buffer {
  const read = readInput(location);
  if (read.ok) return read.bytes;
  const { why, message } = read;
  if (why === "too large")
    throw new TracingError("file-too-large", `${message}; link the photograph instead of embedding it.`);
  const help = why === "unreadable" ? "" : "; a tracing is an SVG or GeoJSON file";
  throw new TracingError("file-unreadable", `${message}${help}.`);
}

/** First bytes of files that hold a picture and no outline. */
const pictures: readonly (readonly [string, RegExp])[] = [
  ["a PNG picture", /^\x89PNG/],
  ["a JPEG picture", /^\xff\xd8\xff/],
  ["a TIFF picture", /^(II\*\0|MM\0\*)/],
  ["a GIF picture", /^GIF8/],
  ["a WebP picture", /^RIFF....WEBP/s],
  ["a HEIF picture", /^....ftyp/s],
  ["a BMP picture", /^BM/],
];

function drawingIn(bytes: Buffer): ReturnType<typeof svgDrawing> {
  const head = bytes.subarray(0, 16).toString("latin1");
  const picture = pictures.find(([, begin]) => begin.test(head))?.[0];
  if (picture !== undefined)
    throw new TracingError(
      "raster-only",
      `the file is ${picture}, in which there are no outlines to measure; place it in a drawing program, draw the outlines over it, and save as SVG.`,
    );
  const utf16 = /^(\xff\xfe|\xfe\xff)/.test(head);
  if (utf16 || bytes.includes(0) || !isUtf8(bytes))
    throw new TracingError("not-a-tracing", "the file is no text in UTF-8; save it as plain SVG.");
  const text = bytes.toString("utf8").replace(/^\ufeff/, "");
  const first = text.trimStart()[0];
  if (first === "<") return svgDrawing(text);
  if (first === "{") return geojsonDrawing(text);
  throw new TracingError("not-svg", "the file is neither SVG nor GeoJSON; save the tracing as plain SVG.");
}
