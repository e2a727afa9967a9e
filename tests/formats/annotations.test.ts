/** Workflow annotations of GitHub and code quality of GitLab: escaped, placed, known again. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lintReport } from "../../src/formats/lint/formats.ts";
import type { LintReport } from "../../src/formats/lint/report.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { runs } from "../random.ts";
import { fault, finding, hostileTexts, realReport, report } from "./report.ts";

const github = (of: LintReport): string[] => lintReport("github", of, makeStyle(true)).trimEnd().split("\n");
const gitlab = (of: LintReport): Entry[] => JSON.parse(lintReport("gitlab", of, makeStyle(false)));

interface Entry {
  readonly description: string;
  readonly check_name: string;
  readonly fingerprint: string;
  readonly severity: string;
  readonly location: { readonly path: string; readonly lines: { readonly begin: number } };
}

/** Reads a workflow command as the runner does. */
function command(line: string) {
  const [, name = "", list = "", data = ""] = /^::(\w+) (.*?)::(.*)$/s.exec(line) ?? [];
  const unescaped = (text: string): string =>
    text
      .replaceAll("%0D", "\r")
      .replaceAll("%0A", "\n")
      .replaceAll("%3A", ":")
      .replaceAll("%2C", ",")
      .replaceAll("%25", "%");
  const properties = Object.fromEntries(
    list
      .split(",")
      .map((pair) => [pair.slice(0, pair.indexOf("=")), unescaped(pair.slice(pair.indexOf("=") + 1))]),
  );
  return { name, properties, data: unescaped(data) };
}

describe("GitHub annotations", () => {
  it("one a finding, at its place, with the rule as title", () => {
    const lines = github(report([finding(), finding({ level: "warning" }), finding({ level: "note" })]));
    expect(lines[0]).toBe(
      "::error file=farm/2026-04-20/pig-01.yaml,line=12,endLine=12,col=3,endColumn=10,title=skipped-organ::urinary.bladder: nothing is written.",
    );
    expect(lines.map((line) => command(line).name)).toEqual(["error", "warning", "notice", ""]);
    expect(lines.at(-1)).toBe("1 case: 1 error, 1 warning, 1 note in 1 file");
  });

  it("a finding of a whole file has no line", () => {
    const [line = ""] = github(report([], [fault({ line: 0, column: 0, file: "x.yaml" })]));
    expect(command(line).properties).toEqual({ file: "x.yaml", title: "unreadable" });
  });

  it("escapes what the runner would take for its own", () => {
    const [line = ""] = github(report([finding({ file: "a,b:c%2C.yaml", message: "50 % at 10:00, so" })]));
    expect(line).toContain("file=a%2Cb%3Ac%252C.yaml,");
    expect(line).toContain("::50 %25 at 10:00, so");
    expect(command(line)).toMatchObject({
      properties: { file: "a,b:c%2C.yaml" },
      data: "50 % at 10:00, so",
    });
  });

  it("survives any text: one line stays one annotation", () => {
    const check = (text: string): void => {
      const lines = github(report([finding({ message: text, file: `a${text}` })]));
      expect(lines).toHaveLength(2);
      expect(command(lines[0] ?? "").properties.title).toBe("skipped-organ");
    };
    hostileTexts.forEach(check);
    fc.assert(fc.property(fc.string({ unit: "binary" }), check), { numRuns: runs(200) });
  });

  it("shows what nobody can see in the name of a file", () => {
    const [line = ""] = github(report([finding({ file: "a\u001b[31m\u200b.yaml" })]));
    expect(line).toContain("file=a\\u{1b}[31m\\u{200b}.yaml,");
  });

  it("has no colours even where text has them", () => {
    expect(github(realReport()).join("")).not.toContain("\u001b");
  });
});

describe("GitLab code quality", () => {
  it("has the documented fields and no other, each fingerprint once", () => {
    const entries = gitlab(realReport());
    expect(entries.length).toBeGreaterThan(30);
    for (const entry of entries) {
      expect(Object.keys(entry).sort()).toEqual(
        ["check_name", "description", "fingerprint", "location", "severity"].sort(),
      );
      expect(entry.description).not.toBe("");
      expect(["info", "minor", "major", "critical", "blocker"]).toContain(entry.severity);
      expect(entry.fingerprint).toMatch(/^[0-9a-f]{32}$/);
      expect(entry.location.path).not.toMatch(/^\.\/|\\/);
      expect(Number.isInteger(entry.location.lines.begin) && entry.location.lines.begin >= 1).toBe(true);
    }
    expect(new Set(entries.map((entry) => entry.fingerprint)).size).toBe(entries.length);
  });

  it("keeps the fingerprint when the finding moves", () => {
    const [before] = gitlab(report([finding()]));
    const [after] = gitlab(report([finding({ line: 99 })]));
    expect(after?.fingerprint).toBe(before?.fingerprint);
    expect(after?.location.lines.begin).toBe(99);
  });

  it("ranks an alarm above all, and a whole file stands at line 1", () => {
    const entries = gitlab(
      report(
        [
          finding({ rule: "alarm-sign-recorded" }),
          finding(),
          finding({ level: "warning" }),
          finding({ level: "note" }),
        ],
        [fault({ line: 0 })],
      ),
    );
    expect(entries.map((entry) => entry.severity)).toEqual(["critical", "blocker", "major", "minor", "info"]);
    expect(entries[0]?.location.lines.begin).toBe(1);
  });

  it("prints no character that nobody can see", () => {
    const text = "li\u200bver \u001b[31m\u{e0041}\u2060\u00ad\ufe0f";
    const raw = lintReport(
      "gitlab",
      report([finding({ message: text, file: `a${text}.yaml` })]),
      makeStyle(true),
    );
    const [entry] = JSON.parse(raw) as Entry[];
    const shown = "li\\u{200b}ver \\u{1b}[31m\\u{e0041}\\u{2060}\\u{ad}\\u{fe0f}";
    expect(entry?.description).toBe(shown);
    expect(entry?.location.path).toBe(`a${shown}.yaml`);
    expect(raw).not.toMatch(/\u200b|\u001b|\u2060|\u00ad|\ufe0f/);
  });

  it("an empty result is an empty list", () => {
    expect(gitlab(report([]))).toEqual([]);
  });
});
