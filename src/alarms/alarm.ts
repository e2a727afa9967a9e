/** What an alarm is: a pattern that a record fits, with what it was seen on. */
import type { AuthorityEntry, Case, Path, Visit } from "../cases/index.ts";
import type { AlarmPattern } from "../knowledge/index.ts";

/** A file that an alarm can rest on. */
export type AlarmSubject = Case | Visit;

/** One thing in a record that speaks for a pattern. */
export interface Evidence {
  readonly subject: AlarmSubject;
  readonly path: Path;
  /** Such as `lymphoid.spleen enlargement, black`. */
  readonly text: string;
  /** Looked for before the knife, so that a call before the opening answers it. */
  readonly beforeKnife: boolean;
}

export interface Alarm {
  readonly pattern: AlarmPattern;
  /** The case, or the visit for a pattern over several pigs. */
  readonly subject: AlarmSubject;
  readonly evidence: readonly Evidence[];
  /** The entries by which the authority released or excluded it; none while it stands. */
  readonly liftedBy: readonly AuthorityEntry[];
}

/** Where the authority left an alarm that stands. */
export interface Said {
  readonly stands: AuthorityEntry["stands"];
  readonly at: string;
}

/** What a notice says of an alarm that no call answers; it keeps nothing of the record. */
export interface OpenAlarm {
  /** Undefined where a file cannot be read where alarms look, so that none can be told. */
  readonly pattern: AlarmPattern | undefined;
  readonly of: "visit" | "case";
  /** Of the visit or case. */
  readonly id: string;
  readonly file: string;
  /** What the authority said last, where it was reached. */
  readonly said: Said | undefined;
  /** Whom to call. */
  readonly whom: string;
}
