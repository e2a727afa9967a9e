/** Every reference row that compares groups or plans a number, through the mapping of `npm run check:reference`. */
import { describe, expect, it } from "vitest";
import { checkReference } from "../../scripts/reference/check.mjs";
import * as statistics from "../../src/statistics/index.ts";
import { reference } from "./reference.ts";

const ROWS: Record<string, number> = {
  "detect-finite": 34,
  "detect-infinite": 10,
  "detect-finite-se": 12,
  "herd-sensitivity-imperfect": 12,
  "sample-size-precision": 18,
  fisher: 20,
  "risk-difference": 16,
  "cochran-armitage": 10,
  wilcoxon: 10,
  kruskal: 8,
  "mantel-haenszel": 6,
};

describe.each(Object.entries(ROWS))("%s", (method, count) => {
  const rows = reference(method, count);

  it("agrees in every row to a relative error of 1e-12", () => {
    const [result] = checkReference(statistics, rows);
    expect(result?.failures).toEqual([]);
    expect(result?.rows).toBe(count);
    expect(result?.worst).toBeLessThan(1e-12);
  });
});

it("is not a check that everything passes", () => {
  const [row] = reference<object, object>("fisher", 20);
  const wrong = { id: "wrong", method: "fisher", input: row?.input, output: { ...row?.output, p: 0.4858 } };
  expect(checkReference(statistics, [wrong])[0]?.failures).toHaveLength(1);
});
