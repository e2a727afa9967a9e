/**
 * Another program reads the exported Parquet and comes to the same in SQL: counts, shares, means and medians to the last bit,
 * exact limits to 14 digits and as herd prints them.
 */
import { join } from "node:path";
import { type DuckDBConnection, DuckDBInstance } from "@duckdb/node-api";
import { beforeAll, describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { type Estimate, herdEstimates } from "../../src/herd/index.ts";
import { percentRange } from "../../src/words/percent.ts";
import { temporaryFolder } from "../cases/temporary.ts";
import { root } from "../end-to-end/run.ts";
import { exported } from "./exported.ts";

const farms = ["cases-example/alder-farm", "cases-example/maple-farm"];
const report = herdEstimates(readCases(farms, { from: root }));

/** Of the 16 or 17 digits of a limit, 14: where a sum of many powers crosses 2.5 per cent, the last bits hang on how it is added up. */
function expectLimits(theirs: readonly unknown[], ours: readonly unknown[], where: string): void {
  for (const [index, limit] of ours.map(Number).entries())
    expect(Math.abs(Number(theirs[index]) - limit), where).toBeLessThanOrEqual(5e-15 * limit);
  const [[lower = 0, upper = 0], [l = 0, u = 0]] = [theirs.map(Number), ours.map(Number)];
  expect(percentRange(lower, upper), where).toBe(percentRange(l, u));
}

let sql: DuckDBConnection;

const rows = async (text: string): Promise<Record<string, unknown>[]> =>
  (await sql.runAndReadAll(text)).getRowObjectsJS();

/** Of x among n, the share at which x or more have a probability of half of what is left out, by halving. */
const macros = `
create macro at_least(x, n, p) as
  list_sum([exp(lgamma(n+1) - lgamma(k+1) - lgamma(n-k+1) + k*ln(p) + (n-k)*ln(1-p)) for k in range(x, n+1)]);
create macro lower_limit(x, n) as case when x = 0 then 0.0 else list_extract(list_reduce(
  list_prepend([0.0, 1.0]::double[], [[0.0, 0.0]::double[] for i in range(0, 60)]),
  lambda b, i: case when at_least(x, n, (b[1]+b[2])/2) < 0.025 then [(b[1]+b[2])/2, b[2]] else [b[1], (b[1]+b[2])/2] end), 1) end;
create macro upper_limit(x, n) as 1 - lower_limit(n - x, n);`;

beforeAll(async () => {
  const folder = exported(farms, join(temporaryFolder(), "tables"), "--format", "parquet");
  sql = await (await DuckDBInstance.create(":memory:", { threads: "1" })).connect();
  for (const table of [
    "cases",
    "organs",
    "findings",
    "observations",
    "scores",
    "samples",
    "results",
    "estimates",
  ])
    await sql.run(
      `create view ${table} as select * from read_parquet('${folder}/${table}/**/*.parquet', hive_partitioning = true, hive_types = {farm: varchar, year: integer})`,
    );
  for (const macro of macros.split(";").filter((text) => text.trim() !== "")) await sql.run(macro);
});

const strata = "c.farm, c.visit, c.group, c.age_class, c.basis";

/** The same stratum under one name. */
const placeOf = (row: Record<string, unknown>): string =>
  JSON.stringify([row.farm, row.visit, row.group, row.age_class, row.basis]);
const placeOfEstimate = ({ stratum, basis }: Pick<Estimate, "stratum" | "basis">): string =>
  placeOf({ ...stratum, basis });

describe("DuckDB", () => {
  it("finds the types that the dictionary names", async () => {
    const types = await rows(
      "select typeof(farm) farm, typeof(year) y, typeof(age) age, typeof(untreated) flag, typeof(died_on) d, typeof(died_at) t, typeof(group_head) i from cases limit 1",
    );
    expect(types).toEqual([
      {
        farm: "VARCHAR",
        y: "INTEGER",
        age: "DOUBLE",
        flag: "BOOLEAN",
        d: "DATE",
        t: "TIMESTAMP",
        i: "INTEGER",
      },
    ]);
  });

  it.each([
    ["snout-grade-2-up", "maff-1978", ">= 2"],
    ["snout-grade-3-up", "maff-1978", ">= 3"],
    ["turbinate-loss", "polloni-2018", ">= 1"],
    ["lung-consolidation", "madec-kobisch-1982", ">= 1"],
    ["lung-consolidation-10-percent", "christensen-1999", "> 10"],
    ["pleurisy", "dottori-2007", ">= 1"],
    ["pleurisy-dorsocaudal", "dottori-2007", ">= 2"],
  ])("counts %s from the scores as herd does, with its exact limits", async (indicator, scale, reached) => {
    const counted = await rows(`
      with asked as (
        select ${strata}, coalesce(s.least ${reached}, false) as is_yes, not coalesce(s.greatest ${reached}, true) as is_no
        from cases c left join scores s on s.case = c.case and s.scale = '${scale}'),
      counts as (
        select farm, visit, "group", age_class, basis, count(*) filter (is_yes)::int x, count(*) filter (is_yes or is_no)::int n
        from asked group by all)
      select *, x / n as value, lower_limit(x, n) lower, upper_limit(x, n) upper from counts`);
    const ours = new Map(
      report.estimates.filter((one) => one.indicator === indicator).map((one) => [placeOfEstimate(one), one]),
    );
    expect(ours.size).toBeGreaterThan(5);
    expect(counted.length).toBe(ours.size);
    let limits = 0;
    for (const row of counted) {
      const one = ours.get(placeOf(row));
      expect([row.x, row.n]).toEqual([one?.affected, one?.examined]);
      // Of one pig no share is told.
      if (one?.proportion !== null) expect(row.value).toBe(one?.proportion);
      if (one?.method !== "clopper-pearson") continue;
      limits++;
      expectLimits([row.lower, row.upper], [one.lower, one.upper], placeOf(row));
    }
    expect(limits).toBeGreaterThan(0);
  });

  it("finds the exact limits in the table of estimates as it works them out itself", async () => {
    const all = await rows(
      `select affected x, examined n, lower, upper, lower_limit(affected, examined) l, upper_limit(affected, examined) u
       from estimates where method = 'clopper-pearson' and level = 0.95 and measure <> 'combined'`,
    );
    expect(all.length).toBeGreaterThan(20);
    for (const { l, u, lower, upper, ...row } of all)
      expectLimits([l, u], [lower, upper], JSON.stringify(row));
  });

  it("finds the mean and the median of every scale that herd gives, to the last bit", async () => {
    // Decimal numbers add up there without rounding; here a mean is a compensated sum.
    const counted = await rows(`
      select ${strata}, s.scale, count(s.value)::int n, median(s.value) median,
        sum(s.value::decimal(30, 12))::double / count(s.value) mean
      from cases c join scores s on s.case = c.case group by all`);
    const found = new Map(counted.map((row) => [`${row.scale} ${placeOf(row)}`, row]));
    const ours = report.scores.filter((one) => one.n > 0 && one.mean !== null);
    expect(ours.length).toBeGreaterThan(40);
    for (const one of ours) {
      const row = found.get(`${one.scale} ${placeOfEstimate(one)}`);
      expect([row?.n, row?.mean, row?.median]).toEqual([one.n, one.mean, one.median]);
    }
  });

  it("counts the positive of the tested from the results as herd does", async () => {
    const counted = await rows(`
      with answered as (
        select r.test || ':' || r.agent id, c.visit, c.basis, c.case, bool_or(r.interpretation = 'positive') as is_yes
        from results r join cases c on c.visit = r.visit and list_contains(string_split(r.cases, ';'), c.case)
        where not r.pool and r.interpretation in ('positive', 'negative') and r.agent is not null group by all)
      select id, visit, basis, count(*) filter (is_yes)::int x, count(*)::int n from answered group by all`);
    const found = new Map(counted.map((row) => [JSON.stringify([row.id, row.visit, row.basis]), row]));
    const ours = (report.results ?? []).filter((one) => one.examined > 0);
    expect(ours.length).toBeGreaterThan(5);
    for (const one of ours) {
      const row = found.get(JSON.stringify([one.indicator, one.stratum.visit, one.basis]));
      expect([row?.x, row?.n], one.indicator).toEqual([one.affected, one.examined]);
    }
  });

  it("reads the estimates that herd gives of the whole archive, though they were worked out visit by visit", async () => {
    const found = await rows(
      `select farm, visit, "group", age_class, basis, id, affected, examined, not_examined, not_graded, value, lower, upper, "of"
       from estimates where measure = 'proportion' and id not like '%:%'`,
    );
    const told = found.map((row) =>
      [
        placeOf(row),
        row.id,
        row.affected,
        row.examined,
        row.not_examined,
        row.not_graded,
        row.value,
        row.lower,
        row.upper,
        row.of,
      ].join(" "),
    );
    const ours = report.estimates.map((one) =>
      [
        placeOfEstimate(one),
        one.indicator,
        one.affected,
        one.examined,
        one.not_examined,
        one.not_graded,
        one.proportion,
        one.lower,
        one.upper,
        one.reach,
      ].join(" "),
    );
    expect(told.sort()).toEqual(ours.sort());
  });
});
