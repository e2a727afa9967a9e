/** `exclude:` in the settings: what is not read when it is found, and what is said of patterns that cannot work. */
import { execFileSync } from "node:child_process";
import { mkdirSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { put, smallCase, temporaryFolder } from "./temporary.ts";

const settings = (...patterns: string[]): string => `format: 1\nexclude: ${JSON.stringify(patterns)}\n`;
const filesOf = ({ cases }: ReturnType<typeof readCases>): string[] => cases.map(({ file }) => file);

function farm(...patterns: string[]): string {
  const root = temporaryFolder();
  put(root, {
    "carcase.yaml": settings(...patterns),
    "a.yaml": smallCase("a"),
    "draft-1.yaml": smallCase("d1"),
    "drafts/b.yaml": "case: b\npig: [\n",
    "visits/drafts/c.yaml": smallCase("c"),
    "visits/draft-2.yaml": smallCase("d2"),
    "visits/keep.yaml": smallCase("k"),
  });
  return root;
}

describe("excluded files", () => {
  it.each<[string[], string[]]>([
    [["drafts/"], ["a.yaml", "draft-1.yaml", "visits/draft-2.yaml", "visits/keep.yaml"]],
    [
      ["/drafts", "visits"],
      ["a.yaml", "draft-1.yaml"],
    ],
    [
      ["drafts", "draft-*.yaml"],
      ["a.yaml", "visits/keep.yaml"],
    ],
    [["**/draft*"], ["a.yaml", "visits/keep.yaml"]],
    [
      ["/drafts/", "visits/*", "!visits/keep.yaml"],
      ["a.yaml", "draft-1.yaml", "visits/keep.yaml"],
    ],
    [
      ["drafts", "/draft-?.yaml"],
      ["a.yaml", "visits/draft-2.yaml", "visits/keep.yaml"],
    ],
  ])("%j leaves %j", (patterns, left) => {
    const root = farm(...patterns);
    for (const paths of [["."], ["**/*.yaml"], [root], ["a.yaml", "."]]) {
      const archive = readCases(paths, { from: root });
      expect([archive.unreadable, archive.passedOver]).toEqual([[], []]);
      expect(filesOf(archive)).toEqual(left);
    }
  });

  it("are what git would ignore by the same patterns", () => {
    const patterns = ["drafts/", "*-2.yaml", "visits/*", "!visits/keep.yaml"];
    const root = farm(...patterns);
    const read = filesOf(readCases(["."], { from: root }));
    execFileSync("git", ["init", "--quiet"], { cwd: root });
    put(root, { ".gitignore": `${patterns.join("\n")}\n` });
    const listed = execFileSync("git", ["ls-files", "--others", "--exclude-standard"], {
      cwd: root,
      encoding: "utf8",
    });
    expect(read).toEqual(
      listed
        .split("\n")
        .filter((name) => /(?<!carcase)\.yaml$/.test(name))
        .sort(),
    );
  });

  it("are read when they are named: a file, or a folder, but for what else is excluded in it", () => {
    const root = farm("visits/", "draft-*.yaml");
    expect(filesOf(readCases(["draft-1.yaml"], { from: root }))).toEqual(["draft-1.yaml"]);
    expect(filesOf(readCases(["visits/draft-2.yaml", "."], { from: root }))).toEqual([
      "a.yaml",
      "visits/draft-2.yaml",
    ]);
    expect(filesOf(readCases(["visits"], { from: root }))).toEqual([
      "visits/draft-2.yaml",
      "visits/drafts/c.yaml",
      "visits/keep.yaml",
    ]);
    expect(
      filesOf(
        readCases(["-"], {
          from: root,
          input: { bytes: Buffer.from(smallCase("s")), name: "visits/s.yaml" },
        }),
      ),
    ).toEqual(["visits/s.yaml"]);
  });

  it("are not looked into at all", () => {
    const root = farm("closed/", "drafts/", "*.pipe.yaml");
    mkdirSync(join(root, "closed"));
    symlinkSync(root, join(root, "closed/up"));
    execFileSync("mkfifo", [join(root, "x.pipe.yaml")]);
    expect(readCases(["."], { from: root }).unreadable).toEqual([]);
  });

  it("are those of the nearest settings, from their folder", () => {
    const root = farm("a.yaml", "drafts/");
    put(root, { "visits/carcase.yaml": settings("/keep.yaml"), "visits/a.yaml": smallCase("va") });
    expect(filesOf(readCases(["."], { from: root }))).toEqual([
      "draft-1.yaml",
      "visits/a.yaml",
      "visits/draft-2.yaml",
      "visits/drafts/c.yaml",
    ]);
  });

  it("are those of --config, from its folder", () => {
    const root = farm();
    put(root, {
      "carcase.yaml": "format: 1\n",
      "visits/own.yaml": settings("keep.yaml", "drafts"),
      "drafts/b.yaml": "",
    });
    const { cases } = readCases(["a.yaml", "visits"], { from: root, config: "visits/own.yaml" });
    expect(cases.map(({ file }) => file)).toEqual(["a.yaml", "visits/draft-2.yaml"]);
  });
});

describe("a visit that lists an excluded case", () => {
  const listed = (pattern: string): string[] => {
    const root = temporaryFolder();
    put(root, {
      "carcase.yaml": settings(pattern),
      "v/visit.yaml": "format: 1\nvisit: v\ndate: 2026-04-20\ncases: [v-1, v-2]\n",
      "v/v-1.yaml": smallCase("v-1"),
      "v/v-2.yaml": smallCase("v-2"),
      "v/late.yaml": smallCase("v-3"),
    });
    return lintCases(readCases(["."], { from: root }), { only: ["visit-case-absent"] }).findings.map(
      ({ file, line, message }) => `${file}:${line}: ${message}`,
    );
  };

  it("is told which file is excluded, or that some are", () => {
    expect(listed("v-2.yaml")).toEqual([
      "v/visit.yaml:4: cases: v-2 is listed here but its file v/v-2.yaml is excluded by exclude: in carcase.yaml. Take it out of the patterns there, or take it off the list.",
    ]);
    expect(listed("late.yaml")).toEqual([]);
    expect(listed("v-*.yaml")).toHaveLength(2);
  });
});

describe("a pattern that cannot work", () => {
  it.each([
    ["", "names nothing"],
    [" ", "names nothing"],
    ["/", "names nothing"],
    ["!", "names nothing"],
    ["# drafts", "is a comment"],
    ["../other/", "leads out of the folder of carcase.yaml"],
    ["a/../../b", "leads out of the folder of carcase.yaml"],
    ["C:/farms", "leads out of the folder of carcase.yaml"],
    ["~/farms", "leads out of the folder of carcase.yaml"],
    ["./drafts/", "write drafts/."],
    ["drafts\\old", "write / between folders: drafts/old."],
    ["pig [1.yaml", 'has a "[" without its "]"'],
    ["!keep.yaml", "nothing is excluded before it"],
  ])("%j is an error at its line", (pattern, says) => {
    const root = farm("x.yaml", pattern);
    put(root, { "carcase.yaml": `format: 1\nexclude:\n  - ${JSON.stringify(pattern)}\n` });
    const { unreadable } = readCases(["a.yaml"], { from: root });
    expect(unreadable.map(({ file, line, message }) => [`${file}:${line}`, message])).toEqual([
      ["carcase.yaml:3", expect.stringContaining(says)],
    ]);
  });

  it("is one that takes back what lies in an excluded folder, as git says too", () => {
    const root = farm("visits/", "!visits/keep.yaml");
    const { unreadable } = readCases(["a.yaml"], { from: root });
    expect(unreadable.map(({ message }) => message)).toEqual([
      'exclude[1]: "!visits/keep.yaml" takes nothing back in, because the whole folder visits/ is excluded; exclude visits/* instead.',
    ]);
  });

  it.each([
    "drafts",
    "a b/",
    "*.values.yaml",
    "pig \\[1\\].yaml",
    "pig[12].yaml",
    "[!a].yaml",
    "**/x/**",
    "schwein größe/",
    "\\#a",
    "a.b/..c",
    "..a",
  ])("%j is none", (pattern) => {
    expect(readCases(["a.yaml"], { from: farm(pattern) }).unreadable).toEqual([]);
  });

  it("is a list: one pattern alone, or none, is told", () => {
    for (const text of ["drafts/", "[]", "[1]", "[a, a]"]) {
      const root = farm();
      put(root, { "carcase.yaml": `format: 1\nexclude: ${text}\n` });
      expect(
        readCases(["a.yaml"], { from: root }).unreadable.map(({ file, line }) => `${file}:${line}`),
      ).toEqual(["carcase.yaml:2"]);
    }
  });
});
