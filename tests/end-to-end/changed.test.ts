/** `carcase lint --changed` and `--staged`: the part of an archive that git knows to be changed. */
import { spawnSync } from "node:child_process";
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { carcase, root } from "./run.ts";

const birch = (file: string): string => readFileSync(join(root, "tests/fixtures/birch-farm", file), "utf8");
const good = birch("2026-04-20/pig-01.yaml");
const bad = good.replace("  spleen: normal\n", "");
const farm = (name: string): Record<string, string> =>
  Object.fromEntries(
    ["farm.yaml", "2026-04-20/visit.yaml", "2026-04-20/pig-01.yaml"].map((file) => [
      `${name}/${file}`,
      birch(file).replaceAll("birch", name),
    ]),
  );
const pig = "birch/2026-04-20/pig-01.yaml";

/** Two farms of one visit in a repository, not yet committed. */
function repository() {
  const cwd = temporaryFolder();
  put(cwd, { ...farm("birch"), ...farm("alder"), "notes.yaml": "x: 1\n" });
  const git = (...args: string[]): string => {
    const given = ["-c", "user.name=a", "-c", "user.email=a@example.org", ...args];
    const { stdout, stderr } = spawnSync("git", given, { cwd, encoding: "utf8" });
    return stdout + stderr;
  };
  git("init", "--quiet", "--initial-branch=main");
  const commit = (): void => {
    git("add", "--all");
    git("commit", "--quiet", "--no-verify", "--message=x");
  };
  return { cwd, git, commit };
}

/** How many cases were linted, and in which a skipped organ was found. */
function linted(cwd: string, ...args: string[]) {
  const { code, out, err } = carcase(["lint", "--format", "json", ...args], { cwd });
  if (out === "") return { code, err };
  const { findings, summary }: { findings: { rule: string; file: string }[]; summary: { cases: number } } =
    JSON.parse(out);
  return {
    code,
    cases: summary.cases,
    skipped: findings.filter(({ rule }) => rule === "skipped-organ").map(({ file }) => file),
  };
}
const nothing = { code: 0, cases: 0, skipped: [] };

describe("--changed", () => {
  it("lints the visits with a change, in the folder, added or staged", () => {
    const { cwd, git, commit } = repository();
    expect(linted(cwd, "--changed")).toMatchObject({ cases: 2 });
    commit();
    expect(linted(cwd, "--changed")).toEqual(nothing);
    expect(carcase(["lint", "--changed"], { cwd }).err).toContain(
      "no record has changed since the last commit",
    );
    put(cwd, { [pig]: bad, "readme.txt": "x" });
    expect(linted(cwd, "--changed")).toEqual({ code: 1, cases: 1, skipped: [pig] });
    git("add", ".");
    expect(linted(cwd, "--changed")).toEqual({ code: 1, cases: 1, skipped: [pig] });
    expect(linted(join(cwd, "birch"), "--changed", ".")).toMatchObject({
      skipped: ["2026-04-20/pig-01.yaml"],
    });
    expect(linted(cwd, "alder", "--changed")).toEqual(nothing);
    expect(linted(cwd, "birch-2026-04-20-01", "--changed")).toMatchObject({ cases: 1 });
    put(cwd, { "alder/2026-05-01/new one.yaml": bad.replaceAll("birch-2026-04-20", "alder-2026-05-01") });
    expect(linted(cwd, "--changed")).toMatchObject({
      skipped: ["alder/2026-05-01/new one.yaml", pig],
      cases: 3,
    });
  });

  it("lints the whole farm where the farm has changed, and a visit from which a case is gone", () => {
    const { cwd, commit } = repository();
    put(cwd, { "birch/2026-04-20/pig-02.yaml": good.replace("birch-2026-04-20-01", "birch-2026-04-20-02") });
    commit();
    put(cwd, { "birch/farm.yaml": `${birch("farm.yaml")}# ${"x"}\n` });
    expect(linted(cwd, "--changed")).toMatchObject({ cases: 2 });
    commit();
    rmSync(join(cwd, pig));
    expect(linted(cwd, "--changed")).toMatchObject({ cases: 1 });
  });

  it("counts from a revision, and from where the work left a branch", () => {
    const { cwd, git, commit } = repository();
    commit();
    git("checkout", "--quiet", "-b", "today");
    put(cwd, { [pig]: bad });
    commit();
    git("checkout", "--quiet", "main");
    put(cwd, { "alder/farm.yaml": `${farm("alder")["alder/farm.yaml"]}# x\n` });
    commit();
    git("checkout", "--quiet", "today");
    expect(linted(cwd, "--changed")).toEqual(nothing);
    for (const since of [["--changed=main"], ["--changed", "HEAD~1", "."]])
      expect(linted(cwd, ...since), since.join(" ")).toEqual({ code: 1, cases: 1, skipped: [pig] });
  });

  it("says what is wrong in one line", () => {
    const { cwd, git, commit } = repository();
    commit();
    git("branch", "alder");
    for (const [args, said] of [
      [["--changed", "alder"], '"alder" is a revision and a path'],
      [["--changed=--output=x"], '"--output=x" is no revision that git knows'],
      [["--changed", "--staged"], "choose one"],
      [["--staged", "--watch"], "choose one"],
      [["--changed", "--fix"], "--fix puts right all cases"],
      [["--staged", "--write-baseline", "b.json"], "a baseline is of all cases"],
      [["-", "--staged"], "not over standard input"],
      [["--watch", "--format", "json"], "--watch shows text"],
      [["nowhere", "--changed"], 'no case at "nowhere"'],
    ] as const) {
      const { code, err } = carcase(["lint", ...args], { cwd });
      expect(code, said).toBe(2);
      expect(err.replace(/^carcase: no record has.*\n/m, "").split("\n"), said).toHaveLength(2);
      expect(err).toContain(said);
    }
    expect(existsSync(join(cwd, "x"))).toBe(false);
    const outside = carcase(["lint", "--changed"], { cwd: temporaryFolder() });
    expect(outside).toMatchObject({ code: 2, out: "" });
    expect(outside.err).toBe(
      "carcase: --changed: this folder lies in no git repository; leave --changed out to lint all cases\n",
    );
  });

  it("takes names of any characters, and nothing of them is a command to a runner", () => {
    const { cwd, commit } = repository();
    commit();
    renameSync(join(cwd, "birch"), join(cwd, "\n::error::x"));
    renameSync(join(cwd, "alder"), join(cwd, " -q \"ä'$(touch x)"));
    put(cwd, { " -q \"ä'$(touch x)/2026-04-20/pig-01.yaml": bad.replaceAll("birch", "alder") });
    const { out, err } = carcase(["lint", "--changed"], { cwd });
    expect(out).toContain(" -q \"ä'$(touch x)/2026-04-20/pig-01.yaml\n");
    expect(out + err).not.toMatch(/^\s*::error/m);
    expect(existsSync(join(cwd, "x"))).toBe(false);
  });
});

