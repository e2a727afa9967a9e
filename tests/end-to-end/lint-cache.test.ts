/** A warm lint says what a cold one says, to the byte, whatever changed in between and whatever became of the cache. */
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { sha256 } from "../../src/words/sha256.ts";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { runs, seed } from "../random.ts";
import { carcase, type Ran, root } from "./run.ts";

const folder = join(temporaryFolder(), "archive");
const kept = join(process.env.XDG_CACHE_HOME ?? "", "carcase");
const tracing = "tracings/pig.svg";
const scale = "format: 1\nid: our-gap\norgan: respiratory.turbinates\n";

beforeAll(() => {
  for (const name of ["alder-farm/2026-03-14", "alder-farm/farm.yaml", "incomplete", "carcase.yaml"])
    cpSync(join(root, "cases-example", name), join(folder, name), { recursive: true });
  cpSync(join(root, "schemas"), join(folder, "../schemas"), { recursive: true });
  put(folder, {
    ".git/HEAD": "",
    "tools/workflow.yaml": "on: push\n",
    "one/visit.yaml": "format: 1\nvisit: one\ndate: 2026-03-14\n",
    "one/a.yaml": smallCase("same", `respiratory: {turbinates: {tracing: ${tracing}}}\n`),
    "one/b.yaml": smallCase("vesicle", "external: {snout: [{process: vesicle}]}\n"),
    "one/c.yaml": "a: [\n",
    [`one/${tracing}`]: "<svg/>",
    "two/farm.yaml": "format: 1\nfarm: two\nsows: many\n",
    "two/v/visit.yaml": "format: 1\nvisit: two\ndate: 2026-03-15\n",
    "two/v/a.yaml": smallCase("same", "photos: [{file: photos/lungs.jpg, shows: respiratory.lungs}]\n"),
    "two/w/visit.yaml": "a: {\n",
    "two/w/a.yaml": `# yaml-language-server: $schema=nowhere/case.schema.json\n${smallCase("three")}`,
    "own/carcase.yaml": "format: 1\nscales: [../scales]\n",
    "own/x/a.yaml": smallCase("four"),
    "scales/gap.yaml": scale,
  });
  for (let pig = 0; pig < 40; pig++) put(folder, { [`many/${pig}.yaml`]: smallCase(`many-${pig}`) });
});

const lint = (...args: readonly string[]): Ran =>
  carcase(["lint", "--format", "json", ...args], { cwd: folder });
const cold = (...args: readonly string[]): Ran => lint("--no-cache", ...args);
const linesOf = (): readonly { file: string; lines: readonly string[] }[] =>
  readdirSync(kept).map((name) => {
    const file = join(kept, name);
    return {
      file,
      lines: readFileSync(file, "utf8")
        .split("\n")
        .filter((line) => line !== ""),
    };
  });
const linesHere = (): number => linesOf().reduce((sum, { lines }) => sum + lines.length, 0);

