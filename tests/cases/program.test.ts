/** Hostile files through the built program: plain messages, exit code 2, nothing raw on the terminal, the rest linted. */
import { execFileSync, spawnSync } from "node:child_process";
import {
  chmodSync,
  closeSync,
  cpSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  symlinkSync,
} from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { put, smallCase, temporaryFolder } from "./temporary.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const program = join(root, "bin/carcase.js");
const farm = join(root, "tests/fixtures/birch-farm");
const hostile = join(root, "tests/fixtures/hostile");

beforeAll(() => {
  if (!existsSync(join(root, "dist/program/main.cjs")))
    throw new Error("dist is missing: run `npm run build` before these tests (npm test does)");
});

interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
  readonly seconds: number;
}

function carcase(
  args: readonly string[],
  options: {
    cwd: string;
    /** A file that standard input comes from. */
    input?: string;
    uid?: number;
    env?: Record<string, string>;
  },
): Run {
  const began = performance.now();
  const { env, input, ...rest } = options;
  const stdin = input === undefined ? "ignore" : openSync(input, "r");
  const result = spawnSync(process.execPath, [program, ...args], {
    ...rest,
    env: { ...process.env, NO_COLOR: "1", COLUMNS: "9999", ...env },
    stdio: [stdin, "pipe", "pipe"],
    encoding: "utf8",
    timeout: 30_000,
    maxBuffer: 64 * 1024 * 1024,
  });
  if (typeof stdin === "number") closeSync(stdin);
  return {
    code: result.status,
    out: result.stdout,
    err: result.stderr,
    seconds: (performance.now() - began) / 1000,
  };
}

/** Line ends apart, nothing that a terminal would obey or that turns text about. */
const raw = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/;

function isPlain({ out, err, seconds }: Run): void {
  expect(raw.exec(out)).toBeNull();
  expect(raw.exec(err)).toBeNull();
  expect(`${out}${err}`).not.toMatch(
    /internal fault|\n\s+at .*:\d+:\d+|node:internal|TypeError|RangeError|\[object|undefined|NaN/,
  );
  expect(seconds).toBeLessThan(25);
}

/** The model farm with hostile files among its cases. */
function farmWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = temporaryFolder();
  cpSync(farm, folder, { recursive: true });
  put(join(folder, "2026-04-20"), files);
  return folder;
}

/** The model case was linted: the completeness line names it. */
const modelWasRead = /birch-2026-04-20-01 +\d+ of \d+ organs due were examined/;

