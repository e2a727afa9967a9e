/** SARIF fits its published schema, and names findings so that they are known again. */
import { readFileSync } from "node:fs";
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import { lintReport } from "../../src/formats/lint/formats.ts";
import type { LintReport } from "../../src/formats/lint/report.ts";
import { shownByCodeScanning, takenByCodeScanning } from "../../src/formats/lint/sarif.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { rules } from "../../src/lint/index.ts";
import { fault, finding, hostileTexts, realReport, report } from "./report.ts";

const schema = JSON.parse(
  readFileSync(new URL("../fixtures/schemas/sarif-2.1.0.json", import.meta.url), "utf8"),
);
const uri = /^(?:[A-Za-z][A-Za-z0-9+.-]*:)?(?:[\w.~:/?#[\]@!$&'()*+,;=-]|%[0-9A-Fa-f]{2})*$/;
const fits = new Ajv({
  strict: false,
  // A pattern of the schema is none in Unicode mode.
  unicodeRegExp: false,
  allErrors: true,
  formats: {
    uri: (text) => uri.test(text) && /^[A-Za-z][A-Za-z0-9+.-]*:/.test(text),
    "uri-reference": (text) => uri.test(text),
    "date-time": (text) => !Number.isNaN(Date.parse(text)),
  },
}).compile(schema);

interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: string;
  readonly locations: readonly {
    readonly physicalLocation: {
      readonly artifactLocation: { readonly uri: string };
      readonly region?: Readonly<Record<string, number>>;
    };
  }[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
}

function sarif(of: LintReport) {
  const log = JSON.parse(lintReport("sarif", of, makeStyle(false)));
  fits(log);
  expect(fits.errors ?? []).toEqual([]);
  const [run] = log.runs;
  return { run, results: run.results as Result[] };
}
const uriOf = (result: Result | undefined) => result?.locations[0]?.physicalLocation.artifactLocation.uri;
const hashes = (results: readonly Result[]) =>
  results.map(({ partialFingerprints }) => partialFingerprints.primaryLocationLineHash);

describe("SARIF", () => {
  it("the check itself refuses what does not fit", () => {
    expect(fits({ version: "2.1.0", runs: [{ results: [] }] })).toBe(false);
    expect(fits({ version: "2.1.0", runs: [{ tool: { driver: { name: "x", rules: [{}] } } }] })).toBe(false);
  });

  it("fits the published schema, and has every finding with its rule, and no other rule", () => {
    const real = realReport();
    const { run, results } = sarif(real);
    const ids = run.tool.driver.rules.map((rule: { id: string }) => rule.id);
    expect(new Set(ids)).toEqual(new Set(results.map(({ ruleId }) => ruleId)));
    expect(ids).toHaveLength(new Set(ids).size);
    expect(results).toHaveLength(real.result.findings.length + real.unreadable.length);
    expect(results.length).toBeGreaterThan(30);
    for (const { ruleId, ruleIndex } of results) expect(ids[ruleIndex]).toBe(ruleId);
    expect(new Set(hashes(results)).size).toBe(results.length);
    expect(run.invocations[0].executionSuccessful).toBe(false);
  });

  it("gives every rule a short description, a text that helps, and no more than code scanning shows", () => {
    const all = sarif(report(rules.map(({ id }) => finding({ rule: id })))).run.tool.driver.rules;
    expect(all.map((rule: { id: string }) => rule.id)).toEqual(rules.map(({ id }) => id));
    for (const { id, shortDescription, fullDescription, help } of all) {
      expect(help.text.length, id).toBeGreaterThan(40);
      expect(help.text.length, id).toBeLessThan(2000);
      expect(shortDescription.text.length, id).toBeLessThan(200);
      expect(fullDescription.text.length, id).toBeLessThan(1024);
    }
  });

  it("links each rule to its page, where the practice says where the pages are", () => {
    const pages = "https://git.example.org/carcase/docs/rules/{rule}.md";
    const linked = sarif({ ...report([finding()], [fault()]), rulePages: pages }).run.tool.driver.rules;
    expect(linked.map(({ helpUri }: { helpUri?: string }) => helpUri)).toEqual([
      "https://git.example.org/carcase/docs/rules/skipped-organ.md",
      undefined,
    ]);
    expect(sarif(report([finding()])).run.tool.driver.rules[0].helpUri).toBeUndefined();
  });

  it("places a finding, and none of a whole file", () => {
    const { results } = sarif(report([finding(), finding({ line: 0, column: 0, length: 0 })]));
    const [placed, all] = results.map((one) => one.locations[0]?.physicalLocation.region);
    expect(placed).toEqual({ startLine: 12, startColumn: 3, endLine: 12, endColumn: 10 });
    expect(all).toBeUndefined();
  });

  it.each([
    ["farm/2026-04-20/pig-01.yaml", "farm/2026-04-20/pig-01.yaml"],
    ["./pig.yaml", "pig.yaml"],
    ["Höfe & mehr/pig 1#.yaml", "H%C3%B6fe%20%26%20mehr/pig%201%23.yaml"],
    ["100%:x.yaml", "100%25%3Ax.yaml"],
    ["half\ud800.yaml", "half%EF%BF%BD.yaml"],
    ["/srv/a b.yaml", "file:///srv/a%20b.yaml"],
    ["../other/pig.yaml", "../other/pig.yaml"],
  ])("writes the path %j as %s", (file, expected) => {
    expect(uriOf(sarif(report([finding({ file })])).results[0])).toBe(expected);
  });

  it("knows a finding again when lines were put in above it", () => {
    const before = sarif(report([finding()])).results;
    const after = sarif(report([finding({ line: 40, column: 5, excerpt: "    bladder:" })])).results;
    expect(hashes(after)).toEqual(hashes(before));
  });

  it("tells findings of one rule apart: by path, file, and order at one path", () => {
    const several = [
      finding(),
      finding(),
      finding({ path: "urinary.kidneys" }),
      finding({ file: "other.yaml" }),
      finding({ rule: "x" }),
    ];
    expect(new Set(hashes(sarif(report(several)).results)).size).toBe(several.length);
  });

  it("survives any text", () => {
    sarif(report(hostileTexts.map((message) => finding({ message, file: `a${message}`, path: message }))));
    sarif(report([], [fault({ line: 0, column: 0, length: 0 })]));
  });

  it("says so when there are more results than code scanning shows", () => {
    const notes = (many: number) =>
      sarif(report(Array.from({ length: many }, () => finding()))).run.invocations[0]
        .toolExecutionNotifications;
    expect(notes(shownByCodeScanning)).toEqual([]);
    expect(notes(shownByCodeScanning + 1)[0].message.text).toContain("5001 results");
  });

  it("has no more results than code scanning takes, and leaves out the least first", () => {
    const notes = Array.from({ length: takenByCodeScanning }, () => finding({ level: "note" }));
    const { run, results } = sarif(report([...notes, finding({ level: "error", file: "last.yaml" })]));
    expect(results).toHaveLength(takenByCodeScanning);
    expect(uriOf(results.at(-1))).toBe("last.yaml");
    expect(run.invocations[0].toolExecutionNotifications[0].message.text).toContain("left out");
  });
});
