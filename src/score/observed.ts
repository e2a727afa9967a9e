/** What is written on an organ, as a scale reads it. */
import { pathOf, quantity, valueAt } from "../cases/index.ts";
import { organById, type Scale, type ScalePart } from "../knowledge/index.ts";

/** What is written at a path below the organ; undefined for a blank or an empty list. */
export function observation(entry: object | undefined, read: string): unknown {
  const value = valueAt(entry, pathOf(read));
  return value === null || (Array.isArray(value) && value.length === 0) ? undefined : value;
}

/** Millimetres in the units that a part can be read in. */
export const millimetres = { mm: 1, cm: 10 } as const;

/** What is written, a length as a number in the unit of the part; undefined when it is no length. */
export function inUnit({ unit }: ScalePart, written: unknown): unknown {
  if (unit === undefined) return written;
  const mm = typeof written === "string" ? quantity("length", written) : undefined;
  return mm === undefined ? undefined : mm / millimetres[unit];
}

/** The range of the observation that a part reads, from the anatomy; unlimited when it has none. */
export function observedRange(scale: Scale, part: ScalePart): readonly [number, number] {
  const [key = "", figure = ""] = part.read.split(".");
  const observed = organById(scale.organ)?.definition.observations?.[key];
  const [lowest, highest] = observed?.figures?.[figure]?.range ?? observed?.range ?? [];
  return [lowest ?? Number.NEGATIVE_INFINITY, highest ?? Number.POSITIVE_INFINITY];
}
