/** The table of what intervals cover: what the page shows is what the script wrote, and the script gives it again. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { herd } from "../../scripts/simulate/herd.mjs";
import { makePool } from "../../scripts/simulate/pool.mjs";
import { byChance, keeps, pageWith, type Results, tableOf } from "../../scripts/simulate/table.mjs";
import * as lib from "../../src/index.ts";

const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
const results = JSON.parse(read("scripts/simulate/results.json")) as Results;
const page = read("docs/statistics.md");

describe("the simulation", () => {
  it("is shown as the script wrote it, no number by hand", () => {
    expect(pageWith(page, results)).toBe(page);
    expect(tableOf({ ...results, seed: results.seed + 1 })).not.toBe(tableOf(results));
  });

  it("has every interval and test, and names what does not keep to 94 % or 5.5 %, and the worst", () => {
    const ids = results.rows.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const part of ["herd", "compare", "agree"])
      expect(ids.filter((id) => id.startsWith(part)).length, part).toBeGreaterThan(8);
    const table = tableOf(results);
    for (const row of results.rows) {
      const named = `${row.printed} (${row.design})`;
      const [, beyond = ""] = table.split("in some state: ");
      const [, chance = ""] = table.split("may be chance: ");
      if (!keeps(row)) expect(byChance(row) ? chance : beyond, named).toContain(named);
    }
    const errors = results.rows.filter(({ kind }) => kind === "error").map(({ worst }) => worst);
    expect(table).toContain(`${(Math.max(...errors) * 100).toFixed(1)} %`);
    expect(table).toMatch(/Worst interval: .* Worst test: /);
  });

  it("finds no interval below 94 % and no test above 5.5 % beyond what chance explains", () => {
    const outside = results.rows.filter((row) => !keeps(row) && !byChance(row)).map(({ id }) => id);
    expect(outside).toEqual([]);
  });

  it("comes out the same again where all outcomes are counted", () => {
    const pool = makePool(lib.readCases, { small: true });
    for (const part of ["singly", "oneSided"] as const) {
      const again = [...herd[part]({ lib, pool })].map((row) => ({ part, ...row }));
      expect(again).toEqual(results.rows.filter((row) => row.part === part));
    }
  });
});