describe("--staged", () => {
  const temporary = temporaryFolder();
  const env = { TMPDIR: temporary };

  it("lints what is going to be committed, not what lies in the folder", () => {
    const { cwd, git, commit } = repository();
    commit();
    put(cwd, { [pig]: bad });
    expect(linted(cwd, "--staged")).toEqual(nothing);
    git("add", ".");
    put(cwd, { [pig]: good });
    expect(linted(cwd, "--staged")).toEqual({ code: 1, cases: 1, skipped: [pig] });
    expect(linted(cwd, "--staged", join(cwd, "birch"))).toMatchObject({ skipped: [pig] });
    expect(linted(join(cwd, "birch"), "--staged")).toMatchObject({ skipped: ["2026-04-20/pig-01.yaml"] });
    expect(carcase(["lint", "--staged"], { cwd, env }).code).toBe(1);
    expect(readdirSync(temporary)).toEqual([]);
  });

  it("shows nothing of files outside the repository", () => {
    const { cwd, git, commit } = repository();
    commit();
    writeFileSync(join(temporary, "secret.yaml"), "format: 1\ncase: secret-1\nsecret: word\n");
    mkdirSync(join(cwd, "birch/2026-04-20"), { recursive: true });
    symlinkSync(join(temporary, "secret.yaml"), join(cwd, "birch/2026-04-20/pig-02.yaml"));
    git("add", ".");
    const { out, err } = carcase(["lint", "--staged"], { cwd });
    expect(out + err).toContain("pig-02.yaml");
    expect(out + err).not.toMatch(/word/);
    rmSync(join(temporary, "secret.yaml"));
  });

  it("stops a commit as a hook, of some files too", () => {
    const { cwd, git, commit } = repository();
    commit();
    const hook = join(cwd, ".git/hooks/pre-commit");
    put(cwd, {
      ".git/hooks/pre-commit": `#!/bin/sh\nexec "${process.execPath}" "${join(root, "bin/carcase.js")}" lint --staged --quiet\n`,
    });
    chmodSync(hook, 0o755);
    put(cwd, { [pig]: bad, "alder/farm.yaml": `${farm("alder")["alder/farm.yaml"]}# x\n` });
    expect(git("commit", "--message=y", pig)).toContain("[skipped-organ]");
    expect(git("commit", "--message=y", "alder/farm.yaml")).toContain("1 file changed");
  });
});
