/** A baseline hides the findings it knows, by file, rule and path; it shrinks and never grows. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, beforeEach, describe, expect, it } from "vitest";
import {
  againstBaseline,
  type Finding,
  formatBaseline,
  type LintResult,
  lintCases,
  makeBaseline,
  parseBaseline,
} from "../../src/lint/index.ts";
import { carcase, type Ran, root } from "../end-to-end/run.ts";

const key = (file: string): string => file;
const finding = (file: string, rule: string, path: string, line = 1): Finding => ({
  file,
  rule,
  path,
  line,
  level: "error",
  message: "",
  column: 1,
  length: 1,
  excerpt: "",
});
const empty = lintCases({
  cases: [],
  visits: [],
  farms: [],
  scales: [],
  unreadable: [],
  passedOver: [],
  pathsWithoutCases: [],
});
const result = (findings: readonly Finding[]): LintResult => ({ ...empty, findings });
const anyFindings = fc.array(
  fc
    .tuple(
      fc.constantFrom("a.yaml", "b.yaml"),
      fc.constantFrom("side-missing", "lobe-missing", "case-format"),
      fc.constantFrom("", "respiratory.lungs", "samples[0]"),
      fc.nat(50),
    )
    .map((parts) => finding(...parts)),
);

describe("a baseline", () => {
  it("knows all findings of its day, but those of locked rules", () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const compared = againstBaseline(result(findings), makeBaseline(findings, ["."], key), key);
        expect(compared.stale).toBe(0);
        expect(compared.result.findings).toEqual(findings.filter(({ rule }) => rule === "case-format"));
      }),
    );
  });

  it("is the same whatever the order and the lines of the findings", () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const moved = findings.toReversed().map((one) => ({ ...one, line: one.line + 7 }));
        expect(makeBaseline(moved, ["."], key)).toEqual(makeBaseline(findings, ["."], key));
      }),
    );
  });

  it("reads what it wrote", () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const baseline = makeBaseline(findings, ["."], key);
        expect(parseBaseline(formatBaseline(baseline))).toEqual(baseline);
      }),
    );
  });

  it("is read with a byte order mark as well", () => {
    const baseline = makeBaseline([finding("a.yaml", "side-missing", "x")], ["."], key);
    expect(parseBaseline(`\ufeff${formatBaseline(baseline)}`)).toEqual(baseline);
  });

  it("keeps entries of which a run says nothing", () => {
    const baseline = makeBaseline(
      [finding("a.yaml", "side-missing", "x"), finding("b.yaml", "side-missing", "x")],
      ["."],
      key,
    );
    const { remaining, stale } = againstBaseline(result([]), baseline, key, ({ file }) => file === "a.yaml");
    expect(stale).toBe(1);
    expect(remaining.findings.map(({ file, count }) => [file, count])).toEqual([["a.yaml", 1]]);
  });

  it("only shrinks: what remains knows no more than before, and nothing stale", () => {
    fc.assert(
      fc.property(anyFindings, anyFindings, (before, after) => {
        const baseline = makeBaseline(before, ["."], key);
        const { remaining, stale, result: shown } = againstBaseline(result(after), baseline, key);
        const total = (findings: readonly { readonly count: number }[]): number =>
          findings.reduce((sum, one) => sum + one.count, 0);
        expect(total(remaining.findings)).toBe(total(baseline.findings) - stale);
        const again = againstBaseline(result(after), remaining, key);
        expect(again.stale).toBe(0);
        expect(again.result).toEqual(shown);
      }),
    );
  });

  it("counts: of three findings at one place it knows two", () => {
    const two = [finding("a.yaml", "side-missing", "x"), finding("a.yaml", "side-missing", "x", 2)];
    const three = [...two, finding("a.yaml", "side-missing", "x", 3)];
    const compared = againstBaseline(result(three), makeBaseline(two, ["."], key), key);
    expect(compared.result.findings).toHaveLength(1);
    expect(compared.result.summary).toMatchObject({ errors: 1, baselined: 2, files_with_findings: 1 });
  });

  it("an entry that a merge has doubled counts once", () => {
    const baseline = makeBaseline([finding("a.yaml", "side-missing", "x")], ["."], key);
    const doubled = { ...baseline, findings: [...baseline.findings, ...baseline.findings] };
    const { remaining, result: shown } = againstBaseline(
      result([finding("a.yaml", "side-missing", "x"), finding("a.yaml", "side-missing", "x")]),
      doubled,
      key,
    );
    expect(shown.findings).toHaveLength(1);
    expect(remaining).toEqual(baseline);
  });

  it.each([
    ["", "not JSON"],
    ["<<<<<<< ours\n{}", "not JSON"],
    ["[]", "a list cannot be read"],
    ['{"format": 2, "paths": ["."], "findings": []}', "format: 2"],
    ['{"format": 1, "paths": ["."]}', "findings is missing"],
    [
      '{"format": 1, "paths": ["."], "findings": [{"file": "a", "rule": "b", "path": "", "count": 0}]}',
      "findings[0].count",
    ],
  ])("%j is none", (text, says) => {
    expect(parseBaseline(text)).toContain(says);
  });
});

const temporary = mkdtempSync(join(tmpdir(), "carcase-baseline-"));
afterAll(() => rmSync(temporary, { recursive: true }));
const model = readFileSync(join(root, "tests/fixtures/birch-farm/2026-04-20/pig-01.yaml"), "utf8");
const incomplete = model.replace("  spleen: normal\n", "").replace("  liver: normal\n", "");

describe("carcase lint --baseline", () => {
  let folder = "";
  let number = 0;
  const file = (name: string): string => join(folder, name);
  const write = (text: string, name = "pig.yaml"): void => writeFileSync(file(name), text);
  const lint = (...args: string[]): Ran => carcase(["lint", ...args], { cwd: folder, env: { CI: "" } });
  const known = (): string[] =>
    JSON.parse(readFileSync(file("known.json"), "utf8")).findings.map(
      ({ path, count }: { path: string; count: number }) => `${path} ${count}`,
    );

  beforeEach(() => {
    folder = join(temporary, String(number++));
    mkdirSync(folder);
    write(incomplete);
  });

  it("hides what was there and fails for what is new", () => {
    expect(lint().code).toBe(1);
    expect(lint("--write-baseline", "known.json")).toMatchObject({
      code: 0,
      out: expect.stringContaining("1 case: nothing else; 2 known from the baseline"),
      err: "carcase: 2 findings written to known.json; use --baseline known.json from now on.\n",
    });
    expect(known()).toEqual(["liver_pancreas.liver 1", "lymphoid.spleen 1"]);
    expect(lint("--baseline", "known.json")).toMatchObject({ code: 0, err: "" });
    write(`# a comment moves all lines\n${incomplete.replace("  heart: normal\n", "")}`);
    const { code, out } = lint("--baseline", "known.json");
    expect(code).toBe(1);
    expect(out).toContain("heart");
    expect(out).not.toContain("spleen: ");
    expect(known()).toHaveLength(2);
  });

  it("holds from wherever it is called", () => {
    lint("--write-baseline", "known.json");
    expect(
      carcase(["lint", "--baseline", file("known.json"), folder], { cwd: tmpdir(), env: { CI: "" } }),
    ).toMatchObject({ code: 0, err: "" });
  });

  it("shrinks when a finding is gone, and only by a full run over the same paths", () => {
    lint("--write-baseline", "known.json");
    const before = readFileSync(file("known.json"), "utf8");
    write(model.replace("  spleen: normal\n", ""));
    lint("--baseline", "known.json", "pig.yaml");
    expect(lint("--baseline", "known.json", "--frozen-baseline").err).toContain(
      "1 finding of known.json no longer occurs",
    );
    expect(carcase(["lint", "--baseline", "known.json"], { cwd: folder, env: { CI: "true" } }).err).toContain(
      "no longer occurs",
    );
    write("pig: [", "broken.yaml");
    expect(lint("--baseline", "known.json").code).toBe(2);
    expect(readFileSync(file("known.json"), "utf8")).toBe(before);
    rmSync(file("broken.yaml"));
    expect(lint("--baseline", "known.json").err).toBe(
      "carcase: 1 finding of known.json no longer occurs; taken out of the baseline.\n",
    );
    expect(known()).toEqual(["lymphoid.spleen 1"]);
    expect(lint("--baseline", "known.json").err).toBe("");
    expect(readdirSync(folder).sort()).toEqual(["known.json", "pig.yaml"]);
  });

  it.each([
    ["a rule is off", () => write("format: 1\nrules: {skipped-organ: off}\n", "carcase.yaml")],
    ["the protocol is none", () => write(incomplete.replace("protocol: full\n", "protocol: fulll\n"))],
    ["a value cannot be read", () => write(incomplete.replace("sex: female", "sex: femail"))],
  ])("keeps its entries where %s, and knows them again afterwards", (_what, change) => {
    lint("--write-baseline", "known.json");
    const before = readFileSync(file("known.json"), "utf8");
    expect(before).toContain("skipped-organ");
    change();
    expect(lint("--baseline", "known.json").err).toBe("");
    expect(readFileSync(file("known.json"), "utf8")).toBe(before);
    write(incomplete);
    rmSync(file("carcase.yaml"), { force: true });
    expect(lint("--baseline", "known.json")).toMatchObject({ code: 0, err: "" });
  });

  it("shrinks by what a rule that is on no longer finds, while another is off", () => {
    lint("--write-baseline", "known.json");
    write("format: 1\nrules: {treated-pig: off}\n", "carcase.yaml");
    write(model);
    expect(lint("--baseline", "known.json").err).toContain("2 findings of known.json no longer occur");
    expect(known()).toEqual([]);
  });

  it("with a byte order mark holds", () => {
    lint("--write-baseline", "known.json");
    write(`\ufeff${readFileSync(file("known.json"), "utf8")}`, "known.json");
    expect(lint("--baseline", "known.json")).toMatchObject({ code: 0, err: "" });
  });

  it("never holds a sign of alarm", () => {
    write(model.replace("vesicles: none", "vesicles: seen"));
    const { code, out } = lint("--write-baseline", "known.json");
    expect(code).toBe(1);
    expect(out).toContain("call the competent veterinary authority");
    expect(known()).toEqual([]);
    expect(lint("--baseline", "known.json").code).toBe(1);
  });

  it.each([
    [["--baseline", "nowhere.json"], "there is no baseline nowhere.json"],
    [["--baseline", "pig.yaml"], "pig.yaml is not a baseline: it is not JSON"],
    [["--write-baseline", "pig.yaml"], "pig.yaml is not a baseline"],
    [["--write-baseline", "no/such/folder.json"], "cannot write"],
    [["--baseline", "a", "--write-baseline", "b"], "choose one"],
    [["--frozen-baseline"], "goes with --baseline"],
    [["--write-baseline", "known.json", "-"], "standard input"],
  ])("%j ends with 2 and leaves all files alone", (args, says) => {
    const { code, err } = lint(...args);
    expect(err).toContain(says);
    expect(code).toBe(2);
    expect(readdirSync(folder)).toEqual(["pig.yaml"]);
    expect(readFileSync(file("pig.yaml"), "utf8")).toBe(incomplete);
  });

  it("is not written from files of which some cannot be read", () => {
    write("pig: [", "broken.yaml");
    expect(lint("--write-baseline", "known.json")).toMatchObject({ code: 2, out: "" });
    expect(readdirSync(folder)).not.toContain("known.json");
  });
});
