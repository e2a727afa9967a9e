// Compiles the schemas to plain JavaScript, so that no schema compiler is loaded at run time.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import Ajv2020 from "ajv/dist/2020.js";
import standaloneCode from "ajv/dist/standalone/index.js";
import { buildSync } from "esbuild";
import { generatedFolder, readSchema, root } from "./read.mjs";
import { yesOrNo } from "./yes-or-no.mjs";

const parts = ["common", "vocabulary", "organs", "knowledge"];
/** Kinds of files that every run reads. */
const kinds = ["case", "visit", "farm", "results", "settings"];
/** Kinds that few runs read. */
const rare = ["baseline", "scale"];

/** An ajv instance that knows all schemas of the project. */
export function schemaCompiler(options = {}) {
  const ajv = new Ajv2020.default({ allErrors: true, allowUnionTypes: true, ...options });
  // For editors.
  ajv.addKeyword("enumDescriptions");
  for (const name of [...parts, ...kinds, ...rare]) ajv.addSchema(readSchema(`${name}.schema.json`));
  return ajv;
}

/**
 * Writes src/generated/<kind>-validator.cjs, whole in itself: every error of a file with all that explains it. Nearly all
 * files are right, so it is loaded when one is not.
 */
export function writeValidators() {
  for (const kind of [...kinds, ...rare]) {
    const ajv = schemaCompiler({ verbose: true, messages: false, code: { source: true, lines: false } });
    buildSync({
      stdin: {
        contents: standaloneCode.default(ajv, { [`${kind}File`]: `${kind}.schema.json` }),
        resolveDir: root,
      },
      bundle: true,
      minify: true,
      platform: "node",
      format: "cjs",
      outfile: join(generatedFolder, `${kind}-validator.cjs`),
    });
  }
}

/**
 * Writes src/generated/fits.js: one function a kind of file that says whether it fits its schema, and nothing more. Keys
 * that are left blank may be in it.
 */
export function writeChecks() {
  const ajv = schemaCompiler({
    allErrors: false,
    messages: false,
    code: { source: true, esm: true, lines: false },
  });
  const names = Object.fromEntries(kinds.map((kind) => [`${kind}Fits`, `${kind}.schema.json`]));
  writeFileSync(join(generatedFolder, "fits.js"), yesOrNo(standaloneCode.default(ajv, names)));
  writeFileSync(
    join(generatedFolder, "fits.d.ts"),
    `${kinds.map((kind) => `export function ${kind}Fits(value: unknown): boolean;`).join("\n")}\n`,
  );
}
