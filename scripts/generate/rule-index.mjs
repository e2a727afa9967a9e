// Writes src/lint/rules/index.ts: every rule, and every table of rules, that a file in the folder of a family exports.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./read.mjs";

const folder = join(root, "src/lint/rules");
const exported = /^export const (\w+)(?:: (?:readonly )?\w*Rule(\[\])?| = \w+Rule\()/gm;

export function writeRuleIndex() {
  const found = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap(({ name }) => readdirSync(join(folder, name)).map((file) => `${name}/${file}`))
    .filter((file) => file.endsWith(".ts"))
    .sort()
    .flatMap(rulesIn);
  const lines = [
    "// Made by `npm run generate` from the files beside it, and not kept in git.",
    'import { arranged } from "../arranged.ts";',
    ...found.map(({ file, name }) => `import { ${name} } from "./${file}";`),
    "",
    "export const rules = arranged([",
    ...found.map(({ name, isTable }) => `  ${isTable ? "..." : ""}${name},`),
    "]);",
  ];
  writeFileSync(join(folder, "index.ts"), `${lines.join("\n")}\n`);
}

function rulesIn(file) {
  const rules = [...readFileSync(join(folder, file), "utf8").matchAll(exported)];
  if (rules.length === 0) throw new Error(`src/lint/rules/${file} exports no rule`);
  return rules.map(([, name, table]) => ({ file, name, isTable: table !== undefined }));
}
