/** `carcase diff`, `log`, `git` and the merge driver in real repositories. */
import { spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { carcase, root } from "./run.ts";

const pig = (number: number, more = ""): string => `format: 1
case: alder-2026-03-14-0${number}
pig: {tag: "${number}", sex: female}
respiratory:
  lungs:
    # palpated by two
    consolidation: {left_cranial: 20, left_middle: 35}
  trachea: normal
samples:
  - {id: 0${number}-A, from: blood, into: plain-tube, for: [serology], at: 2026-03-14T09:20}
${more}`;

const bin = temporaryFolder();
writeFileSync(
  join(bin, "carcase"),
  `#!/bin/sh\nexec "${process.execPath}" "${join(root, "bin/carcase.js")}" "$@"\n`,
);
chmodSync(join(bin, "carcase"), 0o755);

/** An archive with two pigs and a visit, committed. */
function repository() {
  const cwd = temporaryFolder();
  const env = {
    ...process.env,
    PATH: `${bin}${delimiter}${process.env.PATH ?? ""}`,
    LANGUAGE: "de",
    LC_ALL: "C.UTF-8",
  };
  const git = (...args: string[]) => {
    const given = ["-c", "user.name=H. Marlow", "-c", "user.email=h@example.org", ...args];
    return spawnSync("git", given, { cwd, encoding: "utf8", env });
  };
  const write = (file: string, ...edits: (readonly [from: string, to: string])[]): void => {
    const text = readFileSync(join(cwd, file), "utf8");
    for (const [from] of edits) expect(text).toContain(from);
    writeFileSync(
      join(cwd, file),
      edits.reduce((now, [from, to]) => now.replace(from, to), text),
    );
  };
  const commit = (message: string): void => {
    git("add", "--all");
    git("commit", "--quiet", "--no-verify", `--message=${message}`);
  };
  git("init", "--quiet", "--initial-branch=main");
  put(cwd, {
    "a/visit.yaml": "format: 1\nvisit: alder-2026-03-14\ndate: 2026-03-14\nsigns: [cough]\n",
    "a/pig 1 ä.yaml": pig(1),
    "a/pig-2.yaml": pig(2),
    "notes.yaml": "x: 1\n",
  });
  commit("first");
  return { cwd, git, write, commit };
}

const said = (cwd: string, ...args: string[]): string => carcase(args, { cwd, env: { COLUMNS: "9999" } }).out;

describe("carcase diff", () => {
  it("tells what changed since the last commit, new files and deleted ones too, and not what did not", () => {
    const { cwd, write } = repository();
    expect(said(cwd, "diff")).toBe("No record changed from the last commit to the files as they are.\n");
    write("a/pig 1 ä.yaml", ["left_cranial: 20", "left_cranial: 35"], ["T09:20", "T09:50"]);
    write("a/visit.yaml", ["[cough]", "[cough, fever]"]);
    write("notes.yaml", ["1", "2"]);
    put(cwd, { "a/pig-3.yaml": pig(3) });
    rmSync(join(cwd, "a/pig-2.yaml"));
    expect(said(cwd, "diff")).toBe(`alder-2026-03-14-01 · a/pig 1 ä.yaml
  Lungs, consolidation, left cranial lobe: 20 % to 35 %
  Sample 01-A, time: 09:20 to 09:50

alder-2026-03-14-02 · a/pig-2.yaml
  Pig taken out: tag 2, female

alder-2026-03-14-03 · a/pig-3.yaml
  Pig added: tag 3, female

alder-2026-03-14 · a/visit.yaml
  Signs added: fever
5 changes in 4 records from the last commit to the files as they are.
1 other YAML file changed, no record: notes.yaml.
`);
    expect(said(join(cwd, "a"), "diff", "--quiet", "visit.yaml")).toBe(
      "alder-2026-03-14 · visit.yaml\n  Signs added: fever\n",
    );
    expect(said(cwd, "diff", "--quiet", "alder-2026-03-14-01")).toContain("09:20 to 09:50");
    expect(said(cwd, "diff", "--quiet", "a/pig-2.yaml")).toContain("Pig taken out");
    expect(said(cwd, "diff", "--format", "markdown", "a/visit.yaml")).toContain("- Signs added: fever");
    const { records } = JSON.parse(said(cwd, "diff", "--format", "json", "a/pig 1 ä.yaml"));
    expect(records[0].changes[0]).toEqual({
      change: "changed",
      path: "respiratory.lungs.consolidation.left_cranial",
      before: 20,
      after: 35,
      says: "Lungs, consolidation, left cranial lobe: 20 % to 35 %",
    });
  });

  it("tells one revision from another, and knows a record that moved", () => {
    const { cwd, git, write, commit } = repository();
    git("tag", "before");
    mkdirSync(join(cwd, "b"));
    renameSync(join(cwd, "a/pig-2.yaml"), join(cwd, "b/pig-2.yaml"));
    write("b/pig-2.yaml", ["sex: female", "sex: castrate"]);
    commit("second");
    write("b/pig-2.yaml", ["sex: castrate", "sex: male"]);
    const told = `alder-2026-03-14-02 · b/pig-2.yaml
  The file was a/pig-2.yaml
  Pig, sex: female to castrate
1 change in 1 record from before to HEAD.
`;
    expect(said(cwd, "diff", "before", "HEAD")).toBe(told);
    expect(said(cwd, "diff", "before..HEAD")).toBe(told);
    expect(said(cwd, "diff", "before")).toContain("female to male");
  });

  it("says what it cannot read, in which state, and tells the rest", () => {
    const { cwd, write } = repository();
    write("a/pig-2.yaml", ["trachea: normal", "trachea: [normal"]);
    write("a/pig 1 ä.yaml", ["left_cranial: 20", "left_cranial: 35"]);
    const { code, out, err } = carcase(["diff"], { cwd });
    expect(code).toBe(2);
    expect(out).toContain("20 % to 35 %");
    expect(out).not.toContain("taken out");
    expect(err).toContain("a/pig-2.yaml");
    expect(err).toContain("(in its later state)");
  });

  it("follows no link, and asks for what it does not understand", () => {
    const { cwd } = repository();
    const outside = temporaryFolder();
    put(outside, { "secret.yaml": pig(9) });
    symlinkSync(join(outside, "secret.yaml"), join(cwd, "a/pig-9.yaml"));
    expect(said(cwd, "diff")).not.toContain("-09");
    const { code, err } = carcase(["diff", "nothing"], { cwd });
    expect(code).toBe(2);
    expect(err).toContain('"nothing" is no revision');
    expect(carcase(["diff"], { cwd: outside }).err).toContain("lies in no git repository");
    const { out } = carcase(
      ["diff", "--quiet", "--files", join(cwd, "a/pig-2.yaml"), join(outside, "secret.yaml")],
      { cwd },
    );
    expect(out).toContain("Sample 02-A, id: 02-A to 09-A");
  });
});

describe("carcase log", () => {
  it("tells a case through its commits, over a move and a merge", () => {
    const { cwd, git, write, commit } = repository();
    write("a/pig-2.yaml", ["left_cranial: 20", "left_cranial: 25"]);
    commit("second look");
    git("checkout", "--quiet", "-b", "other");
    renameSync(join(cwd, "a/pig-2.yaml"), join(cwd, "a/pig-02.yaml"));
    write("a/pig-02.yaml", ["trachea: normal", "trachea: {not_examined: torn}"]);
    commit("moved");
    git("checkout", "--quiet", "main");
    write("a/visit.yaml", ["[cough]", "[fever]"]);
    commit("visit");
    git("merge", "--quiet", "--no-edit", "other");
    write("a/pig-02.yaml", ["left_middle: 35", "left_middle: 40"]);
    const { entries } = JSON.parse(said(cwd, "log", "--format", "json", "alder-2026-03-14-02"));
    expect(
      entries.map(({ subject, author, says }: Record<string, unknown>) => [subject, author, says]),
    ).toEqual([
      [null, null, ["Lungs, consolidation, left middle lobe: 35 % to 40 %"]],
      [
        "moved",
        "H. Marlow",
        ["The file was a/pig-2.yaml", "Trachea: now not examined (torn), before normal"],
      ],
      ["second look", "H. Marlow", ["Lungs, consolidation, left cranial lobe: 20 % to 25 %"]],
      ["first", "H. Marlow", ["Pig added: tag 2, female"]],
    ]);
    expect(said(cwd, "log", "a/pig-02.yaml")).toContain(" · H. Marlow · second look\n  Lungs, consolidation");
    expect(carcase(["log", "nothing"], { cwd }).code).toBe(2);
  });
});

describe("carcase git", () => {
  it("lets git merge records by their parts, tells what it cannot, and is taken back", () => {
    const { cwd, git, write, commit } = repository();
    writeFileSync(join(cwd, ".gitattributes"), "*.svg binary\n");
    expect(said(cwd, "git", "enable")).toContain("commit it");
    expect(said(cwd, "git", "enable")).not.toContain("commit it");
    const attributes = "*.svg binary\n*.yaml merge=carcase diff=carcase\n*.yml merge=carcase diff=carcase\n";
    expect(readFileSync(join(cwd, ".gitattributes"), "utf8")).toBe(attributes);
    commit("set up");
    const file = "a/pig 1 ä.yaml";
    git("checkout", "--quiet", "-b", "other");
    write(file, ["left_middle: 35", "left_middle: 40"], ["for: [serology]", "for: [serology, pcr]"]);
    commit("theirs");
    git("checkout", "--quiet", "main");
    write(file, ["left_cranial: 20", "left_cranial: 25"], ["T09:20", "T09:30"]);
    commit("ours");
    expect(git("merge", "--no-edit", "other").status).toBe(0);
    const text = readFileSync(join(cwd, file), "utf8");
    expect(text).toContain("    # palpated by two\n    consolidation: {left_cranial: 25, left_middle: 40}\n");
    expect(text).toContain("for: [serology, pcr], at: 2026-03-14T09:30}");
    expect(git("diff", "HEAD~1", "--", file).stdout).toContain(
      "-Lungs, consolidation, left middle lobe: 35 %\n",
    );

    git("checkout", "--quiet", "other");
    write(file, ["trachea: normal", "trachea: {not_examined: torn}"]);
    commit("theirs again");
    git("checkout", "--quiet", "main");
    write(file, ["  trachea: normal\n", ""]);
    commit("ours again");
    const { status, stderr } = git("merge", "--no-edit", "other");
    expect(status).toBe(1);
    expect(stderr).toContain(`${file}: Trachea: taken out here and changed there; what was changed is kept`);
    expect(readFileSync(join(cwd, file), "utf8")).toContain("trachea: {not_examined: torn}\n");

    carcase(["git", "disable"], { cwd });
    expect(readFileSync(join(cwd, ".gitattributes"), "utf8")).toBe("*.svg binary\n");
    expect(git("config", "--local", "--list").stdout).not.toContain("carcase");
  });

  it("gives git what is no record as git would have it", () => {
    const folder = temporaryFolder();
    put(folder, {
      base: "a: 1\nb: 1\nc: 1\nd: 1\n",
      ours: "a: 2\nb: 1\nc: 1\nd: 1\n",
      theirs: "a: 1\nb: 1\nc: 1\nd: 2\n",
    });
    const merge = () =>
      carcase(["merge-driver", "base", "ours", "theirs", "7", "notes.yaml"], { cwd: folder });
    expect(merge().code).toBe(0);
    expect(readFileSync(join(folder, "ours"), "utf8")).toBe("a: 2\nb: 1\nc: 1\nd: 2\n");
    put(folder, { theirs: "a: 3\nb: 1\nc: 1\nd: 1\n" });
    expect(merge().code).toBe(1);
    expect(readFileSync(join(folder, "ours"), "utf8")).toContain("<<<<<<< ours\n");
    expect(carcase(["git", "facts", "base"], { cwd: folder }).out).toBe("a: 1\nb: 1\nc: 1\nd: 1\n");
  });
});
