/** What V8 kept of compiling the program: used where it fits, refused without harm where it does not. */
import { spawnSync } from "node:child_process";
import { cpSync, readdirSync, rmSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { temporaryFolder } from "../cases/temporary.ts";
import { carcase, root } from "./run.ts";

const copy = temporaryFolder();
const program = join(copy, "dist/program");
const args = ["lint", "--format", "json", join(root, "cases-example/incomplete/lobe-missing.yaml")];
const plain = carcase(args);
const kept = () => readdirSync(program).filter((name) => name.endsWith(".kept"));

function lintInCopy(flags: readonly string[] = []) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [...flags, join(copy, "bin/carcase.js"), ...args],
    { cwd: root, encoding: "utf8" },
  );
  return { code: status, out: stdout, err: stderr };
}

beforeAll(() => {
  for (const part of ["bin", "dist", "package.json"])
    cpSync(join(root, part), join(copy, part), { recursive: true });
  symlinkSync(join(root, "node_modules"), join(copy, "node_modules"), "junction");
});
afterAll(() => rmSync(copy, { recursive: true }));

describe("code kept from the build", () => {
  it("spares compiling anything for the commands it was kept from", () => {
    const script = `const {loadProgram} = require(${JSON.stringify(join(root, "bin/load-program"))});
let anew = 0;
loadProgram(() => anew++);
process.on("exit", () => process.stderr.write(String(anew)));`;
    const ran = spawnSync(process.execPath, ["-e", script, "--", "lint", "cases-example/alder-farm"], {
      cwd: root,
      encoding: "utf8",
    });
    expect(ran).toMatchObject({ status: 0, stderr: "0" });
  });

  it("is refused by a V8 with other settings, with the same result", () => {
    expect(kept().length).toBeGreaterThan(5);
    expect(lintInCopy(["--no-lazy"])).toEqual(plain);
  });

  it("is refused when it is cut off or something else, with the same result", () => {
    for (const [i, name] of kept().entries())
      if (i % 2 === 0) truncateSync(join(program, name), 40);
      else writeFileSync(join(program, name), "not code");
    expect(lintInCopy()).toEqual(plain);
  });

  it("may be missing", () => {
    for (const name of kept()) rmSync(join(program, name));
    expect(lintInCopy()).toEqual(plain);
  });
});
