/** What a pattern is held against, and what in it speaks for the pattern. */
import type { Case, Path, Visit } from "../cases/index.ts";

/** A file that a pattern can rest on. */
export type Subject = Case | Visit;

/** One thing in a record that speaks for a pattern. */
export interface Evidence {
  readonly subject: Subject;
  readonly path: Path;
  /** Such as `lymphoid.spleen enlargement, black`. */
  readonly text: string;
  /** Looked for before the knife, so that a call before the opening answers it. */
  readonly beforeKnife: boolean;
}
