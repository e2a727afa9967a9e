/** Killed at any moment, a run leaves every file as it was or as it was to be; what lies beside them the next run clears away. */
import { spawn } from "node:child_process";
import { cpSync, existsSync, readdirSync, readFileSync, rmSync, watch } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { runs } from "../random.ts";
import { carcase, root } from "./run.ts";

/** 500 in a long search. */
const kills = runs(50) > 50 ? runs(50) : 20;
/** Each of an export takes two runs of the program. */
const killsOfExport = runs(50) > 50 ? runs(50) : 4;

type Files = Readonly<Record<string, string>>;

const numbers = Array.from({ length: 12 }, (_, index) => index + 10);
const padding = "# nothing to see here\n".repeat(400);
const records: Files = Object.fromEntries([
  ...numbers.map((number) => [
    `pig-${number}.yaml`,
    // The end of the last line is missing.
    `${padding}format: 1\ncase: x-${number}\npig: {sex: female}\nrespiratory:\n  turbinates: {section: premolar-1, tracing: snout.svg}`,
  ]),
  [
    "snout.svg",
    '<svg xmlns="http://www.w3.org/2000/svg"><path id="scale-bar-10-mm" d="M0,0 H100"/><path id="cavity-left" d="M0,10 H100 V110 H0 Z"/></svg>',
  ],
]);

const known = '{"format": 1, "paths": ["."], "findings": []}\n';
const stale = known.replace(
  "[]}",
  '[{"file": "pig-10.yaml", "rule": "lobe-missing", "path": "respiratory", "count": 1}]}',
);

/** Each with the files that are there before, beside the records. */
const writers: readonly (readonly [args: readonly string[], before: Files])[] = [
  [["lint", "--fix", "."], {}],
  [["measure", "--write", "."], {}],
  [["lint", "--write-baseline", "known.json", "."], { "known.json": known }],
  [["lint", "--baseline", "known.json", "."], { "known.json": stale }],
  [
    ["lint", "-o", "found.txt", "--also", "json=found.json", "--also", "junit=found.xml", "."],
    {
      "found.txt": "1 case: nothing",
      "found.json": '{"output": "lint", "findings": []}',
      "found.xml": "<testsuites>\n",
    },
  ],
  [["score", "--format", "csv", "-o", "scores.csv", "."], {}],
  [["plan", "say", "--pigs", "12", "-o", "plan.txt"], {}],
];

const env = { SOURCE_DATE_EPOCH: "1773500000", CI: "" };
const isLeft = (name: string): boolean => /^\..*\.tmp$/.test(name);

const filesIn = (folder: string): Files =>
  Object.fromEntries(
    readdirSync(folder)
      .filter((name) => !isLeft(name))
      .map((name) => [name, readFileSync(join(folder, name), "utf8")]),
  );

/** Starts a run and kills it after a share of the usual time, or when something in the folder has moved so often. */
function killed(
  folder: string,
  args: readonly string[],
  after: { milliseconds: number } | { moves: number },
) {
  return new Promise<void>((done) => {
    const child = spawn(process.execPath, [join(root, "bin/carcase.js"), ...args], {
      cwd: folder,
      stdio: "ignore",
      env: { ...process.env, ...env },
    });
    const kill = (): boolean => child.kill("SIGKILL");
    let moves = 0;
    const watched = watch(folder, () => {
      if ("moves" in after && ++moves >= after.moves) kill();
    });
    const timer = "milliseconds" in after ? setTimeout(kill, after.milliseconds) : undefined;
    child.once("exit", () => {
      clearTimeout(timer);
      watched.close();
      done();
    });
  });
}

