/** The data dictionary says what stands in the tables, and nothing else stands there. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv } from "ajv";
import { asyncBufferFromFile, parquetMetadataAsync, parquetReadObjects, parquetSchema } from "hyparquet";
import { describe, expect, it } from "vitest";
import { tables } from "../../src/tables/index.ts";
import { temporaryFolder } from "../cases/temporary.ts";
import { root } from "../end-to-end/run.ts";
import { csvRowsOf, exported, filesBelow, key } from "./exported.ts";

interface Field {
  readonly name: string;
  readonly type: string;
  readonly title: string;
  readonly from: string;
  readonly unit?: string;
  readonly categories?: readonly string[];
  readonly items?: readonly string[];
}

interface Resource {
  readonly name: string;
  readonly path: string | readonly string[];
  readonly schema: {
    readonly fields: readonly Field[];
    readonly primaryKey?: readonly string[];
    readonly foreignKeys?: readonly unknown[];
  };
}

const farms = ["cases-example/alder-farm", "cases-example/maple-farm"];
const folder = temporaryFolder();
const keyFile = join(temporaryFolder(), "carcase.key");
writeFileSync(keyFile, `${key}\n`);
const folders = {
  csv: exported(farms, join(folder, "csv")),
  ndjson: exported(farms, join(folder, "ndjson"), "--format", "ndjson"),
  parquet: exported(farms, join(folder, "parquet"), "--format", "parquet"),
  shared: exported(farms, join(folder, "shared"), "--pseudonymise", keyFile),
};
const resourcesOf = (at: string): readonly Resource[] =>
  JSON.parse(readFileSync(join(at, "datapackage.json"), "utf8")).resources;

const validate = new Ajv().compile(
  JSON.parse(readFileSync(join(root, "tests/fixtures/data-package-2.schema.json"), "utf8")),
);

/** How a cell of each type is written in CSV. */
const forms: Readonly<Record<string, RegExp>> = {
  string: /^/,
  list: /^/,
  integer: /^-?\d+$/,
  number: /^-?\d+(?:\.\d+)?(?:e-?\d+)?$/,
  boolean: /^(?:true|false)$/,
  date: /^\d{4}-\d\d-\d\d$/,
  datetime: /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d$/,
  year: /^\d{4}$/,
};

