/** The schemas are where editors are told to look: by the first line of a file, and by the settings in docs/editors.md. */
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { globSync } from "tinyglobby";
import { describe, expect, it } from "vitest";
import { validate } from "../../src/cases/faults/validate.ts";
import { isResultsName } from "../../src/cases/files/file-kind.ts";
import { parseYaml } from "../../src/cases/yaml/parse-yaml.ts";
import { temporaryFolder } from "../cases/temporary.ts";
import { every } from "../every.ts";
import { blocksOf } from "./blocks.ts";

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
const kindOf = (file: string): string =>
  isResultsName(basename(file)) ? "results.schema.json" : (kinds[basename(file)] ?? "case.schema.json");
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

/** A snippet as it stands when nothing was changed: the first choice, the placeholder, or a number. */
const expanded = (body: readonly string[]): string[] =>
  body.map((line) =>
    line.replaceAll(
      /\$\{\d\|([^,|]*)[^}]*\}|\$\{\d:([^}]*)\}|\$\d/g,
      (_, choice, text) => choice ?? text ?? "5",
    ),
  );

/** Where each belongs in a case. */
const around: Readonly<Record<string, (lines: readonly string[]) => string>> = {
  ne: ([text]) => `nervous:\n  brain: ${text}`,
  finding: (lines) => `respiratory:\n  larynx:\n${indented(4, lines)}`,
  lobes: (lines) => `respiratory:\n  lungs:\n${indented(4, lines)}`,
  snout: (lines) => `respiratory:\n${indented(2, lines)}`,
  sample: (lines) => `samples:\n${indented(2, lines)}`,
};
const indented = (by: number, lines: readonly string[]): string =>
  lines.map((line) => " ".repeat(by) + line).join("\n");

describe("the snippets of docs/editors.md", () => {
  const shown = (info: string, having = ""): string =>
    blocksOf("docs/editors.md").find((one) => one.info === info && one.body.includes(having))?.body ?? "";
  const snippets: { prefix: string; body: string[]; scope: string }[] = Object.values(
    JSON.parse(shown("json", '"prefix"')),
  );

  it("fit the format, with each of their choices", () => {
    expect(snippets.map(({ prefix }) => prefix).sort()).toEqual(Object.keys(around).sort());
    for (const { prefix, body, scope } of snippets) {
      expect(scope).toBe("yaml");
      const most = Math.max(
        1,
        ...[...body.join("").matchAll(/\|([^|]*)\|/g)].map(([, all = ""]) => all.split(",").length),
      );
      for (let turn = 0; turn < most; turn++) {
        // The next choice comes first.
        const turned = body.map((line) =>
          line.replaceAll(
            /\|([^|]*)\|/g,
            (_, all: string) => `|${all.split(",").at(turn) ?? all.split(",")[0]}|`,
          ),
        );
        const text = `format: 1\ncase: a-1\n${around[prefix]?.(expanded(turned))}\n`;
        const parsed = parseYaml(text);
        expect(parsed.ok ? [] : parsed.faults, text).toEqual([]);
        if (parsed.ok)
          expect(validate("case", parsed.document.value as Record<string, unknown>).faults, text).toEqual([]);
      }
    }
  });

  it("are the same for other editors", () => {
    const [ne = ""] = snippets.find(({ prefix }) => prefix === "ne")?.body ?? [];
    expect(shown("text").trimEnd().split("\n").at(-1)).toBe(ne);
    expect(shown("vim")).toContain('{not_examined: ""}');
  });

  it.runIf(spawnSync("vim", ["--version"]).status === 0)("expand in Vim", () => {
    const folder = temporaryFolder();
    const file = join(folder, "pig.yaml");
    writeFileSync(join(folder, "vimrc"), `filetype on\n${shown("vim")}`);
    writeFileSync(join(folder, "keys"), "ibrain: nex\u001dclosed\u001b:wq\r");
    spawnSync("vim", ["-N", "-i", "NONE", "-u", join(folder, "vimrc"), "-s", join(folder, "keys"), file], {
      timeout: 20_000,
    });
    expect(readFileSync(file, "utf8")).toBe('brain: {not_examined: "closed"}\n');
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
