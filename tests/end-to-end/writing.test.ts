/** How files are written: not over what somebody saved meanwhile, through to the disk, and with what is left over told. */
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { clearLeftovers, leftoversIn, temporaryName } from "../../src/commands/leftovers.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { every } from "../every.ts";
import { carcase, type Ran } from "./run.ts";

/** The end of the last line is missing. */
const pig = (id: string): string =>
  `format: 1\ncase: ${id}\npig: {sex: female}\nrespiratory:\n  turbinates: {section: premolar-1, tracing: t.svg}`;
const tracing =
  '<svg xmlns="http://www.w3.org/2000/svg"><path id="scale-bar-10-mm" d="M0,0 H100"/><path id="cavity-left" d="M0,10 H100 V110 H0 Z"/></svg>';
const folderOf = (...names: string[]): string => {
  const cwd = temporaryFolder();
  put(cwd, { "t.svg": tracing, ...Object.fromEntries(names.map((name) => [`${name}.yaml`, pig(name)])) });
  return cwd;
};

/** Runs with a script loaded first, which sees every call of `fs`. */
function withScript(script: string, args: readonly string[], cwd: string): Ran {
  const file = join(temporaryFolder(), "first.cjs");
  writeFileSync(file, script);
  return carcase(args, { cwd, env: { NODE_OPTIONS: `--require "${file}"`, CI: "" } });
}

/** When the first file has been renamed, somebody else saves (or removes) another one. */
const meanwhile = (does: string): string => `
  const fs = require("node:fs");
  const { renameSync } = fs;
  fs.renameSync = (from, to) => {
    renameSync(from, to);
    fs.renameSync = renameSync;
    ${does};
  };`;

describe("what somebody saved since it was read", () => {
  every(
    "is left as it is, which is said; the other files are written, and the exit code is 2",
    [
      [["lint", "--fix", "."], 'fs.appendFileSync("b.yaml", "\\nnote: saved just now\\n")', "saved just now"],
      [
        ["measure", "--write", "."],
        'fs.appendFileSync("b.yaml", "\\nnote: saved just now\\n")',
        "saved just now",
      ],
      [["lint", "--fix", "."], 'fs.rmSync("b.yaml")', undefined],
      [
        ["lint", "--fix", "."],
        'fs.rmSync("b.yaml"); fs.symlinkSync("other.txt", "b.yaml")',
        "something else",
      ],
    ] as const,
    ([args, does, left]) => {
      const cwd = folderOf("a", "b", "c");
      put(cwd, { "other.txt": "something else\n" });
      const { code, err } = withScript(meanwhile(does), args, cwd);
      expect(code).toBe(2);
      expect(err).toContain(
        "carcase: b.yaml was changed by somebody else since it was read, and is left as it is; run the command again\n",
      );
      expect(err.match(/b\.yaml/g)).toHaveLength(1);
      expect(existsSync(join(cwd, "b.yaml"))).toBe(left !== undefined);
      if (left !== undefined) expect(readFileSync(join(cwd, "b.yaml"), "utf8")).toContain(left);
      for (const name of ["a", "c"])
        expect(readFileSync(join(cwd, `${name}.yaml`), "utf8")).not.toBe(pig(name));
      expect(readdirSync(cwd).filter((name) => name.startsWith("."))).toEqual([]);
    },
    ([args, does]) => `${args.join(" ")}: ${does}`,
  );

  it("into a baseline is not taken out of it", () => {
    const cwd = folderOf("a");
    const entry = (rule: string) => ({ file: "a.yaml", rule, path: "respiratory", count: 1 });
    const baseline = (...findings: object[]): string =>
      `${JSON.stringify({ format: 1, paths: ["."], findings }, null, 2)}\n`;
    const saved = baseline(entry("lobe-missing"), entry("skipped-organ"));
    const script = `
      const fs = require("node:fs");
      const { writeFileSync } = fs;
      fs.writeFileSync = (to, ...rest) => {
        writeFileSync(to, ...rest);
        writeFileSync("known.json", ${JSON.stringify(saved)});
      };`;
    put(cwd, { "known.json": baseline(entry("lobe-missing")) });
    const { code, err } = withScript(script, ["lint", "--baseline", "known.json", "."], cwd);
    expect(code).toBe(1);
    expect(err).toContain(
      "known.json was changed by somebody else since it was read, and is left as it is\n",
    );
    expect(readFileSync(join(cwd, "known.json"), "utf8")).toBe(saved);
  });

  it("in the place of a result is kept, too", () => {
    const cwd = folderOf("a");
    const script = `
      const fs = require("node:fs");
      const { writeFileSync } = fs;
      fs.writeFileSync = (to, ...rest) => {
        writeFileSync(to, ...rest);
        writeFileSync("found.txt", "Called the farm.");
      };`;
    const { code, err } = withScript(script, ["lint", "-o", "found.txt", "."], cwd);
    expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining("nothing was written") });
    expect(readFileSync(join(cwd, "found.txt"), "utf8")).toBe("Called the farm.");
  });
});

