/** What is shared says nothing of whose pigs they were: every name, tag, path and free text of an archive is searched for. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { codesOf } from "../../src/tables/codes.ts";
import { exportFormats, tables } from "../../src/tables/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { root } from "../end-to-end/run.ts";
import { csvRowsOf, exported, filesBelow, key, saidIn } from "./exported.ts";
import { files, mark, records } from "./marked.ts";

const keyFile = join(temporaryFolder(), "carcase.key");
writeFileSync(keyFile, `${key}\n`);
const archive = temporaryFolder();
put(archive, files);
const outside = temporaryFolder();
const formats = Object.keys(exportFormats);

type Node = Readonly<Record<string, unknown>>;
const schemas = new Map<string, Node>();
const schema = (name: string): Node => {
  const read = schemas.get(name) ?? JSON.parse(readFileSync(join(root, "src/schemas", name), "utf8"));
  schemas.set(name, read);
  return read;
};

/** Where a file of a kind may hold what a person makes up: free text, names, paths, anything without a list or a form of its own. */
function madeUpIn(kind: string): Set<string> {
  const found = new Set<string>();
  const follow = (file: string, node: Node, path: string): void => {
    const { $ref: leads, type, properties, items, additionalProperties, anyOf } = node;
    if (typeof leads === "string") {
      const [at, place = ""] = leads.split("#");
      const name = place.split("/").at(-1) ?? "";
      const next = at === "" || at === undefined ? file : at;
      if (next === "common.schema.json" && ["text", "id", "label", "file"].includes(name)) found.add(path);
      // Closed lists of words; organs are marked one by one.
      if (["organs.schema.json", "vocabulary.schema.json", "common.schema.json"].includes(next)) {
        if (["accepted", "seals"].includes(name)) follow(next, within(next, place), path);
        return;
      }
      follow(next, within(next, place), path);
      return;
    }
    for (const one of Array.isArray(anyOf) ? anyOf : []) follow(file, one, path);
    const isText = [type].flat().includes("string") && node.enum === undefined;
    if (isText && !isMeasured(String(node.pattern ?? ""))) found.add(path);
    for (const [name, one] of Object.entries(properties ?? {})) follow(file, one, `${path}.${name}`);
    if (typeof additionalProperties === "object" && additionalProperties !== null)
      follow(file, additionalProperties as Node, `${path}.*`);
    if (items !== undefined) follow(file, items as Node, `${path}[]`);
  };
  const within = (file: string, place: string): Node =>
    place
      .split("/")
      .slice(1)
      .reduce<Node>((at, step) => at[step] as Node, schema(file));
  follow(`${kind}.schema.json`, schema(`${kind}.schema.json`), kind);
  return found;
}

