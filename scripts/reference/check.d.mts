import type * as statistics from "../../src/statistics/index.ts";

export interface ReferenceRow {
  readonly id: string;
  readonly method: string;
  readonly input: unknown;
  readonly output: unknown;
}
export interface MethodResult {
  readonly method: string;
  readonly rows: number;
  readonly worst: number | null;
  readonly failures: readonly { readonly id: string; readonly reason: string }[];
  /** Whether the library no longer has it. */
  readonly withdrawn: boolean;
  /** Ids of rows with an interval without width where the library gives none. */
  readonly withheld: readonly string[];
}
export function tolerance(method: string): number;
export function errorOf(got: unknown, wanted: unknown): number;
export function checkReference(s: typeof statistics, rows: readonly ReferenceRow[]): MethodResult[];
