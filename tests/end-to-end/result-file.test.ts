/** A result replaces an earlier one and no other file: no record, tracing, photograph or table, no pipe, device or link. */
import { spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { unlessEarlier } from "../../src/commands/earlier-result.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { every } from "../every.ts";
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
    writeFileSync(join(cwd, "there.txt"), "3 cases: 2 errors in 1 file\n");
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

describe("a file that a case names", () => {
  /** A case that names tracing and photograph, which are JSON and not there yet. */
  const farm = (): string => {
    const cwd = temporaryFolder();
    put(cwd, {
      "day/pig.yaml":
        "format: 1\ncase: x-1\nrespiratory:\n  turbinates: {section: premolar-1, tracing: ../drawn/t.json}\nphotos:\n  - {file: p.json}\n",
      "drawn/t.json": '{"findings": "drawn by hand"}',
      "day/p.json": "",
      "plain.txt": "format: 1\ncase: x-2\n",
      "carcase.yaml": "format: 1\nscales: [shipped, ./our.txt]\n",
    });
    const page = readFileSync(join(root, "docs/scales/house-scales.md"), "utf8");
    const scale = [...page.matchAll(/```yaml[^\n]*\n([\s\S]*?)```/g)].find(([text]) =>
      text.includes("id: our-gap"),
    );
    put(cwd, { "our.txt": scale?.[1] ?? expect.fail() });
    linkSync(join(cwd, "drawn/t.json"), join(cwd, "hard.json"));
    symlinkSync("drawn/t.json", join(cwd, "soft.json"));
    symlinkSync("drawn", join(cwd, "linked"));
    return cwd;
  };
  const contents = (cwd: string): string[] =>
    readdirSync(cwd, { recursive: true, encoding: "utf8" })
      .sort()
      .map((name) =>
        lstatSync(join(cwd, name)).isFile() ? `${name}: ${readFileSync(join(cwd, name), "utf8")}` : name,
      );
  const tracing = "day/pig.yaml names that file in line 4; nothing was written";

  every(
    "is refused for every result and under every name",
    [
      [["measure", "-o", "drawn/t.json", "day"], tracing],
      [["measure", "--write", "-o", "./drawn/../drawn/t.json", "day/pig.yaml"], tracing],
      [["lint", "-o", "hard.json", "."], tracing],
      [["lint", "--format", "json", "--fix", "-o", "soft.json", "."], tracing],
      [["lint", "--threads", "2", "--also", "json=linked/t.json", "."], tracing],
      [["lint", "--write-baseline", "drawn/t.json", "."], "drawn/t.json"],
      [["score", "--format", "json", "-o", "day/p.json", "."], "day/pig.yaml names that file in line 6"],
      [["herd", "--format", "csv", "-o", "day/p.json", "day"], "day/pig.yaml names that file in line 6"],
      [["compare", "-o", "soft.json", "."], tracing],
      [["agree", "-o", "soft.json", "."], tracing],
      [["lint", "--also", "text=our.txt", "."], "that file is a scale of the settings"],
      [["score", "-o", "our.txt", "."], "that file is a scale of the settings"],
      [["lint", "-o", "plain.txt", "plain.txt"], "read by this very command"],
      [["lint", "-o", "plain.txt", "--stdin-filename", "plain.txt", "-"], "read by this very command"],
    ] as const,
    ([args, says]) => {
      const cwd = farm();
      const before = contents(cwd);
      const { code, out, err } = carcase(args, { cwd, input: "format: 1\ncase: x-3\n" });
      expect(err).toContain(says);
      expect({ code, out }).toEqual({ code: 2, out: "" });
      expect(contents(cwd)).toEqual(before);
    },
    ([args]) => args.join(" "),
  );

  it("is refused before it is there, too", () => {
    const cwd = farm();
    put(cwd, { "day/pig.yaml": "format: 1\ncase: x-1\nphotos: [later.txt]\n" });
    const { code, err } = carcase(["lint", "-o", "day/later.txt", "day"], { cwd });
    expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining("names that file in line 3") });
    expect(existsSync(join(cwd, "day/later.txt"))).toBe(false);
  });

  it.skipIf(process.platform === "win32")("is refused where it comes in by standard input", () => {
    const cwd = farm();
    const program = join(root, "bin/carcase.js");
    const { status, stderr } = spawnSync(
      "sh",
      ["-c", '"$0" "$@" < plain.txt', process.execPath, program, "lint", "-o", "plain.txt", "-"],
      { cwd, encoding: "utf8" },
    );
    expect({ status, stderr }).toEqual({
      status: 2,
      stderr: expect.stringContaining("read by this very command"),
    });
    expect(readFileSync(join(cwd, "plain.txt"), "utf8")).toBe("format: 1\ncase: x-2\n");
  });
});

