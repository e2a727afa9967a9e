import { readFileSync } from "node:fs";
import { expect } from "vitest";

interface Row<Input, Output> {
  readonly id: string;
  readonly method: string;
  readonly input: Input;
  readonly output: Output;
}

const file = new URL("../fixtures/stats-reference.json", import.meta.url);
const { rows } = JSON.parse(readFileSync(file, "utf8")) as { rows: Row<unknown, unknown>[] };

/** The reference rows of one method; fails when there are fewer than the number expected. */
export function reference<Input, Output>(method: string, atLeast: number): Row<Input, Output>[] {
  const found = rows.filter((row) => row.method === method);
  if (found.length < atLeast) throw new Error(`${found.length} rows for ${method}, expected ${atLeast}`);
  return found as Row<Input, Output>[];
}

/** |got - wanted| / |wanted|, 0 when equal (also for two zeros). */
function relativeError(got: number, wanted: number): number {
  return got === wanted ? 0 : Math.abs(got - wanted) / Math.abs(wanted);
}

/** Demand agreement to a relative error; a wanted 0 must be met exactly. */
export function expectClose(got: number, wanted: number, tolerance: number, what: string): void {
  expect(relativeError(got, wanted), `${what}: got ${got}, wanted ${wanted}`).toBeLessThanOrEqual(tolerance);
}

/** Binomial probabilities P(X = 0..n), by plain products: independent of the code under test, for n <= 60. */
export function binomialProbabilities(n: number, p: number): number[] {
  const coefficients = [1];
  for (let x = 1; x <= n; x++) coefficients.push(((coefficients[x - 1] ?? 0) * (n - x + 1)) / x);
  return coefficients.map((coefficient, x) => coefficient * p ** x * (1 - p) ** (n - x));
}
