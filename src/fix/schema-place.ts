/** Where the schemas of the format lie, seen from a file: for the line by which an editor finds them. */
import { existsSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve, sep } from "node:path";
import type { FixedKind } from "./probe.ts";

/** Below a folder of the repository: its own schemas, or those of the package that is installed in it. */
const folders = ["schemas", "node_modules/carcase/schemas"];

/**
 * The path from a file to the schema of its kind, with `/`. Only schemas in the same repository are taken, so that the
 * path holds on every machine.
 * @returns undefined when there are none, or when the path could not stand in a comment
 */
export function schemaPlace(location: string, kind: FixedKind): string | undefined {
  const from = dirname(resolve(location));
  for (let folder = from; ; folder = dirname(folder)) {
    for (const inside of folders) {
      const file = join(folder, inside, `${kind}.schema.json`);
      if (!isOurs(file, kind) || !isOurs(join(folder, inside, "case.schema.json"), "case")) continue;
      const path = relative(from, file).split(sep).join("/");
      return /\s/.test(path) ? undefined : path;
    }
    if (existsSync(join(folder, ".git")) || dirname(folder) === folder) return undefined;
  }
}

function isOurs(file: string, kind: FixedKind): boolean {
  try {
    const schema: unknown = JSON.parse(readFileSync(file, "utf8"));
    return (
      typeof schema === "object" && schema !== null && "$id" in schema && schema.$id === `${kind}.schema.json`
    );
  } catch {
    return false;
  }
}

/** @returns the text with the line as its first, or undefined when it has such a line */
export function withModeline(text: string, schema: string): string | undefined {
  if (/^\s*#.*yaml-language-server:/m.test(text)) return undefined;
  const end = text.includes("\r\n") ? "\r\n" : "\n";
  return `# yaml-language-server: $schema=${schema}${end}${text}`;
}
