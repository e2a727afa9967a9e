/** The schemas that editors read, one for each kind of file that people write. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

/** By kind of file: what it is for, and where such a file lies, from the top of a repository. */
export const schemaKinds = {
  case: { files: "one pig", place: "farm/visit/pig-01.yaml" },
  visit: { files: "one visit", place: "farm/visit/visit.yaml" },
  farm: { files: "one farm", place: "farm/farm.yaml" },
  results: { files: "a visit's results", place: "farm/visit/results.yaml" },
  settings: { files: "your settings", place: "carcase.yaml" },
  scale: { files: "a scale of your own", place: "scales/our-scale.yaml" },
} as const;

export type SchemaKind = keyof typeof schemaKinds;

export const schemaFile = (kind: SchemaKind): string => `${kind}.schema.json`;

/** The schema of a kind of file, whole in itself. */
export const schemaText = (kind: SchemaKind): string =>
  readFileSync(createRequire(import.meta.url).resolve(`#schemas/${schemaFile(kind)}`), "utf8");

/** Whether a text is such a schema, of this version or another, as its first lines say. */
export function isSchemaOf(text: string, kind: SchemaKind): boolean {
  const head = text.slice(0, 1000);
  return (
    head.includes(`"$id": "${schemaFile(kind)}"`) &&
    head.includes('"$comment": "Made by carcase for editors; not edited by hand"')
  );
}
