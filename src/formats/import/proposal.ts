/** A map of a new table's columns, as settings to paste. */
import type { Proposed } from "../../tally/index.ts";
import { visible } from "../../words/visible.ts";

const widest = 80;

/** @param under the key of the settings, and what a column can be there */
export function proposalText(
  columns: readonly Proposed[],
  table: string,
  [under, what]: readonly [string, string] = ["columns", "a value of a case"],
): string {
  const lines = columns.map(({ head, to, such }) => {
    const line = `    ${JSON.stringify(head)}:${to === undefined ? "" : ` ${to}`}`;
    const example = such.length === 0 ? "" : `  # such as ${such.join(", ")}`;
    return `${line}${example}`.length <= widest || example === ""
      ? `${line}${example}`
      : `${`${line}${example}`.slice(0, Math.max(line.length, widest - 3))}...`;
  });
  return [
    `# For carcase.yaml, from ${table}: look through each line.`,
    `# Blank: nobody knows yet; write ${what}, or skip.`,
    "import:",
    `  ${under}:`,
    ...lines,
  ]
    .map((line) => `${visible(line)}\n`)
    .join("");
}
