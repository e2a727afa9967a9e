/** Whether what the program prints for scripts fits the schema that is published of it, key by key. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { ValidateFunction } from "ajv";
import { Ajv2020 } from "ajv/dist/2020.js";

const folder = fileURLToPath(new URL("../../schemas/output", import.meta.url));
const ending = ".schema.json";

/** The outputs of which a schema is published. */
export const outputs: readonly string[] = readdirSync(folder)
  .map((name) => name.replace(ending, ""))
  .toSorted();

const validators = new Map<string, ValidateFunction>();

/** @returns its `output`, or undefined where the text is no such output @throws Error when it does not fit its schema */
export function checkedOutput(text: string): string | undefined {
  const [, output] = /^\{\s*"output": "([\w-]+)"/.exec(text) ?? [];
  if (output === undefined) return undefined;
  const validate = validators.get(output) ?? compiled(output);
  validators.set(output, validate);
  if (!validate(JSON.parse(text)))
    throw new Error(
      `not as in schemas/output/${output}${ending}:\n${JSON.stringify(validate.errors, null, 2)}`,
    );
  return output;
}

function compiled(output: string): ValidateFunction {
  const schema: unknown = JSON.parse(readFileSync(join(folder, `${output}${ending}`), "utf8"));
  return new Ajv2020({ allowUnionTypes: true, strictTuples: false }).compile(closed(schema) as object);
}

/** The same, in which no field may stand that it does not name: users may meet new ones, the tests may not. */
function closed(schema: unknown): unknown {
  if (Array.isArray(schema)) return schema.map(closed);
  if (typeof schema !== "object" || schema === null) return schema;
  const inside = Object.fromEntries(Object.entries(schema).map(([key, one]) => [key, closed(one)]));
  return schemaOfObject(schema) ? { additionalProperties: false, ...inside } : inside;
}

const schemaOfObject = (schema: object): boolean => "type" in schema && schema.type === "object";
