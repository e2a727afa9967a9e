/** Where the schemas lie, seen from a file. */
import { existsSync, readdirSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { asWritten } from "../words/as-written.ts";
import { textAt } from "../cases/files/text-at.ts";
import { note } from "../cases/files/witness.ts";
import { isSchemaOf, type SchemaKind, schemaFile, schemaKinds } from "./kinds.ts";

/** Where they usually lie below a folder: by themselves, or in the package that is installed in it. */
const usual = ["schemas", "node_modules/carcase/schemas"];

/**
 * The path from a file to the schema of its kind, with `/`: in a folder of this or any upper level, but only of the same
 * repository, so that the path holds on every machine.
 * @returns undefined when there is none, or when the path could not stand in a comment
 */
export function schemaPlace(location: string, kind: SchemaKind): string | undefined {
  const from = dirname(resolve(location));
  const place = placeFrom(from, kind);
  note(`schema ${kind}`, from, () => place ?? "");
  return place;
}

function placeFrom(from: string, kind: SchemaKind): string | undefined {
  const levels = levelsOf(from);
  for (const level of levels.folders) {
    const folders = levels.isRepository ? [...usual, ...foldersIn(level)] : usual;
    const file = folders
      .map((folder) => join(level, folder, schemaFile(kind)))
      .find((one) => existsSync(one) && isSchemaOf(textAt(one), kind));
    if (file === undefined) continue;
    const path = asWritten(relative(from, file));
    return /\s/.test(path) ? undefined : path;
  }
  return undefined;
}

/** A folder and those above it, up to the top of its repository. */
function levelsOf(from: string): { readonly folders: readonly string[]; readonly isRepository: boolean } {
  const folders: string[] = [];
  for (let folder = from; ; folder = dirname(folder)) {
    folders.push(folder);
    const isRepository = existsSync(join(folder, ".git"));
    if (isRepository || dirname(folder) === folder) return { folders, isRepository };
  }
}

function foldersIn(folder: string): string[] {
  try {
    return readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && entry.name !== ".git" && entry.name !== "node_modules")
      .map(({ name }) => name)
      .sort();
  } catch {
    return [];
  }
}

/**
 * Whether a schema that a file names is not there. Addresses on the net are not asked.
 * @param location the file that names it
 */
export function leadsNowhere(location: string, schema: string): boolean {
  const [path = ""] = schema.split("#");
  if (!path.startsWith("file:") && /^[a-z][a-z0-9+.-]+:/i.test(path)) return false;
  const at = path.startsWith("file:") ? pathOf(path) : resolve(dirname(location), path);
  const isThere = existsSync(at);
  if (at !== "") note("there", at, () => String(isThere));
  return !isThere;
}

/** Asks the questions of this file once more. */
export const askPlaceAgain: Readonly<Record<string, (path: string) => string>> = {
  there: (path) => String(existsSync(path)),
  ...Object.fromEntries(
    Object.keys(schemaKinds).map((kind) => [
      `schema ${kind}`,
      (from: string) => placeFrom(from, kind as SchemaKind) ?? "",
    ]),
  ),
};

function pathOf(address: string): string {
  try {
    return fileURLToPath(address);
  } catch {
    return "";
  }
}
