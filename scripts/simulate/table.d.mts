export interface SimulatedRow {
  readonly part: string;
  readonly id: string;
  readonly printed: string;
  readonly design: string;
  readonly kind: "coverage" | "error";
  readonly states: number;
  /** Null where all outcomes were counted. */
  readonly runs: number | null;
  readonly worst: number;
  readonly worst_at: string;
  readonly mean: number;
  readonly most: number;
}
export interface Results {
  readonly seed: number;
  readonly runs: number;
  readonly rows: readonly SimulatedRow[];
}
export function keeps(row: SimulatedRow): boolean;
export function byChance(row: SimulatedRow): boolean;
export function tableOf(results: Results): string;
export function pageWith(page: string, results: Results): string;
