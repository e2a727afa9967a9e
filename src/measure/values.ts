/** Values that may lack something. */

/** A value, or the ids of the outlines without which there is none. */
export interface Value {
  readonly value: number | null;
  readonly missing: readonly string[];
}

/** Left side, right side, and both together. */
export interface Sided {
  readonly left: Value;
  readonly right: Value;
  readonly total: Value;
}

export const none = (missing: readonly string[]): Value => ({ value: null, missing: [...new Set(missing)] });

export const some = (value: number): Value => ({ value, missing: [] });
