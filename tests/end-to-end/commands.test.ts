/** The built program: exit codes, streams, options, and the JSON that scripts rely on. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { carcase, root, wide } from "./run.ts";

const farm = "cases-example/alder-farm";
const model = readFileSync(join(root, "tests/fixtures/birch-farm/2026-04-20/pig-01.yaml"), "utf8");
const temporary = mkdtempSync(join(tmpdir(), "carcase-e2e-"));
afterAll(() => rmSync(temporary, { recursive: true }));

/** What the story needs of an estimate or of scores. */
interface Row {
  readonly basis: string;
  readonly indicator?: string;
  readonly scale?: string;
  readonly proportion?: number;
  readonly mean?: number;
}

const colour = "\u001b[";

describe("help and usage", () => {
  it("prints the version of the package", () => {
    const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
    expect(carcase(["--version"])).toEqual({ code: 0, out: `${version}\n`, err: "" });
  });

  it("shows help on request on standard output, and without a command on standard error", () => {
    expect(carcase(["--help"])).toMatchObject({ code: 0, err: "" });
    const bare = carcase([]);
    expect(bare).toMatchObject({ code: 2, out: "" });
    expect(bare.err).toContain("Usage: carcase");
  });

  it("keeps to 80 columns, but for examples that are one line to copy", () => {
    const lines = readFileSync(join(root, "docs/commands.md"), "utf8").split("\n```console\n").slice(1);
    const said = lines.flatMap((block) => (block.split("\n```")[0] ?? "").split("\n"));
    expect(said.length).toBeGreaterThan(500);
    expect(said.filter((line) => line.length > 80 && !/^(?:\$| ) carcase /.test(line))).toEqual([]);
  });

  it.each([
    [["lnt"], "Did you mean lint?"],
    [["lint", "--formt", "json"], "Did you mean --format?"],
    [["lint", "--format", "yaml"], 'no format "yaml"'],
    [["lint", "--fail-on", "eror"], "Did you mean error?"],
    [["score", "--scale", "maff-1979"], "Did you mean maff-1978?"],
    [["herd", "--by", "groop"], "Did you mean group?"],
    [["herd", "--level", "95"], "such as 0.95"],
    [["herd", "--indicator", "snout-grade-2", farm], "Did you mean snout-grade-2-up?"],
    [["lint", "nowhere"], 'no case at "nowhere"'],
    [["lint", "--config", "nowhere.yaml", farm], "nowhere.yaml"],
  ])("%j ends with 2 and a hint", (args, hint) => {
    const { code, err } = carcase(args);
    expect(err).toContain(hint);
    expect(err).not.toMatch(/\n {4}at /);
    expect(code).toBe(2);
  });

  it("a path without a case is 2 even beside one with cases", () => {
    const { code, out, err } = carcase(["lint", farm, "docs"]);
    expect(err).toContain('no case at "docs"');
    expect(out).toContain("26 cases");
    expect(code).toBe(2);
  });
});