describe("a file that is there", () => {
  const farm = join(root, "cases-example/alder-farm");
  const readers = join(root, "cases-example/two-readers.csv");
  const tracing = join(farm, "2026-03-14/tracings/pig-14.svg");
  /** Every command in every format, asked twice for results that differ. */
  const asked: readonly (readonly [formats: readonly string[], first: string[], second: string[]])[] = [
    [
      ["text", "json", "csv"],
      ["score", day],
      ["score", join(farm, "2026-09-19")],
    ],
    [
      ["text", "json", "csv", "markdown"],
      ["herd", day],
      ["herd", join(farm, "2026-03-14")],
    ],
    [
      ["text", "json", "csv", "markdown"],
      ["compare", farm],
      ["compare", "--level", "90%", farm],
    ],
    [
      ["text", "json", "csv"],
      ["agree", readers],
      ["agree", "--level", "90%", readers],
    ],
    [
      ["text", "json", "csv"],
      ["measure", join(farm, "2026-03-14")],
      ["measure", tracing],
    ],
    [
      ["text", "json"],
      ["explain", "lungs"],
      ["explain", "liver"],
    ],
    [
      ["text", "json", "csv", "markdown"],
      ["plan", "say", "--pigs", "12"],
      ["plan", "say", "--pigs", "30"],
    ],
  ];
  const others = {
    readings: readFileSync(readers, "utf8"),
    tags: "1201\n1202\n1203\n",
    notes: "Called the farm on Tuesday.\nTwo pigs are worse: look at the lungs.\n",
    collection: '{"type": "FeatureCollection", "features": []}\n',
    package: '{\n  "name": "farm-reports",\n  "version": "1.0.0"\n}\n',
    settings: '{"$schema": "https://example.org/other.json", "version": "2.1.0"}\n',
    list: '["12", "13"]\n',
    drawing: '<?xml version="1.0" encoding="UTF-8"?>\n<svg/>\n',
    picture: "\u0089PNG\r\n\u001a\n",
  };

  every(
    "is known as an earlier result by its form, or empty, and anything else stays",
    asked.flatMap(([formats, first, second]) => formats.map((format) => ({ format, first, second }))),
    ({ format, first, second }) => {
      const [before, now] = [first, second].map((args) => carcase([...args, "--format", format]).out);
      expect(before).not.toBe(now);
      const keeps = unlessEarlier("-o result", now ?? "");
      for (const text of [before, now, ""]) expect(keeps(Buffer.from(text ?? ""))).toBeUndefined();
      for (const [name, text] of Object.entries(others))
        expect([name, keeps(Buffer.from(text))]).toEqual([
          name,
          expect.stringContaining("nothing was written"),
        ]);
    },
    ({ format, first }) => `${first[0]} --format ${format}`,
  );

  every(
    "is replaced by lint as well, in every format, and stays where it is something else",
    ["text", "json", "sarif", "junit", "github", "gitlab"],
    (format) => {
      const file = join(temporaryFolder(), "result.out");
      const lint = (...paths: string[]) => carcase(["lint", "--format", format, "-o", file, ...paths]);
      writeFileSync(file, "");
      expect(lint(join(farm, "2026-03-14/pig-01.yaml")).code).toBe(0);
      const before = readFileSync(file, "utf8");
      expect(lint("-q", join(root, "cases-example/incomplete/skipped-organ.yaml")).code).toBe(1);
      expect(readFileSync(file, "utf8")).not.toBe(before);
      for (const text of [others.notes, others.collection]) {
        writeFileSync(file, text);
        const { code, err } = lint(day);
        expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining("nothing was written") });
        expect(readFileSync(file, "utf8")).toBe(text);
      }
    },
  );

  it("stops lint before it fixes anything", () => {
    const cwd = temporaryFolder();
    put(cwd, { "a.yaml": "format: 1\ncase: x-1", "notes.txt": "Called the farm.", "n.json": "{}" });
    for (const also of [[], ["--also", "text=notes.txt"]]) {
      const result = also.length === 0 ? "notes.txt" : "new.txt";
      const { code, err } = carcase(["lint", "--fix", "-o", result, ...also, "."], { cwd });
      expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining("notes.txt") });
      expect(readFileSync(join(cwd, "a.yaml"), "utf8")).toBe("format: 1\ncase: x-1");
      expect(readdirSync(cwd).sort()).toEqual(["a.yaml", "n.json", "notes.txt"]);
    }
  });

  it("is an earlier diff, also where nothing is left to change", () => {
    const cwd = temporaryFolder();
    put(cwd, { "a.yaml": "format: 1\ncase: x-1" });
    const args = ["lint", "--fix", "--dry-run", "-o", "fix.diff", "."];
    expect(carcase(args, { cwd }).code).toBe(1);
    expect(readFileSync(join(cwd, "fix.diff"), "utf8")).toMatch(/^--- a\/a\.yaml\n/);
    put(cwd, { "a.yaml": "format: 1\ncase: x-1\n" });
    expect(carcase(args, { cwd }).code).toBe(0);
    expect(readFileSync(join(cwd, "fix.diff"), "utf8")).toBe("");
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
