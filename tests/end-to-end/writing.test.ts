/** How files are written: not over what somebody saved meanwhile. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
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
