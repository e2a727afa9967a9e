/** `carcase import` as it is called: dry by default, all or nothing, and never over a case that is there. */
import { spawn } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, watch, writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { temporaryName } from "../../src/commands/leftovers.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { every } from "../every.ts";
import { runs } from "../random.ts";
import { carcase, root } from "./run.ts";

const table = `pig,tag,group,age (d),lungs consolidation left cranial,vesicles\n${Array.from(
  { length: 30 },
  (_, at) => `${at + 1},T${at},nursery-2,58,${at},none\n`,
).join("")}`;
const folder = "alder/2026-03-14";

/** A farm with the table beside it. */
function farm(more: Readonly<Record<string, string>> = {}): string {
  const top = temporaryFolder();
  put(top, { "alder/farm.yaml": "format: 1\nfarm: alder\n", "t.csv": table, ...more });
  mkdirSync(join(top, folder), { recursive: true });
  return top;
}

const filesIn = (top: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(join(top, folder))
      .sort()
      .map((name) => [name, readFileSync(join(top, folder, name), "utf8")]),
  );
const records = (top: string): string[] =>
  Object.keys(filesIn(top)).filter((name) => /^[^.].*yaml$/.test(name));

describe("carcase import", () => {
  it("shows what it would write, and writes it when told to, in the three forms", () => {
    const top = farm();
    const shown = carcase(["import", "t.csv", folder], { cwd: top });
    expect([shown.code, shown.err]).toEqual([0, ""]);
    expect(shown.out).toContain(
      "  30 cases and visit.yaml would be written into alder/2026-03-14; nothing is\n  written without --write.\n",
    );
    expect(Math.max(...shown.out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
    const diff = carcase(["import", "t.csv", folder, "--format", "diff"], { cwd: top }).out;
    const { cases, visit } = JSON.parse(
      carcase(["import", "t.csv", folder, "--format", "json"], { cwd: top }).out,
    );
    expect(filesIn(top)).toEqual({});
    const done = carcase(["import", "t.csv", folder, "--write"], { cwd: top });
    expect([done.code, done.err]).toEqual([0, ""]);
    expect(done.out).toContain("Wrote 30 cases and visit.yaml into alder/2026-03-14. Next: carcase lint");
    const files = filesIn(top);
    expect(Object.keys(files).length).toBe(31);
    for (const { file, text } of [visit, ...cases]) {
      expect(files[file.slice(folder.length + 1)]).toBe(text);
      expect(diff).toContain(
        `--- /dev/null\n+++ b/${file}\n@@ -0,0 +1,${text.split("\n").length - 1} @@\n+${text.split("\n")[0]}\n`,
      );
    }
    expect(files["pig-08.yaml"]).toBe(
      "format: 1\ncase: alder-2026-03-14-08\npig: {tag: T7}\nalarm_check:\n  before_knife: {vesicles: none}\nrespiratory:\n  lungs:\n    consolidation: {left_cranial: 7}\n",
    );
    const linted = JSON.parse(carcase(["lint", folder, "--format", "json"], { cwd: top }).out);
    const rules = new Set(linted.findings.map(({ rule }: { rule: string }) => rule));
    expect([...rules].filter((rule) => String(rule).endsWith("format"))).toEqual([]);
    expect(linted.summary.cases).toBe(30);
  });

  it("replaces its own earlier result, and nothing else", () => {
    const top = farm({ "mine.txt": "a note\n" });
    for (const format of ["text", "diff", "json"])
      for (const _time of [1, 2])
        expect(
          carcase(["import", "t.csv", folder, "--format", format, "-o", `r.${format}`], { cwd: top }),
        ).toEqual({ code: 0, out: "", err: "" });
    const ran = carcase(["import", "t.csv", folder, "--write", "-o", "mine.txt"], { cwd: top });
    expect([ran.code, filesIn(top)]).toEqual([2, {}]);
  });

  it("overwrites no case, and writes nothing beside one", () => {
    const top = farm({ [`${folder}/pig-17.yaml`]: "format: 1\ncase: mine\n" });
    const ran = carcase(["import", "t.csv", folder, "--write"], { cwd: top });
    expect([ran.code, ran.out]).toEqual([2, ""]);
    expect(ran.err).toContain(
      "t.csv:18:1: not read: cell A18: alder/2026-03-14/pig-17.yaml is there already",
    );
    expect(filesIn(top)).toEqual({ "pig-17.yaml": "format: 1\ncase: mine\n" });
  });

  it("tells of an alarm sign before it writes", () => {
    const top = farm({ "s.csv": "pig,tag,vesicles\n1,7,seen\n" });
    const ran = carcase(["import", "s.csv", folder, "--write"], { cwd: top });
    expect(ran.code).toBe(0);
    expect(ran.err).toContain("alder-2026-03-14-01");
    expect(ran.err.toLowerCase()).toContain("stop");
    expect(records(top)).toEqual(["pig-01.yaml", "visit.yaml"]);
  });

  it("prints a map to paste for the columns of another table, and reads them by it", () => {
    const top = farm({ "u.csv": "Ear,Sx,L cran\n7,female,15\n" });
    const asked = carcase(["import", "u.csv", folder], { cwd: top });
    expect([asked.code, asked.out]).toEqual([
      2,
      '# For carcase.yaml, from u.csv: look through each line.\n# Blank: nobody knows yet; write a value of a case, or skip.\nimport:\n  columns:\n    "Ear":  # such as 7\n    "Sx": pig.sex  # such as female\n    "L cran": respiratory.lungs.consolidation.left_cranial  # such as 15\n',
    ]);
    put(top, { "carcase.yaml": `format: 1\n${asked.out.replace('"Ear": ', '"Ear": pig.tag')}` });
    expect(carcase(["import", "u.csv", folder, "--write"], { cwd: top }).code).toBe(0);
    expect(filesIn(top)["pig-01.yaml"]).toContain('pig: {tag: "7", sex: female}');
    put(top, { "carcase.yaml": "format: 1\nimport: {columns: {Ear: pig.tagg}}\n" });
    const ran = carcase(["import", "u.csv", folder], { cwd: top });
    expect(ran.err).toContain(
      'carcase.yaml:2:25: not read: import.columns.Ear: there is no value of a case "pig.tagg". Did you mean',
    );
  });

  it("prints the empty table, for a visit without what it says and from its next pig on", () => {
    const top = farm({
      [`${folder}/visit.yaml`]:
        "format: 1\nvisit: a\ndate: 2026-03-14\ndefaults: {pig: {group: nursery-2, age: 58 d}}\n",
      [`${folder}/pig-03.yaml`]: "format: 1\ncase: a-03\n",
    });
    const args = [
      "import",
      "--empty",
      "2",
      folder,
      "--columns",
      "group,age,sex,pleurisy left",
      "--semicolons",
    ];
    expect(carcase(args, { cwd: top })).toEqual({
      code: 0,
      out: "pig;tag;sex;pleura pleurisy left\r\n04;;;\r\n05;;;\r\n",
      err: "",
    });
    expect(carcase([...args, "-o", "e.csv"], { cwd: top }).err).toBe(
      "carcase: wrote an empty table for 2 pigs\n",
    );
    writeFileSync(
      join(top, "e.csv"),
      readFileSync(join(top, "e.csv"), "utf8").replace("04;;;", "04;7;male;none"),
    );
    const ran = carcase(["import", "e.csv", folder, "--write"], { cwd: top });
    expect([ran.code, records(top)]).toEqual([0, ["pig-03.yaml", "pig-04.yaml", "visit.yaml"]]);
  });

  every(
    "says what does not fit of what was typed",
    [
      [["import"], "name the table, saved as CSV; or write --empty 30 for an empty one to fill in"],
      [["import", "nowhere.csv"], "nowhere.csv: there is no such file"],
      [["import", "alder"], "alder: it is a folder; name the table, saved as CSV"],
      [["import", "t.csv", "alder/farm.yaml"], "alder/farm.yaml: name the folder of the visit, not a file"],
      [
        ["import", "t.csv", "--date", "14.3.2026"],
        '--date: "14.3.2026" is no day; write the year first, such as 2026-03-14',
      ],
      [["import", "t.csv", "--visit", "a b"], '--visit: "a b" is no name of a visit'],
      [
        ["import", "t.csv", folder, "--protocol", "ful"],
        '--protocol: there is no protocol "ful". Did you mean full?',
      ],
      [["import", "t.csv", "--semicolons"], "--semicolons goes with --empty"],
      [["import", "--empty", "0"], '--empty: "0" does not fit; write a whole number from 1 to 2000'],
      [
        ["import", "--empty", "2", "--columns", "milk spot"],
        '--columns: there is no column "milk spot". Did you mean milk spots?',
      ],
      [["import", "--empty", "2", "--write"], "--empty prints a table; take --write out"],
      [["import", "--empty", "2", "nowhere"], "nowhere: there is no such folder"],
    ] as const,
    ([args, said]) => {
      const ran = carcase(args, { cwd: top });
      expect([ran.code, ran.out]).toEqual([2, ""]);
      expect(ran.err).toContain(said);
    },
    ([args]) => args.join(" "),
  );

  it("reads no more of a large file than it may have", () => {
    const large = join(top, "large.csv");
    writeFileSync(large, Buffer.alloc(100_000_000, "a,b\n"));
    const ran = carcase(["import", "large.csv", folder], { cwd: top });
    expect(ran).toEqual({
      code: 2,
      out: "",
      err: "carcase: large.csv: it has 100.0 MB; 2 MB is the limit\n",
    });
    rmSync(large);
  });
});

const top = farm();

/** 20 in npm test, 200 in a long search. */
const kills = Math.max(20, runs(20));

/** Starts an import and kills it after some time, or when something in the folder has moved so often. */
function killed(cwd: string, after: { milliseconds: number } | { moves: number }) {
  return new Promise<void>((done) => {
    const child = spawn(
      process.execPath,
      [join(root, "bin/carcase.js"), "import", "t.csv", folder, "--write"],
      {
        cwd,
        stdio: "ignore",
      },
    );
    const kill = (): boolean => child.kill("SIGKILL");
    let moves = 0;
    const watched = watch(join(cwd, folder), () => {
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

describe(`an import that is killed, ${kills} times`, () => {
  const whole = farm();
  carcase(["import", "t.csv", folder, "--write"], { cwd: whole });
  const all = filesIn(whole);

  /** None of the files, or all of them as they were to be; else the next run says so, and finishes it. */
  function check(cwd: string): "none" | "all" | "cut off" {
    const there = records(cwd);
    const isWhole = there.length === Object.keys(all).length;
    if (there.length > 0 && !isWhole) {
      for (const args of [["lint"], ["score"], ["herd"]]) {
        const told = carcase([...args, folder], { cwd });
        expect([told.code, told.err]).toEqual([
          2,
          expect.stringContaining("was cut off, and some are missing"),
        ]);
      }
      expect(carcase(["lint", "--fix", folder], { cwd }).err).toContain("finished a run that was cut off");
    } else if (!isWhole || existsSync(join(cwd, folder, ".carcase-unfinished.json")))
      carcase(["lint", "--fix", folder], { cwd });
    const after = filesIn(cwd);
    if (there.length === 0 && records(cwd).length === 0) return "none";
    expect(after).toEqual(all);
    return isWhole ? "all" : "cut off";
  }

  it("leaves the table imported wholly or not at all", { timeout: 3_600_000 }, async () => {
    const counts = { none: 0, all: 0, "cut off": 0 };
    const start = performance.now();
    const timed = farm();
    await killed(timed, { milliseconds: 60_000 });
    const took = performance.now() - start;
    const tries = fc.sample(
      fc.record({
        share: fc.double({ min: 0, max: 1.1, noNaN: true }),
        moves: fc.option(fc.integer({ min: 1, max: 130 }), { freq: 3 }),
      }),
      kills,
    );
    const cwd = farm();
    for (const { share, moves } of tries) {
      await killed(cwd, moves === null ? { milliseconds: share * took } : { moves });
      counts[check(cwd)]++;
      rmSync(join(cwd, folder), { recursive: true });
      mkdirSync(join(cwd, folder));
    }
    console.info(`${kills} kills: ${JSON.stringify(counts)}`);
    expect(counts.none).toBeGreaterThan(0);
  });

  it("is finished by the next run, wherever among its files it stopped", () => {
    const names = Object.keys(all);
    for (const done of [0, 1, 15, names.length - 1, names.length]) {
      const cwd = farm();
      // A run of this machine that is over.
      const pairs = names.map((to) => ({
        from: temporaryName(to).replace(`-${process.pid}-`, "-999999999-"),
        to,
      }));
      for (const [at, { from, to }] of pairs.entries())
        put(join(cwd, folder), { [at < done ? to : from]: all[to] ?? "" });
      const by = /carcase-(.*)-[a-z0-9]*\.tmp$/.exec(pairs[0]?.from ?? "")?.[1];
      put(join(cwd, folder), { ".carcase-unfinished.json": JSON.stringify({ by, files: pairs }) });
      // Importing again finishes it, and then finds the cases there.
      if (done === 0)
        expect(carcase(["import", "t.csv", folder, "--write"], { cwd }).err).toContain("finished a run");
      else check(cwd);
      expect([done, filesIn(cwd)]).toEqual([done, all]);
    }
  });

  it("moves nothing but its own files for a list that somebody else wrote", () => {
    const cwd = farm({ [`${folder}/a.yaml`]: "format: 1\ncase: a\n", "alder/x.tmp": "format: 1\n" });
    const from = temporaryName("b").replace(`-${process.pid}-`, "-999999999-");
    const by = /carcase-(.*)-[a-z0-9]*\.tmp$/.exec(from)?.[1];
    const files = [
      { from: "../x.tmp", to: "b.yaml" },
      { from: "a.yaml", to: "c.yaml" },
      { from, to: "../../d.yaml" },
      { from, to: "e.txt" },
    ];
    put(join(cwd, folder), {
      [from]: "format: 1\n",
      ".carcase-unfinished.json": JSON.stringify({ by, files }),
    });
    carcase(["lint", "--fix", folder], { cwd });
    expect(filesIn(cwd)).toEqual({ "a.yaml": "format: 1\ncase: a\n" });
    expect(readFileSync(join(cwd, "alder/x.tmp"), "utf8")).toBe("format: 1\n");
  });
});
