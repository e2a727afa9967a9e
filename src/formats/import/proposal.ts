/** A map of a new table's columns, as settings to paste. */
import type { Proposed } from "../../tally/index.ts";
import { visible } from "../../words/visible.ts";

const widest = 80;

export function proposalText(columns: readonly Proposed[], table: string): string {
  const lines = columns.map(({ head, to, such }) => {
    const line = `    ${JSON.stringify(head)}:${to === undefined ? "" : ` ${to}`}`;
    const example = such.length === 0 ? "" : `  # such as ${such.join(", ")}`;
    return `${line}${example}`.length <= widest || example === ""
      ? `${line}${example}`
      : `${`${line}${example}`.slice(0, Math.max(line.length, widest - 3))}...`;
  });
  return [
    `# For carcase.yaml, from ${table}: look through each line.`,
    "# Blank: nobody knows yet; write a value of a case, or skip.",
    "import:",
    "  columns:",
    ...lines,
  ]
    .map((line) => `${visible(line)}\n`)
    .join("");
}
