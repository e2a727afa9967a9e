// Keeps what rules say of themselves (reasons, sources, examples) out of the bundle: linting needs none of it, and it is
// half of their code. `explain` and SARIF read it from dist/rule-texts.json.
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import ts from "typescript";
import { root } from "../generate/read.mjs";

const texts = ["summary", "protects", "lookAlike", "source", "bad", "good"];

/** Writes the texts of every rule, by id. */
export async function writeRuleTexts(folder) {
  const module = join(folder, "rules.mjs");
  await build({
    absWorkingDir: root,
    entryPoints: ["src/lint/rules/index.ts"],
    outfile: module,
    bundle: true,
    format: "esm",
    platform: "node",
    banner: {
      js: 'import { createRequire as nodeRequire } from "node:module";const require = nodeRequire(import.meta.url);',
    },
    logLevel: "warning",
  });
  const { rules } = await import(pathToFileURL(module).href);
  rmSync(module);
  const byId = rules.map((rule) => [rule.id, Object.fromEntries(texts.map((key) => [key, rule[key]]))]);
  writeFileSync(join(folder, "rule-texts.json"), JSON.stringify(Object.fromEntries(byId)));
}

/** The plugin that takes the texts out of the rules, and reads them where they are asked for. */
export const withoutRuleTexts = {
  name: "without-rule-texts",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]src[\\/]lint[\\/]rules[\\/][a-z]+[\\/].*\.ts$/ }, ({ path }) => ({
      contents: strip(readFileSync(path, "utf8")),
      loader: "ts",
    }));
    onLoad({ filter: /[\\/]src[\\/]lint[\\/]rule-texts\.ts$/ }, () => ({
      contents: `import { createRequire } from "node:module";
let all;
export const textsOf = ({ id }) => (all ??= createRequire(import.meta.url)("#rule-texts"))[id];`,
      loader: "ts",
    }));
  },
};

/** The text of a rule's file without the properties that only explain. */
function strip(text) {
  const file = ts.createSourceFile("rule.ts", text, ts.ScriptTarget.ES2023, true);
  const cuts = [];
  const visit = (node) => {
    if (ts.isObjectLiteralExpression(node) && texts.every((key) => property(node, key) !== undefined))
      for (const key of texts) cuts.push(property(node, key));
    else ts.forEachChild(node, visit);
  };
  visit(file);
  // From the end, so that the places of what is still to be cut stay true.
  return cuts
    .sort((a, b) => b.pos - a.pos)
    .reduce((kept, { pos, end }) => kept.slice(0, pos) + kept.slice(end).replace(/^\s*,/, ""), text);
}

const property = (node, key) =>
  node.properties.find((one) => one.name !== undefined && ts.isIdentifier(one.name) && one.name.text === key);
