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

/** The same, with lists inside of lists unpacked: a list may then name other lists by their anchors. */
export function readYamlTable(name) {
  const unpacked = (value) => {
    if (Array.isArray(value)) return value.flat().map(unpacked);
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, unpacked(one)]));
  };
  return unpacked(readYaml(name));
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

/**
 * A reader of conditions that makes each say all in full: `{term: name}` stands for a condition of alarm-terms.yaml, an organ
 * with a star (`lymphoid.*_nodes`) for every organ of the anatomy that fits, and a system for all its organs.
 */
function conditionsInFull(anatomy) {
  const { terms } = readYaml("alarm-terms.yaml");
  const organs = Object.entries(anatomy.systems).flatMap(([system, { organs: own }]) =>
    Object.keys(own).map((organ) => `${system}.${organ}`),
  );
  const fitting = (name) => {
    const [start, end] = name in anatomy.systems ? [`${name}.`, ""] : name.split("*");
    if (end === undefined) return [name];
    const found = organs.filter((organ) => organ.startsWith(start) && organ.endsWith(end));
    if (found.length === 0) throw new Error(`no organ fits ${name}`);
    return found;
  };
  const whole = (value) => {
    if (Array.isArray(value)) return value.map(whole);
    if (typeof value !== "object" || value === null) return value;
    if (value.term !== undefined) {
      if (terms[value.term] === undefined) throw new Error(`no term ${value.term} in alarm-terms.yaml`);
      return whole(terms[value.term]);
    }
    return Object.fromEntries(
      Object.entries(value).map(([key, one]) => [
        key,
        ["organs", "sample"].includes(key) && Array.isArray(one)
          ? [...new Set(one.flatMap(fitting))]
          : whole(one),
      ]),
    );
  };
  return whole;
}

/** The alarm patterns, their conditions in full. */
export function readAlarms(anatomy) {
  const whole = conditionsInFull(anatomy);
  return readYamlFolder("alarms").map(({ pattern, ...rest }) => ({ ...rest, pattern: whole(pattern) }));
}

/** The diseases, their conditions and samples in full. */
export function readDiseases(anatomy) {
  const whole = conditionsInFull(anatomy);
  return readYamlFolder("diseases").map(({ statements, confirm, sources: _, ...rest }) => ({
    ...rest,
    statements: whole(statements),
    confirm: whole(confirm),
  }));
}

/** The criteria of diseases, likewise. */
export const readDiseaseCriteria = (anatomy) => readYamlFolder("criteria").map(conditionsInFull(anatomy));
