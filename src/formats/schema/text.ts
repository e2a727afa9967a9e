/** The schemas for editors, for people: what each is for, and the line to put at the top of a file. */
import { type SchemaKind, schemaLine } from "../../schemas/index.ts";
import { type Block, gap, heading, table, text, verbatim } from "../page/blocks.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";

export interface ListedSchema {
  readonly kind: SchemaKind;
  /** What it is for. */
  readonly files: string;
  /** Where such a file may lie, from the current folder. */
  readonly place: string;
  readonly file: string;
  /** From that place to the schema; undefined where it could not stand in a line. */
  readonly path: string | undefined;
  /** What became of the file. */
  readonly state?: "written" | "unchanged" | "renewed";
}

/** Where the schemas were written. */
export interface WrittenFolder {
  /** Whether what puts the line into files finds them there. */
  readonly isFound: boolean;
}

/** @param folder where they were written */
export const schemaListText = (
  schemas: readonly ListedSchema[],
  folder: WrittenFolder | undefined,
  style: Style,
): string => textOf(folder === undefined ? listBlocks(schemas) : writtenBlocks(schemas, folder), style);

function listBlocks(schemas: readonly ListedSchema[]): Block[] {
  return [
    text(
      "With a schema an editor completes keys and words, and underlines what does not fit. It finds the schema by a line at the top of the file. Where the schemas lie in the folder schemas:",
      { indent: 0 },
    ),
    ...schemas.flatMap(({ kind, files, place, path }) => [
      heading(`${kind}: ${files}, such as ${place}`),
      verbatim(`  ${lineOf(path)}`),
    ]),
    gap,
    verbatim("carcase schema --write schemas  puts the schemas there"),
    verbatim("carcase lint --fix              then puts the line into cases, visits and farms"),
  ];
}

function writtenBlocks(schemas: readonly ListedSchema[], { isFound }: WrittenFolder): Block[] {
  const [first] = schemas;
  return [
    ...table(
      [{ head: "" }, { head: "" }],
      schemas.map(({ file, state = "" }) => [file, state]),
    ),
    gap,
    ...(first === undefined
      ? []
      : [text(`First line of ${first.place}:`, { indent: 0 }), verbatim(lineOf(first.path))]),
    text(
      isFound
        ? "carcase lint --fix puts it into cases, visits and farms."
        : "carcase lint --fix does not look there: paste the line, or write the schemas into the folder schemas.",
      { indent: 0 },
    ),
  ];
}

const lineOf = (path: string | undefined): string =>
  path === undefined
    ? "There is none: the path to the schemas holds a blank; name them in the settings of the editor"
    : schemaLine(path);
