/** Measures a tracing: every outline, and what follows from them. */
import { problemIn } from "./check-outlines.ts";
import { lobeId, lobes, snoutParts } from "./parts.ts";
import { type Problem, TracingError } from "./problem.ts";
import { readTracing } from "./read-tracing.ts";
import { contourLength, type Region, regionOf } from "./region.ts";
import { septumDeviation } from "./septum.ts";
import { type Regions, type SnoutMeasures, snoutMeasures } from "./snout.ts";
import type { Drawing, Shape } from "./tracing.ts";
import { none, some, type Value } from "./values.ts";

/** One outline: its agreed id, area in mm², perimeter in mm. A septum drawn as a line has a length and no area. */
interface MeasuredOutline {
  readonly part: string;
  readonly area_mm2: number | null;
  readonly perimeter_mm: number;
}

export interface Measurement {
  /** The file, as it was named. */
  readonly tracing: string;
  /** SHA-256 of the file that was measured, 64 hexadecimal digits. */
  readonly sha256: string;
  readonly mm_per_unit: number;
  readonly outlines: readonly MeasuredOutline[];
  readonly snout: SnoutMeasures | null;
  readonly lungs: LungMeasures | null;
  /** Ids of shapes that have no agreed id; they were not measured. */
  readonly passed_over: readonly string[];
}

export type Measured =
  | { readonly ok: true; readonly measurement: Measurement }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Measures one SVG or GeoJSON file. Areas are exact for the curves as drawn (Green's theorem), perimeters integrated to
 * 1e-11 of each curve; elliptical arcs are followed to 2e-11 of their radius.
 * @param file as shown to people
 * @param location where it lies; default: `file`
 * @param asked the file whose repository it must lie in for its content to be shown; default: `location`
 * @returns the measurement, or everything that keeps it from being made; nothing is thrown for a bad file
 */
export function measureTracing(file: string, location = file, asked = location): Measured {
  const read = readTracing(file, location, asked);
  if (!read.ok) return read;
  try {
    return { ok: true, measurement: { tracing: file, sha256: read.sha256, ...measured(read.drawing) } };
  } catch (error) {
    if (error instanceof TracingError) return { ok: false, problems: [problemIn(file, error)] };
    throw error;
  }
}

function measured({
  outlines,
  affected,
  absent,
  scale,
  passedOver,
}: Drawing): Omit<Measurement, "tracing" | "sha256"> {
  const sized = (shape: Shape): Region => {
    const { area, perimeter } = regionOf(shape.contours, shape.rule);
    return { area: area * scale * scale, perimeter: perimeter * scale };
  };
  const closed = outlines.filter(({ contours }) => contours.every((contour) => contour.closed));
  const regions = new Map(closed.map((shape) => [shape.id, sized(shape)]));
  for (const { id } of absent) regions.set(id, { area: 0, perimeter: 0 });
  const affectedAreas = new Map<string, number>();
  const spots = affected.map((shape) => ({ part: shape.id, lobe: shape.lobe, region: sized(shape) }));
  for (const { lobe, region } of spots) affectedAreas.set(lobe, (affectedAreas.get(lobe) ?? 0) + region.area);
  const septum = outlines.find(({ id }) => id === "septum");
  const line = septum === undefined || regions.has("septum") ? [] : [lineOutline(septum, scale)];
  return {
    mm_per_unit: scale,
    outlines: inOrder([
      ...[...regions].map(([part, region]) => outline(part, region)),
      ...line,
      ...spots.map(({ part, region }) => outline(part, region)),
    ]),
    snout: snoutMeasures(regions, septum === undefined ? undefined : septumDeviation(septum) * scale) ?? null,
    lungs: lungMeasures(regions, affectedAreas) ?? null,
    passed_over: passedOver,
  };
}

const outline = (part: string, { area, perimeter }: Region): MeasuredOutline => ({
  part,
  area_mm2: area,
  perimeter_mm: perimeter,
});

const lineOutline = ({ id, contours }: Shape, scale: number): MeasuredOutline => ({
  part: id,
  area_mm2: null,
  perimeter_mm: contours.reduce((sum, contour) => sum + contourLength(contour), 0) * scale,
});

/** Snout parts first, then lobes, then affected areas as they were drawn. */
function inOrder(outlines: readonly MeasuredOutline[]): MeasuredOutline[] {
  const order: readonly string[] = [...snoutParts, ...lobes.map((lobe) => lobeId(lobe))];
  const place = ({ part }: MeasuredOutline): number =>
    order.includes(part) ? order.indexOf(part) : order.length;
  return [...outlines].sort((a, b) => place(a) - place(b));
}

export interface LungMeasures {
  /** Affected area over lobe area, per cent, 0 to 100, by lobe (left_cranial ... accessory); lobes that were traced. */
  readonly affected_percent: Readonly<Record<string, Value>>;
}

/** @param affected mm² by lobe; a traced lobe that is not in it has none
 *  @returns undefined when no part of a lung was traced */
export function lungMeasures(
  regions: Regions,
  affected: ReadonlyMap<string, number>,
): LungMeasures | undefined {
  const entries = lobes.flatMap((lobe): [string, Value][] => {
    const whole = regions.get(lobeId(lobe));
    const area = affected.get(lobe);
    if (whole === undefined) return area === undefined ? [] : [[lobe, none([lobeId(lobe)])]];
    // A drawing may reach over the border of the lobe by a hand's breadth; more than the lobe is not affected.
    return [[lobe, some(Math.min(100, (100 * (area ?? 0)) / whole.area))]];
  });
  return entries.length === 0 ? undefined : { affected_percent: Object.fromEntries(entries) };
}
