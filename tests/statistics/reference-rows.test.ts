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

  it("are all of methods that the library has, but for two that it no longer has", () => {
    const gone = results.filter(({ withdrawn }) => withdrawn);
    expect(gone.map(({ method, worst }) => [method, worst])).toEqual([
      ["poisson", null],
      ["correlation", null],
    ]);
  });

  const covered = results.filter(({ withdrawn }) => !withdrawn);
  it.each(covered)("$method, $rows rows", ({ method, rows: count, worst, failures }) => {
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

  it("repairs nothing: where an interval without width is wanted and none given, it says so and compares the rest", () => {
    const perfect = (kappa: number, upper: number): ReferenceRow => ({
      id: "perfect",
      method: "kappa",
      input: {
        table: [
          [5, 0],
          [0, 7],
        ],
        conf: 0.95,
      },
      output: { unweighted: { kappa, stdErr: 0, lower: 1, upper } },
    });
    const [right] = checkReference(statistics, [perfect(1, 1)]);
    expect(right).toMatchObject({ withheld: ["perfect"], failures: [] });
    for (const wrong of [perfect(0.9, 1), perfect(1, 1.1)])
      expect(checkReference(statistics, [wrong])[0]?.failures).toHaveLength(1);
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
