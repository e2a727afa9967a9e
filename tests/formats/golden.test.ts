/** What each format prints, kept as files to be read by people. `npm run docs` writes them anew. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { displayWidth } from "../../src/formats/page/width.ts";
import { carcase } from "../end-to-end/run.ts";

const golden = (name: string): string => `../fixtures/golden/${name}`;

/** A finding of each level, an alarm, and a file that cannot be read. */
const few = ["treated-pig", "lobe-missing", "stopped/alarm-sign", "snout-section-rostral"]
  .map((name) => `cases-example/incomplete/${name}.yaml`)
  .concat("tests/fixtures/hostile/bracket-open.yaml");

/** A log without the rules that found nothing, so that a new rule changes no golden file. */
function withFoundRules(text: string): string {
  const log = JSON.parse(text);
  for (const { tool, results } of log.runs) {
    const found = new Set(results.map((result: { ruleId: string }) => result.ruleId));
    tool.driver.rules = tool.driver.rules.filter((rule: { id: string }) => found.has(rule.id));
    for (const result of results) delete result.ruleIndex;
  }
  return `${JSON.stringify(log, null, 2)}\n`;
}

describe("golden output", () => {
  it.each([
    ["lint-complete.txt", ["lint", "cases-example/alder-farm"]],
    ["lint-incomplete.txt", ["lint", "cases-example/incomplete"]],
    ["lint-incomplete.json", ["lint", "--format", "json", "cases-example/incomplete"]],
    ["lint.sarif", ["lint", "--format", "sarif", ...few]],
    ["lint-junit.xml", ["lint", "--format", "junit", ...few]],
    ["lint-github.txt", ["lint", "--format", "github", ...few]],
    ["lint-gitlab.json", ["lint", "--format", "gitlab", ...few]],
    ["explain-rule.txt", ["explain", "lobe-missing"]],
    ["explain-scale.txt", ["explain", "maff-1978"]],
    ["explain-organ.json", ["explain", "--format", "json", "pancreas"]],
    ["lint-quiet.txt", ["lint", "--quiet", "cases-example/incomplete"]],
    ["samples-results.txt", ["samples", "results", "--today", "2026-03-22", "cases-example/alder-farm"]],
    ["samples-results-all.txt", ["samples", "results", "--all", "cases-example/alder-farm"]],
    [
      "samples-results.csv",
      ["samples", "results", "--format", "csv", "--today", "2026-03-22", "cases-example/alder-farm"],
    ],
    [
      "samples-results.json",
      [
        "samples",
        "results",
        "--format",
        "json",
        "--today",
        "2026-03-22",
        "cases-example/alder-farm/2026-09-19",
      ],
    ],
    ["score.txt", ["score", "cases-example/alder-farm"]],
    ["score-all.txt", ["score", "--all", "cases-example/alder-farm"]],
    ["score.json", ["score", "--format", "json", "cases-example/alder-farm/2026-03-14/pig-01.yaml"]],
    ["score-incomplete.txt", ["score", "cases-example/incomplete"]],
    ["herd.txt", ["herd", "cases-example/alder-farm"]],
    ["herd-all.txt", ["herd", "--all", "--by", "visit,group", "cases-example/alder-farm"]],
    ["herd-plot.txt", ["herd", "--plot", "--by", "visit,group", "cases-example/alder-farm"]],
    ["workup.txt", ["workup", "cases-example/alder-farm/2026-03-14"]],
    [
      "workup-report.md",
      ["workup", "--format", "markdown", "cases-example/alder-farm/2026-03-14/pig-09.yaml"],
    ],
    ["explain-disease.txt", ["explain", "oedema-disease"]],
    [
      "herd-combined.txt",
      [
        "herd",
        "--combine",
        "--by",
        "visit,group",
        "--finite",
        "--bootstrap",
        "--indicator",
        "snout-grade-2-up",
        "--scale",
        "maff-1978",
        "cases-example/alder-farm",
      ],
    ],
    [
      "herd.csv",
      [
        "herd",
        "--format",
        "csv",
        "--by",
        "visit,group",
        "--indicator",
        "snout-grade-2-up",
        "--scale",
        "maff-1978",
        "--sensitivity",
        "90%",
        "--specificity",
        "98%",
        "cases-example/alder-farm",
      ],
    ],
    [
      "herd-report.md",
      [
        "herd",
        "--format",
        "markdown",
        "--all",
        "--by",
        "visit",
        "--indicator",
        "snout-grade-2-up,pleurisy",
        "--scale",
        "maff-1978,dottori-2007",
        "cases-example/alder-farm",
      ],
    ],
    [
      "herd.json",
      [
        "herd",
        "--format",
        "json",
        "--by",
        "visit",
        "--indicator",
        "snout-grade-2-up,pleurisy",
        "--scale",
        "maff-1978,dottori-2007",
        "cases-example/alder-farm",
      ],
    ],
  ])("%s", async (name, args) => {
    const { out, err } = carcase(args, { env: { SOURCE_DATE_EPOCH: "1776680000" } });
    const both = `${out}${err === "" ? "" : `--- standard error\n${err}`}`;
    const shown = name.endsWith(".sarif") ? withFoundRules(out) : name.endsWith(".txt") ? both : out;
    await expect(shown).toMatchFileSnapshot(golden(name));
  });
});

describe("80 columns", () => {
  const folder = new URL("../fixtures/golden/", import.meta.url);
  const files = readdirSync(folder).filter(
    // The format `github` is read by a runner, a command a line.
    (name) => (name.endsWith(".txt") || name.endsWith(".md")) && name !== "lint-github.txt",
  );

  it("has files of every command that prints text", () => {
    for (const command of ["lint", "score", "herd", "compare", "explain", "workup", "said"])
      expect(files.filter((name) => name.startsWith(command))).not.toEqual([]);
  });

  it.each(files)("%s", (name) => {
    // On standard error a fault stands behind its file and line, for an editor to find.
    const [out = ""] = readFileSync(new URL(name, folder), "utf8").split("--- standard error");
    // Markdown wants a heading, and a row of a table, in one line.
    const kept = (line: string): boolean => name.endsWith(".md") && /^(?:\||#)/.test(line);
    expect(out.split("\n").filter((line) => displayWidth(line) > 80 && !kept(line))).toEqual([]);
  });
});
