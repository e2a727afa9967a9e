/** The data dictionary: the descriptor of a Data Package (version 2), which programs read and people can. */
import { toJson } from "../formats/page/json.ts";
import { codesOf } from "./codes.ts";
import type { Written } from "./formats.ts";
import type { Column, Table } from "./table.ts";

export const dictionaryFile = "datapackage.json";

const name = "carcase-export";

/** Another one when a column goes or means something else; not when one is added. */
const tablesVersion = "1";

/** Whether a text is the descriptor of an export. */
export const isDictionary = (text: string): boolean => text.includes(`"name": "${name}"`);

interface Described {
  readonly written: ReadonlyMap<Table, Written>;
  readonly version: string;
  /** Whether names are pseudonyms, and whether days are as they were. */
  readonly shared: { readonly keepDays: boolean } | undefined;
}

/** @param described.written tables with the files that hold their rows; a table without a file is left out */
export const dictionary = ({ written, version, shared }: Described): string =>
  toJson({
    $schema: "https://datapackage.org/profiles/2.0/datapackage.json",
    name,
    version: tablesVersion,
    title: "Necropsies of pigs: cases, what was seen, scores, samples, results, herd estimates",
    description: [
      `Made by carcase ${version}. What a row and a column are stands beside each; "from" says where in the records a value was read, or how it was worked out.`,
      "An empty cell is unknown, never normal. Lists are joined by semicolons.",
      ...(shared === undefined
        ? []
        : [
            "Names are pseudonyms, equal for equal names; free text, files and photographs are left out.",
            shared.keepDays
              ? "Days are as they were recorded."
              : "All days of a farm are moved by one number of days, so that what lies between them is kept and the season is not.",
            "Pseudonyms are no anonymity: who knows a herd may know it again by its numbers.",
          ]),
    ].join(" "),
    resources: [...written].map(([table, { paths, format, mediatype }]) => ({
      name: table.name,
      type: "table",
      title: table.title,
      path: paths,
      format,
      mediatype,
      encoding: "utf-8",
      schema: schemaOf(table, shared !== undefined, format),
    })),
  });

function schemaOf(table: Table, shared: boolean, format: string): object {
  const { key } = table;
  return {
    $schema: "https://datapackage.org/profiles/2.0/tableschema.json",
    // Farm and year stand in the names of the folders and not in the files.
    ...(format === "parquet" && { fieldsMatch: ["superset"] }),
    fields: table.columns(shared).map(fieldOf),
    missingValues: [""],
    ...(key.length > 0 && { primaryKey: key }),
    ...(table.name !== "cases" &&
      key.includes("case") && {
        foreignKeys: [{ fields: ["case"], reference: { resource: "cases", fields: ["case"] } }],
      }),
  };
}

const types = {
  text: "string",
  list: "list",
  integer: "integer",
  number: "number",
  boolean: "boolean",
  date: "date",
  datetime: "datetime",
  year: "year",
} as const;

function fieldOf(column: Column): object {
  const { title, type, from, unit } = column;
  const codes = codesOf(column);
  return {
    name: column.name,
    type: types[type],
    title,
    ...(type === "list" && { delimiter: ";", itemType: "string" }),
    ...(unit !== undefined && { unit }),
    ...(codes !== undefined && (type === "list" ? { items: codes } : { categories: codes })),
    from,
  };
}
