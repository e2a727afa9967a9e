/** The text of a small file of which nothing is asked but what it says. */
import { readFileSync, statSync } from "node:fs";

/** Nothing where it is no plain file, or cannot be read. */
export function textAt(file: string): string {
  try {
    // A pipe would be waited for.
    return statSync(file).isFile() ? readFileSync(file, "utf8") : "";
  } catch {
    return "";
  }
}