describe("the dictionary", () => {
  it.each(Object.entries(folders))("of %s fits the published schema and names every file", (_, at) => {
    expect(
      validate(JSON.parse(readFileSync(join(at, "datapackage.json"), "utf8"))),
      JSON.stringify(validate.errors),
    ).toBe(true);
    const named = resourcesOf(at).flatMap(({ path }) => [path].flat());
    const there = filesBelow(at).map((file) => file.slice(at.length + 1).replaceAll("\\", "/"));
    expect(there).toEqual([...named, "datapackage.json"].sort());
  });

  it.each(["csv", "shared"] as const)("of %s has the columns, types and words of the tables", (format) => {
    const resources = resourcesOf(folders[format]);
    expect(resources.map(({ name }) => name)).toEqual(tables.map(({ name }) => name));
    for (const { name, path, schema } of resources) {
      const file = join(folders[format], String(path));
      const head = readFileSync(file, "utf8").split("\r\n", 1)[0]?.split(",");
      expect(head).toEqual(schema.fields.map((field) => field.name));
      const rows = csvRowsOf(file);
      expect(rows.length, name).toBeGreaterThan(0);
      for (const { name: column, type, categories, items } of schema.fields) {
        const cells = [...new Set(rows.map((row) => row[column] ?? "").filter((cell) => cell !== ""))];
        const form = forms[type];
        expect(
          cells.filter((cell) => form?.test(cell) !== true),
          `${name}.${column}`,
        ).toEqual([]);
        const words = type === "list" ? cells.flatMap((cell) => cell.split(";")) : cells;
        const known = categories ?? items;
        if (known !== undefined)
          expect(
            words.filter((word) => !known.includes(word)),
            `${name}.${column}`,
          ).toEqual([]);
      }
      const keys = schema.primaryKey ?? [];
      if (keys.length > 0)
        expect(new Set(rows.map((row) => JSON.stringify(keys.map((one) => row[one])))).size, name).toBe(
          rows.length,
        );
    }
  });

  it("says of every column what it is and where its value comes from, and of every code its words", () => {
    /** Made by the program, and told in the title. */
    const told = ["estimates.measure", "estimates.method"];
    for (const table of tables)
      for (const column of table.columns(false)) {
        const name = `${table.name}.${column.name}`;
        expect(column.title, name).toMatch(/^[A-Z].*[^.]$/);
        expect(column.from, name).not.toBe("");
        const field = resourcesOf(folders.csv)
          .find((one) => one.name === table.name)
          ?.schema.fields.find((one) => one.name === column.name);
        if (column.isCode && !told.includes(name))
          expect((field?.categories ?? field?.items ?? []).length, name).toBeGreaterThan(1);
      }
  });

  it("joins tables by case in both directions of an export", () => {
    for (const at of [folders.csv, folders.shared]) {
      const known = new Set(csvRowsOf(join(at, "cases.csv")).map((row) => row.case));
      const samples = csvRowsOf(join(at, "samples.csv")).map((row) => `${row.visit} ${row.sample}`);
      for (const name of ["organs", "findings", "observations", "scores", "samples"])
        expect(csvRowsOf(join(at, `${name}.csv`)).filter((row) => !known.has(row.case))).toEqual([]);
      const results = csvRowsOf(join(at, "results.csv"));
      const ofSamples = results.flatMap((row) =>
        (row.samples ?? "").split(";").map((one) => `${row.visit} ${one}`),
      );
      expect(ofSamples.filter((one) => samples.includes(one)).length).toBeGreaterThan(20);
      expect(ofSamples.filter((one) => !samples.includes(one))).toEqual([]);
    }
  });

  it("is the same in every format, and so are the cells", async () => {
    for (const { name, schema } of resourcesOf(folders.csv)) {
      const lines = csvRowsOf(join(folders.csv, `${name}.csv`));
      const json: Record<string, unknown>[] = readFileSync(join(folders.ndjson, `${name}.ndjson`), "utf8")
        .trimEnd()
        .split("\n")
        .map((line) => JSON.parse(line));
      expect(json.map((row) => Object.values(row).map((cell) => asText(cell)))).toEqual(
        lines.map((row) => Object.values(row).map((cell) => cell.replace(/^'(?=[=+\-@])/, ""))),
      );
      const resource = resourcesOf(folders.parquet).find((one) => one.name === name);
      expect(resource?.schema.fields).toEqual(schema.fields);
      const rows: Record<string, unknown>[] = [];
      for (const path of [resource?.path ?? []].flat()) {
        const file = await asyncBufferFromFile(join(folders.parquet, path));
        const [, farm, year] = /farm=([^/]*)\/year=(\d+)/.exec(path) ?? [];
        const columns = parquetSchema(await parquetMetadataAsync(file)).children.map(
          ({ element }) => element.name,
        );
        expect(["farm", "year", ...columns].sort()).toEqual(schema.fields.map((field) => field.name).sort());
        for (const row of await parquetReadObjects({ file })) rows.push({ farm, year: Number(year), ...row });
      }
      const cells = (row: Record<string, unknown>): string =>
        JSON.stringify(schema.fields.map((field) => asText(row[field.name], field.type)));
      expect(rows.map(cells)).toEqual(json.map(cells));
    }
  });
});

function asText(value: unknown, type = ""): string {
  if (value === null || value === undefined) return "";
  if (value instanceof Date) return value.toISOString().slice(0, type === "date" ? 10 : 19);
  return String(value);
}
