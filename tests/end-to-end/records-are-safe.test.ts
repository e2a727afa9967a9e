/** Records are never written over, no pig is counted twice, and a scale that fails its own example is left out. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { carcase, root, wide } from "./run.ts";

const temporary = mkdtempSync(join(tmpdir(), "carcase-safe-"));
afterAll(() => rmSync(temporary, { recursive: true }));
const day = join(root, "tests/fixtures/birch-farm/2026-04-20");

function folder(): string {
  const made = mkdtempSync(join(temporary, "case-"));
  cpSync(join(day, "pig-01.yaml"), join(made, "pig-01.yaml"));
  return made;
}

describe("results", () => {
  it.each([
    [["lint", "-o", "pig-01.yaml", "."]],
    [["lint", "--also", "sarif=pig-01.yaml", "."]],
    [["score", "-o", "pig-01.yaml", "."]],
    [["explain", "-o", "pig-01.yaml", "lungs"]],
    [["lint", "-o", "pig.txt", "pig.txt"]],
  ])("%j leaves every record as it is", (args) => {
    const cwd = folder();
    cpSync(join(cwd, "pig-01.yaml"), join(cwd, "pig.txt"));
    const { code, err } = carcase(args, { cwd });
    expect(code).toBe(2);
    expect(err).toContain("nothing was written");
    for (const name of ["pig-01.yaml", "pig.txt"])
      expect(readFileSync(join(cwd, name))).toEqual(readFileSync(join(day, "pig-01.yaml")));
  });
});

describe("a copied case", () => {
  const cwd = folder();
  mkdirSync(join(cwd, "later"));
  cpSync(join(cwd, "pig-01.yaml"), join(cwd, "later/pig-09.yaml"));

  it("in another folder is an error that names the other file", () => {
    const { code, out } = carcase(["lint", "-q", "--only", "duplicate-case", "."], { cwd });
    expect(code).toBe(1);
    expect(out).toContain("is already the case of");
    expect(out).toContain("pig-01.yaml");
  });

  it.each(["herd", "score"])("is not counted by %s, which says so", (command) => {
    const { code, out, err } = carcase([command, "--format", "json", "."], { cwd });
    expect(code).toBe(2);
    expect(err).toContain("no pig is counted twice");
    expect(out.match(/"of": 2\b|"n": 2\b|"examined": 2\b/)).toBeNull();
  });
});

describe("a scale of the practice whose worked example fails", () => {
  const page = readFileSync(join(root, "docs/scales/house-scales.md"), "utf8");
  const scale = [...page.matchAll(/```yaml[^\n]*\n([\s\S]*?)```/g)]
    .map(([, text = ""]) => text)
    .find((text) => text.includes("id: our-gap"));
  const cwd = folder();
  mkdirSync(join(cwd, "scales"));
  writeFileSync(join(cwd, "carcase.yaml"), "format: 1\nscales: [shipped, scales/our-gap.yaml]\n");
  const write = (text: string): void => writeFileSync(join(cwd, "scales/our-gap.yaml"), text);

  it.each([["score", "."], ["herd", "."], ["explain"]])("is left out by %s, with exit code 2", (...args) => {
    expect(scale).toContain("    value: 2\n");
    write((scale ?? "").replace("    value: 2\n", "    value: 1\n"));
    const { code, out, err } = carcase(args, { cwd });
    expect(code).toBe(2);
    expect(err).toContain("the scale gives 2");
    expect(out).not.toContain("our-gap");
  });

  it("and one that asks for an unknown section is reported", () => {
    expect(scale).toContain("between-premolars-1-2]");
    write((scale ?? "").replace("between-premolars-1-2]", "between-premolars-9]"));
    const { code, out } = carcase(["lint", "-q", "."], { cwd, env: wide });
    expect(code).toBe(1);
    expect(out).toContain('no word of section "between-premolars-9"');
  });
});

describe("standard input", () => {
  const input = readFileSync(join(day, "pig-01.yaml"));
  it("named twice is read once", () => {
    expect(carcase(["lint", "-", "-"], { input }).out).toMatch(/^1 case: /m);
  });
  it("has a name only where it is read", () => {
    const { code, err } = carcase(["lint", "--stdin-filename", "a.yaml", "cases-example/alder-farm"]);
    expect(code).toBe(2);
    expect(err).toContain("--stdin-filename");
  });
});

it.each(["culture", "chilled", "formalin", "premolar-1", "ventral concha"])("explains %s", (word) => {
  expect(carcase(["explain", word]).code).toBe(0);
});
