/** JUnit XML is well-formed and has the form that the published schema asks for. */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { validateXML } from "xmllint-wasm";
import { lintReport } from "../../src/formats/lint/formats.ts";
import type { LintReport } from "../../src/formats/lint/report.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { runs } from "../random.ts";
import { fault, finding, hostileTexts, realReport, report } from "./report.ts";
import { readXml } from "./xml.ts";

const junit = (of: LintReport): string => lintReport("junit", of, makeStyle(false));
const read = (of: LintReport) => readXml(junit(of)).children;

/** What libxml2 (compiled to WebAssembly) says against a document under a schema. */
async function schemaFaults(contents: string, schema: string): Promise<readonly string[]> {
  const { valid, errors } = await validateXML({
    xml: [{ fileName: "report.xml", contents }],
    schema: [schema],
    // A report of every example is some megabytes.
    maxMemoryPages: 4096,
  });
  return valid ? [] : errors.map(({ message }) => message);
}
const hasXmllint = spawnSync("xmllint", ["--version"]).status === 0;

describe("JUnit", () => {
  it("the reader of these tests refuses what is not well-formed", () => {
    const suite = (inner: string): string => `<?xml version="1.0" encoding="UTF-8"?>\n${inner}\n`;
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
      expect(Number(attributes.skipped ?? 0)).toBe(many("skipped"));
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

  // The older of the two knows no skipped tests, so there every finding fails.
  it.each([
    ["junit-windy-road-2011", ["error", "warning", "note"]],
    ["junit-jenkins-2010", ["error"]],
  ] as const)("fits the published schema %s", async (name, failing) => {
    const schema = readFileSync(new URL(`../fixtures/schemas/${name}.xsd`, import.meta.url), "utf8");
    const faultsOf = (of: LintReport) => schemaFaults(junit({ ...of, failing }), schema);
    const texts = [...hostileTexts, ...fc.sample(fc.string({ unit: "binary" }), 200)];
    const hostile = report(texts.map((message) => finding({ message, file: `a${message}`, path: message })));
    const mixed = report([finding(), finding({ level: "note", path: "b" })], [fault()]);
    for (const of of [realReport(), hostile, mixed, report([])]) expect(await faultsOf(of)).toEqual([]);
    // The check itself refuses what does not fit.
    expect(await schemaFaults(junit(mixed).replace(' tests="', ' number="'), schema)).not.toEqual([]);
  });

  it("survives any text", () => {
    read(report(hostileTexts.map((message) => finding({ message, file: `a${message}`, path: message }))));
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        read(report([finding({ message: text, path: text, file: `f${text}` })]));
      }),
      { numRuns: runs(200) },
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
