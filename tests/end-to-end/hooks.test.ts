/** The hooks for git: their fields, and their entries run in a repository as a hook runner would run them. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { parse } from "yaml";
import { carcase, root } from "./run.ts";

interface Hook {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly entry: string;
  readonly language: string;
  readonly files: string;
  readonly types: readonly string[];
  readonly pass_filenames: boolean;
}
const hooks: Hook[] = parse(readFileSync(join(root, ".pre-commit-hooks.yaml"), "utf8"));
const model = readFileSync(join(root, "tests/fixtures/birch-farm/2026-04-20/pig-01.yaml"), "utf8");
const temporary = mkdtempSync(join(tmpdir(), "carcase-hooks-"));
afterAll(() => rmSync(temporary, { recursive: true }));

/** A repository with one case, staged. */
function repository(name: string, text: string): string {
  const cwd = join(temporary, name);
  mkdirSync(join(cwd, ".github"), { recursive: true });
  writeFileSync(join(cwd, "pig.yaml"), text);
  writeFileSync(join(cwd, ".github/work.yaml"), "on: push\n");
  for (const args of [
    ["init", "--quiet"],
    ["add", "."],
  ])
    spawnSync("git", args, { cwd });
  return cwd;
}

/** What a hook runner does: the staged files that fit, and the entry with them where it takes names. */
function runHook(hook: Hook, cwd: string) {
  const staged = spawnSync("git", ["diff", "--cached", "--name-only"], { cwd, encoding: "utf8" }).stdout;
  const files = staged.split("\n").filter((name) => new RegExp(hook.files).test(name));
  expect(files).toContain("pig.yaml");
  const [program, ...args] = hook.entry.split(" ");
  expect(program).toBe("carcase");
  return carcase(hook.pass_filenames ? [...args, ...files] : args, { cwd, env: { PRE_COMMIT: "1" } });
}

describe.each(hooks.map((hook) => [hook.id, hook] as const))("hook %s", (_, hook) => {
  it("has the fields of the format and no other", () => {
    expect(Object.keys(hook).sort()).toEqual(
      ["description", "entry", "files", "id", "language", "name", "pass_filenames", "types"].sort(),
    );
    expect(hook.language).toBe("node");
    expect(hook.types).toEqual(["yaml"]);
    const { bin, scripts } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
    // Of what npm fetches by git, as newer runners let it, it runs this script and not prepack.
    expect(scripts.prepare).toBe(scripts.pretest);
    expect(Object.keys(bin)).toContain(hook.entry.split(" ")[0]);
  });

  it("passes a complete case and stops an incomplete one", () => {
    expect(runHook(hook, repository(`${hook.id}-good`, model))).toMatchObject({ code: 0, err: "" });
    const bad = runHook(hook, repository(`${hook.id}-bad`, model.replace("  spleen: normal\n", "")));
    expect(bad.code).toBe(1);
    expect(bad.out).toContain("[skipped-organ]");
  });
});
