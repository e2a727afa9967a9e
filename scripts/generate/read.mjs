// Reading the sources of generation: knowledge YAML and schemas.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "yaml";

export const root = fileURLToPath(new URL("../..", import.meta.url));
const knowledgeFolder = join(root, "src/knowledge");
export const schemaFolder = join(root, "src/schemas");
export const generatedFolder = join(root, "src/generated");

/** Parses a YAML file below src/knowledge, anchors resolved. */
export function readYaml(name) {
  return parse(readFileSync(join(knowledgeFolder, name), "utf8"), { maxAliasCount: 1000 });
}

/** All YAML files of a folder below src/knowledge, parsed, in name order. */
export function readYamlFolder(name) {
  const files = readdirSync(join(knowledgeFolder, name)).filter((file) => file.endsWith(".yaml"));
  return files.sort().map((file) => readYaml(join(name, file)));
}

/** Parses a schema by its file name. */
export function readSchema(name) {
  return JSON.parse(readFileSync(join(schemaFolder, name), "utf8"));
}