describe("hostile files beside a good one", () => {
  const head = "format: 1\ncase: x-1\n";
  const files: readonly [name: string, content: string | Uint8Array, message: RegExp][] = [
    ["binary", Uint8Array.from([0, 1, 2, 255]), /bad-\d+\.yaml: not read: it is not a text file/],
    [
      "UTF-16",
      Uint8Array.from(Buffer.from(`\ufeff${head}`, "utf16le")),
      /bad-\d+\.yaml: not read: it is saved as UTF-16; save it as UTF-8/,
    ],
    [
      "Latin-1",
      Uint8Array.from([...Buffer.from(head), 0x6e, 0x3a, 0xe4, 10]),
      /bad-\d+\.yaml:3:3: not read: it is not saved as UTF-8/,
    ],
    ["empty", "", /bad-\d+\.yaml: not read: the file is empty/],
    ["comments", "# x\n", /bad-\d+\.yaml:1:1: not read: the file holds nothing but comments/],
    ["50 MB", new Uint8Array(50 * 1024 * 1024).fill(0x61), /bad-\d+\.yaml: not read: it has 52\.4 MB/],
    ["brackets", "[".repeat(1_000_000), /bad-\d+\.yaml:1:\d+: not read: nested more than 100 levels deep/],
    ["hyphens", "- ".repeat(500_000), /bad-\d+\.yaml:1:\d+: not read: nested more than 100 levels deep/],
    [
      "question marks",
      "? ".repeat(500_000),
      /bad-\d+\.yaml:1:\d+: not read: nested more than 100 levels deep/,
    ],
    ["braces", "a: {".repeat(250_000), /bad-\d+\.yaml:1:\d+: not read: nested more than 100 levels deep/],
    [
      "escape codes",
      `${head}note: \u001b]0;title\u0007\u001b[31m\n`,
      /bad-\d+\.yaml:3:7: not read: this line holds a control character \(U\+001B\)/,
    ],
    [
      "escape codes in a key",
      `${head}"a\u009b31m": 1\n`,
      /bad-\d+\.yaml:3:3: not read: this line holds a control character \(U\+009B\)/,
    ],
    [
      "escaped codes",
      `${head}note: "\\e[31m"\n`,
      /bad-\d+\.yaml:3:7: not read: this text holds a control character \(U\+001B\)/,
    ],
    [
      "turned text",
      `${head}note: a\u202eb\n`,
      /bad-\d+\.yaml:3:8: not read: this line holds an invisible mark \(U\+202E\)/,
    ],
    [
      "10,000 findings",
      `${head}liver_pancreas:\n  liver:\n${"    - {process: nodule}\n".repeat(10_000)}`,
      /bad-\d+\.yaml:5:5: not read: this has 10000 entries/,
    ],
  ];

  it("each of them is named, and the good one is read", () => {
    const contents = Object.fromEntries(files.map(([, content], index) => [`bad-${index}.yaml`, content]));
    const run = carcase(["lint", "."], { cwd: farmWith(contents) });
    isPlain(run);
    expect(run.code).toBe(2);
    const lines = run.err.trimEnd().split("\n");
    const told = (index: number): string =>
      lines.filter((line) => line.startsWith(`2026-04-20/bad-${index}.yaml:`)).join("\n");
    const wrong = files.filter(([, , message], index) => !message.test(told(index)));
    expect(wrong.map(([name]) => name)).toEqual([]);
    expect(run.out).toMatch(modelWasRead);
    expect(run.out).toMatch(new RegExp(`${files.length} files could not be read`));
  });

  it("one alone ends with 2 as well", () => {
    const run = carcase(["lint", "."], { cwd: farmWith({ "bad.yaml": "" }) });
    isPlain(run);
    expect([run.code, run.err]).toEqual([2, "2026-04-20/bad.yaml: not read: the file is empty\n"]);
    expect(run.out).toMatch(/1 file could not be read/);
  });

  it("each of the collected ones is named, and not missing as well", () => {
    const names = readdirSync(hostile).filter((name) => name.endsWith(".yaml"));
    const folder = farmWith({});
    for (const name of names) cpSync(join(hostile, name), join(folder, "2026-04-20", name));
    const run = carcase(["lint", "."], { cwd: folder });
    isPlain(run);
    expect(run.code).toBe(2);
    const isTold = (name: string): boolean =>
      new RegExp(`^2026-04-20/${name}:\\d+:\\d+: not read: `, "m").test(run.err);
    expect(names.filter((name) => !isTold(name))).toEqual([]);
    expect(run.out).toMatch(new RegExp(`${names.length} files could not be read`));
    expect(run.out).toMatch(modelWasRead);
    // One mistake, one message: what could not be read is not missing as well.
    expect(run.out).not.toMatch(/\berror\b/);
  });
});

