/** The schemas are where editors are told to look: by the first line of a file, and by the settings in docs/editors.md. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { globSync } from "tinyglobby";
import { describe, expect, it } from "vitest";
import { every } from "../every.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const modeline = /^# yaml-language-server: \$schema=(\S+)$/gm;
const filesIn = (folder: string, end: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(end))
    .map((name) => join(folder, name));
const schemasOf = (file: string): string[] =>
  [...readFileSync(join(root, file), "utf8").matchAll(modeline)].map((match) => match[1] ?? "");

const kinds: Readonly<Record<string, string>> = {
  "carcase.yaml": "settings.schema.json",
  "farm.yaml": "farm.schema.json",
  "visit.yaml": "visit.schema.json",
};
const kindOf = (file: string): string => kinds[basename(file)] ?? "case.schema.json";
const examples = filesIn("cases-example", ".yaml");

describe("the line for the editor", () => {
  every("leads to the schema of its kind", examples, (file) => {
    const [schema, ...more] = schemasOf(file);
    expect(more).toEqual([]);
    if (schema === undefined) return;
    expect(existsSync(join(root, dirname(file), schema)), schema).toBe(true);
    expect(basename(schema)).toBe(kindOf(file));
  });

  it("stands in most examples", () => {
    expect(examples.filter((file) => schemasOf(file).length === 1).length).toBeGreaterThan(
      examples.length * 0.9,
    );
  });

  every("names schemas that there are", ["README.md", ...filesIn("docs", ".md")], (file) => {
    for (const schema of schemasOf(file).filter((one) => !one.includes("…")))
      expect(existsSync(join(root, "schemas", basename(schema))), schema).toBe(true);
  });
});

describe("docs/editors.md", () => {
  const blocks = [
    ...readFileSync(join(root, "docs/editors.md"), "utf8").matchAll(/^```json\n([\s\S]*?)^```$/gm),
  ].map((match) => JSON.parse(match[1] ?? ""));
  const settings: Record<string, string[]> = blocks.find((one) => "yaml.schemas" in one)?.["yaml.schemas"];

  it("names schemas that ship", () => {
    const { files } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
    expect(files).toContain("schemas");
    for (const schema of Object.keys(settings))
      expect(existsSync(join(root, "schemas", basename(schema))), schema).toBe(true);
  });

  it("has globs that find each file of the example farm once, under its own schema", () => {
    const found = new Map<string, string[]>();
    for (const [schema, globs] of Object.entries(settings))
      for (const file of globSync(globs, { cwd: join(root, "cases-example"), ignore: ["incomplete/**"] }))
        found.set(file, [...(found.get(file) ?? []), basename(schema)]);
    const wanted = examples
      .map((file) => file.slice("cases-example/".length))
      .filter((file) => !file.startsWith("incomplete/"));
    expect([...found.keys()].sort()).toEqual(wanted.sort());
    for (const [file, schemas] of found) expect(schemas, file).toEqual([kindOf(file)]);
  });
});

describe("schemas", () => {
  it("refer only to schemas that lie beside them", () => {
    for (const file of filesIn("schemas", ".json")) {
      const refs = [...readFileSync(join(root, file), "utf8").matchAll(/"\$ref": "([^"#]+)/g)];
      for (const [, name = ""] of refs)
        expect(existsSync(join(root, "schemas", name)), `${file} ${name}`).toBe(true);
    }
  });
});