describe("lint", () => {
  it("is silent about complete cases: exit 0", () => {
    const { code, out, err } = carcase(["lint", "--quiet", farm]);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toBe("26 cases: nothing skipped, nothing contradictory\n");
  });

  it("names an omission with its line: exit 1", () => {
    const { code, out } = carcase(["lint", "cases-example/incomplete/lobe-missing.yaml"], { env: wide });
    expect(code).toBe(1);
    expect(out).toMatch(/\d+:\d+ error respiratory\.lungs\.consolidation\.\w+: .* is blank/);
  });

  it("warnings fail only when asked to", () => {
    const file = "cases-example/incomplete/treated-pig.yaml";
    expect(carcase(["lint", file]).code).toBe(0);
    expect(carcase(["lint", "--fail-on", "warning", file]).code).toBe(1);
  });

  it("JSON has the fields that scripts rely on, in every entry", () => {
    const { out, code } = carcase(["lint", "--format", "json", "cases-example"]);
    expect(code).toBe(1);
    const result = JSON.parse(out);
    expect(Object.keys(result)).toEqual([
      "output",
      "version",
      "findings",
      "accepted",
      "completeness",
      "visits",
      "passed_over",
      "summary",
    ]);
    expect(result.findings.length).toBeGreaterThan(25);
    for (const finding of result.findings)
      expect(Object.keys(finding)).toEqual(["rule", "level", "message", "file", "line", "column", "path"]);
    expect(result.completeness).toHaveLength(result.summary.cases);
    for (const one of result.completeness) {
      expect(one).toMatchObject({ case: expect.any(String), file: expect.any(String) });
      expect(one.due).toBe(one.examined + one.not_examined + one.not_assessable + one.skipped);
    }
  });

  it("the order of findings does not depend on the order of paths", () => {
    const visits = ["cases-example/incomplete", "tests/fixtures/birch-farm"];
    const forth = carcase(["lint", "--format", "json", ...visits]).out;
    const back = carcase(["lint", "--format", "json", ...visits.toReversed()]).out;
    expect(JSON.parse(back).findings).toEqual(JSON.parse(forth).findings);
  });

  it("reads a case from standard input in the place it would have", () => {
    const name = "tests/fixtures/birch-farm/2026-04-20/new.yaml";
    const good = carcase(["lint", "-", "--stdin-filename", name], { input: model });
    expect(good).toMatchObject({ code: 0, err: "" });
    const bad = carcase(["lint", "-", "--stdin-filename", name], {
      input: model.replace("nursery-2", "nursery-9"),
    });
    expect(bad.code).toBe(1);
    expect(bad.out).toContain("Did you mean nursery-2?");
  });

  it("a level in the settings holds; a rule that does not exist is 2", () => {
    const folder = join(temporary, "levels");
    mkdirSync(folder);
    writeFileSync(join(folder, "pig.yaml"), model.replace("  spleen: normal\n", ""));
    const settings = (text: string): void =>
      writeFileSync(join(folder, "carcase.yaml"), `format: 1\nrules: {${text}}\n`);
    settings("skipped-organ: note");
    expect(carcase(["lint", folder])).toMatchObject({
      code: 0,
      out: expect.stringContaining("note lymphoid.spleen"),
    });
    settings("skipped-organ: off");
    expect(carcase(["lint", "-q", folder]).out).toContain("nothing contradictory");
    settings("skipped-organs: off");
    expect(carcase(["lint", folder])).toMatchObject({
      code: 2,
      err: expect.stringContaining("Did you mean skipped-organ?"),
    });
  });

  it("no setting silences an alarm", () => {
    const folder = join(temporary, "alarm");
    mkdirSync(folder);
    writeFileSync(join(folder, "pig.yaml"), model.replace("vesicles: none", "vesicles: seen"));
    writeFileSync(join(folder, "carcase.yaml"), "format: 1\nrules: {alarm-sign-recorded: off}\n");
    const { code, out, err } = carcase(["lint", folder]);
    expect(code).toBe(2);
    expect(out).toContain("call the competent veterinary authority now");
    expect(err).toContain("alarm-sign-recorded");
  });
});

describe("score", () => {
  it("JSON has the fields that scripts rely on", () => {
    const { code, out } = carcase(["score", "--format", "json", farm]);
    expect(code).toBe(0);
    const { cases } = JSON.parse(out);
    expect(cases).toHaveLength(26);
    for (const one of cases)
      for (const score of one.scores)
        for (const field of ["scale", "value", "max", "class", "parts", "missing", "confidence", "source"])
          expect(score).toHaveProperty(field);
  });

  it("marks values from memory in the table, every time", () => {
    const { out } = carcase(["score", "--scale", "maff-1978", farm]);
    const rows = out.split("\n").filter((line) => line.startsWith("  alder-"));
    expect(rows).toHaveLength(26);
    for (const row of rows) expect(row).toMatch(/\d\*$/);
    expect(out).toContain("from memory, not checked against its source");
  });

  it("says which observation is missing", () => {
    const text = model.replace(/ {6}right_middle: 40\n/, "");
    const { code, out } = carcase(["score", "--scale", "christensen-1999", "-"], { input: text });
    expect(code).toBe(0);
    expect(out.replaceAll(/\s+/g, " ")).toContain("missing respiratory.lungs.consolidation.right_middle");
  });

  it("refuses a case that does not fit the format: exit 2, others still scored", () => {
    const folder = join(temporary, "half");
    mkdirSync(folder);
    writeFileSync(join(folder, "a.yaml"), model.replace("left_cranial: 20", "left_cranial: much"));
    writeFileSync(join(folder, "b.yaml"), model);
    const { code, out, err } = carcase(["score", "--format", "json", folder]);
    expect(code).toBe(2);
    expect(err).toContain("left_cranial");
    expect(JSON.parse(out).cases).toHaveLength(1);
  });
});

