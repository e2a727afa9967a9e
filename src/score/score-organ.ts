/** The interpreter of the scales: one pig's organ and one scale in, one score out. No scale has code of its own. */
import { type OrganState, pathOf, valueAt } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { listing } from "../words/listing.ts";
import { type Bounds, boundsOf } from "./bounds.ts";
import type { CaseScore } from "./case-score.ts";
import { classOf } from "./classify.ts";
import { combine } from "./combine.ts";
import { readPart } from "./part.ts";
import { printedBounds } from "./printed.ts";
import { misfit, pathIn, type Reading, shown } from "./reading.ts";

/** A score before it is dressed for output. */
interface Outcome {
  readonly value: number | null;
  readonly parts: Readonly<Record<string, number | null>>;
  readonly missing: readonly string[];
  readonly reasons: readonly string[];
  readonly fromGrade?: true;
  readonly bounds?: Bounds;
  readonly notNeeded?: readonly string[];
}

const onlyBySystem =
  "recorded only by the word normal for the whole system; record the organ itself to score it";

/**
 * Scores an organ.
 *
 * What cannot be told is null and says why: a part that is not recorded is named under `missing` and never guessed;
 * what is written but cannot be used is named in `reason`. A score that no missing part could change is told; where they
 * could, it has the bounds that they leave.
 * @param state of the organ that the scale is for
 */
export function scoreOrgan(scale: Scale, state: OrganState): CaseScore {
  const { value, parts, missing, reasons, fromGrade, bounds, notNeeded } = outcome(scale, state);
  const { class_source } = scale;
  const source = (fromGrade && scale.grade_source) || scale.source;
  return {
    scale: scale.id,
    title: scale.title,
    organ: scale.organ,
    value,
    max: scale.range[1],
    ...(scale.unit !== undefined && { unit: scale.unit }),
    ...(bounds !== undefined && { bounds }),
    class: classWithin(scale, bounds ?? [value, value]),
    parts,
    missing,
    ...(notNeeded !== undefined && { not_needed: notNeeded }),
    ...(reasons.length > 0 && { reason: reasons.join("; ") }),
    ...(fromGrade && { from_grade: fromGrade }),
    confidence: source.confidence,
    source: source.cite,
    ...(source.note !== undefined && { note: source.note }),
    ...(class_source !== undefined && {
      class_source: class_source.cite,
      class_confidence: class_source.confidence,
    }),
  };
}

/** The class of a value, or the one in which both bounds lie. */
function classWithin(
  { classes }: Scale,
  [least, greatest]: readonly [number | null, number | null],
): string | null {
  const named = classOf(classes, least);
  return named === classOf(classes, greatest) ? named : null;
}

function outcome(scale: Scale, state: OrganState): Outcome {
  switch (state.status) {
    case "blank":
      return unscored(scale, [scale.organ], state.bySystem ? [onlyBySystem] : []);
    case "not_examined":
      return unscored(scale, [], [`not examined${state.reason === undefined ? "" : `: ${state.reason}`}`]);
    case "not_assessable":
      return unscored(scale, [], [notAssessable(state)]);
    case "normal":
      if (state.bySystem) return unscored(scale, [scale.organ], [onlyBySystem]);
      if (state.findings.length > 0)
        return unscored(
          scale,
          [],
          [`${scale.organ} is recorded as normal and has findings; one of them is wrong`],
        );
      return fromEntry(scale, state.entry, true);
    case "recorded":
      return fromEntry(scale, state.entry, false);
  }
}

function notAssessable({ because, reason }: OrganState): string {
  const what = because === undefined ? "not assessable" : `not assessable (${because})`;
  return reason === undefined ? what : `${what}: ${reason}`;
}

const unscored = (scale: Scale, missing: readonly string[], reasons: readonly string[]): Outcome => ({
  value: null,
  parts: Object.fromEntries(Object.keys(scale.parts).map((name) => [name, null])),
  missing,
  reasons,
});

function fromEntry(scale: Scale, entry: object | undefined, normal: boolean): Outcome {
  const unmet = unmetRequirements(scale, entry);
  const readings = Object.entries(scale.parts).map(([name, part]) => {
    const reading = readPart(scale, part, entry);
    return { name, reading: normal ? asNormal(scale, reading, part.read) : reading };
  });
  const parts = Object.fromEntries(readings.map(({ name, reading }) => [name, reading.value]));
  const computed = total(scale, readings);
  const settled = withGrade(scale, entry, unmet.length > 0 ? computed : certain(scale, entry, computed));
  const faults = [...unmet, ...settled.faults];
  const { fromGrade, bounds, notNeeded } = settled;
  return {
    value: faults.length > 0 ? null : settled.value,
    parts,
    missing: [...new Set(faults.flatMap(({ missing }) => missing ?? []))],
    reasons: faults.flatMap(({ reason }) => reason ?? []),
    ...(fromGrade && faults.length === 0 && { fromGrade }),
    ...(bounds !== undefined && { bounds }),
    ...(notNeeded !== undefined && { notNeeded }),
  };
}