describe("things that are no files", () => {
  it("are named and passed over", async () => {
    const folder = farmWith({});
    const visit = join(folder, "2026-04-20");
    execFileSync("mkfifo", [join(visit, "pipe.yaml")]);
    mkdirSync(join(visit, "folder.yaml"));
    symlinkSync("loop.yaml", join(visit, "loop.yaml"));
    symlinkSync("nowhere", join(visit, "nowhere.yaml"));
    symlinkSync(folder, join(visit, "up"));
    const server = createServer();
    await new Promise<void>((done) => server.listen(join(visit, "socket.yaml"), done));
    const run = carcase(["lint", "."], { cwd: folder });
    server.close();
    isPlain(run);
    expect(run.code).toBe(2);
    expect(run.err.split("\n").sort()).toEqual([
      "",
      "2026-04-20/folder.yaml: not read: it is a folder; a case is a plain file",
      "2026-04-20/loop.yaml: not read: it is a link that leads back to itself",
      "2026-04-20/nowhere.yaml: not read: it is a link to a file that does not exist",
      "2026-04-20/pipe.yaml: not read: it is a pipe, not a plain file",
      "2026-04-20/socket.yaml: not read: it is a socket, not a plain file",
      "2026-04-20/up: not read: it is a link that leads back to a folder above it; it was not followed",
    ]);
    expect(run.out).toMatch(modelWasRead);
  });

  it.each(["pipe.yaml", "missing.yaml", "loop.yaml", "*.none"])("%s by name", (name) => {
    const folder = farmWith({});
    execFileSync("mkfifo", [join(folder, "pipe.yaml")]);
    symlinkSync("loop.yaml", join(folder, "loop.yaml"));
    const run = carcase(["lint", name, "2026-04-20/pig-01.yaml"], { cwd: folder });
    isPlain(run);
    expect([run.code, run.err.includes(name)]).toEqual([2, true]);
    expect(run.out).toMatch(modelWasRead);
  });

  it("a pipe as settings or as .gitignore is not waited for", () => {
    const folder = farmWith({});
    execFileSync("mkfifo", [join(folder, ".gitignore"), join(folder, "carcase.yaml")]);
    const run = carcase(["lint", "."], { cwd: folder });
    isPlain(run);
    expect(run.code).toBe(2);
    expect(run.err).toBe("carcase.yaml: not read: it is a pipe, not a plain file\n");
    expect(run.out).toMatch(modelWasRead);
  });

  // As the superuser, ask as nobody: to root every file is open.
  const uid = process.getuid?.() === 0 ? { uid: 65534 } : {};
  const outside =
    process.getuid?.() === 0 ? spawnSync(process.execPath, [program, "--version"], uid).status === 0 : true;
  it.skipIf(!outside)("files and folders without permission are named", () => {
    const folder = farmWith({ "secret.yaml": smallCase(), "closed/pig.yaml": smallCase() });
    chmodSync(folder, 0o755);
    chmodSync(join(folder, "2026-04-20/secret.yaml"), 0);
    chmodSync(join(folder, "2026-04-20/closed"), 0);
    const run = carcase(["lint", "."], { cwd: folder, ...uid });
    chmodSync(join(folder, "2026-04-20/closed"), 0o755);
    isPlain(run);
    expect(run.code).toBe(2);
    expect(run.err).toBe(
      "2026-04-20/closed: not read: no permission to look into this folder\n2026-04-20/secret.yaml: not read: no permission to read it\n",
    );
    expect(run.out).toMatch(modelWasRead);
  });
});

