/** The text for people: its end fits one screen, however many findings there are. */
import { describe, expect, it } from "vitest";
import { lintReport } from "../../src/formats/lint/formats.ts";
import type { LintReport } from "../../src/formats/lint/report.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { finding, report } from "./report.ts";

const text = (of: LintReport, width?: number): string[] =>
  lintReport("text", of, makeStyle(false), width).split("\n");
const many = (number: number, rule: string) => Array.from({ length: number }, () => finding({ rule }));
const counts = {
  due: 9,
  examined: 9,
  by_system: 0,
  not_examined: 0,
  not_assessable: 0,
  skipped: 0,
  wanted_blank: 0,
};
const cases = (number: number, skipped: number): LintReport => {
  const base = report([]);
  const completeness = Array.from({ length: number }, (_, index) => ({
    ...counts,
    case: `case-${index}`,
    file: `${index}.yaml`,
    skipped: index < skipped ? 1 : 0,
  }));
  return { ...base, result: { ...base.result, completeness } };
};

describe("the count by rule", () => {
  it("stands at the end from 21 findings on, the most frequent first", () => {
    expect(text(report(many(20, "a")))).not.toContain("By rule");
    const lines = text(report([...many(3, "b"), ...many(15, "a"), ...many(3, "c")]));
    expect(lines.slice(lines.indexOf("By rule"))).toEqual([
      "By rule",
      "  15  a",
      "   3  b",
      "   3  c",
      "",
      "1 case: 21 errors in 1 file",
      "",
    ]);
  });

  it("sums up what does not fit the screen", () => {
    const lines = text(report(Array.from({ length: 40 }, (_, index) => finding({ rule: `rule-${index}` }))));
    expect(lines.length - lines.indexOf("By rule")).toBeLessThan(24);
    expect(lines).toContain("  25  of 25 other rules");
  });
});

describe("completeness", () => {
  it("lists all cases up to 30, then those with something skipped", () => {
    expect(text(cases(30, 1)).filter((line) => line.startsWith("  case-"))).toHaveLength(30);
    const lines = text(cases(31, 2));
    expect(lines.filter((line) => line.startsWith("  case-"))).toHaveLength(2);
    expect(lines).toContain("  nothing was skipped in the other 29 cases");
    expect(text(cases(31, 0))).toContain("  nothing was skipped in any of the 31 cases");
  });

  it("quiet leaves findings and the last line", () => {
    const quiet = { ...report(many(25, "a")), quiet: true };
    const lines = text(quiet);
    expect(lines).not.toContain("Completeness");
    expect(lines).not.toContain("By rule");
    expect(lines.at(-2)).toBe("1 case: 25 errors in 1 file");
  });
});

describe("the last line of a run of some rules", () => {
  const only = (rules: readonly string[], hidden = 0): string | undefined => {
    const base = report([]);
    const summary = { ...base.result.summary, format_errors_not_shown: hidden };
    return text({ ...base, result: { ...base.result, summary }, only: rules }, 999).at(-2);
  };

  it("says which were asked, and claims nothing of the others", () => {
    expect(only(["a", "b"])).toBe("1 case: nothing found; only a, b and the alarms were asked");
    expect(only(["a", "b", "c", "d"])).toBe("1 case: nothing found; only 4 rules and the alarms were asked");
    expect(only(["a"], 2)).toBe(
      "1 case: nothing found; only a and the alarms were asked; 2 errors of the format are not shown, so not every value was read: leave out --only",
    );
  });

  it("stands in the log of annotations too", () => {
    const log = lintReport("github", { ...report([]), only: ["a"] }, makeStyle(false));
    expect(log).toBe("1 case: nothing found; only a and the alarms were asked\n");
  });
});

describe("a finding that is wider than the terminal", () => {
  const message = `The lungs are blank and were due. Write normal, a finding, or ${"x".repeat(70)} and why.`;
  const of = report([finding({ message, rule: "skipped-organ", excerpt: "" })]);
  const shown = (width: number, colour = false): string => lintReport("text", of, makeStyle(colour), width);
  const { line, column } = finding({});

  it("goes on below, whole words together", () => {
    expect(shown(60).split("\n").slice(1, 6)).toEqual([
      `  ${line}:${column} error The lungs are blank and were due. Write normal,`,
      "    a finding, or",
      `    ${"x".repeat(70)}`,
      "    and why. [skipped-organ]",
      "",
    ]);
  });

  it("has its colours where they were", () => {
    const colours = new RegExp(`${String.fromCharCode(27)}\\[\\d+m`, "g");
    expect(shown(60, true).replaceAll(colours, "")).toBe(shown(60));
    expect(shown(60, true)).toContain(makeStyle(true).level("error"));
    expect(shown(60, true)).toContain(makeStyle(true).quiet("[skipped-organ]"));
  });
});
