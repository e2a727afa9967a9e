/** An open alarm is said also where the command ends with an error of usage: nobody misses it for a typing error. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { temporaryFolder } from "../cases/temporary.ts";
import { carcase, root } from "./run.ts";

const notice = "STOP: this may be a notifiable disease, and the authority";
const model = readFileSync(join(root, "tests/fixtures/birch-farm/2026-04-20/pig-01.yaml"), "utf8");

function alarmed(files: Readonly<Record<string, string>> = {}): string {
  const folder = temporaryFolder();
  writeFileSync(join(folder, "pig.yaml"), model.replace("vesicles: none", "vesicles: seen"));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

describe("the notice of an open alarm", () => {
  it.each([
    [[], { "carcase.yaml": "format: 1\nrules: {treated-pigs: note}\n" }, "Did you mean treated-pig?"],
    [["--baseline", "known.json"], {}, "there is no baseline"],
    [["--baseline", "known.json"], { "known.json": "{" }, "is not a baseline"],
    [["--write-baseline", "known.json"], { "known.json": "{}" }, "is not a baseline"],
    [["--write-baseline", "known.json", "--only", "skipped-organ"], {}, "made by all rules"],
    [["--also", "json=no/such/folder.json"], {}, "cannot write"],
    [["-o", "no/such/folder.txt"], {}, "cannot write"],
    [["--fix", "--config", "nowhere.yaml"], {}, "nothing was fixed"],
  ])("comes before the error of %j", (args, files, error) => {
    for (const format of ["text", "json"]) {
      const { code, out, err } = carcase(["lint", "--format", format, ...args], { cwd: alarmed(files) });
      expect({ code, out }).toEqual({ code: 2, out: "" });
      expect(err.split(notice)).toHaveLength(2);
      expect(err.indexOf(notice)).toBeLessThan(err.indexOf(error));
    }
  });

  it.each([
    ["score", ["--scale", "no-such-scale"]],
    ["herd", ["--indicator", "no-such-indicator"]],
    ["compare", ["--scale", "no-such-scale"]],
  ])("comes before an error of %s", (command, args) => {
    const { code, err } = carcase([command, ...args], { cwd: alarmed() });
    expect(err.startsWith(notice)).toBe(true);
    expect(code).toBe(2);
  });

  it.runIf(existsSync("/dev/full"))("goes to standard error where the disk is full", () => {
    const { code, err } = carcase(["lint", "."], { cwd: alarmed(), stdout: "/dev/full" });
    expect(code).toBe(2);
    expect(err.startsWith(notice)).toBe(true);
    expect(err.trimEnd().split("\n").at(-1)).toBe(
      "carcase: cannot write the result to standard output: the disk is full (ENOSPC)",
    );
  });

  it("stands beside the diff of a dry run, and once where files are fixed", () => {
    const cwd = alarmed();
    const { out, err } = carcase(["lint", "--fix", "--dry-run"], { cwd });
    expect(err.split(notice)).toHaveLength(2);
    expect(out).not.toContain(notice);
    const fixed = carcase(["lint", "--fix"], { cwd });
    expect(`${fixed.out}${fixed.err}`.split(notice)).toHaveLength(2);
  });

  it("is not said without an alarm", () => {
    const folder = alarmed({ "pig.yaml": model });
    expect(carcase(["lint", "--baseline", "no.json"], { cwd: folder }).err).toBe(
      "carcase: there is no baseline no.json; carcase lint --write-baseline no.json makes one\n",
    );
  });
});
