/** Reads one part of a scale from what is recorded on the organ. */
import { pathOf, valueAt } from "../cases/index.ts";
import { organById, type Scale, type ScalePart } from "../knowledge/index.ts";
import { lastReached } from "./classify.ts";
import { withoutFloatError } from "./float-error.ts";
import { misfit, pathIn, type Reading, shown } from "./reading.ts";

/**
 * What a part adds to the score: the observation, converted by the words or cut points of the scale, and weighted.
 * @param entry the organ as recorded; undefined when it has no keys
 * @returns the value; or the missing path; or, for something written that the scale cannot use, the reason
 */
export function readPart(scale: Scale, part: ScalePart, entry: object | undefined): Reading {
  const path = pathIn(scale, part.read);
  const written = observation(entry, part.read);
  const wholeIsZero = part.zero_if_zero !== undefined && observation(entry, part.zero_if_zero) === 0;
  if (written === undefined) return wholeIsZero ? { value: 0 } : { value: null, missing: path };
  const converted = convert(scale, part, written);
  if (typeof converted === "string")
    return { value: null, reason: `${path} is ${shown(written)}: ${converted}` };
  if (wholeIsZero && converted !== 0)
    return {
      value: null,
      reason: `${path} is ${shown(written)} although ${pathIn(scale, part.zero_if_zero ?? "")} is 0; one of them is wrong`,
    };
  return { value: converted };
}

/** What is written at a path below the organ; undefined for a blank or an empty list. */
function observation(entry: object | undefined, read: string): unknown {
  const value = valueAt(entry, pathOf(read));
  return value === null || (Array.isArray(value) && value.length === 0) ? undefined : value;
}

/** The value of what is written; for a list the largest. A text says why there is none. */
function convert(scale: Scale, part: ScalePart, written: unknown): number | string {
  if (!Array.isArray(written)) return convertOne(scale, part, written);
  const values = written.map((item) => convertOne(scale, part, item));
  const fault = values.find((value) => typeof value === "string");
  return fault ?? Math.max(...values.filter((value) => typeof value === "number"));
}

function convertOne(scale: Scale, part: ScalePart, written: unknown): number | string {
  const plain = toNumber(scale, part, written);
  if (typeof plain === "string") return plain;
  const lowest = Math.min(0, scale.range[0]);
  const highest = part.max ?? (scale.combine === "weighted-sum" ? 100 : scale.range[1]);
  const fault = misfit(scale, plain, lowest, highest);
  if (fault !== undefined) return fault;
  return scale.combine === "weighted-sum" ? withoutFloatError((plain * (part.weight ?? 1)) / 100) : plain;
}

function toNumber(scale: Scale, part: ScalePart, written: unknown): number | string {
  const words = part.map ?? scale.map;
  if (words !== undefined) {
    const key = String(written);
    return (Object.hasOwn(words, key) ? words[key] : undefined) ?? "this scale has no value for it";
  }
  if (typeof written !== "number" || !Number.isFinite(written)) return "not a number";
  if (scale.steps === undefined) return written;
  const [lowest, highest] = observedRange(scale, part);
  if (!(written >= lowest && written <= highest)) return `out of range (${lowest} to ${highest})`;
  return lastReached(scale.steps, written)?.value ?? "below the first cut point of this scale";
}

/** The range of the observation that a part reads, from the anatomy; unlimited when it has none. */
function observedRange(scale: Scale, part: ScalePart): readonly [number, number] {
  const [key = ""] = part.read.split(".");
  const [lowest, highest] = organById(scale.organ)?.definition.observations?.[key]?.range ?? [];
  return [lowest ?? Number.NEGATIVE_INFINITY, highest ?? Number.POSITIVE_INFINITY];
}
