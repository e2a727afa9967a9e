/** The set-up before tests and demo makes what is missing or has changed, and nothing else. */
import { spawnSync } from "node:child_process";
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { temporaryFolder } from "../cases/temporary.ts";
import { root } from "./run.ts";

function node(args: readonly string[], cwd = root): { out: string; err: string } {
  const { stdout, stderr } = spawnSync(process.execPath, args, { cwd, encoding: "utf8" });
  return { out: stdout, err: stderr };
}

/** A small house in which scripts/build/made.mjs keeps the books. */
function house(): { folder: string; isMade: (stage: string) => boolean; make: (stage: string) => void } {
  const folder = temporaryFolder();
  cpSync(join(root, "scripts/build"), join(folder, "scripts/build"), { recursive: true });
  for (const path of ["src/knowledge", "src/lint/rules/one", "src/generated", "schemas", "dist/program"])
    mkdirSync(join(folder, path), { recursive: true });
  for (const path of ["src/index.ts", "src/knowledge/words.yaml", "src/generated/a.ts", "dist/program/a.cjs"])
    writeFileSync(join(folder, path), "one\n");
  const asked = (code: string): string =>
    node(["--input-type=module", "-e", `import * as made from "./scripts/build/made.mjs"; ${code}`], folder)
      .out;
  return {
    folder,
    isMade: (stage) => asked(`console.log(made.isMade("${stage}"))`) === "true\n",
    make: (stage) => asked(`made.making("${stage}")()`),
  };
}

describe("what was made", () => {
  it("is not there before it is made", () => {
    expect(house().isMade("build")).toBe(false);
  });

  it("stays while only times change, and what nothing is made of", () => {
    const { folder, isMade, make } = house();
    make("generate");
    make("build");
    utimesSync(join(folder, "src/index.ts"), 0, 0);
    writeFileSync(join(folder, "README.md"), "new\n");
    writeFileSync(join(folder, "dist/program/a.cjs.kept"), "kept\n");
    expect([isMade("generate"), isMade("build")]).toEqual([true, true]);
  });

  it.each([
    ["a source of the program", "src/index.ts", [true, false]],
    ["a knowledge file", "src/knowledge/words.yaml", [false, false]],
    ["a rule", "src/lint/rules/one/new-rule.ts", [false, false]],
    ["a script", "scripts/build/made.mjs", [false, false]],
    ["the lock file", "package-lock.json", [false, false]],
    ["the built program", "dist/program/a.cjs", [true, false]],
    // What is generated is a source of the build.
    ["generated code", "src/generated/a.ts", [false, false]],
  ])("is made again after a change of %s", (_, path, expected) => {
    const { folder, isMade, make } = house();
    make("generate");
    make("build");
    // Of the same length, with the same time.
    if (path.startsWith("src/index")) {
      writeFileSync(join(folder, path), "two\n");
      utimesSync(join(folder, path), 0, 0);
    } else appendFileSync(join(folder, path), "\n");
    expect([isMade("generate"), isMade("build")]).toEqual(expected);
  });

  it("is made again when a part of it is gone, or a source", () => {
    const { folder, isMade, make } = house();
    make("build");
    rmSync(join(folder, "dist/program/a.cjs"));
    expect(isMade("build")).toBe(false);
    make("build");
    expect(isMade("build")).toBe(true);
    rmSync(join(folder, "src/index.ts"));
    expect(isMade("build")).toBe(false);
  });

  it("lies where git does not look", () => {
    const { folder, make } = house();
    make("build");
    expect(readdirSync(folder).sort()).toEqual(["dist", "node_modules", "schemas", "scripts", "src"]);
    expect(existsSync(join(folder, "node_modules/.cache/carcase-made.json"))).toBe(true);
  });
});

it("clears what killed builds left, and nothing of one that runs", () => {
  const folder = temporaryFolder();
  const { pid: ended } = spawnSync(process.execPath, ["-e", ""]);
  const names = [
    `dist.next-${ended}`,
    `dist.last-${ended}`,
    `dist.next-${process.pid}`,
    "dist",
    "dist.next-a",
  ];
  for (const name of names) mkdirSync(join(folder, name, "program"), { recursive: true });
  const script = `import { clearLeftovers } from ${JSON.stringify(join(root, "scripts/build/leftovers.mjs"))};
clearLeftovers(${JSON.stringify(folder)});`;
  expect(node(["--input-type=module", "-e", script]).err).toBe("");
  expect(readdirSync(folder).sort()).toEqual(["dist", `dist.next-${process.pid}`, "dist.next-a"]);
});
