/** What the linter says of the hurried records of the half that messages may be tuned by: each finding is classed, and most are useful. */
import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readCases } from "../../src/cases/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { every } from "../every.ts";

const root = fileURLToPath(new URL("../fixtures/hurried/", import.meta.url));

interface Classed {
  readonly record: string;
  readonly file: string;
  readonly rule: string;
  readonly at: string;
  readonly class: "useful" | "pedantic" | "wrong";
  readonly why?: string;
}

const { findings: classed } = parse(readFileSync(join(root, "findings.yaml"), "utf8")) as {
  findings: Classed[];
};
const records = [...new Set(classed.map(({ record }) => record))];
const count = (name: Classed["class"]): number => classed.filter((one) => one.class === name).length;
const useful = count("useful") / classed.length;

/** What must be reached, and what was measured so far: it may not fall behind that. Raise the floor as rules are mended. */
const goal = { useful: 0.85, wrong: 0 };
const floor = { useful: 0.69, wrong: 10 };

const told = (record: string): string[] => {
  const files = readdirSync(join(root, record)).filter((file) => file !== "source.yaml");
  const { findings } = lintCases(readCases(files.map((file) => join(root, record, file))));
  return findings.map(({ file, rule, path }) => `${basename(file)} ${rule} ${path}`).sort();
};

describe("findings of hurried records", () => {
  every("are classed, each of them and no other", records, (record) => {
    const known = classed.filter((one) => one.record === record);
    expect(told(record)).toEqual(known.map(({ file, rule, at }) => `${file} ${rule} ${at}`).sort());
  });

  it("say why, where they are not useful", () => {
    expect(classed.filter((one) => (one.why === undefined) !== (one.class === "useful"))).toEqual([]);
  });

  it("are useful, and none is wrong, or not fewer and not more than were measured", () => {
    const isReached = useful >= goal.useful && count("wrong") <= goal.wrong;
    console.log(
      `hurried records: ${count("useful")} of ${classed.length} findings useful, ${count("wrong")} wrong; ${isReached ? "reached" : "not reached: at least 85 % and none"}`,
    );
    expect(useful).toBeGreaterThanOrEqual(Math.min(goal.useful, floor.useful));
    expect(count("wrong")).toBeLessThanOrEqual(Math.max(goal.wrong, floor.wrong));
  });

  it("are counted so on their page", () => {
    const page = readFileSync(join(root, "FINDINGS.md"), "utf8");
    expect(page).toContain(`## The half \`work\`: ${classed.length} findings`);
    for (const name of ["useful", "pedantic", "wrong"] as const)
      expect(page).toContain(
        `| ${name} | ${count(name)} | ${Math.round((count(name) / classed.length) * 100)} % |`,
      );
  });
});
