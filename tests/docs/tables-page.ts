/** The page that describes every column of an export. */
import { codesOf } from "../../src/tables/codes.ts";
import type { Column, Table } from "../../src/tables/index.ts";

const head = `# All columns of the tables

What [\`carcase export\`](export.md) writes. *from* says where in the records a value stands, or how it was worked out. *shared* says what becomes of
it with \`--pseudonymise\`: it stays, becomes a pseudonym (where it may be a name of the practice's own, only if it is), moves with the days of its
farm, or is left out.
`;

/** A list of more words than this is left to the dictionary. */
const mostWords = 14;

export const tablesPage = (tables: readonly Table[]): string => [head, ...tables.map(section)].join("\n");

const section = ({ name, title, key, columns }: Table): string =>
  [
    `## ${name}`,
    "",
    `${title}.${key.length > 0 ? ` Rows are told apart by ${key.map((one) => `\`${one}\``).join(" and ")}.` : ""}`,
    "",
    "| column | is | type | from | shared |",
    "| --- | --- | --- | --- | --- |",
    ...columns(false).map(row),
    "",
  ].join("\n");

function row(column: Column): string {
  const words = codesOf(column) ?? [];
  const list =
    words.length === 0
      ? ""
      : words.length > mostWords
        ? ": a word of a long list, in the dictionary"
        : `: ${words.map((word) => `\`${word}\``).join(", ")}`;
  const type = column.unit === undefined ? column.type : `${column.type}, ${column.unit}`;
  return `| \`${column.name}\` | ${column.title}${list} | ${type} | ${column.from} | ${sharedAs[column.shared]} |`;
}

const sharedAs: Readonly<Record<Column["shared"], string>> = {
  "it is": "stays",
  nothing: "left out",
  day: "moved",
  pseudonym: "pseudonym",
  own: "stays, if it ships",
};
