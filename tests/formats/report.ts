/** Reports for the tests of formats: made by hand, or from the incomplete examples. */
import { fileURLToPath } from "node:url";
import { type Fault, readCases } from "../../src/cases/index.ts";
import type { LintReport } from "../../src/formats/lint/report.ts";
import { type Finding, type LintResult, lintCases } from "../../src/lint/index.ts";

const none = {
  due: 0,
  examined: 0,
  by_system: 0,
  not_examined: 0,
  not_assessable: 0,
  skipped: 0,
  wanted_blank: 0,
};

export const finding = (over: Partial<Finding> = {}): Finding => ({
  rule: "skipped-organ",
  level: "error",
  message: "urinary.bladder: nothing is written.",
  file: "farm/2026-04-20/pig-01.yaml",
  line: 12,
  column: 3,
  path: "urinary.bladder",
  length: 7,
  excerpt: "  bladder:",
  ...over,
});

export const fault = (over: Partial<Fault> = {}): Fault => ({
  file: "farm/broken.yaml",
  line: 3,
  column: 5,
  length: 1,
  path: [],
  intended: [],
  message: "a bracket is not closed",
  excerpt: "pig: {",
  kind: "unreadable",
  outOfRange: false,
  ...over,
});

export function report(findings: readonly Finding[], unreadable: readonly Fault[] = []): LintReport {
  const at = (level: string): number => findings.filter((one) => one.level === level).length;
  const result: LintResult = {
    findings,
    accepted: [],
    completeness: [...new Set(findings.map(({ file }) => file))].map((file) => ({
      ...none,
      case: file,
      file,
    })),
    visits: [],
    summary: {
      ...none,
      cases: 1,
      files_with_findings: new Set(findings.map(({ file }) => file)).size,
      errors: at("error"),
      warnings: at("warning"),
      notes: at("note"),
      accepted: 0,
      baselined: 0,
      unreadable: unreadable.length,
      format_errors_not_shown: 0,
    },
  };
  return {
    result,
    unreadable,
    passedOver: [],
    failing: ["error"],
    version: "1.2.3",
    at: new Date(0),
    quiet: false,
  };
}

/** The result of all incomplete examples, and of a file that cannot be read. */
export function realReport(): LintReport {
  real ??= lintExamples();
  return real;
}

let real: LintReport | undefined;

function lintExamples(): LintReport {
  const folder = (name: string): string => fileURLToPath(new URL(`../../${name}`, import.meta.url));
  const archive = readCases([
    folder("cases-example/incomplete"),
    folder("cases-example/alder-farm/2026-03-14"),
    folder("tests/fixtures/hostile/bracket-open.yaml"),
  ]);
  return { ...report([]), result: lintCases(archive), unreadable: archive.unreadable };
}

/** Texts that formats must survive. */
export const hostileTexts = [
  "a < b & c > d \"quoted\" 'too' ]]> <!-- -->",
  "100 % of a, b: c; d=e",
  "line\r\nbreak\u2028and\u0000control\u001b[31m\ufffe\uffff",
  "half a character \ud800 and \udfff",
  "pig 🐖 ümlaut 猪",
  "::error file=x::y",
  "",
];
