/** Which files are found under a path, folder or pattern. */
import { execFileSync } from "node:child_process";
import { mkdirSync, symlinkSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { find } from "../../src/cases/files/find.ts";
import { put, temporaryFolder } from "./temporary.ts";

const files = (path: string, from: string): string[] => find(path, from).files.map(({ file }) => file);

function farm(): string {
  const root = temporaryFolder();
  put(root, {
    "alder/farm.yaml": "",
    "alder/2026-03-14/pig-01.yaml": "",
    "alder/2026-03-14/pig-02.YML": "",
    "alder/2026-03-14/photos/a.jpg": "",
    "alder/node_modules/x/pig.yaml": "",
    "alder/.hidden/pig.yaml": "",
    "alder/.pig.yaml": "",
    "birch/pig-03.yml": "",
    "notes.txt": "",
  });
  return root;
}

describe("find", () => {
  it("looks through a folder in a stable order, but for node_modules and names with a dot", () => {
    const root = farm();
    const found = [
      "alder/2026-03-14/pig-01.yaml",
      "alder/2026-03-14/pig-02.YML",
      "alder/farm.yaml",
      "birch/pig-03.yml",
    ];
    expect(files(".", root)).toEqual(found);
    expect(files("./", root)).toEqual(found);
    expect(files(root, "/")).toEqual(found.map((file) => join(root, file)));
    expect(files("alder/", root)).toEqual(found.slice(0, 3));
    expect(files("../alder", join(root, "birch"))).toEqual(found.slice(0, 3).map((file) => `../${file}`));
    expect(find(".", root).faults).toEqual([]);
    expect(find(".", root).files.every(({ how }) => how === "walked")).toBe(true);
  });

  it("takes a file that is named, whatever it looks like", () => {
    const root = farm();
    for (const name of ["notes.txt", "alder/.pig.yaml", "alder/node_modules/x/pig.yaml"])
      expect(find(name, root)).toEqual({
        path: name,
        files: [{ file: name, how: "named" }],
        excluded: [],
        faults: [],
      });
  });

  it("follows patterns", () => {
    const root = farm();
    expect(files("alder/**/*.yaml", root)).toEqual(["alder/2026-03-14/pig-01.yaml", "alder/farm.yaml"]);
    expect(files("**/*.{yaml,yml,txt}", root)).toEqual([
      "alder/2026-03-14/pig-01.yaml",
      "alder/farm.yaml",
      "birch/pig-03.yml",
    ]);
    expect(files(join(root, "*/pig-*.yml"), "/")).toEqual([join(root, "birch/pig-03.yml")]);
    expect(find("*/pig-*.yml", root).files).toEqual([{ file: "birch/pig-03.yml", how: "matched" }]);
  });

  it.each([
    "",
    " ",
    "missing",
    "missing.yaml",
    "missing/*.yaml",
    "[",
    "{{{",
    "**/[",
    "\0",
    "a".repeat(5000),
    "farm.yaml/x",
  ])("finds nothing at %j", (path) => {
    expect(find(path, farm())).toEqual({ path, files: [], excluded: [], faults: [] });
  });

  it("prefers a file to the pattern that its name would be", () => {
    const root = temporaryFolder();
    put(root, { "pig [1].yaml": "", "pig 1.yaml": "" });
    expect(files("pig [1].yaml", root)).toEqual(["pig [1].yaml"]);
  });

  it("works outside any repository, at the top of the file system too", () => {
    const root = temporaryFolder();
    put(root, { "pig.yaml": "" });
    expect(files(".", root)).toEqual(["pig.yaml"]);
    const here = process.cwd();
    process.chdir(root);
    try {
      expect(files(".", ".")).toEqual(["pig.yaml"]);
    } finally {
      process.chdir(here);
    }
  });
});

describe("what git ignores", () => {
  const repository = (): string => {
    const root = temporaryFolder();
    put(root, {
      ".git/HEAD": "",
      ".gitignore": "# drafts\ndraft-*.yaml\n/only-here.yaml\nout/\n*.tmp.yaml\n",
      "draft-1.yaml": "",
      "only-here.yaml": "",
      "pig.yaml": "",
      "out/pig.yaml": "",
      "alder/.gitignore": "!draft-2.yaml\nsecret/\n",
      "alder/draft-1.yaml": "",
      "alder/draft-2.yaml": "",
      "alder/only-here.yaml": "",
      "alder/secret/pig.yaml": "",
      "alder/deep/draft-2.yaml": "",
      "alder/deep/secret/pig.yaml": "",
      "alder/deep/.gitignore": "draft-2.yaml\n",
      "alder/open/draft-2.yaml": "",
      "birch/draft-2.yaml": "",
      "birch/secret/pig.yaml": "",
    });
    return root;
  };

  it("is left out, with rules further down overruling those above", () => {
    expect(files(".", repository())).toEqual([
      "alder/draft-2.yaml",
      "alder/only-here.yaml",
      "alder/open/draft-2.yaml",
      "birch/secret/pig.yaml",
      "pig.yaml",
    ]);
  });

  it("is the same from a folder below and for patterns", () => {
    const root = repository();
    expect(files("alder", root)).toEqual([
      "alder/draft-2.yaml",
      "alder/only-here.yaml",
      "alder/open/draft-2.yaml",
    ]);
    expect(files("alder/open", root)).toEqual(["alder/open/draft-2.yaml"]);
    expect(files(".", join(root, "alder"))).toEqual(["draft-2.yaml", "only-here.yaml", "open/draft-2.yaml"]);
    expect(files("**/*.yaml", root)).toEqual(files(".", root));
    expect(files("alder/**/draft-*.yaml", root)).toEqual(["alder/draft-2.yaml", "alder/open/draft-2.yaml"]);
  });

  it("is read when it is named: a file, or a folder", () => {
    const root = repository();
    expect(files("draft-1.yaml", root)).toEqual(["draft-1.yaml"]);
    expect(files("out", root)).toEqual(["out/pig.yaml"]);
  });

  it("is what git itself says", () => {
    const root = repository();
    execFileSync("rm", ["-r", join(root, ".git")]);
    execFileSync("git", ["init", "--quiet"], { cwd: root });
    const listed = execFileSync("git", ["ls-files", "--others", "--exclude-standard"], {
      cwd: root,
      encoding: "utf8",
    });
    expect(files(".", root)).toEqual(
      listed
        .split("\n")
        .filter((name) => /\.yaml$/.test(name))
        .sort(),
    );
  });

  it("asks no rules above the repository, and none above a folder that is in none", () => {
    const root = temporaryFolder();
    put(root, { ".gitignore": "*.yaml\n", "in/.git/HEAD": "", "in/a/pig.yaml": "", "out/pig.yaml": "" });
    expect(files("in", root)).toEqual(["in/a/pig.yaml"]);
    expect(files("in/a", root)).toEqual(["in/a/pig.yaml"]);
    expect(files("out", root)).toEqual(["out/pig.yaml"]);
    expect(files(".", root)).toEqual([]);
  });

  it.each(["folder", "pipe", "binary", "link"])("is nothing where .gitignore is a %s", (kind) => {
    const root = temporaryFolder();
    put(root, { "pig.yaml": "" });
    const rules = join(root, ".gitignore");
    if (kind === "folder") mkdirSync(rules);
    if (kind === "pipe") execFileSync("mkfifo", [rules]);
    if (kind === "binary") put(root, { ".gitignore": Uint8Array.from([0, 255, 1]) });
    if (kind === "link") symlinkSync(rules, rules);
    expect(files(".", root)).toEqual(["pig.yaml"]);
  });
});

describe("links and other things", () => {
  it("follows a linked folder once, under its own name if it has one here", () => {
    const root = temporaryFolder();
    const elsewhere = temporaryFolder();
    put(root, { "real/pig.yaml": "" });
    put(elsewhere, { "pig.yaml": "" });
    symlinkSync(join(root, "real"), join(root, "a-link"));
    symlinkSync(join(root, "real"), join(root, "z-link"));
    symlinkSync(elsewhere, join(root, "b-outside"));
    symlinkSync(elsewhere, join(root, "c-outside"));
    expect(find(".", root)).toEqual({
      path: ".",
      files: ["b-outside/pig.yaml", "real/pig.yaml"].map((file) => ({
        file,
        location: join(root, file),
        how: "walked",
      })),
      excluded: [],
      faults: [],
    });
    expect(files("a-link", root)).toEqual(["a-link/pig.yaml"]);
  });

  it("takes a linked file once", () => {
    const root = temporaryFolder();
    const elsewhere = temporaryFolder();
    put(root, { "pig.yaml": "" });
    put(elsewhere, { "other.yaml": "" });
    symlinkSync("pig.yaml", join(root, "a.yaml"));
    symlinkSync(join(elsewhere, "other.yaml"), join(root, "b.yaml"));
    symlinkSync(join(elsewhere, "other.yaml"), join(root, "c.yaml"));
    expect(files(".", root)).toEqual(["b.yaml", "pig.yaml"]);
  });

  it("says of links that lead back that it did not follow them", () => {
    const root = temporaryFolder();
    put(root, { "a/b/pig.yaml": "" });
    symlinkSync(root, join(root, "a/b/up"));
    symlinkSync("loop.yaml", join(root, "loop.yaml"));
    symlinkSync("y", join(root, "x"));
    symlinkSync("x", join(root, "y"));
    const found = find(".", root);
    expect(found.files.map(({ file }) => file)).toEqual(["a/b/pig.yaml"]);
    expect(found.faults).toEqual([
      { file: "loop.yaml", message: "it is a link that leads back to itself" },
      { file: "a/b/up", message: "it is a link that leads back to a folder above it; it was not followed" },
    ]);
    expect(find("loop.yaml", root).faults).toEqual([
      { file: "loop.yaml", message: "it is a link that leads back to itself" },
    ]);
  });

  it("is not drawn into folders that link to each other", () => {
    const root = temporaryFolder();
    const names = Array.from({ length: 12 }, (_, n) => `d${n}`);
    for (const name of names) put(root, { [`${name}/pig.yaml`]: "" });
    for (const name of names)
      for (const other of names) symlinkSync(join(root, other), join(root, name, `to-${other}`));
    const began = performance.now();
    expect(files(".", root)).toEqual(names.map((name) => `${name}/pig.yaml`).sort());
    expect(performance.now() - began).toBeLessThan(5000);
  });

  it("names pipes, sockets, folders and links to nowhere that have the name of a case", async () => {
    const root = temporaryFolder();
    execFileSync("mkfifo", [join(root, "pipe.yaml")]);
    mkdirSync(join(root, "folder.yaml"));
    symlinkSync("nowhere", join(root, "nowhere.yaml"));
    const server = createServer();
    await new Promise<void>((done) => server.listen(join(root, "socket.yaml"), done));
    try {
      expect(files(".", root)).toEqual(["folder.yaml", "nowhere.yaml", "pipe.yaml", "socket.yaml"]);
    } finally {
      server.close();
    }
  });
});
