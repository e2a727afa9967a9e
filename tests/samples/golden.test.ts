/** What plan, check and manifest say of a small visit a syndrome. `npm run docs` writes them anew. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { displayWidth } from "../../src/formats/page/width.ts";
import { sampleSets } from "../../src/knowledge/index.ts";
import { carcase } from "../end-to-end/run.ts";

const folder = "tests/fixtures/samples";
const syndromes = readdirSync(folder, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);
const commands = {
  plan: ["samples", "plan"],
  check: ["samples", "check", "--now", "2026-11-30T12:00"],
  manifest: ["samples", "manifest"],
} as const;

it("has a visit for each set that a complaint asks for", () => {
  const sets = [...sampleSets.values()].filter(({ words }) => words !== undefined).map(({ id }) => id);
  expect(syndromes).toEqual(sets.sort());
});

describe.each(syndromes)("%s", (name) => {
  it.each(Object.entries(commands))("%s", async (command, args) => {
    const { code, out, err } = carcase([...args, `${folder}/${name}`]);
    expect([code, err]).toEqual([0, ""]);
    expect(out.split("\n").filter((line) => displayWidth(line) > 80)).toEqual([]);
    await expect(out).toMatchFileSnapshot(`../fixtures/samples/${name}/${command}.txt`);
  });
});

it("names in the plan what the folder is called after", () => {
  const off = syndromes.filter((name) => {
    const title = sampleSets.get(name)?.title ?? "";
    const plan = readFileSync(`${folder}/${name}/plan.txt`, "utf8").replaceAll(/\s+/g, " ");
    return !plan.includes(title);
  });
  expect(off).toEqual([]);
});
