/** JSON that is safe to print: what a terminal or a log would obey or hide is written as an escape, which reads back the same. */
import { escapedInJson } from "../../words/visible.ts";

/** Two blanks of indentation and a line end. */
export const toJson = (value: unknown): string =>
  `${escapedInJson(JSON.stringify(value, null, 2)).replaceAll(/(##\w*)\[/g, "$1\\u005b")}\n`;
