/** The built program: what fits a visit or a case, and nothing while an alarm stands. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { carcase, root, wide } from "./run.ts";

const visit = "cases-example/alder-farm/2026-03-14";
const alarm = "cases-example/incomplete/stopped/alarm-sign.yaml";

describe("workup", () => {
  it("says what fits a visit, a line each, and the first three in full", () => {
    const { code, out, err } = carcase(["workup", visit]);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("alder-2026-03-14 (14 pigs): what fits, the best first\n  1. ");
    expect(out.match(/^\d+\. .*\(carcase explain [a-z0-9-]+\)$/gm)).toHaveLength(3);
    expect(out).toMatch(/\(pig-\d\d\.yaml:\d+/);
  });

  it("shows on the first screen whole words, and the strongest reason of each disease whole", () => {
    const screen = carcase(["workup", visit], { env: { COLUMNS: "80" } })
      .out.split("\n")
      .slice(0, 24);
    const end = screen.findIndex((line) => line.includes("fit less well"));
    expect(end).toBeGreaterThan(10);
    const lines = screen.slice(1, end);
    expect(lines.filter((line) => line.length > 80 || line.includes(".."))).toEqual([]);
    const told = lines
      .map((line) => line.replace(/^ {5}(?=\S)/, " "))
      .join("")
      .split(/ {2}(?=\d+\. )/);
    expect(told.slice(1)).toHaveLength(10);
    for (const one of told.slice(1)) expect(one).toMatch(/^\d+\. [^:]+: \d[^:]*: \S+/);
  });

  it("answers for one pig where its file is named", () => {
    const { out } = carcase(["workup", "-q", `${visit}/pig-09.yaml`]);
    expect(out).toMatch(/^alder-2026-03-14-09: what fits/);
    expect(
      carcase(["workup", "-q", "--first", "2", `${visit}/pig-09.yaml`], { env: wide }).out.split("\n"),
    ).toHaveLength(4);
  });

  it("quotes lines at which the finding stands", () => {
    const { out } = carcase(["workup", "--format", "json", `${visit}/pig-09.yaml`]);
    const [{ fits }] = JSON.parse(out).workups;
    const quoted = fits.flatMap(
      (fit: { for: { evidence: { file: string; line: number; text: string }[] }[] }) =>
        fit.for.flatMap(({ evidence }) => evidence),
    );
    expect(quoted.length).toBeGreaterThan(20);
    for (const { file, line, text } of quoted) {
      const [place = "", ...about] = readFileSync(join(root, file), "utf8")
        .split("\n")
        .slice(line - 1);
      const process = /^[a-z_]+\.[a-z_]+ ([a-z-]+)/.exec(text)?.[1];
      if (process !== undefined) expect([place, ...about.slice(0, 4)].join(" ")).toContain(process);
    }
  });

  it("says nothing but the notice while an alarm stands", () => {
    for (const format of ["text", "markdown", "json"]) {
      const { code, out, err } = carcase(["workup", "--format", format, alarm], { env: wide });
      expect({ code, out }).toEqual({ code: 1, out: "" });
      expect(err).toContain("STOP: this may be a notifiable disease");
      expect(err).not.toContain("fits");
    }
  });

  it("goes on when the authority released or excluded it", () => {
    const cwd = temporaryFolder();
    const text = readFileSync(join(root, alarm), "utf8");
    const entry =
      'authority: [{at: 2026-05-12T10:30, reached: "J. Fell, official veterinarian", stands: released, for: [vesicles], ground: "looked at pig and pen"}]\n';
    put(cwd, { "pig.yaml": `${text.trimEnd()}\n${entry}` });
    const { code, out } = carcase(["workup", "pig.yaml"], { cwd });
    expect(code).toBe(0);
    expect(out).toContain("what fits");
  });

  it("explains by what rule diseases are ordered, and every statement of one", () => {
    expect(carcase(["explain", "workup"]).out).toContain("The counts are no probability");
    const { out } = carcase(["explain", "oedema-disease"]);
    for (const head of ["Hallmark", "Typical", "Against", "Confirmed by", "Sources"])
      expect(out).toContain(head);
    expect(out).toContain("[from memory]");
  });

  it("refuses a number of lines that is none", () => {
    expect(carcase(["workup", "--first", "none", visit])).toMatchObject({ code: 2, out: "" });
  });
});
