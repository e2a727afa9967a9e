/** The results of parts of an archive, put together, are to the byte those of one run. */
import { cpSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { carcase, root } from "./run.ts";

const folder = temporaryFolder();
const run = (...args: readonly string[]) => carcase(args, { cwd: folder });

beforeAll(() => {
  cpSync(join(root, "cases-example/carcase.yaml"), join(folder, "carcase.yaml"));
  for (const name of ["maple-farm", "incomplete", "alder-farm"])
    cpSync(join(root, "cases-example", name), join(folder, name), { recursive: true });
  cpSync(join(folder, "alder-farm"), join(folder, "beech-farm"), { recursive: true });
  for (const name of readdirSync(join(folder, "beech-farm"), { recursive: true, encoding: "utf8" })) {
    const file = join(folder, "beech-farm", name);
    if (name.endsWith(".yaml"))
      writeFileSync(file, readFileSync(file, "utf8").replaceAll("alder-2", "beech-2"));
  }
  put(folder, {
    "loose.yaml": smallCase("loose", "external: {snout: [{process: vesicle}]}\n"),
    "broken/visit.yaml": "a: [\n",
    "broken/b.yaml": "b: {\n",
    "other-tool/workflow.yaml": "on: push\n",
    "own/carcase.yaml": "format: 1\nscales: [../scales]\nrules: {skipped-organ: note}\n",
    "own/x/a.yaml": smallCase("own", "accepted: [{rule: treated-pig, because: none was}]\n"),
    "scales/gap.yaml": "format: 1\nid: our-gap\norgan: respiratory.turbinates\n",
  });
});

function partsOf(command: readonly string[], of: number): string[] {
  return Array.from({ length: of }, (_, index) => {
    const file = `part-${index + 1}.json`;
    rmSync(join(folder, file), { force: true });
    const { code, err } = run(
      ...command,
      ...["--format", "json", "-o", file, "--shard", `${index + 1}/${of}`],
    );
    expect(code, err).not.toBe(null);
    return file;
  });
}

describe("parts of an archive", () => {
  it.each([
    ["lint", "."],
    ["lint", "--threads", "2", "alder-farm", "beech-farm", "own"],
    ["lint", "--only", "skipped-organ", "."],
    ["lint", "--fail-on", "note", "beech-farm"],
    ["herd", "--indicator", "snout-grade-2-up,pleurisy", "--scale", "maff-1978", "."],
    [
      "herd",
      "--indicator",
      "pleurisy",
      "--scale",
      "dottori-2007",
      "--by",
      "visit,group",
      "--combine",
      "alder-farm",
      "beech-farm",
    ],
    [
      "herd",
      "--indicator",
      "pleurisy",
      "--scale",
      "christensen-1999",
      "--bootstrap",
      "--by",
      "visit",
      "beech-farm",
    ],
  ])("give together what one run gives: %s %s %s %s", (...command) => {
    const expected = run(...command, "--format", "json");
    expect(expected.out.length).toBeGreaterThan(1000);
    for (const of of [1, 6]) {
      const { code, out, err } = run("merge", ...partsOf(command, of).toReversed());
      expect(err).toBe("");
      expect(out, `${of} parts`).toBe(expected.out);
      if (command[0] === "lint") expect(code).toBe(expected.code);
    }
  });

  it("hold each farm in one part, and in the same one whatever else is there", () => {
    const shownIn = (file: string): Set<string> => {
      const { result } = JSON.parse(readFileSync(join(folder, file), "utf8")) as {
        result: { completeness: { file: string }[] };
      };
      return new Set(result.completeness.map((one) => one.file.split("/")[0] ?? ""));
    };
    const placed = (...paths: string[]): Map<string, number> =>
      new Map(
        partsOf(["lint", ...paths], 8).flatMap((file, index) =>
          [...shownIn(file)].map((name) => [name, index] as const),
        ),
      );
    const all = placed(".");
    expect(all.size).toBeGreaterThan(5);
    expect(new Set(all.values()).size).toBeGreaterThan(2);
    for (const [name, index] of placed("beech-farm", "maple-farm")) expect(all.get(name)).toBe(index);
  });

  it("tell the copy of a case that lies in another part", () => {
    for (const name of ["q", "r", "s", "t"]) put(folder, { [`${name}/a.yaml`]: smallCase("twice") });
    const expected = run("lint", "--format", "json", ".");
    expect(expected.out.match(/is already the case of q\/a.yaml/g)).toHaveLength(3);
    const parts = partsOf(["lint", "."], 8);
    expect(run("merge", ...parts).out).toBe(expected.out);
    renameSync(join(folder, "r/a.yaml"), join(folder, "r/gone.yml"));
    const lost = run("merge", ...parts);
    expect(lost).toMatchObject({ code: 2, out: "" });
    expect(lost.err).toContain('case: "twice" is the case of');
    const counted = run(
      "merge",
      ...partsOf(["herd", "--indicator", "pleurisy", "--scale", "dottori-2007", "."], 8),
    );
    expect(counted).toMatchObject({ code: 2, out: "" });
    expect(counted.err).toContain("no pig is counted twice");
    for (const name of ["q", "r", "s", "t"]) rmSync(join(folder, name), { recursive: true });
  });

  it("are refused where they do not make a whole", () => {
    const [first = "", second = "", third = ""] = partsOf(["lint", "."], 3);
    const refused = (...files: string[]): string => {
      const { code, out, err } = run("merge", ...files);
      expect({ code, out }).toEqual({ code: 2, out: "" });
      return err;
    };
    expect(refused(first, third)).toContain("part 2 of 3 is missing");
    expect(refused(first, second, third, second)).toContain("name each part once");
    expect(refused("carcase.yaml")).toContain("is no part of a result");
    expect(refused("nowhere.json")).toContain("nowhere.json");
    writeFileSync(join(folder, "one.json"), run("lint", "--format", "json", ".").out);
    expect(refused("one.json")).toContain("is no part of a result");
    const text = readFileSync(join(folder, second), "utf8");
    writeFileSync(join(folder, "changed.json"), text.replace('"due": ', '"due": 1'));
    expect(refused(first, "changed.json", third)).toContain("was changed");
    writeFileSync(join(folder, "changed.json"), text.slice(0, -20));
    expect(refused(first, "changed.json", third)).toContain("is no part of a result");
    renameSync(join(folder, first), join(folder, "kept.json"));
    partsOf(["lint", "--only", "skipped-organ", "."], 3);
    expect(refused("kept.json", second, third)).toContain("parts of different runs");
  });

  it.each([
    [["lint", "--shard", "3", "--format", "json"], "is no part such as 3/16"],
    [["lint", "--shard", "0/4", "--format", "json"], "counted from 1"],
    [["lint", "--shard", "5/4", "--format", "json"], "counted from 1"],
    [["lint", "--shard", "1/4"], "add --format json"],
    [["lint", "--shard", "1/4", "--format", "json", "--baseline", "b.json"], "--shard and --baseline"],
    [["herd", "--shard", "1/4", "--format", "json"], "--indicator and --scale"],
    [
      [
        "herd",
        "--shard",
        "1/4",
        "--format",
        "json",
        "--indicator",
        "pleurisy",
        "--scale",
        "maff-1978",
        "--by",
        "group",
      ],
      "add visit to --by",
    ],
  ])("are refused before anything is read: %s", (args, why) => {
    const { code, out, err } = run(...args);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain(why);
  });

  it("name an indicator that no pig knows", () => {
    const { code, err } = run(
      "merge",
      ...partsOf(["herd", "--indicator", "pleurisi", "--scale", "maff-1978", "."], 2),
    );
    expect(code).toBe(2);
    expect(err).toContain('"pleurisi"');
  });
});
