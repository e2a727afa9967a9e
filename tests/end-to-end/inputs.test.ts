/** What is no plain file, or is too large, is refused at once wherever a file is read. */
import { execFileSync, spawn, spawnSync } from "node:child_process";
import { symlinkSync, truncateSync } from "node:fs";
import { createServer, type Server } from "node:net";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { carcase, root, wide } from "./run.ts";

const folder = temporaryFolder();
const table = "pig,reader,maff-1978\n1,A,2\n1,B,3\n2,A,1\n2,B,1\n";
let server: Server;

beforeAll(async () => {
  put(folder, {
    "pig.yaml": smallCase(),
    "readings.csv": table,
    "tags.txt": "1\n2\n3\n",
    "large.txt": "",
    "large.svg": "",
    "large.csv": "",
    "large.json": "",
  });
  for (const name of ["large.txt", "large.svg", "large.csv", "large.json"])
    truncateSync(join(folder, name), 30 * 1024 * 1024);
  for (const ending of ["yaml", "csv", "svg", "json", "jpg", "txt"]) {
    execFileSync("mkfifo", [join(folder, `pipe.${ending}`)]);
    symlinkSync("/dev/zero", join(folder, `device.${ending}`));
  }
  server = createServer();
  await new Promise<void>((done) => server.listen(join(folder, "socket.yaml"), done));
  for (const ending of ["csv", "svg", "json", "jpg", "txt"])
    symlinkSync("socket.yaml", join(folder, `socket.${ending}`));
});
afterAll(() => server.close());

const kinds = ["pipe", "socket", "device"] as const;
const asked: readonly (readonly [string, (kind: string) => string[]])[] = [
  ["a case", (kind) => ["lint", `${kind}.yaml`]],
  ["settings", (kind) => ["lint", "--config", `${kind}.yaml`, "pig.yaml"]],
  ["a baseline", (kind) => ["lint", "--baseline", `${kind}.json`, "pig.yaml"]],
  ["a baseline to write", (kind) => ["lint", "--write-baseline", `${kind}.json`, "pig.yaml"]],
  ["a table of readings", (kind) => ["agree", `${kind}.csv`]],
  ["a tracing", (kind) => ["measure", `${kind}.svg`]],
  ["a list of tags", (kind) => ["plan", "choose", `${kind}.txt`, "--pigs", "1"]],
  ["a farm", (kind) => ["plan", "choose", `${kind}.yaml`, "--pigs", "1"]],
];

describe.each(kinds)("a %s", (kind) => {
  it.each(asked)("as %s is refused by name", (_, args) => {
    const { code, err } = carcase(args(kind), { cwd: folder });
    expect([code, err]).toEqual([
      2,
      expect.stringMatching(new RegExp(`${kind}\\.[a-z]+.*it is a ${kind}, not a plain file`)),
    ]);
  });

  it("as a tracing or a photograph that a case names is absent, and is not read", () => {
    const cwd = join(folder, `case-${kind}`);
    put(cwd, {
      "pig.yaml": smallCase(
        "p",
        `photos: [{file: ../${kind}.jpg, shows: respiratory.lungs}]\nrespiratory: {lungs: {consolidation: {left_cranial: 10}, tracing: ../${kind}.svg, measured: {tracing: ../${kind}.svg, sha256: ${"0".repeat(64)}}}}\n`,
      ),
    });
    const lint = carcase(["lint", "--only", "photo-absent,tracing-absent,measurement-outdated", "pig.yaml"], {
      cwd,
      env: wide,
    });
    expect(lint.code).toBe(1);
    expect(lint.out).toContain(`../${kind}.jpg beside this case is no plain file and can be no photograph`);
    expect(lint.out).toContain(`../${kind}.svg beside this case is no plain file and can be no tracing`);
    const measure = carcase(["measure", "pig.yaml"], { cwd });
    expect([measure.code, measure.err]).toEqual([
      2,
      expect.stringContaining(`it is a ${kind}, not a plain file`),
    ]);
  });
});

it("a pipe or a device as a scale of the practice is refused", () => {
  const cwd = join(folder, "scales");
  put(cwd, {
    "carcase.yaml": "format: 1\nscales: [../pipe.yaml, ../device.yaml]\n",
    "pig.yaml": smallCase(),
  });
  const { code, err } = carcase(["lint", "pig.yaml"], { cwd });
  expect([code, err]).toEqual([
    2,
    "../device.yaml: not read: it is a device, not a plain file\n../pipe.yaml: not read: it is a pipe, not a plain file\n",
  ]);
});