it("a file is on the disk before it takes its place, and the folder after it", () => {
  const cwd = folderOf("a");
  const script = `
    const fs = require("node:fs");
    const names = new Map();
    const log = (text) => process.stderr.write("CALL " + text + "\\n");
    const { openSync, fsyncSync, renameSync } = fs;
    fs.openSync = (file, ...rest) => {
      const open = openSync(file, ...rest);
      names.set(open, String(file).endsWith(".tmp") ? "file" : "folder");
      return open;
    };
    fs.fsyncSync = (open) => (log("fsync " + names.get(open)), fsyncSync(open));
    fs.renameSync = (...both) => (log("rename"), renameSync(...both));`;
  const { err } = withScript(script, ["lint", "--fix", "."], cwd);
  expect(err.match(/^CALL .*$/gm)).toEqual(["CALL fsync file", "CALL rename", "CALL fsync folder"]);
});

describe("what a run that was cut off leaves over", () => {
  const over = spawnSync(process.execPath, ["-e", ""]).pid;
  const ofRun = (pid: number): string => temporaryName("a.yaml").replace(`-${process.pid}-`, `-${pid}-`);
  const elsewhere = temporaryName("a.yaml").replace(/carcase-[0-9a-f]{6}/, "carcase-000000");
  const old = temporaryName("b.yaml");
  const leaveAll = (cwd: string): void => {
    put(cwd, { [ofRun(over)]: "half", [temporaryName("a.yaml")]: "running", [elsewhere]: "", [old]: "" });
    utimesSync(join(cwd, old), new Date(), new Date(Date.now() - 25 * 60 * 60 * 1000));
  };

  it("is known by its process, and by its age where that cannot be asked", () => {
    const cwd = temporaryFolder();
    leaveAll(cwd);
    put(cwd, { [`${ofRun(over).replace(".a.yaml", ".pigs-01-02")}/pig-01.yaml`]: "half a table" });
    symlinkSync("a.yaml", join(cwd, ofRun(over).replace(".a.yaml", ".link")));
    put(cwd, { ".a.yaml.carcase-3f90ab-x-1.tmp": "", "b.yaml.4711-lx1.tmp": "", ".carcase.tmp": "" });
    const before = readdirSync(cwd);
    const left = [ofRun(over), old].map((name) => name.replace(/-[a-z0-9]+\.tmp$/, "-"));
    const found = leftoversIn(cwd);
    expect(found).toHaveLength(3);
    for (const start of left) expect(found.some((file) => file.startsWith(join(cwd, start)))).toBe(true);
    expect(clearLeftovers(cwd)).toEqual(found);
    expect(clearLeftovers(cwd)).toEqual([]);
    expect(readdirSync(cwd)).toEqual(before.filter((name) => !found.includes(join(cwd, name))));
    expect(leftoversIn(join(cwd, "nowhere"))).toEqual([]);
  });

  it("has a name that every file system takes and no command reads", () => {
    const cwd = temporaryFolder();
    const name = `${"🐖é".repeat(40)}.yaml`;
    expect(Buffer.byteLength(temporaryName(name))).toBeLessThan(255);
    put(cwd, { [temporaryName(name)]: "case: [", "a.yaml": "format: 1\ncase: x-1\n" });
    expect(carcase(["lint", "."], { cwd }).out).toMatch(/^1 case: /m);
    expect(carcase(["lint", "*.tmp", ".*"], { cwd }).out).toContain("no case was read");
  });

  it("is told by lint, and cleared away by whatever writes in its folder", () => {
    const cwd = folderOf("a");
    const leave = (): string => {
      const name = ofRun(over);
      put(cwd, { [name]: "half" });
      return name;
    };
    let name = leave();
    expect(carcase(["lint", "."], { cwd }).err).toBe(
      `carcase: ${name}, left over from a run that was cut off; the records are whole. Delete what is left over, or carcase lint --fix does.\n`,
    );
    expect(carcase(["lint", "--fix", "--dry-run", "."], { cwd }).err).not.toContain("cleared away");
    expect(carcase(["score", "--format", "csv", "."], { cwd }).err).toBe("");
    expect(existsSync(join(cwd, name))).toBe(true);
    for (const args of [
      ["lint", "--fix", "."],
      ["lint", "--fix", "."],
      ["measure", "--write", "."],
      ["lint", "-o", "found.txt", "."],
      ["lint", "--write-baseline", "known.json", "."],
      ["plan", "say", "--pigs", "12", "-o", "plan.txt"],
    ]) {
      expect(carcase(args, { cwd }).err, args.join(" ")).toContain(
        `carcase: cleared away ${name}, left over from a run that was cut off\n`,
      );
      expect(existsSync(join(cwd, name))).toBe(false);
      name = leave();
    }
    const second = leave();
    expect(carcase(["lint", "--fix", "."], { cwd }).err).toMatch(
      /^carcase: cleared away 2 files such as \.a\.yaml\.carcase-.*, left over from a run that was cut off$/m,
    );
    expect(existsSync(join(cwd, second))).toBe(false);
  });
});
