/** `docs/history.md` tells a story of two people and one pig: it is played in a repository, and what is printed stands there. */
import { spawnSync } from "node:child_process";
import { chmodSync, cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { temporaryFolder } from "../cases/temporary.ts";
import { root } from "../end-to-end/run.ts";
import { blocksOf, fence, played, textOf } from "./blocks.ts";

const page = "docs/history.md";
const update = process.env.UPDATE_DOCS !== undefined;
const file = "alder-farm/2026-03-14/pig-01.yaml";

function archive() {
  const cwd = temporaryFolder();
  cpSync(join(root, "cases-example"), cwd, { recursive: true });
  let day = 14;
  const run = (program: string, ...args: string[]): string => {
    const [command, given] =
      program === "carcase" ? [process.execPath, [join(root, "bin/carcase.js")]] : [program, []];
    const date = `2026-03-${day}T18:05:00+0100`;
    const name = "H. Marlow";
    const env = {
      ...process.env,
      NO_COLOR: "1",
      LC_ALL: "C.UTF-8",
      GIT_AUTHOR_NAME: name,
      GIT_COMMITTER_NAME: name,
      GIT_AUTHOR_EMAIL: "marlow@example.org",
      GIT_COMMITTER_EMAIL: "marlow@example.org",
      GIT_AUTHOR_DATE: date,
      GIT_COMMITTER_DATE: date,
      GIT_MERGE_AUTOEDIT: "no",
    };
    const { stdout, stderr } = spawnSync(command, [...given, ...args], { cwd, encoding: "utf8", env });
    return stderr + stdout;
  };
  const edit = (...edits: (readonly [from: string, to: string])[]): void => {
    let text = readFileSync(join(cwd, file), "utf8");
    for (const [from, to] of edits) {
      expect(text).toContain(from);
      text = text.replace(from, to);
    }
    writeFileSync(join(cwd, file), text);
  };
  const commit = (message: string): void => {
    run("git", "add", "--all");
    run("git", "commit", "--quiet", "--no-verify", `--message=${message}`);
    day++;
  };
  run("git", "init", "--quiet", "--initial-branch=main");
  run(
    "git",
    "config",
    "merge.carcase.driver",
    `"${process.execPath}" "${join(root, "bin/carcase.js")}" merge-driver %O %A %B %L %P`,
  );
  writeFileSync(join(cwd, ".gitattributes"), "*.yaml merge=carcase\n");
  commit("The visit of March");
  const apart = (theirs: Parameters<typeof edit>, ours: Parameters<typeof edit>): void => {
    run("git", "checkout", "--quiet", "-B", "other");
    edit(...theirs);
    commit("From the other table");
    run("git", "checkout", "--quiet", "main");
    edit(...ours);
    commit("Looked again");
  };
  return { run, edit, commit, apart };
}

const lung = ["left_cranial: 20 ", "left_cranial: 35 "] as const;

it("docs/history.md prints what the commands print", () => {
  const { run, edit, commit, apart } = archive();
  const steps: (() => void)[] = [
    () =>
      edit(
        lung,
        ["  spleen: normal", "  spleen: {not_examined: left in the carcass}"],
        ["at: 2026-03-14T09:40", "at: 2026-03-14T09:55"],
        [
          "history: ",
          "authority:\n  - {at: 2026-03-14T10:30, stands: released, for: [vesicles], reached: duty officer, ground: scald of the snout}\nhistory: ",
        ],
      ),
    () => {
      commit("Second look at the lungs");
      edit(["weight: 410 g", "weight: 415 g"]);
    },
    () => {
      commit("Weighed again");
      apart(
        [
          ["left_middle: 35", "left_middle: 40"],
          ["for: [pcr, culture]", "for: [pcr, culture, histology]"],
        ],
        [
          ["left_cranial: 35 ", "left_cranial: 30 "],
          ["2026-03-14T09:35", "2026-03-14T09:37"],
        ],
      );
    },
    () => apart([["left_caudal: 3", "left_caudal: 10"]], [["left_caudal: 3", "left_caudal: 5"]]),
  ];
  let step = 0;
  const play = (body: string): string => {
    steps[step++]?.();
    return played(body, (line) => {
      const [program = "", ...args] = line.split(" ");
      return run(program, ...args);
    });
  };
  const isPlayed = (info: string): boolean => info === "console archive";
  if (update)
    writeFileSync(
      join(root, page),
      textOf(page).replaceAll(fence, (whole, info, body) =>
        isPlayed(info) ? `\`\`\`${info}\n${play(body)}\`\`\`` : whole,
      ),
    );
  else for (const { info, body } of blocksOf(page)) if (isPlayed(info)) expect(body).toBe(play(body));
  expect(step).toBe(steps.length);
});

it("docs/history.md sets up a difftool that tells of records that changed, are new and are gone", () => {
  const { run, edit, commit } = archive();
  const bin = temporaryFolder();
  writeFileSync(
    join(bin, "carcase"),
    `#!/bin/sh\nexec "${process.execPath}" "${join(root, "bin/carcase.js")}" "$@"\n`,
  );
  chmodSync(join(bin, "carcase"), 0o755);
  const path = `PATH='${bin}':"$PATH"`;
  const [recipe] = blocksOf(page).filter(({ body }) => body.includes("difftool."));
  expect(run("sh", "-e", "-c", recipe?.body ?? "exit 1")).toBe("");
  edit(lung);
  run("git", "mv", "alder-farm/2026-03-14/pig-02.yaml", "alder-farm/2026-03-14/pig-92.yaml");
  commit("Renamed");
  const asked = /`(git difftool .*)`/.exec(textOf(page))?.[1] ?? "";
  const said = run("sh", "-c", `${path} ${asked} --no-renames`);
  expect(said).toContain("  Lungs, consolidation, left cranial lobe: 20 % to 35 %\n");
  expect(said).toMatch(/alder-2026-03-14-02 .*pig-92\.yaml\n {2}Pig added: /);
  expect(said).toMatch(/alder-2026-03-14-02 .*pig-02\.yaml\n {2}Pig taken out: /);
  expect(said).not.toContain("not read");
});
