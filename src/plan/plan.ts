/** What every planned number is answered with: sentences, a table over a range, cautions and sources. */
import type { ChoosingPigs, ChoosingRule, Source } from "../knowledge/index.ts";
import { choosingPigs } from "../knowledge/index.ts";

/** Text, a number as it is (shares from 0 to 1), or nothing. */
export type Cell = string | number | null;

/** A column of the table. */
export interface PlanColumn {
  /** Name in JSON and CSV. */
  readonly key: string;
  readonly head: string;
  /** How people read it: a count, a share in per cent as asked for or as computed, or text. */
  readonly as: "count" | "asked" | "share" | "text";
  /** Decimals of a share in per cent; 1 when left out. */
  readonly decimals?: number;
}

interface PlanTable {
  readonly title: string;
  readonly columns: readonly PlanColumn[];
  readonly rows: readonly Readonly<Record<string, Cell>>[];
}

/** An answer, ready for any format. */
export interface Plan {
  /** The subcommand: detect, estimate, compare, say, choose. */
  readonly plan: string;
  readonly title: string;
  /** What was asked, with everything that was assumed. */
  readonly asked: Readonly<Record<string, Cell>>;
  /** The numbers of the answer. */
  readonly answer: Readonly<Record<string, Cell>>;
  /** The answer in plain words, one sentence or a few each. */
  readonly sentences: readonly string[];
  /** Rules to tick off, shown to people in place of the table. */
  readonly steps?: readonly ChoosingRule[];
  readonly table: PlanTable;
  readonly cautions: readonly string[];
  readonly sources: readonly Source[];
}

/** The texts of cautions, in the order given. */
export const cautionsOf = (...names: (keyof ChoosingPigs["cautions"])[]): string[] =>
  names.map((name) => choosingPigs.cautions[name]);

/** Numbers in ascending order, each once. */
export const ascending = (...numbers: readonly number[]): number[] =>
  [...new Set(numbers)].sort((a, b) => a - b);
