/** `carcase import` as it is called: dry by default, all or nothing, and never over a case that is there. */
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { every } from "../every.ts";
import { runs } from "../random.ts";
import { isEqual, killOften, leftovers, measured, tree } from "./kill.ts";
import { carcase, wide } from "./run.ts";

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
    const ran = carcase(["import", "u.csv", folder], { cwd: top, env: wide });
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

describe(`an import that is killed, ${kills} times`, () => {
  const args = ["import", "t.csv", folder, "--write"];
  const known = { [`${folder}/pig-77.yaml`]: "format: 1\ncase: alder-2026-03-14-77\n" };
  const visit = { [`${folder}/visit.yaml`]: "format: 1\nvisit: alder-2026-03-14\ndate: 2026-03-14\n" };
  /** By what lies in the folder of the visit before. */
  const starts: Readonly<Record<string, () => string>> = {
    "a new visit": () => {
      const cwd = farm();
      rmSync(join(cwd, folder), { recursive: true });
      return cwd;
    },
    "a visit with pigs": () => farm({ ...visit, ...known }),
    "a folder that holds something else": () => farm({ [`${folder}/notes.txt`]: "cold barn\n" }),
  };

  it("leaves the table imported wholly or not at all", { timeout: 3_600_000 }, async () => {
    const shares = Object.entries(starts);
    for (const [name, start] of shares) {
      const first = start();
      const none = tree(first);
      const whole = await measured(args, first);
      const all = tree(first);
      await killOften({
        what: `import, ${name}`,
        many: Math.ceil(kills / shares.length),
        args,
        whole,
        made: start,
        seen(cwd, told) {
          const now = tree(cwd);
          const left = isEqual(now, none) ? "old" : isEqual(now, all) ? "new" : "between";
          // The visit came with its pigs, and is not put above them yet: every command reads the same.
          if (left === "between") {
            expect(Object.keys(now).filter((file) => file.endsWith("visit.yaml"))).toEqual([
              `${folder}/pigs-01-30/visit.yaml`,
            ]);
            const read = ({ out }: { out: string }) => {
              const { summary, completeness } = JSON.parse(out);
              return [summary.cases, completeness.map(({ case: id }: { case: string }) => id)];
            };
            const linted = (from: string) =>
              read(carcase(["lint", folder, "--format", "json"], { cwd: from }));
            expect(linted(cwd), told).toEqual(linted(first));
          }
          // What is left over is cleared away by the next import, which does all of it.
          if (left === "old") expect(carcase(args, { cwd }).code, told).toBe(0);
          if (left !== "between") expect(tree(cwd), told).toEqual(all);
          expect(leftovers(cwd), told).toEqual(left === "old" ? [] : expect.any(Array));
          rmSync(cwd, { recursive: true });
          return left;
        },
      });
    }
  });
});
