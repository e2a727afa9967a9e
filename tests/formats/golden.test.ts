/** What each format prints, kept as files to be read by people. `npm run docs` writes them anew. */
import { describe, expect, it } from "vitest";
import { carcase } from "../end-to-end/run.ts";

const golden = (name: string): string => `../fixtures/golden/${name}`;

describe("golden output", () => {
  it.each([
    ["lint-complete.txt", ["lint", "cases-example/alder-farm"]],
    ["lint-incomplete.txt", ["lint", "cases-example/incomplete"]],
    ["lint-incomplete.json", ["lint", "--format", "json", "cases-example/incomplete"]],
    ["lint-quiet.txt", ["lint", "--quiet", "cases-example/incomplete"]],
    ["score.txt", ["score", "cases-example/alder-farm"]],
    ["score.json", ["score", "--format", "json", "cases-example/alder-farm/2026-03-14/pig-01.yaml"]],
    ["score-incomplete.txt", ["score", "cases-example/incomplete"]],
    ["herd.txt", ["herd", "--by", "visit,group", "cases-example/alder-farm"]],
    [
      "herd.json",
      [
        "herd",
        "--format",
        "json",
        "--by",
        "visit",
        "--indicator",
        "snout-grade-2-up,pleurisy",
        "--scale",
        "maff-1978,dottori-2007",
        "cases-example/alder-farm",
      ],
    ],
  ])("%s", async (name, args) => {
    const { out, err } = carcase(args);
    await expect(`${out}${err === "" ? "" : `--- standard error\n${err}`}`).toMatchFileSnapshot(golden(name));
  });
});
