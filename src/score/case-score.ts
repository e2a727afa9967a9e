/** The score of one pig on one scale, as it is printed and exported. */
import type { Source } from "../knowledge/index.ts";
import type { Bounds } from "./bounds.ts";

export type Confidence = Source["confidence"];

export interface CaseScore {
  /** Id of the scale. */
  readonly scale: string;
  readonly title: string;
  /** The organ that was scored, as system.organ. */
  readonly organ: string;
  /** In points or in `unit`, from 0 (or the scale's lowest) to `max`; null when it cannot be told. */
  readonly value: number | null;
  readonly max: number;
  readonly unit?: string;
  /** Least and greatest score that the missing observations allow, where they could change it and not by all of the range. */
  readonly bounds?: Bounds;
  /** Null when the scale has no classes, and when the value is null, unless both bounds lie in one class. */
  readonly class: string | null;
  /** What each part adds (weighted where the scale weights), by its name; null where it cannot be told. */
  readonly parts: Readonly<Record<string, number | null>>;
  /** Full paths of the observations that the scale needs and the case does not have. */
  readonly missing: readonly string[];
  /** Full paths of observations that are not recorded and could not change the score. */
  readonly not_needed?: readonly string[];
  /** Why the value is null, where the missing observations do not say it all. */
  readonly reason?: string;
  /** The value is a grade written under `grades.<scale>`, not computed from parts. */
  readonly from_grade?: true;
  readonly confidence: Confidence;
  /** Citation of the scale. */
  readonly source: string;
  /** What is sure about the scale and what is not. */
  readonly note?: string;
  /** Citation of the classes, where they have another source than the scale. */
  readonly class_source?: string;
  readonly class_confidence?: Confidence;
}

/** All scores of one pig. */
export interface ScoredCase {
  /** Id of the case. */
  readonly case: string;
  readonly file: string;
  readonly scores: readonly CaseScore[];
}
