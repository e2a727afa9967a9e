/** What the interview can ask, and what it has been told besides what the file holds. */
import type { Path } from "../cases/index.ts";
import type { PlacedOrgan } from "../knowledge/index.ts";
import type { NecropsyStep } from "../knowledge/knife.ts";

interface Asked {
  /** What it is passed over by. */
  readonly id: string;
  /** The step of the necropsy it belongs to. */
  readonly step?: NecropsyStep | undefined;
}

/** One value, written at each of the paths. */
export interface ValueQuestion extends Asked {
  readonly kind: "value";
  readonly text: string;
  readonly paths: readonly Path[];
  /** The words of which one must be said, or may be where other texts are right as well. */
  readonly words: readonly string[];
  readonly isOpen?: boolean;
  readonly example?: string | undefined;
  /** What stands between several of them; one is asked where it is left out. */
  readonly between?: "," | ";";
}

/** Organs of one system that are seen in the same step. */
export interface OrgansQuestion extends Asked {
  readonly kind: "organs";
  readonly title: string;
  readonly must: readonly PlacedOrgan[];
  readonly wanted: readonly PlacedOrgan[];
}

/** Whether there is another finding of an organ. */
interface MoreQuestion extends Asked {
  readonly kind: "more";
  readonly organ: PlacedOrgan;
}

/** Whether samples are taken at all; or whether one was, and what is written of it then. */
export interface SampleQuestion extends Asked {
  readonly kind: "sample";
  readonly text: string;
  readonly edit?: readonly [path: Path, value: unknown];
}

export type Question = ValueQuestion | OrgansQuestion | MoreQuestion | SampleQuestion;

export interface Session {
  /** Ids of questions, and of organs, that were passed over. */
  readonly skipped: ReadonlySet<string>;
  /** The organ whose findings are being told. */
  readonly telling?: PlacedOrgan | undefined;
  /** Whether steps are asked in which nothing must be seen. */
  readonly wanted: boolean;
  /** Whether an alarm in another pig of the visit forbids to cut. */
  readonly isStopped: boolean;
}
