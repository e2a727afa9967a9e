/** Findings that a file accepts with a reason: for one rule, at one place, and never those of safety. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { type LintOptions, lintCases } from "../../src/lint/index.ts";
import { lintExample } from "./lay-example.ts";

const treated = "selection: {treated: {with: amoxicillin by mouth, last: 12 h}}";
const because = "because: only treated pigs were left";
const lint = (text: string, options: LintOptions = {}) => {
  const result = lintExample({ case: text }, options);
  return {
    rules: result.findings.map(({ rule, path }) => `${rule} ${path}`),
    accepted: result.accepted.map(({ rule, path, because: why }) => `${rule} ${path}: ${why}`),
    result,
  };
};

describe("an accepted finding", () => {
  it.each(["at: selection.treated, ", "at: selection, ", ""])("is taken out by {%s}", (at) => {
    const { rules, accepted, result } = lint(`${treated}\naccepted: [{rule: treated-pig, ${at}${because}}]`);
    expect(rules).toEqual([]);
    expect(accepted).toEqual(["treated-pig selection.treated: only treated pigs were left"]);
    expect(result.summary).toMatchObject({ accepted: 1, warnings: 0, files_with_findings: 0 });
  });

  it("keeps its line, so that it can be shown", () => {
    const [finding] = lint(`${treated}\naccepted: [{rule: treated-pig, ${because}}]`).result.accepted;
    expect(finding?.line).toBeGreaterThan(1);
    expect(finding?.file).toMatch(/pig-01\.yaml$/);
  });

  it.each(["selection.treat", "selection.treated.with", "selection.signs"])(
    "stays when the entry names %s",
    (at) => {
      const { rules } = lint(`${treated}\naccepted: [{rule: treated-pig, at: ${at}, ${because}}]`);
      expect(rules).toEqual(["treated-pig selection.treated", "accepted-unused accepted[0].at"]);
    },
  );

  it("is not accepted by an entry for another rule", () => {
    const { rules } = lint(
      `${treated}\naccepted: [{rule: signs-missing, at: selection.treated, ${because}}]`,
    );
    expect(rules).toEqual(["treated-pig selection.treated", "accepted-unused accepted[0].at"]);
  });

  it("of a list is met by the list and by its entry", () => {
    const lesion = "cardiovascular: {heart: [{process: necrosis, severity: mild}]}";
    for (const at of ["cardiovascular.heart", '"cardiovascular.heart[0]"'])
      expect(
        lint(`${lesion}\naccepted: [{rule: finding-without-distribution, at: ${at}, ${because}}]`, {
          only: ["finding-without-distribution", "accepted-unused"],
        }).rules,
      ).toEqual([]);
  });

  it("of a sample is its id, wherever the sample stands in the list", () => {
    const fixed = "{id: 01-X, from: respiratory.lungs, into: formalin, for: [culture]}";
    const other = "{id: 01-Y, from: blood, into: plain-tube, for: [serology]}";
    const only = ["culture-in-formalin", "accepted-unused"];
    const found = (samples: string, at: string): string[] =>
      lint(`samples: [${samples}]\naccepted: [{rule: culture-in-formalin, at: "${at}", ${because}}]`, {
        only,
      }).rules;
    expect(found(fixed, "samples[01-X]")).toEqual([]);
    expect(found(`${other}, ${fixed}`, "samples[01-X]")).toEqual([]);
    expect(found(fixed, "samples[01-Y]")).toHaveLength(2);
    expect(found(`${other}, ${fixed}`, "samples[0]")).toHaveLength(2);
  });

  it("can stand in the visit for findings on the visit", () => {
    const visit =
      "cases: [birch-2026-04-20-01, birch-2026-04-20-07]\naccepted: [{rule: visit-case-absent, at: cases, because: pig 7 was lost on the way}]";
    const { findings, accepted } = lintExample({ visit });
    expect(findings).toEqual([]);
    expect(accepted.map(({ rule }) => rule)).toEqual(["visit-case-absent"]);
  });

  it("still counts as skipped: it was not examined", () => {
    const { result } = lint(`lymphoid: {spleen: }\naccepted: [{rule: skipped-organ, ${because}}]`);
    expect(result.findings).toEqual([]);
    expect(result.summary.skipped).toBe(result.accepted.length);
    expect(result.summary.skipped).toBeGreaterThan(0);
  });
});

describe("an entry that is wrong", () => {
  it("without a reason leaves the finding", () => {
    for (const blank of [
      "",
      ", because: ",
      ", because: '?'",
      ", because: x",
      ", because: tbd",
      ", because: None.",
    ])
      expect(lint(`${treated}\naccepted: [{rule: treated-pig${blank}}]`).rules).toEqual([
        "treated-pig selection.treated",
        "accepted-without-reason accepted[0].because",
      ]);
  });

  it("for a rule that does not exist is answered with the nearest", () => {
    const { result } = lint(`accepted: [{rule: treated-pigs, ${because}}]`);
    expect(result.findings[0]?.message).toContain("Did you mean treated-pig?");
  });

  it("cannot accept a sign of alarm, whatever the reason", () => {
    const { rules, accepted } = lint(
      `alarm_check: {before_knife: {vesicles: seen}}\naccepted: [{rule: alarm-sign-recorded, because: sunburn}]`,
    );
    expect(rules.sort()).toEqual([
      "accepted-locked-rule accepted[0].rule",
      "alarm-check-contradicted alarm_check.before_knife.vesicles",
      "alarm-sign-recorded alarm_check.before_knife.vesicles",
    ]);
    expect(accepted).toEqual([]);
  });

  it("cannot accept what is wrong with another entry", () => {
    const { rules } = lint(
      `accepted: [{rule: treated-pigs, ${because}}, {rule: accepted-unknown-rule, ${because}}]`,
    );
    expect(rules).toEqual([
      "accepted-unknown-rule accepted[0].rule",
      "accepted-locked-rule accepted[1].rule",
    ]);
  });

  it("may meet a finding that another entry has accepted already", () => {
    const entry = `{rule: treated-pig, ${because}}`;
    expect(lint(`${treated}\naccepted: [${entry}, ${entry}]`).rules).toEqual([]);
  });
});

describe("an entry is not called unused", () => {
  const entry = `accepted: [{rule: treated-pig, ${because}}]`;

  it("when its rule was not asked", () => {
    expect(lint(entry, { only: ["accepted-unused"] }).rules).toEqual([]);
    expect(lint(entry, { levels: { "treated-pig": "off" } }).rules).toEqual([]);
  });

  it("when the file has values that could not be read", () => {
    expect(lint(`pig: {sex: F}\n${entry}`).rules).toEqual(["case-format pig.sex"]);
  });

  it("when only a part of its visit was read, for a rule that looks at the whole", () => {
    const folder = mkdtempSync(join(tmpdir(), "carcase-part-"));
    try {
      cpSync(new URL("../fixtures/birch-farm/2026-04-20", import.meta.url), folder, { recursive: true });
      const file = join(folder, "pig-01.yaml");
      writeFileSync(
        file,
        `${readFileSync(file, "utf8")}accepted: [{rule: duplicate-tag, because: same tag on two farms}]\n`,
      );
      const found = (path: string): string[] =>
        lintCases(readCases([path]))
          .findings.map(({ rule }) => rule)
          .filter((rule) => rule.startsWith("accepted-"));
      expect(found(file)).toEqual([]);
      expect(found(folder)).toEqual(["accepted-unused"]);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
