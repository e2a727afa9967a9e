/**
 * Every example in the documentation is run. `console` blocks are commands with what they print (a last line `…`
 * stands for the rest); `yaml case`, `yaml visit`, `yaml farm` and `yaml settings` blocks must fit the format; `js run`
 * blocks must run against the built library. `npm run docs` writes what the commands print today.
 */
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { type FileKind, validate } from "../../src/cases/faults/validate.ts";
import { parseYaml } from "../../src/cases/yaml/parse-yaml.ts";
import { every } from "../every.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const update = process.env.UPDATE_DOCS !== undefined;
const pages = ["README.md", "DEVELOPERS.md", "cases-example/README.md"].concat(
  readdirSync(join(root, "docs"), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".md"))
    .map((name) => join("docs", name)),
);
const fence = /^```([^\n]*)\n([\s\S]*?)^```$/gm;

interface Block {
  readonly info: string;
  readonly body: string;
}
const blocksOf = (page: string): Block[] =>
  [...readFileSync(join(root, page), "utf8").matchAll(fence)].map((match) => ({
    info: match[1] ?? "",
    body: match[2] ?? "",
  }));

/** Runs one command line of the documentation; only `carcase` itself can be called. */
function run(line: string): string {
  const [program, ...args] = line.split(/\s+/);
  expect(program).toBe("carcase");
  const env = { ...process.env, NO_COLOR: "1" };
  const { stdout, stderr } = spawnSync(process.execPath, ["bin/carcase.js", ...args], {
    cwd: root,
    encoding: "utf8",
    env,
  });
  return stdout + stderr;
}

/** What a console block should say: each command with its output, cut where the block was cut. */
function played(body: string): string {
  const entries = body.split(/^(?=\$ )/m);
  return entries
    .map((entry) => {
      const [command = "", ...shown] = entry.trimEnd().split("\n");
      const printed = run(command.slice(2)).trimEnd().split("\n");
      const cut = shown.at(-1) === "…";
      const lines = cut ? [...printed.slice(0, Math.max(1, shown.length - 1)), "…"] : printed;
      return [command, ...lines].map((line) => `${line.trimEnd()}\n`).join("");
    })
    .join("");
}

const blocks = new Map(pages.map((page) => [page, blocksOf(page)]));
const pagesWith = (wanted: (info: string) => boolean): string[] =>
  pages.filter((page) => blocks.get(page)?.some(({ info }) => wanted(info)));

describe("the documentation", () => {
  it.each(pagesWith((info) => info === "console"))("%s prints what the commands print", (page) => {
    if (update) {
      const file = join(root, page);
      const text = readFileSync(file, "utf8");
      writeFileSync(
        file,
        text.replaceAll(fence, (whole, info, body) =>
          info === "console" ? `\`\`\`console\n${played(body)}\`\`\`` : whole,
        ),
      );
    }
    for (const { info, body } of update ? blocksOf(page) : (blocks.get(page) ?? []))
      if (info === "console") expect(body).toBe(played(body));
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

  every(
    "shows library code that runs",
    pagesWith((info) => info === "js run"),
    (page) => {
      for (const { info, body } of blocks.get(page) ?? []) {
        if (info !== "js run") continue;
        const { status, stderr } = spawnSync(process.execPath, ["--input-type=module", "--eval", body], {
          cwd: root,
          encoding: "utf8",
        });
        expect(stderr).toBe("");
        expect(status).toBe(0);
      }
    },
  );

  every("links to files that exist", pages, (page) => {
    const text = readFileSync(join(root, page), "utf8").replaceAll(fence, "");
    const links = [...text.matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)].map((match) => match[1] ?? "");
    const broken = links.filter(
      (link) => !/^https?:/.test(link) && !existsSync(join(root, page, "..", link)),
    );
    expect(broken).toEqual([]);
  });
});
