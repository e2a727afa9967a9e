/** A record as the text of a file: groups of plain values on one line, all else on lines of their own. */
import { isKeyed, type Keyed } from "../cases/model/path.ts";
import { isPlainText } from "../words/plain-text.ts";

const width = 100;

export function recordText(record: Keyed, indent = ""): string {
  return Object.entries(record)
    .map(([key, value]) => {
      const line = `${indent}${key}: ${inline(value)}\n`;
      const isBlock = isKeyed(value) && (holdsGroups(value) || line.length > width);
      return isBlock ? `${indent}${key}:\n${recordText(value, `${indent}  `)}` : line;
    })
    .join("");
}

/** The entries of a list one a line. */
export const listText = (key: string, entries: readonly string[]): string =>
  `${key}:\n${entries.map((entry) => `  - ${inline(entry)}\n`).join("")}`;

const holdsGroups = (value: Keyed): boolean => Object.values(value).some(isKeyed);

function inline(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inline).join(", ")}]`;
  if (isKeyed(value))
    return `{${Object.entries(value)
      .map(([key, one]) => `${key}: ${inline(one)}`)
      .join(", ")}}`;
  if (typeof value !== "string") return String(value);
  return isPlainText(value) ? value : JSON.stringify(value);
}
