/** All files of a run are shown in one form, whichever way they were reached. */
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ShownPaths } from "../../src/cases/files/shown-paths.ts";
import { readCases } from "../../src/cases/index.ts";
import { put, smallCase, temporaryFolder } from "./temporary.ts";

describe("a path", () => {
  it.each([
    ["/herds/farm", ["."], "/herds/farm/a.yaml", "a.yaml"],
    ["/herds/farm", ["/herds/farm"], "/herds/farm/a.yaml", "a.yaml"],
    ["/herds/farm/day", ["../.."], "/herds/farm/day/a.yaml", "a.yaml"],
    ["/herds/farm/day", ["../.."], "/herds/farm/farm.yaml", "../../farm/farm.yaml"],
    ["/herds/farm/day", ["."], "/herds/farm/farm.yaml", "../farm.yaml"],
    ["/herds/other", ["../farm"], "/herds/farm/a.yaml", "../farm/a.yaml"],
    ["/herds/other", ["/herds/farm"], "/herds/farm/a.yaml", "/herds/farm/a.yaml"],
    ["/herds/other", ["/herds/farm/day"], "/herds/farm/farm.yaml", "/herds/farm/farm.yaml"],
    ["/herds/other", ["../farm", "../farm/day/"], "/herds/farm/day/a.yaml", "../farm/day/a.yaml"],
    ["/herds", ["."], "/herds/..a.yaml", "..a.yaml"],
    ["/herds", ["."], "/herds", "."],
  ])("from %s, asked for %j: %s is %s", (from, asked, location, shown) => {
    expect(new ShownPaths(from, asked).show(location)).toBe(shown);
  });
});

describe("an archive", () => {
  const root = temporaryFolder();
  put(root, {
    "farm/carcase.yaml": "format: 1\n",
    "farm/farm.yaml": "format: 1\nfarm: f\n",
    "farm/day/visit.yaml": "format: 1\nvisit: v\nfarm: f\ndate: 2026-04-20\n",
    "farm/day/pig.yaml": smallCase("p"),
    "farm/day/broken.yaml": "pig: [\n",
    "other/x": "",
  });

  it.each([
    ["farm", ".", ""],
    ["farm", join(root, "farm"), ""],
    ["other", "../farm", "../farm/"],
    ["other", join(root, "farm"), `${join(root, "farm")}/`],
  ])("read in %s from %s shows all of its files alike", (from, path, before) => {
    const { cases, visits, farms, unreadable } = readCases([path], { from: join(root, from) });
    expect(
      [...cases, ...visits, ...farms, ...unreadable, ...cases.map((one) => one.settings)].map(
        ({ file }) => file,
      ),
    ).toEqual(
      ["day/pig.yaml", "day/visit.yaml", "farm.yaml", "day/broken.yaml", "carcase.yaml"].map(
        (name) => `${before}${name}`,
      ),
    );
  });

  it("read from the folder of the visit shows its files by name, however it was named", () => {
    for (const path of [".", "..", "../..", join(root, "farm"), "../day/pig.yaml"]) {
      const { cases, visits } = readCases([path], { from: join(root, "farm/day") });
      expect([...cases, ...visits].map(({ file }) => file)).toEqual(["pig.yaml", "visit.yaml"]);
    }
  });

  it("shows a case from standard input with the files around it", () => {
    const bytes = new TextEncoder().encode(smallCase("s"));
    const input = { bytes, name: "../farm/day/new.yaml" };
    const { cases } = readCases(["-"], { from: join(root, "other"), input });
    expect([cases[0]?.file, cases[0]?.visit?.file]).toEqual([
      "../farm/day/new.yaml",
      "../farm/day/visit.yaml",
    ]);
  });
});
