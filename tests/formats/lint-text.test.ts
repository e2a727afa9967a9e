/** The text for people: its end fits one screen, however many findings there are. */
import { describe, expect, it } from "vitest";
import { lintReport } from "../../src/formats/lint-formats.ts";
import type { LintReport } from "../../src/formats/lint-report.ts";
import { makeStyle } from "../../src/formats/style.ts";
import { finding, report } from "./report.ts";

const text = (of: LintReport): string[] => lintReport("text", of, makeStyle(false)).split("\n");
const many = (number: number, rule: string) => Array.from({ length: number }, () => finding({ rule }));
const counts = { due: 9, examined: 9, by_system: 0, not_examined: 0, not_assessable: 0, skipped: 0 };
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
