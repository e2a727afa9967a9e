/** `carcase migrate` with a format 2 that does not exist: what it writes and what it refuses. */
import { spawnSync } from "node:child_process";
import { readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { isEqual, tree } from "../end-to-end/kill.ts";
import { carcase, wide } from "../end-to-end/run.ts";
import { buildProgram, env, old, program, young } from "./archive.ts";

beforeAll(buildProgram);

function laid(more: Record<string, string> = {}): string {
  const folder = temporaryFolder();
  put(folder, { ...old, ...more });
  return folder;
}

function migrate(cwd: string, ...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    cwd,
    encoding: "utf8",
    env: { ...process.env, ...env },
  });
  return { code: status, out: stdout, err: stderr };
}

describe("carcase migrate", () => {
  it("writes each kind of file anew, and nothing that is not ours; once", () => {
    const folder = laid();
    expect(migrate(folder)).toEqual({
      code: 0,
      out: "",
      err: [
        "carcase: 7 files written anew in format 2",
        "carcase: An ear tag is a mark, a castrate is neutered, and what was told is in the visit.",
        "",
      ].join("\n"),
    });
    expect(isEqual(tree(folder), young)).toBe(true);
    expect(migrate(folder)).toEqual({
      code: 0,
      out: "",
      err: "carcase: nothing to do: 7 files are of format 2, the newest that this carcase knows\n",
    });
    expect(isEqual(tree(folder), young)).toBe(true);
  });

  it("shows what it would write", () => {
    const folder = laid();
    const { code, out } = migrate(folder, "--dry-run");
    expect(code).toBe(1);
    expect(out).toContain(
      "-pig: {tag: '7', sex: castrate} # red\n+pig: {mark: '7', sex: neutered male} # red\n",
    );
    expect(isEqual(tree(folder), old)).toBe(true);
  });

  it.each<[string, Record<string, string>, string]>([
    [
      "a line that cannot be changed",
      { "b.yaml": smallCase("b", "pig: {tag: '7', mark: '8'}\n") },
      "b.yaml:3: pig.tag gets another name, mark: the line is written in a way",
    ],
    [
      "a file that cannot be read",
      { "b.yaml": "format: 1\ncase: [\n" },
      "b.yaml: it cannot be read; carcase lint says why",
    ],
    [
      "a file of a newer format",
      { "b.yaml": "format: 3\ncase: b\n" },
      "b.yaml: format: 3 is newer than what this carcase reads, format 2.",
    ],
    [
      "a file without a format",
      { "b.yaml": "case: b\n" },
      "b.yaml:1: it does not say its format; carcase lint says how",
    ],
  ])("writes nothing where there is %s", (_, more, message) => {
    const folder = laid(more);
    const { code, err } = migrate(folder);
    expect(code).toBe(2);
    expect(err).toContain(message);
    expect(err).toContain("nothing was written; put right what is said above first\n");
    expect(isEqual(tree(folder), { ...old, ...more })).toBe(true);
  });

  it("passes over what is broken and not ours, and says where nothing is", () => {
    const folder = laid({ "chart.yaml": "a: {{ b }}\n" });
    expect(migrate(folder).code).toBe(0);
    expect(migrate(folder, "none")).toMatchObject({
      code: 2,
      err: expect.stringContaining('there is no file at "none"'),
    });
  });

  it("writes through no link that leads out", () => {
    const folder = laid();
    const outside = join(temporaryFolder(), "pig.yaml");
    writeFileSync(outside, smallCase("o"));
    symlinkSync(outside, join(folder, "a/pig-09.yaml"));
    expect(migrate(folder)).toMatchObject({
      code: 2,
      err: expect.stringContaining("a/pig-09.yaml: it lies outside"),
    });
    expect(readFileSync(outside, "utf8")).toBe(smallCase("o"));
  });

  it("says what is to be signed again", () => {
    const folder = laid();
    carcase(["seal", "a/pig-01.yaml", "--by", "A. Berg"], { cwd: folder });
    expect(migrate(folder, "a").err).toContain(
      '1 sealed record among them: carcase seal --amend --by NAME --because "format 2" signs them anew',
    );
  });

  it("has nothing to do today", () => {
    const folder = laid();
    expect(carcase(["migrate"], { cwd: folder, env: wide })).toEqual({
      code: 0,
      out: "",
      err: "carcase: nothing to do: 7 files are of format 1, the newest that this carcase knows\n",
    });
  });
});
