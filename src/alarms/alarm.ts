/** What an alarm is: a pattern that a record fits, with what it was seen on. */
import type { AuthorityEntry } from "../cases/index.ts";
import type { AlarmPattern } from "../knowledge/index.ts";
import type { Evidence, Subject } from "../patterns/index.ts";

export interface Alarm {
  readonly pattern: AlarmPattern;
  /** The case, or the visit for a pattern over several pigs. */
  readonly subject: Subject;
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