describe(`a run that is killed, ${kills} times`, () => {
  it("loses nothing, and the next one clears away what is left over", { timeout: 3_600_000 }, async () => {
    const top = temporaryFolder();
    const outcomes = writers.map(([args, before], index) => {
      const folder = join(top, `whole-${index}`);
      put(folder, { ...records, ...before });
      const old = filesIn(folder);
      const start = performance.now();
      expect(carcase(args, { cwd: folder, env }).err).not.toContain("cannot write");
      const took = performance.now() - start;
      const now = filesIn(folder);
      expect(now, args.join(" ")).not.toEqual(old);
      return { args, old, now, took };
    });
    let [cut, left] = [0, 0];
    const tries = fc.sample(
      fc.record({
        writer: fc.nat(writers.length - 1),
        share: fc.double({ min: 0, max: 1.1, noNaN: true }),
        moves: fc.option(fc.integer({ min: 1, max: 24 }), { freq: 2 }),
      }),
      kills,
    );
    for (const [index, { writer, share, moves }] of tries.entries()) {
      const { args, old, now, took } = outcomes[writer] ?? expect.fail();
      const folder = join(top, `killed-${index}`);
      put(folder, old);
      await killed(folder, args, moves === null ? { milliseconds: share * took } : { moves });
      const after = filesIn(folder);
      const told = JSON.stringify({ index, args, share, moves });
      for (const name of new Set([...Object.keys(old), ...Object.keys(now)]))
        expect([old[name], now[name]], `${name}: ${told}`).toContain(after[name]);
      expect(
        Object.keys(after).filter((name) => !(name in now)),
        told,
      ).toEqual([]);
      if (JSON.stringify(after) !== JSON.stringify(now)) cut++;
      const beside = readdirSync(folder).filter(isLeft);
      if (beside.length > 0) {
        left++;
        expect(carcase(["lint", "."], { cwd: folder, env }).err, told).toContain(beside[0]);
        expect(filesIn(folder), told).toEqual(after);
        expect(carcase(args, { cwd: folder, env }).err, told).toContain(`cleared away ${beside[0]}`);
        expect(readdirSync(folder).filter(isLeft), told).toEqual([]);
        expect(filesIn(folder), told).toEqual(now);
      }
      rmSync(folder, { recursive: true });
    }
    console.info(`${kills} kills: ${cut} runs were cut off before their end, ${left} left something over`);
    // Most runs are in their midst; in a short search chance may spare them all.
    if (kills >= 100) expect(Math.min(cut, left)).toBeGreaterThan(0);
  });

  it("leaves the folder of an export as it was or as it was to be", { timeout: 3_600_000 }, async () => {
    const top = temporaryFolder();
    const args = ["export", "--format", "ndjson", "-o", "out", "."];
    const start = join(top, "start");
    put(start, { "pig-1.yaml": "format: 1\ncase: x-1\n" });
    expect(carcase(args, { cwd: start, env }).code).toBe(0);
    put(start, records);
    const old = filesIn(join(start, "out"));
    const whole = join(top, "whole");
    cpSync(start, whole, { recursive: true });
    const began = performance.now();
    expect(carcase(args, { cwd: whole, env }).code).toBe(0);
    const took = performance.now() - began;
    const now = filesIn(join(whole, "out"));
    expect(now).not.toEqual(old);
    const seen = { old: 0, now: 0, between: 0 };
    const tries = fc.sample(
      fc.record({
        share: fc.double({ min: 0, max: 1.5, noNaN: true }),
        moves: fc.option(fc.integer({ min: 1, max: 5 }), { freq: 2 }),
      }),
      killsOfExport,
    );
    for (const [index, { share, moves }] of tries.entries()) {
      const told = JSON.stringify({ index, share, moves });
      const folder = join(top, `killed-${index}`);
      cpSync(start, folder, { recursive: true });
      await killed(folder, args, moves === null ? { milliseconds: share * took } : { moves });
      if (existsSync(join(folder, "out"))) {
        const after = filesIn(join(folder, "out"));
        expect([old, now], told).toContainEqual(after);
        seen[JSON.stringify(after) === JSON.stringify(old) ? "old" : "now"]++;
      } else {
        // No call of Node changes two folders for each other: between two renames both lie beside the place, whole.
        seen.between++;
        const beside = readdirSync(folder)
          .filter(isLeft)
          .map((name) => filesIn(join(folder, name)));
        expect(beside, told).toContainEqual(old);
        expect(beside, told).toContainEqual(now);
      }
      expect(carcase(args, { cwd: folder, env }).code, told).toBe(0);
      expect(filesIn(join(folder, "out")), told).toEqual(now);
      expect(readdirSync(folder).filter(isLeft), told).toEqual([]);
      rmSync(folder, { recursive: true });
    }
    console.info(
      `${killsOfExport} kills of an export: ${seen.old} left the old folder, ${seen.now} the new one, ${seen.between} both beside its place`,
    );
    if (killsOfExport >= 100) expect(Math.min(seen.old, seen.now)).toBeGreaterThan(0);
  });
});
