/** Killed at any moment, a run leaves every file as it was or as it was to be; what lies beside them the next run clears away. */
import { execFile, spawnSync } from "node:child_process";
import { chmodSync, cpSync, existsSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { promisify } from "node:util";
import { describe, expect, it } from "vitest";
import { sha256 } from "../../src/words/sha256.ts";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import * as migration from "../migrate/archive.ts";
import { type Files, isEqual, killOften, kills, leftOf, leftovers, measured, tree } from "./kill.ts";
import { carcase, root } from "./run.ts";

const timeout = 3_600_000;
const env = { SOURCE_DATE_EPOCH: "1773500000" };
const itself = { command: [process.execPath, join(root, "bin/carcase.js")], env };

const padding = "# nothing to see here\n".repeat(400);
const records: Files = {
  ...Object.fromEntries(
    Array.from({ length: 12 }, (_, index) => index + 10).map((number) => [
      `pig-${number}.yaml`,
      // The end of the last line is missing.
      `${padding}format: 1\ncase: x-${number}\npig: {sex: female}\nrespiratory:\n  turbinates: {section: premolar-1, tracing: snout.svg}`,
    ]),
  ),
  "snout.svg":
    '<svg xmlns="http://www.w3.org/2000/svg"><path id="scale-bar-10-mm" d="M0,0 H100"/><path id="cavity-left" d="M0,10 H100 V110 H0 Z"/></svg>',
};
const known = '{"format": 1, "paths": ["."], "findings": []}\n';
const stale = known.replace(
  "[]}",
  '[{"file": "pig-10.yaml", "rule": "lobe-missing", "path": "respiratory", "count": 1}]}',
);

const unsigned: Files = {
  "visit.yaml": "format: 1\nvisit: a\ndate: 2026-03-14\n",
  ...Object.fromEntries(
    [1, 2, 3, 4].map((number) => [
      `pig-0${number}.yaml`,
      smallCase(`a-0${number}`, "pig: {weight: 17 kg}\n"),
    ]),
  ),
};
const seal = ["seal", ".", "--by", "A. Berg"];
const amend = [...seal, "--amend", "--because", "scale read anew"];
/** Signed records that were changed since. */
function changed(): Files {
  const folder = temporaryFolder();
  put(folder, unsigned);
  expect(carcase(seal, { cwd: folder, env }).code).toBe(0);
  return Object.fromEntries(
    Object.entries(tree(folder)).map(([name, text]) => [name, text.replace("17 kg", "18 kg")]),
  );
}

/** Each with the files that are there before. */
const writers: readonly (readonly [args: readonly string[], before: () => Files])[] = [
  [["lint", "--fix", "."], () => records],
  [["measure", "--write", "."], () => records],
  [["lint", "--write-baseline", "known.json", "."], () => ({ ...records, "known.json": known })],
  [["lint", "--baseline", "known.json", "."], () => ({ ...records, "known.json": stale })],
  [
    ["lint", "-o", "found.txt", "--also", "json=found.json", "--also", "junit=found.xml", "."],
    () => ({
      ...records,
      "found.txt": "1 case: nothing",
      "found.json": '{"output": "lint", "findings": []}',
      "found.xml": "<testsuites>\n",
    }),
  ],
  [["score", "--format", "csv", "-o", "scores.csv", "."], () => records],
  [["plan", "say", "--pigs", "12", "-o", "plan.txt"], () => records],
];

describe("a run that is killed", () => {
  it.each([
    ...writers.map(([args, before]) => ({
      what: args.slice(0, 2).join(" "),
      args,
      before,
      many: Math.ceil(kills(14) / 7),
    })),
    { what: "seal", args: seal, before: () => unsigned, many: kills(6) / 2 },
    { what: "seal --amend", args: amend, before: changed, many: kills(6) / 2 },
    { what: "migrate", args: [], before: () => migration.old, many: kills(5) },
  ])("leaves every file old or new: $what", { timeout }, async ({ what, args, before, many }) => {
    const isMigration = what === "migrate";
    if (isMigration) await migration.buildProgram();
    const program = isMigration
      ? { command: [process.execPath, migration.program], env: migration.env }
      : itself;
    const again = (cwd: string): number | null =>
      isMigration
        ? spawnSync(process.execPath, [migration.program], { cwd, env: { ...process.env, ...migration.env } })
            .status
        : carcase(args, { cwd, env }).code;
    const old = before();
    const first = temporaryFolder();
    put(first, old);
    const whole = await measured(args, first, program);
    const young = tree(first);
    expect(isEqual(old, young)).toBe(false);
    if (isMigration) expect(isEqual(young, migration.young)).toBe(true);
    const code = again(first);
    expect(code).toBeLessThan(2);
    await killOften({
      what,
      many,
      args,
      program,
      whole,
      made() {
        const folder = temporaryFolder();
        put(folder, old);
        return folder;
      },
      seen(folder, told) {
        const left = leftOf(tree(folder), old, young);
        const [beside] = leftovers(folder);
        if (beside !== undefined && !isMigration) {
          expect(carcase(["lint", "."], { cwd: folder, env }).err, told).toContain(beside);
          expect(leftOf(tree(folder), old, young), told).toEqual(left);
        }
        expect(again(folder), told).toBe(code);
        expect(tree(folder), told).toEqual(young);
        expect(leftovers(folder), told).toEqual([]);
        rmSync(folder, { recursive: true });
        return left;
      },
    });
  });

  it("leaves the folder of an export as it was or as it was to be", { timeout }, async () => {
    const args = ["export", "--format", "ndjson", "-o", "out", "."];
    const start = temporaryFolder();
    put(start, { "pig-1.yaml": "format: 1\ncase: x-1\n" });
    expect(carcase(args, { cwd: start, env }).code).toBe(0);
    put(start, records);
    const first = temporaryFolder();
    cpSync(start, first, { recursive: true });
    const old = tree(join(start, "out"));
    const whole = await measured(args, first, itself);
    const young = tree(join(first, "out"));
    expect(isEqual(old, young)).toBe(false);
    await killOften({
      what: "export",
      many: kills(4),
      args,
      program: itself,
      whole,
      made() {
        const folder = temporaryFolder();
        cpSync(start, folder, { recursive: true });
        return folder;
      },
      seen(folder, told) {
        const out = join(folder, "out");
        const isThere = existsSync(out);
        // No call of Node changes two folders for each other: between two renames both lie beside the place, whole.
        const states = (isThere ? ["out"] : leftovers(folder)).map((name) => tree(join(folder, name)));
        if (!isThere) expect(states, told).toEqual(expect.arrayContaining([old, young]));
        const left = isThere ? leftOf(states[0] ?? {}, old, young) : "between";
        expect(carcase(args, { cwd: folder, env }).code, told).toBe(0);
        expect(tree(out), told).toEqual(young);
        expect(leftovers(folder), told).toEqual([]);
        rmSync(folder, { recursive: true });
        return isThere && left === "between" ? { half: "some files of each" } : left;
      },
    });
  });

  describe("lint that keeps what it found", () => {
    const archive = temporaryFolder();
    for (let pig = 0; pig < 120; pig++)
      put(archive, { [`${pig % 12}/pig-${pig}.yaml`]: smallCase(`x-${pig}`) });
    const args = ["lint", "--format", "json", "."];
    const keepingIn = (cache: string) => ({ ...itself, env: { ...env, XDG_CACHE_HOME: cache } });
    const lint = (cache: string, ...args: string[]) => {
      const { command, env } = keepingIn(cache);
      const [file = "", ...before] = command;
      return promisify(execFile)(file, [...before, ...args], {
        cwd: archive,
        env: { ...process.env, ...env },
        maxBuffer: 1 << 26,
      }).then(
        ({ stdout }) => ({ code: 0, stdout }),
        ({ code, stdout }: { code: number; stdout: string }) => ({ code, stdout }),
      );
    };
    const isWhole = (text: string): boolean =>
      text.endsWith("\n") &&
      text
        .split("\n")
        .slice(0, -1)
        .every((line) => {
          const [, sum = "", ...json] = line.split(" ");
          return sha256(json.join(" ")) === sum;
        });

    it.each(["first", "again"])(
      "keeps it whole or as it was, and says the same: %s",
      { timeout },
      async (which) => {
        const cache = temporaryFolder();
        const place = join(cache, "carcase");
        let old: Files = {};
        if (which === "again") {
          await lint(cache, ...args);
          old = tree(place);
          put(archive, { "3/pig-3.yaml": smallCase("x-3", "pig: {sex: female}\n") });
        }
        const expected = await lint(cache, ...args, "--no-cache");
        expect(expected.code).toBe(1);
        const program = keepingIn(cache);
        const whole = await measured(args, archive, program);
        const young = tree(place);
        expect(isEqual(old, young)).toBe(false);
        expect(Object.values(young).every(isWhole)).toBe(true);

        await killOften({
          what: `lint that keeps, ${which}`,
          many: kills(6) / 2,
          args,
          program,
          whole,
          made() {
            // What a killed run left over stays for the next one that is killed.
            if (which === "first") rmSync(place, { recursive: true, force: true });
            put(place, old);
            return archive;
          },
          async seen(_, told) {
            const now = existsSync(place) ? tree(place) : {};
            if (existsSync(place)) expect(statSync(place).mode & 0o077, told).toBe(0);
            if (existsSync(place)) expect(leftovers(place).length, told).toBeLessThan(2);
            const copy = `${cache}-copy`;
            cpSync(cache, copy, { recursive: true });
            expect(await lint(copy, ...args), told).toEqual(expected);
            expect(tree(join(copy, "carcase")), told).toEqual(young);
            if (!isEqual(now, young)) expect(leftovers(copy), told).toEqual([]);
            rmSync(copy, { recursive: true });
            return leftOf(now, old, young);
          },
        });
      },
    );

    it("is not disturbed by another one at the same time", { timeout }, async () => {
      const cache = temporaryFolder();
      const folders = Array.from({ length: 11 }, (_, index) => String(index));
      const asked = [[...folders], [...folders.slice(1), "11"], ["."]];
      const expected = await Promise.all(
        asked.map((paths) => lint(cache, "lint", "--format", "json", "--no-cache", ...paths)),
      );
      for (let round = 0; round < kills(5) / 5; round++) {
        if (round % 3 === 0) rmSync(join(cache, "carcase"), { recursive: true, force: true });
        put(archive, { "4/pig-4.yaml": `${smallCase("x-4")}# ${round}\n` });
        const [first, second] = await Promise.all(
          asked.slice(0, 2).map((paths) => lint(cache, "lint", "--format", "json", ...paths)),
        );
        expect([first, second], `round ${round}`).toEqual(expected.slice(0, 2));
        expect(Object.values(tree(join(cache, "carcase"))).map(isWhole)).toEqual([true]);
        expect(leftovers(cache)).toEqual([]);
        if (round % 5 === 0) expect(await lint(cache, ...args), `round ${round}`).toEqual(expected[2]);
      }
    });
  });

  it("leaves a record that git merges as it was or merged, and the index as git has it", {
    timeout,
  }, async () => {
    const bin = temporaryFolder();
    writeFileSync(join(bin, "carcase"), `#!/bin/sh\nexec "${itself.command.join('" "')}" "$@"\n`);
    chmodSync(join(bin, "carcase"), 0o755);
    const cwd = temporaryFolder();
    const more = { PATH: `${bin}${delimiter}${process.env.PATH ?? ""}`, LC_ALL: "C.UTF-8" };
    const user = ["-c", "user.name=H. Marlow", "-c", "user.email=h@example.org"];
    const git = (...args: string[]): string => {
      const ran = spawnSync("git", [...user, ...args], {
        cwd,
        encoding: "utf8",
        env: { ...process.env, ...more },
      });
      expect(ran.status, `git ${args.join(" ")}: ${ran.stderr}`).toBe(0);
      return ran.stdout;
    };
    const base = smallCase(
      "a-1",
      "respiratory:\n  lungs:\n    consolidation: {left_cranial: 20, left_middle: 35}\n  trachea: normal\n",
    );
    const theirs = base.replace("left_middle: 35", "left_middle: 40");
    const ours = base.replace("left_cranial: 20", "left_cranial: 25");
    const both = theirs.replace("left_cranial: 20", "left_cranial: 25");
    const commit = (pig: string, other: string): void => {
      put(cwd, { "a/pig-1.yaml": pig, "a/pig-2.yaml": other });
      git("add", "--all");
      git("commit", "--quiet", "--no-verify", "--message=x");
    };
    git("init", "--quiet", "--initial-branch=main");
    git("config", "merge.carcase.driver", "carcase merge-driver %O %A %B %L %P");
    put(cwd, { ".gitattributes": "*.yaml merge=carcase\n" });
    commit(base, smallCase("a-2"));
    git("branch", "other");
    commit(ours, smallCase("a-2"));
    git("checkout", "--quiet", "other");
    commit(theirs, smallCase("a-2", "history: ill\n"));
    git("checkout", "--quiet", "main");
    const here = git("rev-parse", "HEAD").trim();
    const blob = (name: string): string => git("rev-parse", name).trim();
    /** A file in the index, in one stage or three. */
    const staged = (file: string, ...blobs: string[]): string =>
      blobs.map((id, index) => `100644 ${id} ${blobs.length === 1 ? 0 : index + 1}\t${file}\n`).join("");
    const around = [
      staged(".gitattributes", blob("main:.gitattributes")),
      staged("a/pig-2.yaml", blob("other:a/pig-2.yaml")),
    ] as const;
    const names = ["main~1", "main", "other"].map((name) => blob(`${name}:a/pig-1.yaml`));
    const conflicted = around.join(staged("a/pig-1.yaml", ...names));
    const args = ["merge", "--quiet", "--no-edit", "other"];
    const program = { command: ["git", ...user], env: more };
    const whole = await measured(args, cwd, program);
    const clean = git("ls-files", "--stage");
    expect(clean).toBe(around.join(staged("a/pig-1.yaml", blob("HEAD:a/pig-1.yaml"))));
    expect(git("show", "HEAD:a/pig-1.yaml")).toBe(both);
    await killOften({
      what: "merge-driver, which git calls",
      many: kills(6),
      args,
      program,
      whole,
      made() {
        git("reset", "--quiet", "--hard", here);
        return cwd;
      },
      seen(_, told) {
        const text = readFileSync(join(cwd, "a/pig-1.yaml"), "utf8");
        const isMerged = readFileSync(join(cwd, ".git/refs/heads/main"), "utf8").trim() !== here;
        expect(git("ls-files", "--stage"), told).toBe(isMerged ? clean : conflicted);
        if (isMerged) expect(text, told).toBe(both);
        const left = leftovers(cwd).length;
        expect(left, told).toBeLessThan(2);
        if (left > 0) {
          git("reset", "--quiet", "--hard", here);
          git(...args);
          expect(git("ls-files", "--stage"), told).toBe(clean);
          expect(git("status", "--porcelain"), told).toBe("");
        }
        return leftOf({ text }, { text: ours }, { text: both });
      },
    });
  });
});
