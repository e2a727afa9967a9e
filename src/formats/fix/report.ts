/** What was fixed in a file, for people. */
import type { FixedFile } from "../../fix/index.ts";
import { visible } from "../../words/visible.ts";
import type { Style } from "../page/style.ts";

export function fixReport({ file, fixes }: FixedFile, style: Style): string {
  return [
    `${style.good("fixed")} ${style.heading(visible(file))}`,
    ...fixes.map(({ line, message }) => `  ${line > 0 ? `line ${line}: ` : ""}${visible(message)}`),
  ]
    .map((line) => `${line}\n`)
    .join("");
}