describe("what an earlier run found", () => {
  it("is kept folder by folder, and nothing of it with --no-cache", () => {
    rmSync(kept, { recursive: true, force: true });
    const first = cold(".");
    expect(first.code).toBe(2);
    expect(existsSync(kept)).toBe(false);
    expect(lint(".")).toEqual(first);
    expect(linesHere()).toBeGreaterThan(12);
    expect(statSync(kept).mode & 0o077).toBe(0);
    expect(lint(".")).toEqual(first);
  });

  it("is really used", () => {
    const before = lint(".").out;
    expect(before).toContain("vesicle");
    for (const { file, lines } of linesOf())
      writeFileSync(
        file,
        lines
          .map((line) => {
            const [name, , ...rest] = line.split(" ");
            const json = rest.join(" ").replaceAll('"case":"vesicle"', '"case":"told by the cache"');
            return `${name} ${sha256(json)} ${json}\n`;
          })
          .join(""),
      );
    expect(lint(".").out).toBe(before.replace('"case": "vesicle"', '"case": "told by the cache"'));
    rmSync(kept, { recursive: true });
  });

  it("is told with one thread and with two, and in any order of arguments", () => {
    const paths = readdirSync(folder).filter((name) => !name.startsWith("."));
    const inOrder = ({ err, ...ran }: Ran) => ({ ...ran, err: err.split("\n").sort() });
    const expected = inOrder(cold(...paths));
    for (const args of [paths, ["--threads", "2", ...paths], paths.toReversed()])
      for (const state of ["cold", "warm"]) {
        if (state === "cold") rmSync(kept, { recursive: true, force: true });
        expect(inOrder(lint(...args)), `${state} ${args[0]}`).toEqual(expected);
      }
    expect(lint("--threads", "2", ".")).toEqual(cold("."));
  });

  it("is told in every format", () => {
    for (const format of ["text", "sarif", "junit", "github", "gitlab"]) {
      const asked = ["lint", "--format", format, "."];
      const env = { SOURCE_DATE_EPOCH: "1770000000" };
      const first = carcase([...asked, "--no-cache"], { cwd: folder, env });
      for (let run = 0; run < 2; run++) expect(carcase(asked, { cwd: folder, env }), format).toEqual(first);
    }
  });

  it("is not told of other rules, or of another day", () => {
    for (const args of [
      ["--only", "skipped-organ"],
      ["--rule", "skipped-organ=note"],
      ["--config", "own/carcase.yaml"],
    ])
      for (let run = 0; run < 2; run++) expect(lint(...args, ".")).toEqual(cold(...args, "."));
    for (const day of ["1767225600", "1798761600"])
      for (const more of [[], ["--no-cache"]])
        expect(
          carcase(["lint", "--format", "json", ".", ...more], {
            cwd: folder,
            env: { SOURCE_DATE_EPOCH: day },
          }),
        ).toEqual(
          carcase(["lint", "--format", "json", ".", "--no-cache"], {
            cwd: folder,
            env: { SOURCE_DATE_EPOCH: day },
          }),
        );
  });

  it("keeps a named file from being written over", () => {
    lint(".");
    const asked = ["lint", "--output", `one/${tracing}`, "."];
    const first = carcase([...asked, "--no-cache"], { cwd: folder });
    expect(first.err).toContain("names that file");
    expect(carcase(asked, { cwd: folder })).toEqual(first);
  });

  it("is left alone where nobody may write, and where it was damaged", () => {
    const expected = cold(".");
    lint(".");
    for (const { file, lines } of linesOf()) {
      const text = lines.join("\n");
      for (const damaged of [
        text.slice(0, text.length / 2),
        text.replaceAll("skipped", "s"),
        "",
        "\n \n  \n",
        text.replaceAll(" ", ""),
      ]) {
        writeFileSync(file, damaged);
        expect(lint(".")).toEqual(expected);
      }
    }
    rmSync(kept, { recursive: true });
    writeFileSync(kept, "a file in its place");
    expect(lint(".")).toEqual(expected);
    rmSync(kept);
  });
});

