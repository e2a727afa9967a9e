/** Reads one part of a scale from what is recorded on the organ. */
import type { Scale, ScalePart } from "../knowledge/index.ts";
import { lastReached } from "./classify.ts";
import { withoutFloatError } from "./float-error.ts";
import { inUnit, observation, observedRange } from "./observed.ts";
import { misfit, pathIn, type Reading, shown } from "./reading.ts";

/**
 * What a part adds to the score: the observation, converted by the words or cut points of the scale, and weighted.
 * @param entry the organ as recorded; undefined when it has no keys
 * @returns the value; or the missing path; or, for something written that the scale cannot use, the reason
 */
export function readPart(scale: Scale, part: ScalePart, entry: object | undefined): Reading {
  const condition = part.zero_unless && holds(part.zero_unless, entry);
  if (condition === false) return { value: 0 };
  if (part.zero_unless !== undefined && condition === undefined)
    return { value: null, missing: pathIn(scale, part.zero_unless.read) };
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

/** The value of what is written; for a list the largest. A text says why there is none. */
function convert(scale: Scale, part: ScalePart, written: unknown): number | string {
  if (!Array.isArray(written)) return convertOne(scale, part, written);
  const values = written.map((item) => convertOne(scale, part, item));
  const fault = values.find((value) => typeof value === "string");
  return fault ?? Math.max(...values.filter((value) => typeof value === "number"));
}

function convertOne(scale: Scale, part: ScalePart, written: unknown): number | string {
  const plain = toNumber(scale, part, inUnit(part, written));
  if (typeof plain === "string") return plain;
  const lowest = part.min ?? Math.min(0, scale.range[0]);
  const highest = part.max ?? (scale.combine === "weighted-sum" ? 100 : scale.range[1]);
  // Where cut points follow on the total, only the total is a whole grade.
  const whole = scale.whole === true && scale.total_steps === undefined;
  return misfit(plain, lowest, highest, whole) ?? weighted(scale, part, plain);
}

function weighted({ combine }: Scale, { weight = 1 }: ScalePart, plain: number): number {
  if (combine === "weighted-sum") return withoutFloatError((plain * weight) / 100);
  return combine === "linear" ? withoutFloatError(plain * weight) : plain;
}

function toNumber(scale: Scale, part: ScalePart, written: unknown): number | string {
  const words = part.map ?? scale.map;
  if (words !== undefined && part.steps === undefined) {
    const key = String(written);
    return (Object.hasOwn(words, key) ? words[key] : undefined) ?? "this scale has no value for it";
  }
  if (part.unit !== undefined && written === undefined) return "not a length in mm or cm";
  if (typeof written !== "number" || !Number.isFinite(written)) return "not a number";
  const steps = part.steps ?? scale.steps;
  if (steps === undefined) return written;
  const [lowest, highest] = observedRange(scale, part);
  if (!(written >= lowest && written <= highest)) return `out of range (${lowest} to ${highest})`;
  const reached = lastReached(steps, written);
  if (reached === undefined) return "below the first cut point of this scale";
  return reached.value ?? "the source of this scale gives no grade for it";
}

/** A part may count only while another observation says so: the size of a wound only where there is one. */
type Condition = NonNullable<ScalePart["zero_unless"]>;

/**
 * Whether the condition holds.
 * @returns undefined when the observation that it asks is not recorded
 */
export function holds(
  { read, is, from, above, below }: Condition,
  entry: object | undefined,
): boolean | undefined {
  const written = observation(entry, read);
  if (written === undefined) return undefined;
  if (is !== undefined) return [written].flat().some((word) => is.includes(String(word)));
  return (
    typeof written === "number" &&
    (from === undefined || written >= from) &&
    (above === undefined || written > above) &&
    (below === undefined || written < below)
  );
}
