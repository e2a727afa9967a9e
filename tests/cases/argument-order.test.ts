/** What is said of an archive does not depend on the order in which its paths were named. */
import { symlinkSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { lintJson } from "../../src/formats/lint/json.ts";
import { scoreJson } from "../../src/formats/score/json.ts";
import { herdEstimates } from "../../src/herd/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { scoreCases } from "../../src/score/index.ts";
import { put, smallCase, temporaryFolder } from "./temporary.ts";

const root = temporaryFolder();
const visit = (id: string): string =>
  `format: 1\nvisit: ${id}\nfarm: f\ndate: 2026-04-20\ncases: [${id}-10]\n`;
put(root, {
  "farm/farm.yaml": "format: 1\nfarm: f\n",
  "farm/v/visit.yaml": visit("v"),
  "farm/v/pig-2.yaml": smallCase("v-2", "pig: {tag: 2}\nrespiratory: {lungs: normal}\n"),
  "farm/v/pig-10.yaml": smallCase("v-10", "pig: {sex: F}\n"),
  "farm/v/pigs-11-12/pig-11.yaml": smallCase("v-11", "pig: {tag: 11}\n"),
  "farm/v-2/visit.yaml": visit("w"),
  "farm/v-2/a.yaml": smallCase("copy"),
  "other/b.yaml": smallCase("copy"),
  "other/broken.yaml": "case: x\npig: [\n",
  "other/worse.yaml": "case: y\npig:\n\tsex: female\n",
  "outside/c.yaml": smallCase("c"),
});
symlinkSync("farm/v", join(root, "a-link"));
symlinkSync(join(root, "outside/c.yaml"), join(root, "other/c.yaml"));
const input = { bytes: Buffer.from(smallCase("s", "pig: {tag: 9}\n")), name: "farm/v/pig-10.yaml" };

const paths = [
  ...[".", "farm", "farm/v", "a-link", "a-link/pig-2.yaml", "farm/v/visit.yaml", "farm/*/*.yaml", "other"],
  ...["farm/v/pigs-11-12", "farm/*/*/*.yaml"],
  ...["other/broken.yaml", "other/c.yaml", "outside", "outside/c.yaml", "farm/v/pig-10.yaml", "-"],
  ...[join(root, "farm"), join(root, "other/b.yaml"), "nothing/here"],
];

function said(asked: readonly string[]): string[] {
  const archive = readCases(asked, { from: root, input });
  const { cases, visits, farms, unreadable, pathsWithoutCases } = archive;
  return [
    ...[...cases, ...visits, ...farms, ...unreadable].map(({ file }) => file),
    ...[...pathsWithoutCases].sort(),
    lintJson({ ...archive, result: lintCases(archive) }),
    scoreJson(scoreCases(archive, { scales: ["maff-1978"] })),
    JSON.stringify(herdEstimates(archive, { by: ["visit"] })),
  ];
}

describe("the order of the paths that are named", () => {
  it("changes nothing in what is read, linted, scored and counted", () => {
    const someInTwoOrders = fc
      .subarray(paths, { minLength: 2 })
      .chain((some) =>
        fc.tuple(
          fc.shuffledSubarray(some, { minLength: some.length }),
          fc.shuffledSubarray(some, { minLength: some.length }),
        ),
      );
    fc.assert(
      fc.property(someInTwoOrders, ([one, other]) => {
        expect(said(one)).toEqual(said(other));
      }),
    );
  });

  it("is that of the paths, as findings are: pig-10 comes before pig-2, and standard input by its name", () => {
    const files = (asked: readonly string[]): string[] =>
      readCases(asked, { from: root, input }).cases.map(({ file }) => file);
    expect(files(["other", "farm/v"])).toEqual([
      "farm/v/pig-10.yaml",
      "farm/v/pig-2.yaml",
      "farm/v/pigs-11-12/pig-11.yaml",
      "other/b.yaml",
      "other/c.yaml",
    ]);
    expect(files(["outside", "-", "farm/v/pig-2.yaml"])).toEqual([
      "farm/v/pig-10.yaml",
      "farm/v/pig-2.yaml",
      "outside/c.yaml",
    ]);
  });

  it("lets standard input stand for the file of its name, and a file go by its own path before that of a link", () => {
    for (const asked of [
      ["-", "farm/v", "a-link"],
      ["a-link", "farm/v", "-"],
    ])
      expect(readCases(asked, { from: root, input }).cases.map(({ file, id }) => [file, id])).toEqual([
        ["farm/v/pig-10.yaml", "s"],
        ["farm/v/pig-2.yaml", "v-2"],
        ["farm/v/pigs-11-12/pig-11.yaml", "v-11"],
      ]);
  });
});
