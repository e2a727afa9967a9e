/** The built program: scales of a practice, groups, matrix and table of scores, the reading of the snouts. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { carcase, root, wide } from "./run.ts";

const page = readFileSync(join(root, "docs/scales/house-scales.md"), "utf8");
const blockOf = (info: string): string =>
  new RegExp(`^\`\`\`${info}\\n([\\s\\S]*?)^\`\`\`$`, "m").exec(page)?.[1] ?? "";
const gap = blockOf("yaml scale");

function folder(scale = gap): string {
  const cwd = temporaryFolder();
  put(cwd, {
    "carcase.yaml": blockOf("yaml settings"),
    "scales/our-gap.yaml": scale,
    "pig.yaml":
      "format: 1\ncase: p-1\nrespiratory: {turbinates: {section: premolar-1, gap: {left: 6 mm, right: 8 mm}}}\n",
  });
  return cwd;
}

const visit = "cases-example/alder-farm/2026-03-14";

describe("a scale of the practice", () => {
  const cwd = folder();

  it("is used by score and herd, and explained", () => {
    const score = carcase(["score", "--scale", "our-gap", "."], { cwd });
    expect(score).toMatchObject({ code: 0, err: "" });
    expect(score.out).toMatch(/^ {2}p-1 +– +– +2 *$/m);
    expect(score.out).toContain("our-gap");
    expect(carcase(["herd", "--indicator", "gap-wide", "."], { cwd }).out).toMatch(
      /Wide gap: of these pigs alone[^:]+: 1 of 1/,
    );
    const told = carcase(["explain", "our-gap"], { cwd });
    expect(told).toMatchObject({ code: 0, err: "" });
    expect(told.out).toContain("A scale of your practice, from scales/our-gap.yaml.");
    expect(carcase(["explain", "scales"], { cwd }).out).toMatch(/^ {2}our-gap {2}/m);
  });

  it("unknown names are answered with the nearest, of the practice's own as well", () => {
    for (const args of [
      ["score", "--scale", "our-gpa", "."],
      ["herd", "--scale", "our-gpa", "."],
      ["explain", "our-gpa"],
    ]) {
      const ran = carcase(args, { cwd });
      expect(ran.code).toBe(2);
      expect(ran.err).toContain("Did you mean our-gap?");
    }
  });

  it.each(["score", "herd", "agree"])(
    "%s: no name after --scale is an error, not an empty answer",
    (command) => {
      for (const empty of ["", " , "]) {
        const ran = carcase([command, "--scale", empty, "."], { cwd });
        expect(ran).toMatchObject({ code: 2, out: "" });
        expect(ran.err).toContain("--scale: there is no name in");
      }
    },
  );

  it("all scales of an author are told for the name of the author", () => {
    const ran = carcase(["score", "--scale", "madec", "."], { cwd });
    expect(ran.code).toBe(2);
    expect(ran.err).toContain("madec-kobisch-1982,");
    expect(ran.err).toContain("madec-leneveu-2011?");
  });

  it.each([["score"], ["score", "--matrix"], ["score", "--by", "visit"]])(
    "%s %s keeps to COLUMNS",
    (...args) => {
      for (const width of [60, 120]) {
        const { out, code } = carcase([...args, visit], {
          env: { COLUMNS: String(width) },
        });
        expect(code).toBe(0);
        const texts = out.split("\n").filter((line) => !line.trim().includes("  ") || !args.includes("--by"));
        for (const line of texts) expect(line.length, line).toBeLessThanOrEqual(width);
        expect(Math.max(...texts.map((line) => line.length))).toBeGreaterThan(width / 2);
      }
    },
  );

  it("whose example does not come out is reported by lint at its line", () => {
    const { code, out } = carcase(["lint", "--only", "scale-example", "."], {
      cwd: folder(gap.replace("value: 2\n    class: to be", "value: 1\n    class: to be")),
      env: wide,
    });
    expect(code).toBe(1);
    expect(out).toContain("scales/our-gap.yaml");
    expect(out).toMatch(
      /^ +\d+:12 +error +examples\[0\].*it says 1, but the scale gives 2\. +\[scale-example\]/m,
    );
  });

  it("with a fault is left out by score, which says so and goes on", () => {
    const { code, out, err } = carcase(["score", "."], {
      cwd: folder(gap.replace(/boundary: .*\n/, "")),
      env: wide,
    });
    expect(code).toBe(2);
    expect(err).toContain("boundary is missing. Write what happens exactly at a cut point");
    expect(out).toContain("p-1");
    expect(out).not.toContain("our-gap");
  });
});

describe("carcase score", () => {
  it("takes --scale again and again", () => {
    const { out } = carcase([
      "score",
      "--format",
      "csv",
      "--scale",
      "maff-1978",
      "--scale",
      "dottori-2007",
      visit,
    ]);
    const rows = out.trimEnd().split("\r\n");
    expect(rows).toHaveLength(1 + 14 * 2);
  });

  it("describes groups, and adds them to the JSON without changing the rest", () => {
    const plain = JSON.parse(carcase(["score", "--format", "json", visit]).out);
    const { groups, ...rest } = JSON.parse(
      carcase(["score", "--format", "json", "--by", "age-class", visit]).out,
    );
    expect(rest).toEqual(plain);
    expect(groups.length).toBeGreaterThan(0);
    expect(Object.keys(groups[0].stratum)).toEqual(["age_class"]);
    expect(carcase(["score", "--by", "visit,group", "--scale", "maff-1978", visit]).out).toMatch(
      /Snout grade 0-5\* +\d/,
    );
  });

  it("draws bars where the locale is UTF-8, and plain characters elsewhere", () => {
    const matrix = (lang: string): string =>
      carcase(["score", "--matrix", "--scale", "polloni-2018", visit], { env: { LC_ALL: lang } }).out;
    expect(matrix("en_GB.UTF-8")).toMatch(/[▁-█]/);
    const plain = matrix("C");
    expect(plain).toMatch(/^[\x20-\x7e\n]+$/);
    const ascii = carcase(["score", "--matrix", "--ascii", "--scale", "polloni-2018", visit], {
      env: { LC_ALL: "en_GB.UTF-8" },
    });
    expect(ascii.out).toBe(plain);
  });

  it.each([
    [["--matrix", "--format", "json"], "--matrix is a text for people"],
    [["--matrix", "--by", "group"], "choose one"],
    [["--by", "group", "--format", "csv"], "for groups write --format json"],
    [["--ascii"], "--ascii goes with --matrix"],
    [["--by", "grop"], "Did you mean group?"],
  ])("refuses %j", (args, message) => {
    const ran = carcase(["score", ...args, "tests/fixtures/birch-farm"]);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain(message);
    expect(ran.out).toBe("");
  });
});

describe("carcase herd", () => {
  it("ends with the reading of the snouts, in text and JSON", () => {
    const args = ["herd", "--scale", "maff-1978", "--indicator", "pleurisy", "cases-example/alder-farm"];
    expect(carcase(args).out).toMatch(/^Snouts\n +- alder-2026-03-14: /m);
    const { snout_reading: readings } = JSON.parse(carcase([...args, "--format", "json"]).out);
    expect(readings.map(({ visit }: { visit: string }) => visit)).toEqual([
      "alder-2026-03-14",
      "alder-2026-09-19",
    ]);
  });

  it("has none where no snout was examined", () => {
    const cwd = temporaryFolder();
    put(cwd, { "pig.yaml": "format: 1\ncase: p-1\nrespiratory: {lungs: normal}\n" });
    expect(JSON.parse(carcase(["herd", "--format", "json", "."], { cwd }).out)).not.toHaveProperty(
      "snout_reading",
    );
    expect(carcase(["herd", "."], { cwd }).out).not.toContain("Snouts");
  });
});
