/** What lies around the records, and what is amiss there. */
import { spawnSync } from "node:child_process";
import { chmodSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { carcase, wide } from "./run.ts";

const line = "# yaml-language-server: $schema=../schemas/";
const files = {
  "carcase.yaml": "format: 1\nlevel: 0.9\n",
  "farm.yaml": "# yaml-language-server: $schema=schemas/farm.schema.json\nformat: 1\nfarm: x\n",
  "a/visit.yaml": `${line}visit.schema.json\nformat: 1\nvisit: a\ndate: 2026-03-14\ncases: [a-01]\n`,
  "a/pig-01.yaml": `${line}case.schema.json\n${smallCase("a-01", "photos: [ear.jpg]\nrespiratory: {lungs: {tracing: t/lungs.svg}}\n")}`,
  "a/ear.jpg": "JPEG",
  "a/t/lungs.svg": "<svg/>",
  "a/notes.txt": "bring boots",
};

function laid(more: Record<string, string> = {}, isRepository = true): string {
  const cwd = temporaryFolder();
  put(cwd, files);
  carcase(["schema", "--write", "schemas"], { cwd });
  put(cwd, more);
  if (isRepository) spawnSync("git", ["init", "--quiet"], { cwd });
  return cwd;
}

const doctor = (cwd: string, ...args: string[]) => carcase(["doctor", ...args], { cwd, env: wide });

describe("carcase doctor", () => {
  it("shows on one screen that all is in its place", () => {
    const cwd = laid();
    const { code, out, err } = doctor(cwd);
    expect([code, err]).toEqual([0, ""]);
    expect(out.replace(/(?<=^carcase {4}|Node |^git {8})[\w.]+/gm, "…")).toBe(
      [
        `carcase    …, reads format 1; Node … on ${process.platform}`,
        "settings   carcase.yaml",
        "git        …; no hook calls carcase (docs/ci.md has one); records are merged line by line (carcase git enable: part by part)",
        "records    1 case, 1 visit, 1 farm",
        "editors    3 records with a schema for editors",
        "left over  nothing of a run that was cut off",
        "visits     have all cases",
        "pictures   2 named, and no other lies there",
        "seals      0 of 2 records as signed",
        "",
      ].join("\n"),
    );
    expect(doctor(cwd, "-q")).toEqual({ code: 0, out: "", err: "" });
  });

  it("says what is amiss, and what to do about each", () => {
    const cwd = laid({
      "a/pig-02.yaml": smallCase("a-02"),
      "a/pig-03.yaml": `${line}none.schema.json\n${smallCase("a-03")}`,
      "b/pig-04.yaml": "format: 1\ncase: [\n",
      "schemas/farm.schema.json":
        '{\n  "$id": "farm.schema.json",\n  "$comment": "Made by carcase for editors; not edited by hand"\n}\n',
      "a/t/heart.svg": "<svg/>",
      "a/IMG_1.JPG": "JPEG",
      "a/IMG_2.heic": "HEIC",
      "a/IMG_3.png": "PNG",
    });
    carcase(["seal", "a/visit.yaml", "--by", "A. Berg"], { cwd });
    writeFileSync(
      join(cwd, "a/visit.yaml"),
      `${files["a/visit.yaml"]}seals: [{by: B, at: 2026-03-14, sha256: "${"0".repeat(64)}"}]\n`,
    );
    const { code, out } = doctor(cwd);
    expect(code).toBe(2);
    expect(out).toContain("records    3 cases, 1 visit, 1 farm; 1 not read: b/pig-04.yaml\n");
    expect(out).toContain(
      "editors    1 without the line for editors, 1 whose line leads nowhere and 1 with the schema of another version, of 5 records\n",
    );
    expect(out).toContain("visits     2 cases that no visit lists: a/pig-02.yaml, a/pig-03.yaml\n");
    expect(out).toContain(
      "pictures   4 photographs or tracings that no case names: a/IMG_1.JPG, a/IMG_2.heic, a/IMG_3.png and 1 other\n",
    );
    expect(out).toContain("seals      0 of 4 records as signed; 1 changed since: a/visit.yaml\n");
    expect(
      out
        .slice(out.indexOf("To do"))
        .split("\n")
        .map((one) => one.split(":")[0]),
    ).toEqual(["To do", "  records", "  editors", "  visits", "  pictures", "  seals", ""]);
  });

  it("knows a file that a run left over", () => {
    const cwd = laid();
    const name = `.pig-01.yaml.carcase-abcdef-1-abc.tmp`;
    put(cwd, { [`a/${name}`]: "format: 1\n" });
    expect(doctor(cwd).out, `${hostname()}: of another machine it may still be written`).toContain(
      "nothing of a run",
    );
    spawnSync("touch", ["-d", "2026-01-01", join(cwd, "a", name)]);
    const { code, out } = doctor(cwd);
    expect(code).toBe(1);
    expect(out).toContain(`left over  of a run that was cut off: a/${name}\n`);
    carcase(["lint", "--fix", "a"], { cwd });
    expect(doctor(cwd).code).toBe(0);
  });

  it("finds the hook, wherever git looks for it", () => {
    const cwd = laid();
    const hook = (folder: string): void => {
      put(cwd, { [`${folder}/pre-commit`]: "#!/bin/sh\ncarcase lint --staged\n" });
      chmodSync(join(cwd, folder, "pre-commit"), 0o755);
    };
    hook(".git/hooks");
    expect(doctor(cwd).out).toContain("carcase is called by pre-commit; ");
    carcase(["git", "enable"], { cwd });
    expect(doctor(cwd).out).toContain("called by pre-commit; records are merged part by part\n");
    spawnSync("git", ["config", "core.hooksPath", ".hooks"], { cwd });
    expect(doctor(cwd).out).toContain("no hook calls carcase");
    hook(".hooks");
    put(cwd, { ".pre-commit-config.yaml": "repos: [{repo: x/carcase}]\n" });
    expect(doctor(cwd).out).toContain("carcase is called by pre-commit and .pre-commit-config.yaml; ");
  });

  it("says where nothing keeps the history, and where there are no settings", () => {
    const cwd = temporaryFolder();
    put(cwd, { "a.yaml": smallCase("a") });
    const { code, out } = doctor(cwd);
    expect(code).toBe(1);
    expect(out).toContain("this folder lies in no repository");
    expect(out).toContain("settings   none found, so the defaults hold");
    expect(out).toContain("visits     1 case that no visit lists: a.yaml\n");
    expect(doctor(cwd, "none").code).toBe(2);
  });
});