/** What somebody does to an archive between two runs, and what is undone afterwards. */
const changes: Record<string, () => void> = {
  "a case is corrected": () => edit("one/b.yaml", (text) => text.replace("vesicle}", "erosion}")),
  "a visit is": () => edit("one/visit.yaml", (text) => text.replace("14", "15")),
  "a farm is": () => edit("two/farm.yaml", (text) => text.replace("many", "120")),
  "a farm cannot be read": () => edit("two/farm.yaml", () => "a: ["),
  "settings change a rule": () => edit("carcase.yaml", (text) => `${text}\nrules: {skipped-organ: note}\n`),
  "settings come": () => put(folder, { "one/carcase.yaml": "format: 1\nrules: {skipped-organ: off}\n" }),
  "settings exclude": () => edit("carcase.yaml", (text) => `${text}\nexclude: [b.yaml]\n`),
  "a scale changes": () => edit("scales/gap.yaml", (text) => `${text}title: Gap\n`),
  "a scale comes": () => put(folder, { "scales/more.yaml": scale }),
  "a photograph comes": () => put(folder, { "two/v/photos/lungs.jpg": "x" }),
  "a tracing goes": () => rmSync(join(folder, "one", tracing)),
  "a tracing becomes a folder": () => {
    rmSync(join(folder, "one", tracing));
    mkdirSync(join(folder, "one", tracing));
  },
  "a tracing is corrected": () =>
    edit("alder-farm/2026-03-14/tracings/pig-14-lungs.svg", (text) => `${text}\n`),
  "a schema comes": () => put(folder, { "two/w/nowhere/case.schema.json": "{}" }),
  "results come": () =>
    put(folder, { "one/results.yaml": "format: 1\nentries: [{sample: 01-A, test: pcr}]\n" }),
  "a copy of a case comes": () => put(folder, { "aa/copy.yaml": smallCase("same") }),
  "the first of two cases of one id goes": () => rmSync(join(folder, "one/a.yaml")),
  "a case is renamed": () => renameSync(join(folder, "one/b.yaml"), join(folder, "one/z.yaml")),
  "a case becomes a link out": () => {
    writeFileSync(join(folder, "../outside.yaml"), readFileSync(join(folder, "one/b.yaml")));
    rmSync(join(folder, "one/b.yaml"));
    symlinkSync("../../outside.yaml", join(folder, "one/b.yaml"));
  },
  "a visit comes below another": () => renameSync(join(folder, "two/v"), join(folder, "one/v")),
  "git ignores a case": () => put(folder, { ".gitignore": "one/b.yaml\n" }),
  "the repository ends": () => renameSync(join(folder, ".git"), join(folder, "git")),
};

function edit(name: string, how: (text: string) => string): void {
  const file = join(folder, name);
  const { atime, mtime } = statSync(file);
  const before = readFileSync(file, "utf8");
  const after = how(before);
  expect(after, `${name} changes`).not.toBe(before);
  writeFileSync(file, after);
  // No time tells of it.
  utimesSync(file, atime, mtime);
}

function restored(work: () => void): void {
  const copy = `${folder}-copy`;
  cpSync(folder, copy, { recursive: true, verbatimSymlinks: true });
  try {
    work();
  } finally {
    for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true });
    for (const name of readdirSync(copy)) renameSync(join(copy, name), join(folder, name));
    rmSync(copy, { recursive: true });
  }
}

describe("what changed since", () => {
  it.each(Object.entries(changes))("is seen when %s", (_, change) => {
    lint(".");
    restored(() => {
      change();
      expect(lint(".")).toEqual(cold("."));
    });
  });

  it("is seen when any file changes, comes, goes or moves", () => {
    restored(() => {
      let state = seed;
      const random = (below: number): number => {
        state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
        return Math.floor((state / 2 ** 32) * below);
      };
      for (let round = 0; round < runs(100) / 10; round++) {
        const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
          .filter(
            (name) =>
              /\.(?:ya?ml|svg|jpg)$/.test(name) &&
              statSync(join(folder, name), { throwIfNoEntry: false })?.isFile(),
          )
          .sort();
        const name = files[random(files.length)] ?? "";
        const file = join(folder, name);
        const how = random(5);
        if (how === 0) rmSync(file);
        else if (how === 1) renameSync(file, join(folder, files[random(files.length)] ?? ""));
        else if (how === 2) cpSync(file, `${file}-${round}.yaml`);
        else {
          const text = readFileSync(file, "utf8");
          const at = random(text.length);
          writeFileSync(file, text.slice(0, at) + (how === 3 ? "x" : "") + text.slice(at + 1));
        }
        expect(lint("."), `round ${round}: ${name}, way ${how}`).toEqual(cold("."));
      }
    });
  });
});

it("reads what nobody may read no more than a cold run does", () => {
  const file = join(folder, "one/b.yaml");
  lint(".");
  chmodSync(file, 0);
  expect(lint(".")).toEqual(cold("."));
  chmodSync(file, 0o644);
});
