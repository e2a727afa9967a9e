/** Every reference row, through the same table of methods as `npm run check:reference`. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checkReference, errorOf, type ReferenceRow, tolerance } from "../../scripts/reference/check.mjs";
import * as statistics from "../../src/statistics/index.ts";

const file = new URL("../fixtures/stats-reference.json", import.meta.url);
const { meta, rows } = JSON.parse(readFileSync(file, "utf8")) as {
  meta: { rows: number };
  rows: ReferenceRow[];
};

describe("reference rows", () => {
  const results = checkReference(statistics, rows);

  it("are all there", () => {
    expect(rows.length).toBe(meta.rows);
    expect(new Set(rows.map(({ id }) => id)).size).toBe(meta.rows);
    expect(results.length).toBe(37);
  });

  it.each(results)("$method, $rows rows", ({ method, rows: count, worst, failures }) => {
    console.log(`${method}: ${count} rows, worst relative error ${worst}`);
    expect(failures).toEqual([]);
    expect(worst).toBeLessThanOrEqual(tolerance(method));
  });
});

describe("the checker", () => {
  const row = (method: string, output: unknown): ReferenceRow => ({
    id: "one",
    method,
    input: { x: 0, n: 20, conf: 0.95 },
    output,
  });

  it("fails a wrong value, a missing key, a method it does not know and a fault", () => {
    const wrong = [
      row("one-sided-upper", { upper: 0.1391 }),
      row("one-sided-upper", { upper: 0.1391083, other: 1 }),
      row("odds", {}),
      { ...row("one-sided-upper", { upper: 1 }), input: { x: 3, n: 0, conf: 0.95 } },
    ];
    for (const one of wrong) {
      const [result] = checkReference(statistics, [one]);
      expect(result?.failures.length, JSON.stringify(one)).toBe(1);
    }
    expect(checkReference(statistics, [row("odds", {})])[0]?.worst).toBeNull();
  });

  it("meets 0, null, infinity and nested values exactly", () => {
    expect(errorOf({ a: [1, 2], b: { c: 0 } }, { a: [1, 2], b: { c: 0 } })).toBe(0);
    expect(errorOf(Number.POSITIVE_INFINITY, "Infinity")).toBe(0);
    expect(errorOf(null, null)).toBe(0);
    for (const [got, wanted] of [
      [1e-300, 0],
      [Number.NaN, 1],
      [1, "Infinity"],
      [0, null],
      [undefined, 1],
      [{ a: 1 }, { a: 1, b: 2 }],
    ]) {
      expect(errorOf(got, wanted), `${got} ${wanted}`).toBeGreaterThan(1);
    }
    expect(errorOf(1.01, 1)).toBeCloseTo(0.01, 10);
  });
});