describe("names that a terminal would obey", () => {
  it.each(["pig\u001b[31m.yaml", "pig\u009b2J.yaml", "pig\u202eexe.yaml", "pig\n::error::.yaml"])(
    "file name %j",
    (name) => {
      const folder = farmWith({ [name]: smallCase() });
      const run = carcase(["lint", "."], { cwd: folder });
      isPlain(run);
      expect(run.code).toBe(2);
      expect(run.err).toMatch(
        /pig\\u\{[0-9a-f]+\}.*: not read: its path holds characters that cannot be seen; rename it\n/,
      );
      // In JSON the name must stay the name; no byte below a space is in it.
      const json = carcase(["lint", "--format", "json", "."], { cwd: folder });
      expect(json.code).toBe(2);
      expect(json.out.replaceAll("\n", "")).not.toMatch(/[\u0000-\u001f]/);
      const { findings } = JSON.parse(json.out) as { findings: { file: string }[] };
      expect(findings.map(({ file }) => file)).toContain(`2026-04-20/${name}`);
      expect(json.out).not.toMatch(/[\u007f-\u009f\u202a-\u202e]/);
    },
  );

  it("asked for by name", () => {
    const run = carcase(["lint", "\u001b[31mmissing.yaml"], { cwd: farmWith({}) });
    isPlain(run);
    expect([run.code, run.err]).toEqual([2, expect.stringContaining('no case at "\\u{1b}[31mmissing.yaml"')]);
  });

  it("in colour, nothing but our own colours", () => {
    const run = carcase(["lint", "."], {
      cwd: farmWith({ "bad.yaml": "note: \u001b[5m\n" }),
      env: { NO_COLOR: "", FORCE_COLOR: "1" },
    });
    expect(run.code).toBe(2);
    expect(`${run.out}${run.err}`.replaceAll(/\u001b\[(1|2|22|31|32|33|36|39)m/g, "")).not.toMatch(/\u001b/);
  });
});

describe("keys and words of JavaScript's own", () => {
  it("are unknown keys and unknown groups like any other", () => {
    const folder = farmWith({
      "odd.yaml": `${smallCase("odd")}toString: 1\nhasOwnProperty: 2\n5: 3\npig: {group: constructor, valueOf: 1}\nliver_pancreas: {toString: normal}\n`,
    });
    const run = carcase(["lint", "--format", "json", "2026-04-20/odd.yaml"], { cwd: folder });
    isPlain(run);
    expect(run.code).toBe(1);
    const found = (JSON.parse(run.out) as { findings: { rule: string; path: string }[] }).findings;
    const unknown = found
      .filter(({ rule }) => ["case-format", "alarm-cannot-be-told"].includes(rule))
      .map(({ path }) => path);
    expect(unknown.sort()).toEqual([
      "5",
      "hasOwnProperty",
      "liver_pancreas.toString",
      "pig.valueOf",
      "toString",
    ]);
    expect(found.map(({ rule }) => rule)).toContain("group-unknown");
  });

  it.each(["__proto__: off", "constructor: off"])("in settings: rules: {%s}", (rule) => {
    const folder = farmWith({});
    put(folder, { "carcase.yaml": `format: 1\nrules: {${rule}}\n` });
    const run = carcase(["lint", "."], { cwd: folder });
    isPlain(run);
    expect([run.code, run.err]).toEqual([2, expect.stringContaining("cannot be a key; take it out")]);
  });

  it("in settings: rules: {toString: off}", () => {
    const folder = farmWith({});
    put(folder, { "carcase.yaml": "format: 1\nrules: {toString: off}\n" });
    const run = carcase(["lint", "."], { cwd: folder });
    isPlain(run);
    expect([run.code, run.err]).toEqual([2, expect.stringContaining('there is no rule "toString"')]);
  });
});

describe("standard input", () => {
  it.each<[string, string | Uint8Array]>([
    ["nothing", ""],
    ["binary", Uint8Array.from([0, 159, 146, 150])],
    ["brackets", "[".repeat(100_000)],
    ["escape codes", "note: \u001b[31m\n"],
    ["3 MB", "a".repeat(3_000_000)],
  ])("%s", (_, input) => {
    const folder = farmWith({});
    put(folder, { input });
    const run = carcase(["lint", "-"], { cwd: folder, input: join(folder, "input") });
    isPlain(run);
    expect(run.code).toBe(2);
    expect(run.err).toMatch(/^standard-input\.yaml(:\d+:\d+)?: not read: /);
  });
});

it.each(["score", "herd"])("%s says the same of hostile files, and reads the rest", (command) => {
  const folder = farmWith({});
  cpSync(hostile, join(folder, "2026-04-20"), { recursive: true });
  const run = carcase([command, "."], { cwd: folder });
  isPlain(run);
  expect(run.code).toBe(2);
  for (const name of readdirSync(hostile).filter((one) => one.endsWith(".yaml")))
    expect(run.err).toContain(`2026-04-20/${name}:`);
  expect(run.out.length).toBeGreaterThan(200);
});

it("many hostile files at once are all named, and in reasonable time", () => {
  const folder = farmWith(
    Object.fromEntries(
      Array.from({ length: 60 }, (_, n) => [
        `bad-${n}.yaml`,
        n % 2 === 0 ? "[".repeat(50_000) : "pig:\n\tsex: female\n",
      ]),
    ),
  );
  const run = carcase(["lint", "."], { cwd: folder });
  isPlain(run);
  expect(run.code).toBe(2);
  expect(run.err.match(/not read/g)).toHaveLength(60);
  expect(run.out).toMatch(modelWasRead);
});
