// Compiles the schemas to plain JavaScript, so that no schema compiler is loaded at run time.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import Ajv2020 from "ajv/dist/2020.js";
import standaloneCode from "ajv/dist/standalone/index.js";
import { buildSync } from "esbuild";
import { generatedFolder, readSchema, root } from "./read.mjs";

const parts = ["common", "vocabulary", "organs", "knowledge"];
const kinds = ["case", "visit", "farm", "settings", "baseline"];
/** Kinds of files that few repositories have; each validator is a file of its own, loaded when there is one. */
const rare = ["scale"];

/** An ajv instance that knows all schemas of the project. */
export function schemaCompiler(options = {}) {
  const ajv = new Ajv2020.default({ allErrors: true, allowUnionTypes: true, ...options });
  for (const name of [...parts, ...kinds, ...rare]) ajv.addSchema(readSchema(`${name}.schema.json`));
  return ajv;
}

/** Writes src/generated/validators.js: one function a kind of file. */
export function writeValidators() {
  const ajv = schemaCompiler({
    verbose: true,
    messages: false,
    code: { source: true, esm: true, lines: false },
  });
  const names = Object.fromEntries(kinds.map((kind) => [`${kind}File`, `${kind}.schema.json`]));
  writeFileSync(join(generatedFolder, "validators.js"), smaller(standaloneCode.default(ajv, names)));
  writeFileSync(
    join(generatedFolder, "validators.d.ts"),
    `import type { ErrorObject } from "ajv";
export interface Validator { (value: unknown): boolean; errors?: ErrorObject[] | null }
${kinds.map((kind) => `export const ${kind}File: Validator;`).join("\n")}
`,
  );
}

/** Writes src/generated/<kind>-validator.cjs, whole in itself, for kinds that are seldom needed. */
export function writeRareValidators() {
  for (const kind of rare) {
    const ajv = schemaCompiler({ verbose: true, messages: false, code: { source: true, lines: false } });
    const contents = standaloneCode.default(ajv, { [`${kind}File`]: `${kind}.schema.json` });
    buildSync({
      stdin: { contents, resolveDir: root },
      bundle: true,
      minify: true,
      platform: "node",
      format: "cjs",
      outfile: join(generatedFolder, `${kind}-validator.cjs`),
    });
  }
}

/**
 * The same code, shorter, because its length costs start-up time: what it repeats a thousand times is said once, and what
 * nobody asks of an error (schemaPath, schema) is left out; path, keyword, params, parentSchema and data stay.
 */
function smaller(code) {
  const imports = [];
  const body = code
    .replaceAll(/const (\w+) = require\("([^"]+)"\)\.default;/g, (_, name, module) => {
      imports.push(`import ${name}Module from "${module}.js";`);
      return `const ${name} = ${name}Module.default ?? ${name}Module;`;
    })
    .replaceAll(
      /const (err\d+) = (\{(?:(?!const err\d+ = ).)*?\});if\(vErrors === null\)\{vErrors = \[\1\];\}else \{vErrors\.push\(\1\);\}errors\+\+;/gs,
      "vErrors = add(vErrors, $2);errors++;",
    );
  const lean = body
    .replaceAll(/,schemaPath:"[^"]*"/g, "")
    .replaceAll(/,schema:(?:(?!,parentSchema:).)*?,parentSchema:/g, ",parentSchema:")
    .replaceAll(/,parentData:[^,{}]+,parentDataProperty:[^,{}]+,rootData,dynamicAnchors\}/g, "}");
  if (/\brequire\(/.test(body))
    throw new Error("the compiled schemas ask for a module in a way that is not known");
  return `${imports.join("\n")}
function add(list, error) { if (list === null) return [error]; list.push(error); return list; }
${lean}`;
}
