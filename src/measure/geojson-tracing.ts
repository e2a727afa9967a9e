/** A GeoJSON FeatureCollection to the outlines that are measured: properties.part holds the agreed id. */
import { parseYaml } from "../cases/yaml/parse-yaml.ts";
import { type Contour, type Point, polygonal } from "./curve.ts";
import { jsonFault } from "./json-fault.ts";
import { inMillimetres, lengthUnits } from "./length.ts";
import { intendedPart, type Part, partOf } from "./parts.ts";
import { type Place, TracingError, wholeFile } from "./problem.ts";
import { backwards, forwards } from "./region.ts";
import { type ScaleBar, scaleOf } from "./scale.ts";
import { closedIfItMeets, type Drawing, type Shape } from "./tracing.ts";

type Report = (error: TracingError) => void;

interface Feature {
  readonly properties: Readonly<Record<string, unknown>>;
  readonly geometry: Readonly<Record<string, unknown>>;
  readonly place: Place;
}

const maxPositions = 20_000;

/**
 * Reads the collection; what is wrong with single features is collected, so that one run names everything.
 * @throws TracingError when the file as a whole cannot be used
 */
export function geojsonDrawing(text: string): { drawing: Drawing; errors: readonly TracingError[] } {
  const errors: TracingError[] = [];
  return { drawing: drawingOf(features(text), (error) => errors.push(error)), errors };
}

function drawingOf(all: readonly Feature[], report: Report): Drawing {
  const outlines: Shape[] = [];
  const affected: (Shape & { lobe: string })[] = [];
  const absent: Drawing["absent"][number][] = [];
  const passedOver: string[] = [];
  let bar: ScaleBar | undefined;
  const attempt = (feature: Feature, name: string, part: Part): void => {
    if (part.kind === "absent") absent.push({ id: part.id, place: feature.place });
    else if (part.kind === "scale-bar") {
      if (bar !== undefined) throw twice("scale-bar", feature.place);
      bar = scaleBar(feature, part.length);
    } else {
      const shape: Shape = { id: name, contours: contoursOf(feature), rule: "nonzero", place: feature.place };
      if (part.kind === "affected") affected.push({ ...shape, lobe: part.lobe });
      else if (outlines.some(({ id }) => id === name)) throw twice(name, feature.place);
      else outlines.push(shape);
    }
  };
  let anyPart = false;
  for (const [index, feature] of all.entries()) {
    const names = namesOf(feature);
    const name = names.find((one) => partOf(one) !== undefined);
    const part = name === undefined ? undefined : partOf(name);
    if (part !== undefined && part.kind !== "scale-bar") anyPart = true;
    try {
      if (name !== undefined && part !== undefined) attempt(feature, name, part);
      else {
        const mistyped = names.find((one) => intendedPart(one) !== undefined);
        if (mistyped === undefined) passedOver.push(names[0] ?? `feature ${index + 1}`);
        else {
          anyPart = true;
          throw new TracingError(
            "part-unknown",
            `"${mistyped}" is no agreed id; did you mean ${intendedPart(mistyped)}?`,
            feature.place,
          );
        }
      }
    } catch (error) {
      if (!(error instanceof TracingError)) throw error;
      report(error);
    }
  }
  if (!anyPart)
    report(
      new TracingError(
        "no-parts",
        'no feature has an agreed id; write "properties": {"part": "cavity-left", "unit": "mm"}.',
      ),
    );
  return { outlines, affected, absent, scale: scaleIn(all, bar, report), passedOver };
}

/** What a feature may be called: our own property, and those in which programs that annotate pictures put a name or a class. */
function namesOf({ properties: { part, name, classification } }: Feature): string[] {
  const named = [part, name, classification, record(classification).name];
  return named.filter((one) => typeof one === "string" && one !== "").map(String);
}

