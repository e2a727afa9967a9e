// Compiles the schemas to plain JavaScript, so that no schema compiler is loaded at run time.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import Ajv2020 from "ajv/dist/2020.js";
import standaloneCode from "ajv/dist/standalone/index.js";
import { generatedFolder, readSchema } from "./read.mjs";

const parts = ["common", "vocabulary", "organs", "knowledge"];
const kinds = ["case", "visit", "farm", "settings", "baseline"];

/** An ajv instance that knows all schemas of the project. */
export function schemaCompiler(options = {}) {
  const ajv = new Ajv2020.default({ allErrors: true, allowUnionTypes: true, ...options });
  for (const name of [...parts, ...kinds]) ajv.addSchema(readSchema(`${name}.schema.json`));
  return ajv;
}

/** Writes src/generated/validators.cjs: one function a kind of file. */
export function writeValidators() {
  const ajv = schemaCompiler({ verbose: true, code: { source: true, lines: false } });
  const names = Object.fromEntries(kinds.map((kind) => [`${kind}File`, `${kind}.schema.json`]));
  const code = standaloneCode.default(ajv, names);
  writeFileSync(join(generatedFolder, "validators.cjs"), code);
  writeFileSync(
    join(generatedFolder, "validators.d.cts"),
    `import type { ErrorObject } from "ajv";
export interface Validator { (value: unknown): boolean; errors?: ErrorObject[] | null }
${kinds.map((kind) => `export const ${kind}File: Validator;`).join("\n")}
`,
  );
}
