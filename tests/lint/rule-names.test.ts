/** The linter as a library: it checks names of rules and asks the scales by itself. */
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { gradeCheckFor, Linter, lintCases, lintResult, rules, UnknownRule } from "../../src/lint/index.ts";
import { goneRules } from "../../src/lint/rule-names.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";

const farm = readCases(["cases-example/alder-farm"]);

const folderWith = (files: Readonly<Record<string, string>>) => {
  const root = temporaryFolder();
  put(root, files);
  return readCases(["."], { from: root });
};

describe("a rule that does not exist", () => {
  it.each([[{ only: ["skiped-organ"] }], [{ levels: { "skiped-organ": "off" as const } }]])(
    "is refused in %j",
    (options) => {
      expect(() => lintCases(farm, options)).toThrow(UnknownRule);
      expect(() => lintCases(farm, options)).toThrow(
        /^there is no rule "skiped-organ"\. Did you mean skipped-organ\?$/,
      );
    },
  );

  it("is refused in the settings, with their file", () => {
    const archive = folderWith({
      "carcase.yaml": "format: 1\nrules: {treated-pigs: note}\n",
      "pig.yaml": "case: a\n",
    });
    const message = /^carcase\.yaml: rules: there is no rule "treated-pigs"\. Did you mean treated-pig\?$/;
    expect(() => lintCases(archive)).toThrow(message);
  });
});

describe("rules that are gone", () => {
  it("give their id to no other, and name one that asks instead, if any", () => {
    const ids = rules.map(({ id }) => id);
    expect(Object.keys(goneRules).filter((id) => ids.includes(id))).toEqual([]);
    expect(Object.values(goneRules).filter((id) => id !== undefined && !ids.includes(id))).toEqual([]);
  });

  it("are named to whoever asks for them", () => {
    expect(() => lintCases(farm, { only: ["enlargement-unmeasured"] })).toThrow(
      'the rule "enlargement-unmeasured" is gone; finding-without-size asks instead.',
    );
    expect(() => lintCases(farm, { only: ["diagnosis-without-organ"] })).toThrow(
      'the rule "diagnosis-without-organ" is gone; nothing asks that any more, so take its name out.',
    );
  });
});

describe("scales that are loaded only when needed", () => {
  const lungs = (grade: number): string =>
    `case: a
respiratory:
  lungs:
    consolidation: {left_cranial: 20, left_middle: 35, left_caudal: 0, right_cranial: 30, right_middle: 40, right_caudal: 5, accessory: 10}
    caudal_cranial_part: {left: 0, right: 15}
    grades: {goodwin-1971: ${grade}}
`;

  it.each([
    ["no grade", farm, 0],
    ["a grade that its parts deny", folderWith({ "pig.yaml": lungs(55) }), 1],
  ])("make the same of %s", async (_, archive, count) => {
    const eager = lintCases(archive);
    const linter = new Linter();
    linter.gradeCheck = await gradeCheckFor(archive.cases);
    linter.add(archive);
    expect(lintResult([linter.parts()], archive.unreadable)).toEqual(eager);
    expect(eager.findings.filter(({ rule }) => rule === "grade-contradicts-parts")).toHaveLength(count);
  });
});
