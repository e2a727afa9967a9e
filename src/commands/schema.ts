/** `carcase schema`: the schemas for editors, and the line by which an editor finds them. */
import { existsSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { readText } from "../cases/files/read-text.ts";
import { schemaListJson } from "../formats/schema/json.ts";
import { type ListedSchema, schemaListText, type WrittenFolder } from "../formats/schema/text.ts";
import {
  isSchemaOf,
  type SchemaKind,
  schemaFile,
  schemaKinds,
  schemaPlace,
  schemaText,
} from "../schemas/index.ts";
import { asWritten } from "../words/as-written.ts";
import { listing } from "../words/listing.ts";
import { nearest } from "../words/nearest.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";
import { checkWritable, type Keeps, makeFolder } from "./write-file.ts";

export interface SchemaOptions extends CommonOptions {
  readonly write?: string;
}

const kinds = Object.keys(schemaKinds) as SchemaKind[];

/** Where the list takes the schemas to lie. */
const usual = "schemas";

export function schema(run: Run<SchemaOptions>): number {
  const list = run.format<(schemas: readonly ListedSchema[], folder?: WrittenFolder) => string>({
    text: (schemas, folder) => schemaListText(schemas, folder, run.style),
    json: schemaListJson,
  });
  const [name] = run.paths;
  const { write } = run.options;
  const kind = name === undefined ? undefined : kindNamed(name);
  if (write !== undefined) {
    const written = writeSchemas(kind === undefined ? kinds : [kind], write, run);
    const isFound = written.every(
      ({ kind: one, place, path }) => path !== undefined && schemaPlace(place, one) === path,
    );
    run.write(list(written, { isFound }));
  } else if (kind !== undefined) run.write(schemaText(kind));
  else run.write(list(kinds.map((one) => listed(one, usual))));
  return run.end();
}

function kindNamed(name: string): SchemaKind {
  const kind = kinds.find((one) => one === name);
  if (kind !== undefined) return kind;
  const near = nearest(name, kinds);
  throw new UsageError(
    `there is no schema "${name}". ${near === undefined ? `There are ${listing(kinds, "and")}` : `Did you mean ${near}?`}`,
  );
}

/** A schema in a folder, seen from where a file of its kind lies. */
function listed(kind: SchemaKind, folder: string): ListedSchema {
  const { files, place } = schemaKinds[kind];
  const file = join(folder, schemaFile(kind));
  const path = asWritten(relative(resolve(dirname(place)), resolve(file)));
  return { kind, files, place, file: asWritten(file), path: /\s/.test(path) ? undefined : path };
}

/** @throws UsageError when something else stands in the way, or a file cannot be written; nothing is written then */
function writeSchemas(asked: readonly SchemaKind[], folder: string, run: Run): ListedSchema[] {
  if (folder.trim() === "") throw new UsageError("--write names no folder; write --write schemas");
  const files = asked.map((kind) => {
    const one = listed(kind, folder);
    const there = textThere(one.file);
    if (there !== undefined && !isSchemaOf(there, kind)) throw new UsageError(notSchema(one));
    return { ...one, text: schemaText(kind), there };
  });
  makeFolder(resolve(folder));
  for (const one of files) checkWritable(one.file, unlessSchema(one));
  return files.map(({ text, there, ...one }) => {
    if (there !== text) run.replace(one.file, text, unlessSchema(one));
    return { ...one, state: there === undefined ? "written" : there === text ? "unchanged" : "renewed" };
  });
}

const notSchema = ({ file }: ListedSchema): string =>
  `--write: ${file} is there and is no schema of carcase; nothing was written. Move it away, or name another folder.`;

const unlessSchema =
  (one: ListedSchema): Keeps =>
  (there) =>
    there === undefined || isSchemaOf(there.toString("utf8"), one.kind) ? undefined : notSchema(one);

/** What stands there already; the empty text where it is no plain file, and undefined where there is nothing. */
function textThere(file: string): string | undefined {
  if (!existsSync(file)) return undefined;
  const read = readText(file);
  return read.ok ? read.text : "";
}
