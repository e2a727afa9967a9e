/**
 * Every example in the documentation is run. `console` blocks are commands with what they print (a last line `…`
 * stands for the rest); `yaml case`, `yaml visit`, `yaml farm` and `yaml settings` blocks must fit the format. Pages
 * for the installed package are run in tests/package. `npm run docs` writes what the commands print today.
 */
import { spawnSync } from "node:child_process";
import { readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { type FileKind, validate } from "../../src/cases/faults/validate.ts";
import { parseYaml } from "../../src/cases/yaml/parse-yaml.ts";
import { every } from "../every.ts";
import { blocksOf, fence, played, textOf } from "./blocks.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const update = process.env.UPDATE_DOCS !== undefined;
const pages = ["README.md", "DEVELOPERS.md", "cases-example/README.md"].concat(
  readdirSync(join(root, "docs"), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".md"))
    .map((name) => join("docs", name)),
);
/** Runs one command line of the documentation; only `carcase` itself can be called. */
function run(line: string): string {
  const [program, ...args] = (line.match(/"[^"]*"|\S+/g) ?? []).map((one) => one.replace(/^"(.*)"$/, "$1"));
  expect(program).toBe("carcase");
  const env = { ...process.env, NO_COLOR: "1" };
  const { stdout, stderr } = spawnSync(process.execPath, ["bin/carcase.js", ...args], {
    cwd: root,
    encoding: "utf8",
    env,
  });
  return stdout + stderr;
}

const blocks = new Map(pages.map((page) => [page, blocksOf(page)]));
const pagesWith = (wanted: (info: string) => boolean): string[] =>
  pages.filter((page) => blocks.get(page)?.some(({ info }) => wanted(info)));

describe("the documentation", () => {
  it.each(pagesWith((info) => info === "console"))("%s prints what the commands print", (page) => {
    if (update) {
      writeFileSync(
        join(root, page),
        textOf(page).replaceAll(fence, (whole, info, body) =>
          info === "console" ? `\`\`\`console\n${played(body, run)}\`\`\`` : whole,
        ),
      );
    }
    for (const { info, body } of update ? blocksOf(page) : (blocks.get(page) ?? []))
      if (info === "console") expect(body).toBe(played(body, run));
  });

  every("shows YAML that fits the format", pages, (page) => {
    for (const { info, body } of blocks.get(page) ?? []) {
      const [language, kind] = info.split(" ");
      if (language !== "yaml") continue;
      const parsed = parseYaml(body);
      expect(parsed.ok ? [] : parsed.faults, body).toEqual([]);
      if (parsed.ok && kind !== undefined)
        expect(
          validate(kind as FileKind, parsed.document.value as Record<string, unknown>).faults,
          body,
        ).toEqual([]);
    }
  });
});
