/** A result never replaces a record, a tracing or a photograph, nor a pipe, a device or a link. */
import { spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { temporaryFolder } from "../cases/temporary.ts";
import { carcase, root } from "./run.ts";

const day = join(root, "tests/fixtures/birch-farm/2026-04-20");

describe("a file for results", () => {
  it.each(["visit.yaml", "pig-01.yaml", "snout.svg", "lung.geojson", "photo.JPG"])("is not %s", (name) => {
    const folder = join(temporaryFolder(), "2026-04-20");
    mkdirSync(folder, { recursive: true });
    cpSync(day, folder, { recursive: true });
    const file = join(folder, name);
    if (!name.endsWith(".yaml")) writeFileSync(file, "drawn by hand");
    const before = readFileSync(file, "utf8");
    for (const args of [
      ["lint", "-o", file, folder],
      ["lint", "--also", `sarif=${file}`, folder],
      ["score", "-o", file, folder],
    ]) {
      const { code, err } = carcase(args);
      expect([code, err]).toEqual([2, expect.stringContaining("nothing was written")]);
      expect(readFileSync(file, "utf8")).toBe(before);
    }
  });

  it("may be an earlier result", () => {
    const file = join(temporaryFolder(), "result.json");
    const args = ["lint", "--format", "json", "-o", file, "tests/fixtures/birch-farm"];
    expect(carcase(args).code).toBe(0);
    const first = readFileSync(file, "utf8");
    expect(carcase(args).code).toBe(0);
    expect(readFileSync(file, "utf8")).toBe(first);
  });

  it.each([
    [["lint", "-o", "new.yaml"], "no result is YAML"],
    [["lint", "--also", "text=new.yml"], "no result is YAML"],
    [["lint", "--write-baseline", "new.yaml"], "no result is YAML"],
    [["score", "-o", "new.yaml"], "no result is YAML"],
    [["lint", "--write-baseline", "k.json", "-o", "k.json"], "another result goes to that file"],
    [["lint", "--write-baseline", "k.json", "--also", "json=./k.json"], "another result goes to that file"],
    [["lint", "-o", "../2026-04-20/k.json", "--also", "json=k.json"], "another result goes to that file"],
    [["lint", "--also", "json=-"], "write --format json"],
    [["lint", "-o", "no/such/folder"], "its folder does not exist"],
    [["lint", "-o", ".."], "it is a folder"],
  ])("%j is refused, and nothing is there afterwards", (args, says) => {
    const cwd = join(temporaryFolder(), "2026-04-20");
    cpSync(day, cwd, { recursive: true });
    const before = readdirSync(cwd);
    const { code, err } = carcase([...args, "."], { cwd });
    expect(err).toContain(says);
    expect(code).toBe(2);
    expect(readdirSync(cwd)).toEqual(before);
  });

  it.each(["-", "/dev/stdout"])("%s is standard output", (name) => {
    const cwd = temporaryFolder();
    const args = ["lint", "--format", "json", day];
    expect(carcase([...args, "-o", name], { cwd })).toEqual(carcase(args, { cwd }));
    expect(readdirSync(cwd)).toEqual([]);
  });

  it("may be behind a link, which stays, whether the file is there or not", () => {
    const cwd = temporaryFolder();
    writeFileSync(join(cwd, "there.txt"), "old");
    symlinkSync("there.txt", join(cwd, "a.txt"));
    symlinkSync("later.txt", join(cwd, "b.txt"));
    for (const [link, file] of [
      ["a.txt", "there.txt"],
      ["b.txt", "later.txt"],
    ] as const) {
      carcase(["lint", "-q", "-o", link, day], { cwd });
      expect(lstatSync(join(cwd, link)).isSymbolicLink()).toBe(true);
      expect(readFileSync(join(cwd, file), "utf8")).toMatch(/^1 case: /m);
    }
    expect(readdirSync(cwd)).toHaveLength(4);
  });

  it.skipIf(process.platform === "win32").each([
    ["-o", "pipe"],
    ["--also", "text=pipe"],
  ])("may be a pipe, which stays one: %s %s", (option, value) => {
    const cwd = temporaryFolder();
    const program = join(root, "bin/carcase.js");
    const script = 'mkfifo pipe; cat pipe > got & "$0" "$@"; wait';
    spawnSync("sh", ["-c", script, process.execPath, program, "lint", "-q", option, value, day], {
      cwd,
      timeout: 30_000,
    });
    expect(readFileSync(join(cwd, "got"), "utf8")).toMatch(/^1 case: /m);
    expect(lstatSync(join(cwd, "pipe")).isFIFO()).toBe(true);
    expect(readdirSync(cwd).sort()).toEqual(["got", "pipe"]);
  });
});

describe.runIf(existsSync("/dev/full"))("a full disk", () => {
  it.each([[["lint", "-q"]], [["lint", "--format", "json"]], [["score"]], [["explain"]]])(
    "ends %j with one line and 2",
    (args) => {
      const ran = carcase(args, { cwd: day, stdout: "/dev/full" });
      expect(ran).toEqual({
        code: 2,
        out: "",
        err: "carcase: cannot write the result to standard output: the disk is full (ENOSPC)\n",
      });
    },
  );

  it("under standard error leaves the result whole, and ends with 2", () => {
    const args = ["lint", "--write-baseline", join(temporaryFolder(), "known.json"), day];
    const whole = carcase(args);
    expect(whole.code).toBe(0);
    const { code, out } = carcase(args, { stderr: "/dev/full" });
    expect({ code, out }).toEqual({ code: 2, out: whole.out });
  });
});