/** A number with a sign or a unit; the names of shipped alarms. */
const isMeasured = (pattern: string): boolean =>
  /^\^(?:\\d|-\?\\d|\(100|\[<|\(<)/.test(pattern) || pattern === "^[a-z][a-z-]*$";

/** Every text with the place it stands at, as `madeUpIn` names places. */
function* textsIn(value: unknown, path: string, keyed: ReadonlySet<string>): Iterable<[string, string]> {
  if (typeof value === "string" || typeof value === "number") yield [path, String(value)];
  else if (Array.isArray(value)) for (const one of value) yield* textsIn(one, `${path}[]`, keyed);
  else if (typeof value === "object" && value !== null)
    for (const [name, one] of Object.entries(value)) {
      const isName = [...keyed].some((known) => known.startsWith(`${path}.*`));
      if (isName) yield [`${path}.*`, name];
      yield* textsIn(one, isName ? `${path}.*` : `${path}.${name}`, keyed);
    }
}

describe("an archive in which everything made up is marked", () => {
  it("has the mark wherever the format takes what a person makes up", () => {
    /** Taken as a number or from a list when it is read, or shown by no record that is sound. */
    const elsewhere = [
      "visit.question",
      "visit.question.indicator",
      "case.photos[].shows",
      "case.accepted[].rule",
      "visit.accepted[].rule",
      "results.accepted[].rule",
    ];
    for (const { kind, record } of records) {
      const places = madeUpIn(kind);
      expect(places.size).toBeGreaterThan(3);
      const marked = new Set(
        [...textsIn(record, kind, places)].filter(([, text]) => text.includes(mark)).map(([path]) => path),
      );
      expect([...places].filter((place) => !marked.has(place) && !elsewhere.includes(place))).toEqual([]);
    }
  });

  it("gives the mark away to whoever gets the plain tables", async () => {
    const said = await saidIn(exported([archive], join(outside, "plain")));
    expect(said.split(mark).length).toBeGreaterThan(150);
  });

  it.each(formats)("gives nothing of it away with pseudonyms, as %s", async (format) => {
    const folder = exported([archive], join(outside, format), "--format", format, "--pseudonymise", keyFile);
    const said = await saidIn(folder);
    expect(said.length).toBeGreaterThan(100_000);
    expect(said.toLowerCase()).not.toContain(mark);
    expect(said).not.toContain(archive);
    expect(said).not.toContain(key);
    // Days have moved.
    expect(said).not.toContain("2026-03-14");
  });

  it("leaves out in pseudonyms what the plain tables say in words or paths, and keeps everything else", () => {
    const [plain, shared] = ["plain", "csv"].map((name) =>
      Object.fromEntries(
        tables.map((table) => [table.name, csvRowsOf(join(outside, name, `${table.name}.csv`))]),
      ),
    );
    for (const table of tables) {
      const kept = table.columns(true).map((column) => column.name);
      const gone = table.columns(false).filter((column) => !kept.includes(column.name));
      expect(gone.filter((column) => column.shared !== "nothing")).toEqual([]);
      expect(shared?.[table.name]?.length).toBe(plain?.[table.name]?.length);
      for (const column of table.columns(true).filter((one) => one.shared === "it is")) {
        const cells = (rows: readonly Record<string, string>[] = []) =>
          rows.map((row) => row[column.name]).sort();
        expect(cells(shared?.[table.name]), `${table.name}.${column.name}`).toEqual(
          cells(plain?.[table.name]),
        );
      }
    }
  });
});

describe("the example farms", () => {
  const farms = ["cases-example/alder-farm", "cases-example/maple-farm"];
  /** Words of the program stand there whoever wrote them as well. */
  const words = new Set(
    tables.flatMap((table) => table.columns(false).flatMap((column) => codesOf(column) ?? [])),
  );
  const madeUp = farms.flatMap((farm) =>
    readdirSync(join(root, farm), { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".yaml"))
      .flatMap((name) => {
        const kind = /results/.test(name) ? "results" : (/visit|farm/.exec(name)?.[0] ?? "case");
        const record = parse(readFileSync(join(root, farm, name), "utf8"));
        const places = madeUpIn(kind);
        return [...textsIn(record, kind, places)]
          .filter(
            ([path]) =>
              places.has(path) || /\.(?:note|site|not_examined|why|tracing)$|photos\[\]$/.test(path),
          )
          .filter(([path]) => !/protocol$|\.disease$|samples\[\]\.from$|\.rule$|\.at$/.test(path))
          .map(([, text]) => text);
      }),
  );
  const titles = tables.flatMap((table) => table.columns(false).map((column) => column.title)).join("\n");
  const searched = [...new Set(madeUp)].filter((text) => !words.has(text) && !titles.includes(text));

  it.each(formats)("show none of their names, tags and texts with pseudonyms, as %s", async (format) => {
    expect(searched.length).toBeGreaterThan(250);
    const folder = exported(
      farms,
      join(outside, `farms-${format}`),
      "--format",
      format,
      "--pseudonymise",
      keyFile,
    );
    const said = await saidIn(folder);
    const cells = new Set(
      format === "csv"
        ? filesBelow(folder)
            .filter((file) => file.endsWith(".csv"))
            .flatMap(csvRowsOf)
            .flatMap((row) => Object.entries(row).filter(([name]) => !isFigure(name)))
            .map(([, cell]) => cell)
        : [],
    );
    // Two or three signs stand in some number of every table.
    const long = searched.filter((text) => text.length > 5 && !/^\d+$/.test(text));
    expect(long.length).toBeGreaterThan(200);
    expect(long.filter((text) => said.includes(text))).toEqual([]);
    expect(searched.filter((text) => cells.has(text))).toEqual([]);
  });
});

/** Columns whose numbers are no names. */
const figures = new Set(
  tables.flatMap((table) =>
    table
      .columns(true)
      .filter(({ type }) => ["number", "integer", "year"].includes(type))
      .map(({ name }) => name),
  ),
);
const isFigure = (name: string): boolean => figures.has(name);
