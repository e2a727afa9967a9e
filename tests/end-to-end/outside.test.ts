/** Nothing of a file outside the repository comes to light, whatever leads to it. */
import { mkdirSync, readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { carcase, type Ran, wide } from "./run.ts";

const secret = "hunter2";
const box = temporaryFolder();
const repository = join(box, "repository");
const hidden = "content not shown: the file lies outside the repository";

/** Files that hold a secret in keys, in values, in text that is no YAML, and where all is well but for a word. */
const outside: Readonly<Record<string, string>> = {
  "values.yaml": `format: 1\ncase: ${secret}\n${secret}_key: ${secret}\npig: {tag: ${secret}, sex: ${secret}, age: ${secret}}\nhistory: ${secret}\nselection: {basis: ${secret}, ${secret}: 1}\n`,
  "syntax.yaml": `case: x\npassword: ${secret}: ${secret}\n\t${secret}: [\n`,
  "twice.yaml": `case: x\n${secret}: 1\n${secret}: 2\n&${secret} a: *${secret}x\n`,
  "mark.yaml": `case: ${secret}\u200f\n`,
  "latin.yaml": `case: ${secret}`,
  "list.yaml": `- ${secret}\n`,
  "visit.yaml": `format: 1\nvisit: ${secret}!\ndate: ${secret}\n${secret}: 1\nsigns: [${secret}]\ncases: [${secret}-1]\ncomplaint: ${secret} \u0065\n`,
  "farm.yaml": `format: 1\nfarm: ${secret}!\nname: {${secret}: ${secret}}\n`,
  "carcase.yaml": `format: 1\nprotocol: ${secret}\nrules: {${secret}: off}\nscales: [${secret}]\nindicators: {${secret}: {title: ${secret}, finding: {organ: ${secret}}}}\n`,
  "faulty.yaml": `format: 1\n${secret}: ${secret}\nlevel: ${secret}\n`,
  "scale.yaml": `format: 1\nid: ${secret}\n${secret}: 1\ntitle: {a: ${secret}}\n`,
  "broken-scale.yaml": `id: ${secret}\n ${secret}: [\n`,
  "a.json": `{"type": "FeatureCollection", ${secret}`,
  "a.svg": `<svg xmlns="http://www.w3.org/2000/svg"><${secret}></svg>`,
  "b.svg": `<svg xmlns="http://www.w3.org/2000/svg"><path id="${secret}" d="M0 0h1v1z"/><path id="cavity-left" d="${secret}"/></svg>`,
  "c.json": `{"type": "FeatureCollection", "features": [{"properties": {"part": "cavity-left", "unit": "${secret}"}, "geometry": {"type": "Polygon", "coordinates": [[[0, 0], [1, 0], [1, 1], [0, 0]]]}}]}`,
  "d.svg": `<svg xmlns="http://www.w3.org/2000/svg"><line id="scale-bar-10-mm" x1="0" y1="0" x2="10" y2="0"/><path id="${secret}" d="M0 0h1v1z"/><path id="cavity-left" d="M0 0h9v9h-9z"/></svg>`,
  "a.csv": `pig,reader,maff-1978,${secret}\n`,
  "b.csv": `pig,reader,maff-1978\n1,A,${secret}\n`,
  "baseline.json": `{"format": 1, "${secret}": "${secret}"}`,
  "tags.txt": `${secret}\u200f\n`,
};

const tracings = ["a.json", "c.json", "a.svg", "b.svg", "d.svg"];

beforeAll(() => {
  put(box, Object.fromEntries(Object.entries(outside).map(([name, text]) => [`outside/${name}`, text])));
  put(box, { "outside/latin.yaml": Uint8Array.from([...Buffer.from(`case: ${secret}`), 0xe4]) });
  mkdirSync(join(repository, ".git"), { recursive: true });
  const link = (name: string, to: string): void => {
    put(repository, { [join(name, "../x")]: "" });
    symlinkSync(join(box, "outside", to), join(repository, name));
  };
  for (const name of ["values", "syntax", "twice", "mark", "latin", "list"])
    link(`cases/${name}.yaml`, `${name}.yaml`);
  symlinkSync(join(box, "outside"), join(repository, "folder"));
  link("visits/visit.yaml", "visit.yaml");
  link("visits/farm.yaml", "farm.yaml");
  link("set/carcase.yaml", "carcase.yaml");
  link("set2/carcase.yaml", "faulty.yaml");
  put(repository, {
    "visits/pig.yaml": smallCase("v-1", "pig: {tag: 1, group: g}\n"),
    "set/pig.yaml": smallCase("s-1"),
    "set2/pig.yaml": smallCase("s-2"),
    "scales/carcase.yaml": "format: 1\nscales: [../../outside/scale.yaml, ../../outside/broken-scale.yaml]\n",
    "scales/pig.yaml": smallCase("c-1"),
    "scales/link/carcase.yaml": "format: 1\nscales: [linked.yaml]\n",
    "scales/link/pig.yaml": smallCase("c-2"),
    ...Object.fromEntries(
      tracings.map((name, index) => [
        `tracings/pig-${index}.yaml`,
        smallCase(
          `t-${index}`,
          `respiratory: {lungs: {tracing: ../../outside/${name}}, turbinates: {tracing: ${name}}}\n`,
        ),
      ]),
    ),
  });
  link("scales/link/linked.yaml", "scale.yaml");
  for (const name of tracings) link(`tracings/${name}`, name);
  for (const name of ["a.csv", "b.csv", "baseline.json", "tags.txt"]) link(name, name);
});

function isSilent({ out, err }: Ran, says = hidden): void {
  expect(`${out}${err}`).not.toContain(secret);
  expect(`${out}${err}`).toContain(says);
}
const run = (...args: string[]): Ran => carcase(args, { cwd: repository, env: wide });
const formats = ["text", "json", "sarif", "junit", "github", "gitlab"];

describe("a link that leads out of the repository", () => {
  it.each(formats)("is told without its content in %s", (format) => {
    // The id of a case is what is asked for, and is told.
    const paths = Object.keys(outside).filter((name) => /^(?:syntax|twice|mark|latin|list)/.test(name));
    const ran = run(
      "lint",
      "--format",
      format,
      ...paths.map((name) => `cases/${name}`),
      "visits",
      "set",
      "set2",
      "scales",
    );
    expect(ran.code).toBe(2);
    isSilent(ran);
    for (const name of [...paths, "visit.yaml", "farm.yaml", "carcase.yaml", "scale.yaml"])
      expect(`${ran.out}${ran.err}`).toContain(name);
  });

  it("says file and line of what does not fit, and shows none of it", () => {
    const { out } = run("lint", "-q", "cases/values.yaml");
    expect(out).not.toContain(secret);
    expect(out).toMatch(
      /^ {2}3:1 error something here does not fit \(content not shown.*\) \[case-format\]$/m,
    );
    expect(out).toMatch(
      /^ {2}\d+:\d+ error .* \(content not shown: the file lies outside the repository\) \[skipped-system\]$/m,
    );
  });

  it("is told by the other commands as by lint", () => {
    for (const command of ["score", "herd", "compare", "agree"])
      isSilent(run(command, "visits", "set2", "scales", "cases/syntax.yaml"));
    isSilent(run("explain", "--config", "set2/carcase.yaml"));
    isSilent(run("lint", "--config", "set2/carcase.yaml", "set2/pig.yaml"));
  });

  it("hides baselines, tables, lists and tracings", () => {
    for (const args of [
      ["agree", "a.csv"],
      ["agree", "b.csv"],
      ["lint", "--baseline", "baseline.json", "set2/pig.yaml"],
    ])
      isSilent(run(...args));
    isSilent(run("plan", "choose", "tags.txt", "--pigs", "1"), "holds an invisible mark");
    for (const format of ["text", "json"])
      isSilent(run("measure", "--format", format, "tracings", ...tracings.map((name) => `tracings/${name}`)));
  });

  it("is not followed by --fix, nor by the difference that it shows", () => {
    const before = readFileSync(join(box, "outside/values.yaml"), "utf8");
    expect(run("lint", "--fix", "--dry-run", "cases/values.yaml", "visits").out).toBe("");
    run("lint", "--fix", "cases/values.yaml", "visits");
    expect(readFileSync(join(box, "outside/values.yaml"), "utf8")).toBe(before);
  });

  it("hides what a named folder or file leads to as well, when a link in the repository leads there", () => {
    for (const path of ["folder/syntax.yaml", "folder/*syntax.yaml"]) isSilent(run("lint", "-q", path));
    expect(run("lint", "-q", "folder").out + run("lint", "-q", "folder").err).not.toMatch(/\| .*hunter2/);
  });
});

describe("what is shown", () => {
  const shows = (args: readonly string[], cwd: string): void => {
    const { out, err } = carcase(args, { cwd, env: wide });
    expect(`${out}${err}`).toContain(secret);
    expect(`${out}${err}`).not.toContain(hidden);
  };

  it("is a file that the command line names elsewhere without a link", () => {
    shows(["lint", "../outside/syntax.yaml"], repository);
    shows(["lint", join(box, "outside/syntax.yaml")], repository);
    shows(["measure", "../outside/c.json"], repository);
    shows(["measure", "../outside/d.svg"], repository);
  });

  it("is all of the repository from a folder in it", () => {
    put(repository, {
      "inside/deep/pig.yaml": `case: x\nwrong: [${secret}\n`,
      "inside/b.yaml": `id: ${secret}\n ${secret}: [\n`,
    });
    symlinkSync("../b.yaml", join(repository, "inside/deep/linked.yaml"));
    shows(["lint", "pig.yaml"], join(repository, "inside/deep"));
    shows(["lint", "linked.yaml"], join(repository, "inside/deep"));
  });

  it("without git is the current folder, and the settings and the farm above it", () => {
    const plain = join(box, "plain");
    put(plain, {
      "carcase.yaml": `format: 1\nprotocol: ${secret}\n`,
      "farm/day/pig.yaml": smallCase("p"),
      "farm/day/bad.yaml": `case: x\nwrong: [${secret}\n`,
      "other.yaml": `case: x\n ${secret}: [\n`,
    });
    symlinkSync("../../other.yaml", join(plain, "farm/day/link.yaml"));
    for (const cwd of [plain, join(plain, "farm"), join(plain, "farm/day")]) {
      shows(["lint", join(plain, "farm/day/pig.yaml")], cwd);
      shows(["lint", join(plain, "farm/day/bad.yaml")], cwd);
    }
    shows(["lint", "farm/day/link.yaml"], plain);
    expect(carcase(["lint", "day/link.yaml"], { cwd: join(plain, "farm"), env: wide }).err).toContain(hidden);
  });
});