/** What can be told of a total in which only parts that are not recorded are wanting. */
function certain(scale: Scale, entry: object | undefined, computed: Total): Total {
  if (computed.faults.length === 0 || computed.faults.some(({ missing }) => missing === undefined))
    return computed;
  const bounds = boundsOf(scale, entry);
  if (bounds === undefined) return computed;
  const [least, greatest] = bounds;
  if (least < greatest) return { ...computed, bounds };
  return {
    value: least,
    faults: [],
    notNeeded: [...new Set(computed.faults.flatMap(({ missing }) => missing ?? []))],
  };
}

/** A part of a normal organ: its normal value, unless something else is written. */
function asNormal(scale: Scale, reading: Reading, read: string): Reading {
  const { when_normal: normal } = scale;
  if (normal === undefined || reading.reason !== undefined || reading.value === normal) return reading;
  if (reading.value === null) return { value: normal };
  const reason = `${scale.organ} is recorded as normal, but ${pathIn(scale, read)} is not; one of them is wrong`;
  return { value: null, reason };
}

interface Total {
  readonly value: number | null;
  readonly faults: readonly Reading[];
  readonly fromGrade?: true;
  readonly bounds?: Bounds;
  /** What is not recorded and could not change the value. */
  readonly notNeeded?: readonly string[];
}

function total(
  scale: Scale,
  readings: readonly { readonly name: string; readonly reading: Reading }[],
): Total {
  const faults = readings.map(({ reading }) => reading).filter(({ value }) => value === null);
  if (faults.length > 0) return { value: null, faults };
  const parts = new Map(readings.map(({ name, reading }) => [name, reading.value ?? Number.NaN]));
  const value = combine(scale, parts);
  if (typeof value === "string") return fault(value);
  const wrong = misfitOf(scale, value);
  return wrong === undefined ? { value, faults: [] } : fault(`the score would be ${value}: ${wrong}`);
}

const misfitOf = ({ range: [lowest, highest], whole }: Scale, value: number): string | undefined =>
  misfit(value, lowest, highest, whole === true);

/** A total that was graded on the spot, under the name of the scale, stands in for parts that were not recorded. */
function withGrade(scale: Scale, entry: object | undefined, computed: Total): Total {
  const read = `grades.${scale.id}`;
  const grade = valueAt(entry, pathOf(read));
  const isPart = Object.values(scale.parts).some((part) => part.read === read);
  if (isPart || grade === undefined || grade === null) return computed;
  const path = pathIn(scale, read);
  const wrong = typeof grade === "number" ? misfitOf(scale, grade) : "not a number";
  if (wrong !== undefined) return fault(`${path} is ${grade}: ${wrong}`);
  const unusable = computed.faults.filter(({ reason }) => reason !== undefined);
  if (unusable.length > 0) return { value: null, faults: unusable };
  if (computed.value !== null && computed.value !== grade)
    return fault(`${path} is ${grade}, but the recorded parts give ${computed.value}; one of them is wrong`);
  const [least, greatest] = computed.bounds ?? scale.range;
  if (least !== undefined && greatest !== undefined && !(Number(grade) >= least && Number(grade) <= greatest))
    return fault(
      `${path} is ${grade}, but the recorded parts give ${printedBounds(scale, [least, greatest])}; one of them is wrong`,
    );
  return computed.value === null ? { value: Number(grade), faults: [], fromGrade: true } : computed;
}

const fault = (reason: string): Total => ({ value: null, faults: [{ value: null, reason }] });

/**
 * The requirements of the scale that are not met, such as the level at which the snout was sawn.
 * @param entry the organ as recorded; undefined when it has no keys
 * @returns for each its path, and the reason when something else is written there
 */
function unmetRequirements(scale: Scale, entry: object | undefined): Reading[] {
  return Object.entries(scale.requires ?? {}).flatMap(([read, allowed]): Reading[] => {
    const missing = pathIn(scale, read);
    const written = valueAt(entry, pathOf(read));
    if (written === undefined || written === null) return [{ value: null, missing }];
    if (allowed.includes(String(written))) return [];
    const reason = `${missing} is ${shown(written)}: this scale holds only for ${listing(allowed, "or")}`;
    return [{ value: null, missing, reason }];
  });
}
