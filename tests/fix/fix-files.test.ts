/** `carcase lint --fix`: files, permissions, links, and the diff of a dry run. */
import { execFileSync } from "node:child_process";
import {
  chmodSync,
  cpSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, describe, expect, it } from "vitest";
import { fixText } from "../../src/fix/index.ts";
import { carcase, type Ran, root } from "../end-to-end/run.ts";

const temporary = mkdtempSync(join(tmpdir(), "carcase-fix-"));
afterAll(() => rmSync(temporary, { recursive: true }));

const day = "2026-04-20";
let folder = "";
let number = 0;
const read = (name: string): string => readFileSync(join(folder, name), "utf8");
const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);
const lint = (...args: string[]): Ran => carcase(["lint", ...args], { cwd: folder });
const pig = `${day}/pig-01.yaml`;

beforeEach(() => {
  folder = join(temporary, String(number++));
  cpSync(join(root, "tests/fixtures/birch-farm"), folder, { recursive: true });
  for (const [name, kind] of [
    [pig, "case"],
    [`${day}/visit.yaml`, "visit"],
    ["farm.yaml", "farm"],
  ] as const)
    write(name, fixText(read(name), { kind }).text);
  write(pig, read(pig).replace("sex: female", "sex: Female"));
});

describe("carcase lint --fix", () => {
  it("puts right, tells of it, and checks what is left", () => {
    expect(lint().code).toBe(1);
    const { code, out, err } = lint("--fix", "-q");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("nothing skipped");
    expect(read(pig)).toContain("sex: female");
    expect(lint("--fix").err).toBe("");
  });

  it("tells what it fixed, file by file", () => {
    expect(lint("--fix").err).toMatch(
      /^fixed 2026-04-20\/pig-01\.yaml\n {2}line \d+: pig\.sex: Female -> female\n$/,
    );
  });

  it("--dry-run prints a diff that git applies, and writes nothing", () => {
    const before = read(pig);
    const { code, out, err } = lint("--fix", "--dry-run");
    expect({ code, err }).toEqual({ code: 1, err: "" });
    expect(out).toContain("sex: Female, weight: 17.5 kg}\n+pig: ");
    expect(read(pig)).toBe(before);
    write("fix.diff", out);
    execFileSync("git", ["apply", "fix.diff"], { cwd: folder });
    expect(lint("--fix", "--dry-run")).toEqual({ code: 0, out: "", err: "" });
  });

  it("touches only files that were asked for", () => {
    mkdirSync(join(folder, "schemas"));
    for (const kind of ["case", "visit", "farm"])
      cpSync(join(root, `schemas/${kind}.schema.json`), join(folder, `schemas/${kind}.schema.json`));
    const visit = read(`${day}/visit.yaml`);
    lint("--fix", pig);
    expect(read(`${day}/visit.yaml`)).toBe(visit);
    lint("--fix");
    expect(read(`${day}/visit.yaml`)).toBe(
      `# yaml-language-server: $schema=../schemas/visit.schema.json\n${visit}`,
    );
    expect(read("farm.yaml")).toMatch(/^# yaml-language-server: \$schema=schemas\/farm\.schema\.json\n/);
  });

  it("puts a line right that leads nowhere, and no other", () => {
    mkdirSync(join(folder, ".git"));
    mkdirSync(join(folder, "for-editors"));
    cpSync(join(root, "schemas/case.schema.json"), join(folder, "for-editors/case.schema.json"));
    const line = "# yaml-language-server: $schema=";
    const text = read(pig).replace("sex: Female", "sex: female");
    write(pig, `${line}../../old/case.schema.json\n${text}`);
    expect(lint("--fix").err).toContain("line for the editor: ../for-editors/case.schema.json");
    expect(read(pig)).toBe(`${line}../for-editors/case.schema.json\n${text}`);
    for (const schema of ["https://example.org/case.schema.json", "pig-01.yaml"]) {
      write(pig, `${line}${schema}\n${text}`);
      lint("--fix");
      expect(read(pig)).toBe(`${line}${schema}\n${text}`);
    }
  });

  it("takes no schemas that are not of this format", () => {
    mkdirSync(join(folder, "schemas"));
    write("schemas/case.schema.json", "{}");
    const visit = read(`${day}/visit.yaml`);
    lint("--fix");
    expect(read(`${day}/visit.yaml`)).toBe(visit);
  });

  it("leaves a file that cannot be read, and fixes the others", () => {
    write(`${day}/pig-02.yaml`, "sex: Female\npig: [");
    expect(lint("--fix").code).toBe(2);
    expect(read(`${day}/pig-02.yaml`)).toBe("sex: Female\npig: [");
    expect(read(pig)).toContain("sex: female");
    expect(lint("--fix", "--dry-run").code).toBe(2);
  });

  it("keeps byte order mark, line ends, permissions and links", () => {
    const text = `\ufeff${read(pig).replaceAll("\n", "\r\n")}`;
    write("real.txt", text);
    chmodSync(join(folder, "real.txt"), 0o600);
    rmSync(join(folder, pig));
    symlinkSync("../real.txt", join(folder, pig));
    lint("--fix");
    expect(read("real.txt")).toBe(text.replace("sex: Female", "sex: female"));
    expect(statSync(join(folder, "real.txt")).mode & 0o777).toBe(0o600);
    expect(lstatSync(join(folder, pig)).isSymbolicLink()).toBe(true);
    expect(readdirSync(folder).filter((name) => name.endsWith(".tmp"))).toEqual([]);
  });

  it.each([
    [["--baseline", "nowhere.json"], "there is no baseline"],
    [["--write-baseline", "no/such/folder.json"], "cannot write"],
    [["--write-baseline", "known.json", "--only", "skipped-organ"], "made by all rules"],
    [["-o", "no/such/folder.txt"], "cannot write"],
    [["--also", "json=no/such/folder.json"], "cannot write"],
    [["--config", "nowhere.yaml"], "nothing was fixed"],
    [["--config", "settings.txt"], "Did you mean treated-pig?"],
  ])("changes nothing where %j cannot be done", (args, says) => {
    write("settings.txt", "format: 1\nrules: {treated-pigs: note}\n");
    const before = readdirSync(folder, { recursive: true, encoding: "utf8" }).sort();
    const text = read(pig);
    const { code, err } = lint("--fix", ...args);
    expect(err).toContain(says);
    expect(code).toBe(2);
    expect(read(pig)).toBe(text);
    expect(readdirSync(folder, { recursive: true, encoding: "utf8" }).sort()).toEqual(before);
  });

  it("names files as the findings do", () => {
    mkdirSync(join(folder, "schemas"));
    for (const kind of ["case", "visit", "farm"])
      cpSync(join(root, `schemas/${kind}.schema.json`), join(folder, `schemas/${kind}.schema.json`));
    const { err } = carcase(["lint", "--fix", ".."], { cwd: join(folder, day) });
    expect(err.match(/^fixed .*$/gm)).toEqual(
      expect.arrayContaining(["fixed ../farm.yaml", "fixed pig-01.yaml", "fixed visit.yaml"]),
    );
  });

  it.each([
    [["--dry-run"], "goes with --fix"],
    [["--fix", "-"], "standard input"],
  ])("%j ends with 2", (args, says) => {
    const { code, err } = lint(...args);
    expect(code).toBe(2);
    expect(err).toContain(says);
  });
});
