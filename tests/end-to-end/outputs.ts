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

const schemaOf = (output: string): unknown =>
  JSON.parse(readFileSync(join(folder, `${output}${ending}`), "utf8"));

const compile = (schema: unknown): ValidateFunction =>
  new Ajv2020({ allowUnionTypes: true, strict: false }).compile(schema as object);

const compiled = (output: string): ValidateFunction => compile(closed(schemaOf(output)));

/** Whether a value has no field that the output has not, whatever stands in it, and which may be missing. */
export const fieldsOf = (output: string): ValidateFunction => compile(bare(closed(schemaOf(output))));

/** The same, in which no field may stand that it does not name: users may meet new ones, the tests may not. */
const closed = (schema: unknown): unknown =>
  changed(schema, (one) =>
    "type" in one && one.type === "object" ? { additionalProperties: false, ...one } : one,
  );

/** The same without what asks for more than names of fields. */
const bare = (schema: unknown): unknown =>
  changed(
    schema,
    ({ $id: _id, required: _must, enum: _words, const: _word, minItems: _least, ...rest }) => rest,
  );

type Keyed = Readonly<Record<string, unknown>>;

/** A schema with each of the schemas in it changed; names of fields are none. */
function changed(schema: unknown, change: (one: Keyed) => Keyed): unknown {
  if (Array.isArray(schema)) return schema.map((one) => changed(one, change));
  if (typeof schema !== "object" || schema === null) return schema;
  const inside = Object.entries(schema).map(([key, one]) => {
    const named = key === "properties" || key === "$defs";
    return [
      key,
      named
        ? Object.fromEntries(
            Object.entries(one as Keyed).map(([name, each]) => [name, changed(each, change)]),
          )
        : changed(one, change),
    ];
  });
  return change(Object.fromEntries(inside));
}