function features(text: string): Feature[] {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    const { what, place } = jsonFault(text);
    throw new TracingError(
      "not-geojson",
      `the file begins like GeoJSON but is not JSON: ${what}; save it again from the drawing program.`,
      place,
    );
  }
  const { type, features: list } = record(value);
  if (type !== "FeatureCollection" || !Array.isArray(list))
    throw new TracingError(
      "not-geojson",
      'the file is JSON but no FeatureCollection; see "type" at its top.',
    );
  const parsed = parseYaml(text);
  return list.map((item: unknown, index) => {
    const { line, column } = parsed.ok ? parsed.document.where(["features", index]) : wholeFile;
    const { properties, geometry } = record(item);
    return { properties: record(properties), geometry: record(geometry), place: { line, column } };
  });
}

function scaleBar({ properties, geometry, place }: Feature, fromId: string | undefined): ScaleBar {
  const { length } = properties;
  const lengths = [fromId, typeof length === "string" ? length : undefined];
  const line =
    geometry.type === "LineString" ? polygonal(positions(geometry.coordinates, place), false) : undefined;
  return { line, lengths: lengths.filter((text) => text !== undefined), place };
}

/** From the scale bar; without one, from the unit that every feature names. */
function scaleIn(all: readonly Feature[], bar: ScaleBar | undefined, report: Report): number {
  try {
    const units = new Set(
      all.flatMap(({ properties }) => ("unit" in properties ? [String(properties.unit)] : [])),
    );
    const [unit] = units;
    if (units.size > 1 || (unit !== undefined && bar !== undefined && unit !== "px"))
      throw new TracingError(
        "units-mixed",
        bar === undefined || units.size > 1
          ? `the features have different units (${[...units].join(", ")}); write all coordinates in one.`
          : `the features are said to be in ${unit}, and there is a scale bar as well; leave one of the two.`,
      );
    if (bar !== undefined) return scaleOf(bar);
    const size = inMillimetres(unit ?? "");
    if (unit === undefined || unit === "px")
      throw new TracingError(
        "scale-bar-missing",
        'there is no scale: write "unit": "mm" into the properties of each feature, or add a LineString with "part": "scale-bar" and "length": "10 mm".',
      );
    if (size === undefined)
      throw new TracingError(
        "units-mixed",
        `the unit "${unit}" is not known; write ${lengthUnits.join(" or ")}.`,
      );
    return size;
  } catch (error) {
    if (!(error instanceof TracingError)) throw error;
    report(error);
    return 1;
  }
}

function contoursOf({ geometry, place }: Feature): Contour[] {
  const { type, coordinates } = geometry;
  const list = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);
  const ring = (value: unknown): Contour => closedIfItMeets(polygonal(positions(value, place), false));
  // Only the further rings of a polygon are holes: a part inside another part adds nothing and takes nothing away.
  const rings = (polygon: unknown): Contour[] =>
    list(polygon).map((value, index) => {
      const forward = forwards(ring(value));
      return index === 0 ? forward : backwards(forward);
    });
  if (type === "Polygon") return rings(coordinates);
  if (type === "MultiPolygon") return list(coordinates).flatMap(rings);
  if (type === "LineString") return [ring(coordinates)];
  throw new TracingError("not-geojson", "an outline is a Polygon, MultiPolygon or LineString.", place);
}

function positions(value: unknown, place: Place): Point[] {
  const points = (Array.isArray(value) ? value : []).map((item: unknown): Point => {
    const [x, y] = Array.isArray(item) ? (item as unknown[]) : [];
    if (typeof x === "number" && typeof y === "number" && Math.abs(x) <= 1e9 && Math.abs(y) <= 1e9)
      return { x, y };
    throw new TracingError(
      "number-unreadable",
      "a position of this outline is not a pair of numbers.",
      place,
    );
  });
  if (points.length > maxPositions)
    throw new TracingError(
      "too-many-points",
      `the outline has ${points.length} points, more than ${maxPositions}; simplify it.`,
      place,
    );
  return points;
}

const record = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value)
    ? (value as Record<string, unknown>)
    : {};

const twice = (id: string, place: Place): TracingError =>
  new TracingError("part-twice", `${id} is there twice; leave one, or make it a MultiPolygon.`, place);