describe("herd", () => {
  const whole = carcase(["herd", "--format", "json", farm]);

  it("JSON has the fields that scripts rely on", () => {
    const { code, out } = whole;
    expect(code).toBe(0);
    const { estimates, scores } = JSON.parse(out);
    const fields = [
      "indicator",
      "stratum",
      "basis",
      "examined",
      "not_examined",
      "affected",
      "proportion",
      "lower",
      "upper",
      "level",
      "method",
      "wording",
    ];
    for (const estimate of estimates) for (const field of fields) expect(estimate).toHaveProperty(field);
    expect(estimates.length).toBeGreaterThan(20);
    for (const score of scores)
      for (const field of ["n", "mean", "median", "q1", "q3", "distribution"])
        expect(score).toHaveProperty(field);
  });

  it("tells the story of the example: fewer affected snouts and less lung in autumn", () => {
    const { out } = carcase(["herd", "--format", "json", "--by", "visit", farm]);
    const { estimates, scores } = JSON.parse(out);
    const random = (rows: Row[], is: (row: Row) => boolean): Row[] =>
      rows.filter((row) => row.basis === "random" && is(row));
    const [spring, autumn] = random(estimates, (row) => row.indicator === "snout-grade-2-up");
    expect(spring?.proportion).toBeGreaterThan((autumn?.proportion ?? 1) * 2);
    const [lungSpring, lungAutumn] = random(scores, (row) => row.scale === "madec-kobisch-1982");
    expect(lungSpring?.mean).toBeGreaterThan((lungAutumn?.mean ?? 99) * 2);
  });

  it("says prevalence of pigs drawn at random only", () => {
    const { out } = whole;
    for (const { basis, wording, examined } of JSON.parse(out).estimates) {
      if (examined === 0) continue;
      expect(/prevalence/.test(wording) && !/says nothing/.test(wording)).toBe(
        basis === "random" && examined > 1,
      );
    }
  });

  it("takes another level", () => {
    const wide = JSON.parse(carcase(["herd", "--format", "json", "--level", "0.99", farm]).out).estimates[0];
    const narrow = JSON.parse(whole.out).estimates[0];
    expect(narrow.level).toBe(0.95);
    expect(wide.level).toBe(0.99);
    expect(wide.upper - wide.lower).toBeGreaterThan(narrow.upper - narrow.lower);
  });
});

describe("streams", () => {
  it("colours only where they are wanted", () => {
    const args = ["lint", "cases-example/incomplete/skipped-organ.yaml"];
    const plain = carcase(args).out;
    const coloured = carcase(args, { env: { FORCE_COLOR: "1" } }).out;
    expect(plain).not.toContain(colour);
    expect(coloured).toContain(colour);
    expect(carcase(args, { env: { FORCE_COLOR: "1", NO_COLOR: "1" } }).out).not.toContain(colour);
    for (const never of [["--no-color"], ["--color", "never"]])
      expect(carcase([...args, ...never], { env: { FORCE_COLOR: "1" } }).out).not.toContain(colour);
    expect(carcase([...args, "--color", "always"], { env: { NO_COLOR: "1" } }).out).toBe(coloured);
    expect(carcase([...args, "--color", "pink"])).toMatchObject({ code: 2, out: "" });
    expect(coloured.replaceAll(/\u001b\[\d+m/g, "")).toBe(plain);
  });

  it("writes a file as a whole, without colours, and leaves nothing behind when it cannot", () => {
    const folder = join(temporary, "output");
    mkdirSync(folder);
    const file = join(folder, "result.json");
    const { code, out } = carcase(["score", "--format", "json", "-o", file, farm], {
      env: { FORCE_COLOR: "1" },
    });
    expect({ code, out }).toEqual({ code: 0, out: "" });
    expect(JSON.parse(readFileSync(file, "utf8")).cases).toHaveLength(26);
    const failed = carcase(["score", "-o", join(folder, "no/such/folder.json"), "tests/fixtures/birch-farm"]);
    expect(failed).toMatchObject({ code: 2, out: "" });
    expect(failed.err).toContain("cannot write");
    expect(readdirSync(folder)).toEqual(["result.json"]);
  });

  it("runs outside a repository, with relative paths", () => {
    const folder = join(temporary, "outside");
    mkdirSync(folder);
    writeFileSync(join(folder, "pig.yaml"), model);
    for (const path of [[], ["."], ["pig.yaml"], ["*.yaml"]])
      expect(carcase(["lint", "-q", ...path], { cwd: folder })).toMatchObject({ code: 0, err: "" });
  });
});
