/** JUnit XML: a suite for each case file, a test for each finding. Fits the published schemas of Ant's JUnit task and of Jenkins. */
import type { Finding, Level } from "../../lint/index.ts";
import { grouped } from "../../words/grouped.ts";
import { visible } from "../../words/visible.ts";
import { portablePath } from "../page/portable-path.ts";
import { type LintReport, reported, unreadableRule } from "./report.ts";

/**
 * A finding at or above the failing level is a failed test, one below it a skipped test with its message, a file that
 * could not be read an error. A file without findings has one test, which passes.
 */
export function lintJunit(report: LintReport): string {
  const { result, unreadable, failing, version } = report;
  const silent = new Map<string, Finding[]>(result.completeness.map((one) => [one.file, []]));
  const files = new Map([...silent, ...grouped(reported(result, unreadable), ({ file }) => file)]);
  const at = report.at.toISOString().slice(0, 19);
  const suites = [...files]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([file, findings], index) => suite(portablePath(file), findings, { index, at, failing, version }));
  return `<?xml version="1.0" encoding="UTF-8"?>\n<testsuites>\n${suites.join("")}</testsuites>\n`;
}

interface SuiteOptions {
  readonly index: number;
  readonly at: string;
  readonly failing: readonly Level[];
  readonly version: string;
}

function suite(
  file: string,
  findings: readonly Finding[],
  { index, at, failing, version }: SuiteOptions,
): string {
  const kinds = findings.map((finding) => kindOf(finding, failing));
  const many = (kind: Kind): number => kinds.filter((one) => one === kind).length;
  const names = testNames(findings);
  const tests = findings.map((finding, place) =>
    test(file, names[place] ?? finding.rule, body(finding, kinds[place] ?? "failure")),
  );
  const head = attributes({
    package: file,
    id: index,
    name: file,
    timestamp: at,
    hostname: "localhost",
    tests: Math.max(1, findings.length),
    failures: many("failure"),
    errors: many("error"),
    // The oldest schema knows no skipped tests.
    ...(many("skipped") > 0 && { skipped: many("skipped") }),
    time: 0,
  });
  const property = attributes({ name: "carcase.version", value: version });
  const properties = `    <properties>\n      <property${property}/>\n    </properties>\n`;
  const listed = tests.length === 0 ? [test(file, "nothing found", "")] : tests;
  return `  <testsuite${head}>\n${properties}${listed.join("")}    <system-out/>\n    <system-err/>\n  </testsuite>\n`;
}

type Kind = "error" | "failure" | "skipped";

const kindOf = ({ rule, level }: Finding, failing: readonly Level[]): Kind =>
  rule === unreadableRule ? "error" : failing.includes(level) ? "failure" : "skipped";

/** Tests are known by suite and name from one run to the next, so a name is rule and path, never a line. */
function testNames(findings: readonly Finding[]): string[] {
  const met = new Map<string, number>();
  return findings.map(({ rule, path }) => {
    const name = path === "" ? rule : `${rule}: ${path}`;
    const count = (met.get(name) ?? 0) + 1;
    met.set(name, count);
    return count === 1 ? name : `${name} (${count})`;
  });
}

function test(file: string, name: string, inner: string): string {
  const head = `    <testcase${attributes({ name, classname: file, time: 0 })}`;
  return inner === "" ? `${head}/>\n` : `${head}>\n${inner}    </testcase>\n`;
}

function body({ file, line, column, level, message }: Finding, kind: Kind): string {
  const place = line === 0 ? portablePath(file) : `${portablePath(file)}:${line}:${column}`;
  const head = attributes({ message, type: level });
  return kind === "skipped"
    ? `      <skipped>${xmlText(`${level} at ${place}: ${message}`)}</skipped>\n`
    : `      <${kind}${head}>${xmlText(`${place}: ${message}`)}</${kind}>\n`;
}

const attributes = (values: Readonly<Record<string, string | number>>): string =>
  Object.entries(values)
    .map(([name, value]) => ` ${name}="${xmlText(String(value))}"`)
    .join("");

/** Characters that XML 1.0 cannot hold in any form, beyond those that `visible` has already turned into codes. */
const impossible = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

const xmlText = (text: string): string =>
  visible(text)
    .replaceAll(impossible, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    // `##[name]` is a command in some logs.
    .replaceAll(/(##\w*)\[/g, "$1&#91;");
