/** JUnit XML is well-formed and has the form that the published schema asks for. */
import { spawnSync } from "node:child_process";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lintReport } from "../../src/formats/lint-formats.ts";
import type { LintReport } from "../../src/formats/lint-report.ts";
import { makeStyle } from "../../src/formats/style.ts";
import { junitFaults } from "./junit-form.ts";
import { fault, finding, hostileTexts, realReport, report } from "./report.ts";
import { readXml } from "./xml.ts";

const junit = (of: LintReport): string => lintReport("junit", of, makeStyle(false));
function read(of: LintReport) {
  const root = readXml(junit(of));
  expect(junitFaults(root)).toEqual([]);
  return root.children;
}
const hasXmllint = spawnSync("xmllint", ["--version"]).status === 0;

describe("JUnit", () => {
  it("the check itself refuses what does not fit", () => {
    const suite = (inner: string): string => `<?xml version="1.0" encoding="UTF-8"?>\n${inner}\n`;
    expect(
      junitFaults(readXml(suite('<testsuites name="x"><testsuite/></testsuites>'))).length,
    ).toBeGreaterThan(8);
    for (const bad of ["<a>", "<a></b>", '<a x="1" x="2"/>', "<a>&no;</a>", "<a>& b</a>", "<a/><b/>"])
      expect(() => readXml(suite(bad)), bad).toThrow();
  });

  it("has one suite a case file, with counts that add up", () => {
    const real = realReport();
    const suites = read(real);
    const files = new Set([
      ...real.result.completeness.map((one) => one.file),
      ...real.result.findings.map((one) => one.file),
      ...real.unreadable.map((one) => one.file),
    ]);
    expect(suites.map((suite) => suite.attributes.name)).toHaveLength(files.size);
    expect(suites.map((suite) => suite.attributes.id)).toEqual(suites.map((_, index) => String(index)));
    for (const { attributes, children } of suites) {
      const tests = children.filter((child) => child.name === "testcase");
      const many = (kind: string): number => tests.filter((test) => test.children[0]?.name === kind).length;
      expect(Number(attributes.tests)).toBe(tests.length);
      expect(Number(attributes.failures)).toBe(many("failure"));
      expect(Number(attributes.errors)).toBe(many("error"));
      expect(Number(attributes.skipped)).toBe(many("skipped"));
      expect(new Set(tests.map((test) => test.attributes.name)).size).toBe(tests.length);
    }
  });

  it("a finding at the failing level fails, one below is skipped, an unreadable file is an error", () => {
    const kinds = (of: LintReport) =>
      read(of).flatMap((suite) =>
        suite.children
          .filter((one) => one.name === "testcase")
          .map((test) => test.children[0]?.name ?? "passed"),
      );
    const mixed = report([finding(), finding({ level: "warning", path: "b" })], [fault()]);
    expect(kinds(mixed)).toEqual(["failure", "skipped", "error"]);
    expect(kinds({ ...mixed, failing: ["error", "warning"] })).toEqual(["failure", "failure", "error"]);
    const { completeness } = mixed.result;
    expect(kinds({ ...report([]), result: { ...report([]).result, completeness } })).toEqual(["passed"]);
  });

  it("survives any text", () => {
    read(report(hostileTexts.map((message) => finding({ message, file: `a${message}`, path: message }))));
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        read(report([finding({ message: text, path: text, file: `f${text}` })]));
      }),
      { numRuns: 200 },
    );
  });

  it.skipIf(!hasXmllint)("is well-formed to another program as well", () => {
    const input = junit(report(hostileTexts.map((message) => finding({ message, path: message }))));
    expect(spawnSync("xmllint", ["--noout", "-"], { input, encoding: "utf8" })).toMatchObject({
      status: 0,
      stderr: "",
    });
  });
});
