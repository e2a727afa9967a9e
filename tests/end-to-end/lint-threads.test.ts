/** Folders are read one by one, by several threads if asked: what is said, and in which order, is the same. */
import { symlinkSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { carcase } from "./run.ts";

const folder = temporaryFolder();
const visit = (id: string): string => `format: 1\nvisit: ${id}\ndate: 2026-03-14\n`;
const vesicle = "external: {snout: [{process: vesicle}]}\n";
/** A scale whose title is missing, and another of the same name. */
const scale = "format: 1\nid: our-gap\norgan: respiratory.turbinates\n";

beforeAll(() => {
  put(folder, {
    "carcase.yaml": "format: 1\n",
    "a.yaml": smallCase("one", vesicle),
    "z.yaml": smallCase("two"),
    "f/farm.yaml": "format: 1\nfarm: f-1\nsows: many\n",
    "f/v/visit.yaml": visit("v-1"),
    "f/v/a.yaml": smallCase("two", vesicle),
    "f/v/broken.yaml": "a: [\n",
    "f/w/visit.yaml": visit("w-1"),
    "f/w/a.yaml": smallCase("three", "accepted: [{rule: duplicate-case, because: kept on purpose}]\n"),
    "g/carcase.yaml": "format: 1\nscales: [../scales/bad.yaml]\n",
    "g/x/a.yaml": smallCase("three"),
    "h/carcase.yaml": "format: 1\nscales: [../scales]\n",
    "h/x/a.yaml": smallCase("one"),
    "h/x/b.yaml": "b: {\n",
    "scales/bad.yaml": scale,
    "scales/worse.yaml": scale,
  });
  symlinkSync(join(folder, "f/v"), join(folder, "a-link"));
  symlinkSync("loop.yaml", join(folder, "h/loop.yaml"));
});

const lint = (threads: number, args: readonly string[]) =>
  carcase(["lint", "--threads", `${threads}`, "--format", "json", ...args], { cwd: folder });

describe("several threads", () => {
  it.each([
    { args: ["."] },
    { args: ["h", "f", "."] },
    { args: ["a-link", "f"] },
    { args: ["f/w/a.yaml", "g", "f/v/a.yaml", "z.yaml", "f", "nowhere"] },
    { args: ["g", "scales/bad.yaml", "h"] },
    { args: ["--only", "skipped-organ", "."] },
    { args: ["--only", "duplicate-case", "g", "f"] },
  ])("say the same as one of $args", ({ args }) => {
    const one = lint(1, args);
    expect(one.code).toBeGreaterThan(0);
    expect(JSON.parse(one.out)).toHaveProperty("summary");
    for (const threads of [2, 3, 9]) expect(lint(threads, args), `${threads} threads`).toEqual(one);
  });
});

interface Result {
  readonly completeness: readonly { readonly file: string }[];
  readonly findings: readonly { readonly file: string; readonly rule: string }[];
}

describe("cases beside folders of cases", () => {
  const result = () => JSON.parse(lint(1, ["."]).out) as Result;

  it("are said in the order of their paths", () => {
    expect(result().completeness.map(({ file }) => file)).toEqual([
      "a.yaml",
      "f/v/a.yaml",
      "f/w/a.yaml",
      "g/x/a.yaml",
      "h/x/a.yaml",
      "z.yaml",
    ]);
  });

  it("are copies of those before them", () => {
    const copies = result().findings.filter(({ rule }) => rule === "duplicate-case");
    expect(copies.map(({ file }) => file)).toEqual(["g/x/a.yaml", "h/x/a.yaml", "z.yaml"]);
  });

  it("are named in that order by the notice of alarms, whatever was asked for first", () => {
    const { err } = carcase(["lint", "--format", "json", "z.yaml", "f/v", "a.yaml"], { cwd: folder });
    expect(err.match(/^ {2}\w+(?=: Vesicle)/gm)).toEqual(["  one", "  two"]);
  });
});
