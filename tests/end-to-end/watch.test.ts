/** `carcase lint --watch`, as the process that it is: what it says after each change, and how it ends. And the line of progress. */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { appendFileSync, cpSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { root } from "./run.ts";

const program = join(root, "bin/carcase.js");

/** Waits for the next text of a program that holds these words, and gives it. */
function listener(child: ChildProcess): (...words: string[]) => Promise<string> {
  let heard = "";
  child.stdout?.on("data", (some) => (heard += some));
  child.stderr?.on("data", (some) => (heard += some));
  return (...words) =>
    new Promise((done, fail) => {
      const until = Date.now() + 20_000;
      const look = setInterval(() => {
        if (!words.every((word) => heard.includes(word))) {
          if (child.exitCode === null && Date.now() < until) return;
          child.kill();
          fail(new Error(`it did not say ${words.join(", ")}: ${heard}`));
        }
        clearInterval(look);
        done(heard);
        heard = "";
      }, 20);
    });
}

it("lints again what changes, however it is saved, until Ctrl-C", async () => {
  const cwd = temporaryFolder();
  cpSync(join(root, "tests/fixtures/birch-farm"), join(cwd, "birch"), { recursive: true });
  const [visit, pig] = [join(cwd, "birch/2026-04-20"), join(cwd, "birch/2026-04-20/pig-01.yaml")];
  const good = readFileSync(pig, "utf8");
  const bad = good.replace("  spleen: normal\n", "");
  const child = spawn(process.execPath, [program, "lint", "--watch"], { cwd });
  const hears = listener(child);
  const ended = new Promise((done) => child.once("exit", done));
  expect(await hears("3 folders watched; Ctrl-C ends")).toContain("1 case: nothing skipped");

  // As editors save: a new file in the place of the old one, twice, and then written into.
  for (const text of [bad, bad]) {
    writeFileSync(join(visit, ".pig.tmp"), text);
    renameSync(join(visit, ".pig.tmp"), pig);
    expect(await hears("[skipped-organ]", "1 error")).toMatch(
      /^\n?\d\d:\d\d:\d\d birch\/2026-04-20\/pig-01\.yaml\n/,
    );
  }
  writeFileSync(pig, good);
  expect(await hears("1 case: nothing skipped")).not.toContain("spleen");

  // A folder that is new, with its visit, and then gone.
  const next = join(cwd, "birch/2026-04-21");
  mkdirSync(next);
  writeFileSync(join(next, "pig-02.yaml"), bad.replace("birch-2026-04-20-01", "birch-2026-04-21-02"));
  await hears("birch/2026-04-21/pig-02.yaml\n", "[skipped-organ]");
  appendFileSync(join(next, "pig-02.yaml"), "# seen\n");
  await hears("birch/2026-04-21/pig-02.yaml\n", "[skipped-organ]");
  rmSync(next, { recursive: true });
  await hears("birch/2026-04-21", "1 case: nothing skipped");

  // What cannot be read ends nothing.
  put(cwd, { "carcase.yaml": "rules: {no-such-rule: off}\n" });
  await hears("carcase.yaml", "no-such-rule");
  rmSync(join(cwd, "carcase.yaml"));
  await hears("1 case: nothing skipped");
  child.kill("SIGINT");
  expect(await ended).toBe(0);
});

it.runIf(spawnSync("script", ["--version"]).stdout?.includes("util-linux"))(
  "says in a terminal how far work is that takes longer than a second, and takes it away",
  async () => {
    const cwd = temporaryFolder();
    const slow = join(cwd, "slow.cjs");
    // A clock that runs a thousand times too fast.
    writeFileSync(
      slow,
      "const now = Date.now, from = now(); Date.now = () => from + (now() - from + 1) * 1000;",
    );
    for (const farm of ["a", "b", "c"])
      cpSync(join(root, "tests/fixtures/birch-farm"), join(cwd, farm), { recursive: true });
    const line = `"${process.execPath}" -r "${slow}" "${program}"`;
    for (const command of ["lint --only skipped-organ", "score -q"]) {
      const terminal = spawnSync("script", ["-qec", `${line} ${command}; true`, "/dev/null"], {
        cwd,
        encoding: "utf8",
      });
      expect(terminal.stdout).toMatch(/[12] of \d folders\r +\r/);
      expect(terminal.stdout.split("\r").at(-1)).not.toContain("folders");
      const elsewhere = spawnSync("sh", ["-c", `${line} ${command}`], { cwd, encoding: "utf8" });
      expect(elsewhere.stderr).not.toContain("folders");
    }
  },
);
