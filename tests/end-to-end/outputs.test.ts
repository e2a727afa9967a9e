/** Every output for scripts has a version and a published schema, and fits it. `carcase()` checks every other call as well. */
import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { blocksOf } from "../docs/blocks.ts";
import { checkedOutput, fieldsOf, outputs } from "./outputs.ts";
import { carcase, root } from "./run.ts";

const farm = "cases-example/alder-farm";
const visit = `${farm}/2026-03-14`;

/** Calls that together fill as much of each output as the example holds. */
const calls: Readonly<Record<string, readonly string[]>> = {
  agree: ["agree cases-example/two-readers.csv"],
  compare: [
    `compare ${farm}`,
    `compare --between groups ${visit}`,
    "compare --between farms --indicator snout-grade-2-up cases-example",
  ],
  config: ["config cases-example/alder-farm", "config --no-config"],
  diff: [`diff --files ${visit}/pig-01.yaml ${visit}/pig-02.yaml`],
  explain: ["explain skipped-organ", "explain maff-1978"],
  "explain-list": ["explain", "explain processes"],
  herd: [
    `herd ${farm}`,
    "herd --all --combine --bootstrap --seed 1 cases-example",
    "herd --by group cases-example/maple-farm",
  ],
  import: ["import cases-example/tally.csv cases-example/maple-farm/2026-12-08"],
  lint: ["lint cases-example"],
  log: ["log pig.yaml"],
  measure: ["measure cases-example"],
  part: [
    "lint --shard 1/2 cases-example",
    "herd --shard 1/2 --indicator pleurisy --scale dottori-2007 --by visit cases-example",
  ],
  plan: [
    "plan detect --prevalence 10%",
    "plan estimate --expected 30% --within 10%",
    "plan compare --from 40% --to 20%",
    "plan say --pigs 6",
    "plan choose --pigs 3 --seed 1 cases-example/alder-farm/farm.yaml",
    "plan choose --diagnostic",
  ],
  report: [`report ${farm}`, "report tests/fixtures/birch-farm"],
  "samples-check": [`samples check ${visit}`, "samples check tests/fixtures/samples"],
  "samples-manifest": [`samples manifest ${visit}`, "samples manifest tests/fixtures/birch-farm"],
  "samples-plan": [
    "samples plan cases-example/maple-farm/2026-10-08",
    'samples plan --complaint "cough in finishers"',
  ],
  "samples-results": [`samples results ${farm}`, "samples results tests/fixtures/birch-farm"],
  schema: ["schema"],
  score: [`score ${farm}`, `score --by group ${farm}`],
  show: [`show ${visit}/pig-01.yaml ${visit}/pig-02.yaml`],
  verify: [`verify ${farm}`, `verify --all ${visit}/pig-14.yaml`],
  workup: [`workup ${visit}`, "workup tests/fixtures/birch-farm"],
};

/** A pig that was committed and changed. */
function repository(): string {
  const folder = temporaryFolder();
  const git = (...args: string[]) =>
    spawnSync("git", ["-c", "user.name=a", "-c", "user.email=a@example.org", ...args], { cwd: folder });
  put(folder, { "pig.yaml": "format: 1\ncase: x-01\n" });
  git("init", "--quiet");
  git("add", "--all");
  git("commit", "--quiet", "--no-verify", "--message=x");
  put(folder, { "pig.yaml": "format: 1\ncase: x-01\npig: {sex: male}\n" });
  return folder;
}

const wordsOf = (call: string): string[] =>
  (call.match(/"[^"]*"|\S+/g) ?? []).map((word) => word.replaceAll('"', ""));

describe("output for scripts", () => {
  // Compare has a page of its own.
  it.each(outputs.filter((output) => output !== "compare"))(
    "%s is told in docs/json.md, with fields that it has",
    (output) => {
      const heading = output === "explain-list" ? "explain" : output.replace("-", " ");
      const blocks = blocksOf("docs/json.md").filter(
        (block) => block.heading === heading && block.info === "json",
      );
      const hasFields = fieldsOf(output);
      expect(
        blocks.filter(({ body }) => hasFields(JSON.parse(body))).length,
        JSON.stringify(hasFields.errors),
      ).toBeGreaterThan(0);
    },
  );

  it("is what this table asks for, each in at least one call", () => {
    expect(Object.keys(calls).toSorted()).toEqual(outputs);
  });

  it.each(outputs)("%s says what it is, and fits its schema", (output) => {
    for (const call of calls[output] ?? []) {
      const cwd = output === "log" ? repository() : root;
      const { out, err } = carcase([...wordsOf(call), "--format", "json"], { cwd });
      expect(checkedOutput(out), `${call}: ${err}`).toBe(output);
      expect(JSON.parse(out)).toMatchObject({ output, version: expect.any(Number) });
    }
  });
});
