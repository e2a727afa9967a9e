/** JSON that is safe to print: what a terminal or a log would obey or hide is written as an escape, which reads back the same. */
import { escapedInJson } from "../../words/visible.ts";

/** Two blanks of indentation and a line end. */
export const toJson = (value: unknown): string =>
  `${escapedInJson(JSON.stringify(value, null, 2)).replaceAll(/(##\w*)\[/g, "$1\\u005b")}\n`;

/**
 * What a command prints for scripts. Its schema, schemas/output/<output>.schema.json, is made from the type of `value`
 * when the program is built.
 * @param output name of the schema
 * @param version goes up when a field goes or means something else, and not when one comes
 */
export const outputJson = (output: string, version: number, value: object): string =>
  toJson({ output, version, ...value });