it.each([
  [["agree", "large.csv"], "20 MB is the limit"],
  [["measure", "large.svg"], "20 MB is the limit"],
  [["lint", "--baseline", "large.json", "pig.yaml"], "20 MB is the limit"],
  [["lint", "large.txt"], "2 MB is the limit"],
  [["plan", "choose", "large.txt", "--pigs", "1"], "2 MB is the limit"],
])("%j is refused for its size", (args, says) => {
  const { code, err } = carcase(args, { cwd: folder, env: wide });
  expect([code, err]).toEqual([2, expect.stringContaining(`it has 31.5 MB; `)]);
  expect(err).toContain(says);
});

describe("standard input", () => {
  it.each([
    ["lint", "-"],
    ["plan", "choose", "-", "--pigs", "1"],
  ])("%s %s stops reading at its limit", async (...args) => {
    const child = spawn(process.execPath, [join(root, "bin/carcase.js"), ...args], {
      stdio: ["pipe", "ignore", "pipe"],
    });
    let said = "";
    child.stderr.on("data", (data) => {
      said += data;
    });
    let taken = 0;
    const piece = Buffer.alloc(1 << 16, "a");
    child.stdin.on("error", () => {});
    const give = (): void => {
      while (child.exitCode === null && !child.stdin.destroyed) {
        taken += piece.length;
        if (!child.stdin.write(piece)) break;
      }
    };
    child.stdin.on("drain", give);
    give();
    const code = await new Promise((done) => child.once("close", done));
    expect([code, said]).toEqual([2, expect.stringContaining("it has more than 2 MB")]);
    // What it took, and what lies in the pipe and in the buffers of this side.
    expect(taken).toBeLessThan(2 * 1024 * 1024 + 16 * piece.length);
  });

  it("goes by its other names as well", () => {
    for (const name of ["/dev/stdin", "/dev/fd/0", "/proc/self/fd/0"]) {
      const { code, out } = carcase(["lint", "--format", "json", name], { input: smallCase("s") });
      expect([code, JSON.parse(out).completeness[0].file]).toEqual([1, "standard-input.yaml"]);
    }
  });

  it("that is a folder is an error in a line", () => {
    const command = `"${process.execPath}" bin/carcase.js lint - < .`;
    const { status, stderr } = spawnSync("sh", ["-c", command], { cwd: root, encoding: "utf8" });
    expect([status, stderr]).toEqual([2, "carcase: standard input cannot be read (EISDIR)\n"]);
  });
});

describe("what a shell makes of <(…)", () => {
  const shell = (command: string) =>
    spawnSync(
      "bash",
      ["-c", command.replaceAll("carcase", `"${process.execPath}" "${join(root, "bin/carcase.js")}"`)],
      {
        cwd: folder,
        encoding: "utf8",
        timeout: 30_000,
      },
    );

  it("is read as a table of readings and as a list of tags", () => {
    const { stdout, stderr, status } = shell("carcase agree --format json <(sleep 0.2; cat readings.csv)");
    expect([status, stderr, JSON.parse(stdout).scales[0].scale]).toEqual([0, "", "maff-1978"]);
    expect(shell("carcase plan choose <(cat tags.txt) --pigs 2 --seed 1").status).toBe(0);
  });

  it("is refused when it is too large, and empty when nobody writes", () => {
    expect(shell("carcase agree <(head -c 30000000 /dev/zero)").stderr).toContain(
      "it is too large; 20 MB is the limit",
    );
    const { status, stderr } = shell("carcase agree <(true)");
    expect([status, stderr]).toEqual([2, expect.stringContaining("the first line must name the columns")]);
  });

  it("is refused as a case, settings and a baseline, which are read again", () => {
    for (const args of [
      "lint <(cat pig.yaml)",
      "lint --config <(echo format: 1) pig.yaml",
      "lint --baseline <(echo) pig.yaml",
    ]) {
      const { status, stderr } = shell(`carcase ${args}`);
      expect([status, stderr]).toEqual([2, expect.stringContaining("it is a pipe, not a plain file")]);
    }
  });
});
