/**
 * The pages on installing, library, editors and CI, run as printed from the packed file, on a machine that has Node and no
 * network. `sh` and `js run` are run, `console` is run and compared; the commands of YAML jobs are run in a fresh clone;
 * files that JSON names must be there; `text` holds no commands, nor does a case. There is no other kind, so that nothing
 * is passed over.
 * The section that starts from a clone is run in clone.test.ts.
 */
import { cpSync, existsSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { type Block, blocksOf, fence, played, textOf } from "../docs/blocks.ts";
import { every } from "../every.ts";
import { fromClone, type Machine, machine, root } from "./machine.ts";

interface Step {
  readonly uses?: string;
  readonly run?: string;
  readonly with?: Readonly<Record<string, string>>;
}
interface Job {
  readonly steps?: readonly Step[];
  readonly script?: readonly string[];
  readonly artifacts?: { readonly reports: Readonly<Record<string, string>> };
}
interface HookRepository {
  readonly rev: string;
  readonly hooks: readonly { readonly id: string }[];
}

/** Actions cannot be run here: what they would have done. */
const standIns: Readonly<Record<string, (step: Step, place: string) => void>> = {
  "actions/checkout": () => {
    // Each job starts in a fresh clone.
  },
  "actions/setup-node": ({ with: given }) =>
    expect(Number(given?.["node-version"])).toBeGreaterThanOrEqual(20),
  "github/codeql-action/upload-sarif": ({ with: given }, place) => {
    const file = readFileSync(join(place, given?.sarif_file ?? ""), "utf8");
    expect(JSON.parse(file)).toMatchObject({ version: "2.1.0" });
  },
};

const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
const known: readonly { id: string }[] = parse(readFileSync(join(root, ".pre-commit-hooks.yaml"), "utf8"));

function runJob({ steps, script = [], artifacts }: Job, desk: Machine, repository: string): void {
  const place = join(desk.place(), "clone");
  desk.runs(`git clone --quiet "${repository}" clone`, join(place, ".."));
  for (const step of steps ?? script.map((run): Step => ({ run }))) {
    if (step.run !== undefined)
      desk.runs(`${steps === undefined ? "" : "export GITHUB_ACTIONS=true\n"}${step.run}`, place);
    else {
      const action = step.uses?.split("@")[0] ?? "";
      expect(Object.keys(standIns), "actions that something stands in for").toContain(action);
      standIns[action]?.(step, place);
    }
  }
  for (const file of Object.values(artifacts?.reports ?? {}))
    expect(existsSync(join(place, file)), file).toBe(true);
}

/** What is done with a block of each kind. */
const kinds: Readonly<Record<string, (body: string, desk: Machine, place: string) => void>> = {
  text: () => {
    // Holds no command.
  },
  "yaml case": () => {
    // Is held against the format in tests/docs.
  },
  "yaml settings": () => {
    // Are held against the format in tests/docs.
  },
  vim: () => {
    // Is typed in tests/docs.
  },
  sh: (body, desk, place) => desk.runs(body, place),
  console: (body, desk, place) =>
    expect(body).toBe(
      played(body, (line) => {
        const { out, err } = desk.run(line, place);
        return out + err;
      }),
    ),
  "js run": (body, desk, place) => {
    writeFileSync(join(place, "block.mjs"), body);
    desk.runs("node block.mjs", place);
  },
  json: (body, _, place) => {
    for (const [name] of body.matchAll(/(?<=")\.\/[^"*]*(?=")/g))
      expect(existsSync(join(place, name)), name).toBe(true);
    JSON.parse(body);
  },
  yaml: (body, desk, place) => {
    const document = parse(body);
    for (const { rev, hooks } of (document.repos ?? []) as readonly HookRepository[]) {
      expect(rev).toBe(`v${version}`);
      for (const { id } of hooks) expect(known.map((hook) => hook.id)).toContain(id);
    }
    if (document.repos !== undefined) return;
    const jobs: readonly Job[] = Object.values(document.jobs ?? document);
    for (const job of jobs) runJob(job, desk, place);
  },
};

function runBlock({ info, body }: Block, desk: Machine, place: string): void {
  const run = kinds[info];
  if (run === undefined) throw new Error(`a block of the kind "${info}" is not run:\n${body}`);
  run(body, desk, place);
}

const section = (heading: string): Block[] =>
  blocksOf("docs/install.md").filter((block) => block.heading === heading);

/** A repository of cases. */
function withCases(desk: Machine): string {
  const place = desk.place();
  for (const name of ["carcase.yaml", "alder-farm"])
    cpSync(join(root, "cases-example", name), join(place, name), { recursive: true });
  desk.runs("git add . && git commit --quiet --message Cases", place);
  return place;
}

it("has no command outside a block", () => {
  for (const name of ["install", "library", "editors", "ci"])
    expect(textOf(`docs/${name}.md`).replaceAll(fence, "")).not.toMatch(/^ {4}/m);
});

const desk = machine();
/** The repository of cases that the page installs into; the other pages start from it. */
let farm = "";
const removal = "Remove it";

describe("docs/install.md", () => {
  it("installs and updates as printed", () => {
    const headings = new Set(blocksOf("docs/install.md").map(({ heading }) => heading));
    for (const heading of headings) {
      if (heading === fromClone || heading === removal) continue;
      const place = heading === "In a repository of cases" ? withCases(desk) : desk.place();
      for (const block of section(heading)) runBlock(block, desk, place);
      if (heading === "In a repository of cases") farm = place;
    }
  });
});

describe("from a repository of cases", () => {
  every("docs/ci.md and docs/editors.md run as printed", ["ci", "editors"], (page) => {
    for (const block of blocksOf(`docs/${page}.md`)) runBlock(block, desk, farm);
  });

  it("has a hook that stops an incomplete case", () => {
    const file = join(farm, "alder-farm/2026-03-14/pig-01.yaml");
    writeFileSync(file, readFileSync(file, "utf8").replace(/^ {2}liver: .*\n/m, ""));
    const { code, out, err } = desk.run("git commit --quiet --all --message Less", farm);
    expect(code).toBe(1);
    expect(out + err).toContain("[skipped-organ]");
  });

  it("runs library code of all pages as printed", () => {
    const place = desk.place();
    symlinkSync(join(farm, "node_modules"), join(place, "node_modules"));
    for (const name of ["cases-example", "schemas"])
      cpSync(join(root, name), join(place, name), { recursive: true });
    const blocks = readdirSync(join(root, "docs"), { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".md"))
      .flatMap((name) => blocksOf(`docs/${name}`))
      .filter(({ info }) => info === "js run");
    expect(blocks.length).toBeGreaterThan(4);
    for (const block of blocks) runBlock(block, desk, place);
  });
});

it("is removed as printed, and leaves nothing behind", () => {
  for (const block of section(removal)) runBlock(block, desk, desk.place());
  desk.runs("npm uninstall --global --prefix ~/.local carcase", desk.home);
  expect(desk.run("command -v carcase", desk.home).out).toBe("");
  expect(
    readdirSync(desk.home, { recursive: true, encoding: "utf8" }).filter((name) => /carcase/.test(name)),
  ).toEqual([]);
});
