/** A record as the text of a file: groups of plain values in braces, all else on lines of their own. */
import { isKeyed, type Keyed, type Path, put, valueAt } from "../cases/model/path.ts";
import { type Form, type FormValue, formText } from "../cases/yaml/form.ts";
import { type SchemaKind, schemaLine, schemaPlace } from "../schemas/index.ts";
import type { Value } from "./values.ts";

export const recordText = (record: Keyed): string => formText(form(record));

const form = (record: Keyed): Form =>
  Object.entries(record).map(([key, value]) => [key, formValue(value)] as const);

function formValue(value: unknown): FormValue {
  if (Array.isArray(value)) return value.map(String);
  if (isKeyed(value))
    return Object.values(value).some(isKeyed) ? { block: form(value) } : { flow: form(value) };
  return typeof value === "string" ? value : { word: String(value) };
}

/** Puts a value at a path, making the groups between; an organ that has a word gets it as a key. */
export function lay(into: object, path: Path, value: Value): void {
  for (let depth = 1; depth < path.length; depth++) {
    const at = path.slice(0, depth);
    const there = valueAt(into, at);
    if (!isKeyed(there)) put(into, at, there === undefined ? {} : { state: there });
  }
  const there = valueAt(into, path);
  if (isKeyed(there) && !isKeyed(value)) there.state = value;
  else put(into, path, value);
}

/** The line by which an editor finds the schema, where there is one. */
export function schemaHead(file: string, kind: SchemaKind): string {
  const schema = schemaPlace(file, kind);
  return schema === undefined ? "" : `${schemaLine(schema)}\n`;
}
