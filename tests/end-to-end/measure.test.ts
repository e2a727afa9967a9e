/** `carcase measure` as a user runs it. */
import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { svg } from "../measure/drawn.ts";
import { carcase, root, wide } from "./run.ts";

const box = (id: string, x: number, size: number): string =>
  `<rect id="${id}" x="${x}" width="${size}" height="${size}"/>`;
const drawing = svg(`${box("cavity-left", 0, 20)}${box("dorsal-left", 2, 6)}${box("ventral-left", 10, 4)}`);
const text = smallCase(
  "a",
  "respiratory:\n  turbinates:\n    tracing: t/a.svg  # mine\n    section: premolar-1\n",
);

function farm(more: Readonly<Record<string, string>> = {}): string {
  const folder = temporaryFolder();
  put(folder, { "a.yaml": text, "t/a.svg": drawing, ...more });
  return folder;
}

describe("carcase measure", () => {
  it("prints a table of a tracing, and of the tracings of cases", () => {
    const cwd = farm();
    const one = carcase(["measure", "t/a.svg"], { cwd });
    expect(one).toMatchObject({ code: 0, err: "" });
    expect(one.out).toMatch(/cavity-left +400\.0 +80\.0/);
    expect(one.out).toMatch(/perimeter ratio\* +0\.50 +– +– {2}falls with atrophy/);
    expect(one.out).toContain("no value without");
    const all = carcase(["measure", "--quiet", "."], { cwd });
    expect(all.code).toBe(0);
    expect(all.out).toContain("a  respiratory.turbinates  t/a.svg");
    expect(all.out).not.toContain("Published");
  });

  it("gives the same figures as JSON and CSV", () => {
    const cwd = farm();
    const json = JSON.parse(carcase(["measure", "--format", "json", "."], { cwd }).out);
    const sha256 = createHash("sha256").update(drawing).digest("hex");
    expect(json.problems).toEqual([]);
    expect(json.measurements[0]).toMatchObject({ case: "a", file: "a.yaml", tracing: "t/a.svg", sha256 });
    expect(json.measurements[0].snout.concha_area_fraction.left.value).toBeCloseTo(0.13, 12);
    const rows = carcase(["measure", "--format", "csv", "."], { cwd }).out.split("\r\n");
    expect(rows[0]).toBe("case,organ,tracing,sha256,part,measure,value,unit,missing");
    expect(rows.at(-2)).toBe(`a,respiratory.turbinates,t/a.svg,${sha256},septum,septum_deviation,,mm,septum`);
  });

  it("--write puts it into the case, once; --dry-run only shows it", () => {
    const cwd = farm();
    const dry = carcase(["measure", "--write", "--dry-run", "."], { cwd });
    expect(dry.code).toBe(1);
    expect(dry.out).toMatch(/^\+ {6}perimeter_ratio: \{left: 0\.5\}$/m);
    expect(readFileSync(join(cwd, "a.yaml"), "utf8")).toBe(text);
    expect(carcase(["measure", "--write", "-o", "no/such/folder.txt", "."], { cwd }).code).toBe(2);
    expect(readFileSync(join(cwd, "a.yaml"), "utf8")).toBe(text);
    expect(carcase(["measure", "--write", "."], { cwd })).toMatchObject({
      code: 0,
      err: "carcase: wrote what was measured into a.yaml\n",
    });
    const written = readFileSync(join(cwd, "a.yaml"), "utf8");
    expect(written).toContain("tracing: t/a.svg  # mine\n    measured:\n");
    expect(carcase(["measure", "--write", "--dry-run", "."], { cwd })).toMatchObject({ code: 0, out: "" });
    const lint = (): string =>
      carcase(["lint", "--only", "measurement-outdated", "."], { cwd, env: wide }).out;
    expect(lint()).not.toContain("[measurement-outdated]");
    writeFileSync(join(cwd, "t/a.svg"), drawing.replace('width="6"', 'width="5"'));
    expect(lint()).toContain("was changed after it was measured");
    expect(carcase(["measure", "--write", "--quiet", "."], { cwd })).toMatchObject({ code: 0, err: "" });
    expect(lint()).not.toContain("[measurement-outdated]");
  });

  it("names what is wrong with its place, exit 2, and measures the rest", () => {
    const cwd = farm({ "t/b.svg": svg('<path id="cavity-left" d="M0 0h9v9"/>') });
    const ran = carcase(["measure", "t/b.svg", "t/a.svg", "t/none.svg"], { cwd });
    expect(ran.code).toBe(2);
    expect(ran.err).toMatch(/^t\/b\.svg:2:1: not measured: cavity-left is not closed: .* \[outline-open\]$/m);
    expect(ran.err).toMatch(/^t\/none\.svg: not measured: there is no such file\. \[file-unreadable\]$/m);
    expect(ran.out).toContain("t/a.svg");
  });

  it.each([
    [["--dry-run", "."], "--dry-run goes with --write"],
    [["--write", "t/a.svg"], "name the cases"],
    [["--write", "-"], "standard input"],
    [["--format", "xml", "."], "no format"],
  ])("refuses %j", (args, message) => {
    const ran = carcase(["measure", ...args], { cwd: farm() });
    expect(ran.code).toBe(2);
    expect(ran.err).toContain(message);
    expect(ran.err).not.toMatch(/ at .*\.js/);
  });

  it("says when there is nothing to measure", () => {
    const cwd = temporaryFolder();
    put(cwd, { "a.yaml": smallCase() });
    expect(carcase(["measure", "."], { cwd })).toMatchObject({
      code: 0,
      out: "",
      err: expect.stringContaining("no case here names a tracing"),
    });
  });

  it("a name from a drawing cannot speak to the terminal", () => {
    const cwd = farm({ "t/b.svg": svg(`${box("cavity-left", 0, 9)}${box("x\u202ey", 20, 9)}`) });
    expect(carcase(["measure", "t/b.svg"], { cwd }).out).toContain("x\\u{202e}y");
  });
});

describe("the example tracing", () => {
  it("is what its case says", () => {
    const farmFolder = "cases-example/alder-farm";
    const ran = carcase(["measure", "--write", "--dry-run", farmFolder], { cwd: root });
    expect(ran).toMatchObject({ code: 0, out: "" });
    const [one, lungs] = JSON.parse(
      carcase(["measure", "--format", "json", farmFolder], { cwd: root }).out,
    ).measurements;
    // The right side is the worse one, as it was graded.
    expect(one.snout.perimeter_ratio.right.value).toBeLessThan(one.snout.perimeter_ratio.left.value);
    // Drawn and palpated shares of the lobes agree.
    expect(lungs.lungs.affected_percent.left_middle.value).toBeCloseTo(10, 0);
    expect(lungs.lungs.affected_percent.right_caudal.value).toBe(0);
  });
});
