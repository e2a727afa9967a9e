/** Reading many files at once: what cannot be read is said, and the rest is read all the same. */
import { execFileSync } from "node:child_process";
import { chmodSync, mkdirSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { put, smallCase, temporaryFolder } from "./temporary.ts";

const ids = (archive: ReturnType<typeof readCases>): string[] => archive.cases.map((one) => one.id);
const said = (archive: ReturnType<typeof readCases>): string[] =>
  archive.unreadable.map(({ file, line, message }) => `${file}${line === 0 ? "" : `:${line}`}: ${message}`);

describe("an archive", () => {
  it("holds what can be read beside what cannot", () => {
    const root = temporaryFolder();
    put(root, {
      "visit.yaml": "format: 1\nvisit: v\ndate: 2026-04-20\n",
      "a.yaml": smallCase("a"),
      "b.yaml": "pig:\n\tsex: female\n",
      "c.yaml": new Uint8Array([0xff, 0xfe, 1, 0]),
      "d.yaml": Buffer.alloc(50 * 1024 * 1024, "x"),
      "e.yaml": "",
      "f.yaml": smallCase("f", "pig: {sex: F}\n"),
      "g.yaml": "- a\n",
      "h.yaml": "# nothing\n",
      "i.yaml": `${smallCase("i")}---\n${smallCase("j")}`,
      "z.yaml": smallCase("z"),
    });
    mkdirSync(join(root, "k.yaml"));
    execFileSync("mkfifo", [join(root, "l.yaml")]);
    symlinkSync("nowhere", join(root, "m.yaml"));
    symlinkSync("n.yaml", join(root, "n.yaml"));
    symlinkSync(root, join(root, "o"));
    const archive = readCases(["."], { from: root });
    expect(ids(archive)).toEqual(["a", "f", "z"]);
    expect(said(archive).sort()).toEqual([
      "b.yaml:2: a tab is used to indent; use spaces",
      "c.yaml: it is saved as UTF-16; save it as UTF-8",
      "d.yaml: it has 52.4 MB; a case file has a few kilobytes, and 2 MB is the limit",
      "e.yaml: the file is empty",
      "g.yaml:1: the file begins with a list; it must begin with keys, such as format: 1",
      "h.yaml:1: the file holds nothing but comments",
      "i.yaml:3: a second document begins here; write one case a file",
      "k.yaml: it is a folder; a case is a plain file",
      "l.yaml: it is a pipe, not a plain file",
      "m.yaml: it is a link to a file that does not exist",
      "n.yaml: it is a link that leads back to itself",
      "o: it is a link that leads back to a folder above it; it was not followed",
    ]);
    expect(archive.cases[1]?.faults.map(({ message }) => message)).toEqual([
      'pig.sex: "F" is not one of female, male, castrate. Did you mean female?',
    ]);
    expect(archive.pathsWithoutCases).toEqual([]);
  });

  it("says of each path that leads to no case that it does not", () => {
    const root = temporaryFolder();
    put(root, {
      "empty/readme.txt": "",
      "other.yaml": "version: 3\nservices: {}\n",
      "results.yaml": "format: 1\n",
      "a.yaml": smallCase(),
    });
    const paths = ["empty", "missing.yaml", "no/*.yaml", "", "\u001b[31m", "results.yaml", "other*"];
    const archive = readCases([...paths, "a.yaml"], { from: root });
    expect(archive.pathsWithoutCases).toEqual([
      "empty",
      "missing.yaml",
      "no/*.yaml",
      "",
      "\\u{1b}[31m",
      "results.yaml",
      "other*",
    ]);
    expect([ids(archive), said(archive)]).toEqual([["x-1"], []]);
  });

  it("passes over YAML files that are no cases, unless they are named", () => {
    const root = temporaryFolder();
    put(root, { "other.yaml": "version: 3\n", "a.yaml": smallCase("a") });
    expect(ids(readCases(["."], { from: root }))).toEqual(["a"]);
    expect(ids(readCases(["*.yaml"], { from: root }))).toEqual(["a"]);
    expect(ids(readCases(["other.yaml"], { from: root }))).toEqual(["other"]);
  });

  it("reads a file once, however often and by whatever way it is named", () => {
    const root = temporaryFolder();
    put(root, { "v/a.yaml": smallCase("a"), "v/b.yaml": smallCase("b") });
    symlinkSync("v", join(root, "w"));
    const archive = readCases(
      ["v/b.yaml", "./v/b.yaml", join(root, "v/b.yaml"), "w/b.yaml", "v", ".", "v/*.yaml"],
      { from: root },
    );
    expect(archive.cases.map(({ file }) => file)).toEqual(["v/a.yaml", "v/b.yaml"]);
    expect(archive.pathsWithoutCases).toEqual([]);
  });

  it.each(["pig\u001b[31m.yaml", "pig\u202e.yaml", "pig\n.yaml", "pig\u0007/a.yaml"])(
    "refuses the file name %j",
    (name) => {
      const root = temporaryFolder();
      put(root, { [name]: smallCase("bad"), "a.yaml": smallCase("a") });
      const archive = readCases(["."], { from: root });
      expect(ids(archive)).toEqual(["a"]);
      expect(archive.unreadable.map(({ file, message }) => [file, message])).toEqual([
        [name, "its path holds characters that cannot be seen; rename it"],
      ]);
    },
  );

  it("reads names of many scripts", () => {
    const root = temporaryFolder();
    put(root, { "schwein größe 🐖.yaml": smallCase("a"), "свинья/猪.yaml": smallCase("b") });
    expect(ids(readCases(["."], { from: root }))).toEqual(["a", "b"]);
  });

  // For the superuser every file can be read; there the end-to-end tests ask as somebody else.
  it.skipIf(process.getuid?.() === 0)("says what it has no permission for", () => {
    const root = temporaryFolder();
    put(root, { "a.yaml": smallCase("a"), "b.yaml": smallCase("b"), "c/d.yaml": smallCase("d") });
    chmodSync(join(root, "b.yaml"), 0);
    chmodSync(join(root, "c"), 0);
    const archive = readCases(["."], { from: root });
    expect([ids(archive), said(archive).sort()]).toEqual([
      ["a"],
      ["b.yaml: no permission to read it", "c: no permission to look into this folder"],
    ]);
    chmodSync(join(root, "c"), 0o755);
  });

  it("takes a case from bytes", () => {
    const root = temporaryFolder();
    put(root, { "v/visit.yaml": "format: 1\nvisit: v-1\ndate: 2026-03-14\n" });
    const bytes = new TextEncoder().encode(smallCase("a"));
    const archive = readCases(["-"], { from: root, input: { bytes, name: "v/a.yaml" } });
    expect(archive.cases.map((one) => [one.id, one.file, one.visit?.id])).toEqual([["a", "v/a.yaml", "v-1"]]);
    expect(said(readCases(["-"], { input: { bytes: new Uint8Array(3 * 1024 * 1024), name: "x" } }))).toEqual([
      "x: it has more than 2 MB; a case file has a few kilobytes",
    ]);
    expect(said(readCases(["-"]))).toEqual(["standard input: the file is empty"]);
  });
});

describe("visits and farms", () => {
  const visit = "format: 1\nvisit: v-1\ndate: 2026-03-14\ncases: [a, b]\n";
  const archiveOf = (files: Readonly<Record<string, string>>, paths: readonly string[] = ["."]) => {
    const root = temporaryFolder();
    put(root, { "f/farm.yaml": "format: 1\nfarm: f-1\n", "f/v/visit.yaml": visit, ...files });
    return readCases(paths, { from: root });
  };

  it("are found around a case", () => {
    const archive = archiveOf({ "f/v/a.yaml": smallCase("a"), "f/v/b.yaml": smallCase("b") });
    expect(
      archive.visits.map(({ id, complete, cases, farm }) => [id, complete, cases.length, farm?.id]),
    ).toEqual([["v-1", true, 2, "f-1"]]);
    expect(archive.farms.map(({ id }) => id)).toEqual(["f-1"]);
    expect(archive.cases.map(({ farm, visit: of }) => [farm?.id, of?.id])).toEqual([
      ["f-1", "v-1"],
      ["f-1", "v-1"],
    ]);
  });

  it("have the cases of the folders below them, but for those of another visit or farm", () => {
    const archive = archiveOf({
      "f/v/visit.yaml": `${visit}defaults: {examiner: R. Sallow}\n`,
      "f/v/a.yaml": smallCase("a"),
      "f/v/pigs-02-03/b.yaml": smallCase("b"),
      "f/v/pigs-02-03/deeper/c.yaml": smallCase("c"),
      "f/v/pigs-02-03/other.yaml": "version: 3\nservices: {}\n",
      "f/v/w/visit.yaml": "format: 1\nvisit: w-1\ndate: 2026-03-15\n",
      "f/v/w/d.yaml": smallCase("d"),
      "f/v/g/farm.yaml": "format: 1\nfarm: g-1\n",
      "f/v/g/e.yaml": smallCase("e"),
      "f/e.yaml": smallCase("f"),
    });
    const told = archive.visits.map((one) => [one.id, one.complete, one.cases.map(({ id }) => id)]);
    expect(told).toEqual([
      ["v-1", true, ["a", "b", "c"]],
      ["w-1", true, ["d"]],
    ]);
    const seen = archive.cases.map((one) => [one.id, one.visit?.id, one.farm?.id, one.record.examiner]);
    expect(seen.sort()).toEqual([
      ...["a", "b", "c"].map((id) => [id, "v-1", "f-1", "R. Sallow"]),
      ["d", "w-1", "f-1", undefined],
      ["e", undefined, "g-1", undefined],
      ["f", undefined, "f-1", undefined],
    ]);
    expect(archive.passedOver).toEqual(["f/v/pigs-02-03/other.yaml"]);
    expect(archive.unreadable).toEqual([]);
  });

  it.each([
    ["only one case of it was asked for", { "f/v/a.yaml": smallCase("a") }, ["f/v/a.yaml"]],
    ["only a folder in its own was asked for", { "f/v/pigs-1-2/a.yaml": smallCase("a") }, ["f/v/pigs-1-2"]],
    ["only some files matched a pattern", { "f/v/a.yaml": smallCase("a") }, ["f/v/*.yaml"]],
    ["the visit itself was asked for", {}, ["f/v/visit.yaml"]],
    ["a case could not be read", { "f/v/a.yaml": smallCase("a"), "f/v/b.yaml": "\t[" }, ["."]],
    [
      "the name of a case could not be read",
      { "f/v/a.yaml": smallCase("a"), "f/v/b.yaml": smallCase("a b") },
      ["."],
    ],
  ])("are not complete when %s", (_, files, paths) => {
    const { visits, pathsWithoutCases } = archiveOf(files, paths);
    expect(visits.map(({ id, complete }) => [id, complete])).toEqual([["v-1", false]]);
    expect(pathsWithoutCases).toEqual([]);
  });

  it("are read when they are named, and so are settings", () => {
    const archive = archiveOf({ "carcase.yaml": "format: 1\nprotocol: ful\n" }, [
      "f/farm.yaml",
      "carcase.yaml",
    ]);
    expect(archive.farms.map(({ id }) => id)).toEqual(["f-1"]);
    expect(said(archive)).toEqual([
      'carcase.yaml:2: protocol: there is no protocol "ful". Did you mean full?',
    ]);
    expect(archive.pathsWithoutCases).toEqual([]);
  });

  it("that cannot be read are said once", () => {
    const archive = archiveOf({
      "f/v/visit.yaml": "x:\n\ty: 1\n",
      "f/v/a.yaml": smallCase("a"),
      "f/v/b.yaml": smallCase("b"),
    });
    expect(said(archive)).toEqual(["f/v/visit.yaml:2: a tab is used to indent; use spaces"]);
    expect(archive.cases.map((one) => [one.id, one.visit])).toEqual([
      ["a", undefined],
      ["b", undefined],
    ]);
  });

  it("keep their own faults", () => {
    const archive = archiveOf({
      "f/v/visit.yaml": "format: 1\nvisit: v-1\ndate: 14.3.2026\n",
      "f/v/a.yaml": smallCase("a"),
    });
    expect(archive.visits[0]?.faults.map(({ file, line }) => `${file}:${line}`)).toEqual([
      "f/v/visit.yaml:3",
    ]);
    expect(archive.visits[0]?.record).toEqual({ format: 1, visit: "v-1" });
  });

  it("come in the order of their paths, whatever was asked for first", () => {
    const archive = archiveOf(
      {
        "a.yaml": smallCase("a"),
        "b.yaml": "x: [\n",
        "f/v/c.yaml": smallCase("c"),
        "f/v/d.yaml": "x: [\n",
        "f/w/visit.yaml": "format: 1\nvisit: w-1\n",
        "f/w/e.yaml": smallCase("e"),
      },
      ["f/w/e.yaml", "b.yaml", "f/v", "a.yaml"],
    );
    expect(ids(archive)).toEqual(["a", "c", "e"]);
    expect(archive.visits.map(({ id }) => id)).toEqual(["v-1", "w-1"]);
    expect(archive.unreadable.map(({ file }) => file)).toEqual(["b.yaml", "f/v/d.yaml"]);
  });
});
