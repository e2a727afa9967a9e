import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname } from "node:path";
import { describe, expect, it } from "vitest";
import { type Rule, rules } from "../../src/lint/index.ts";
import { every } from "../every.ts";
import { lintExample } from "./lay-example.ts";

/** Of what looks like a finding: a sentence, rarely two, that a tired reader takes in at once. */
const longest = 200;

const folder = new URL("../../src/lint/rules/", import.meta.url);

const isRule = (value: unknown): value is Rule =>
  typeof value === "object" && value !== null && "id" in value;

/** The rules of a file, each as `family/id`: one that gives the file its name, or those of a table. */
async function rulesOfFile(file: string): Promise<string[]> {
  const exported = Object.values<unknown>(await import(new URL(file, folder).href));
  const table = exported.filter(Array.isArray).flat().filter(isRule);
  const single = exported.filter(isRule);
  const isOneThing = table.length > 1 ? single.length === 0 : table.length === 0 && single.length === 1;
  expect(isOneThing, `${file} holds one rule or one table of rules`).toBe(true);
  const family = dirname(file);
  for (const { id } of single) expect(file).toBe(`${family}/${id}.ts`);
  return [...table, ...single].map(
    (rule) => `${rule.family === family ? family : `not ${rule.family}`}/${rule.id}`,
  );
}

describe("the base visit of the examples", () => {
  it("is complete: no finding at all", () => {
    expect(lintExample({}).findings).toEqual([]);
  });
});

describe("the list of rules", () => {
  it("has every rule of every file, in the folder of its family, and no other", async () => {
    const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
      .map((name) => name.replaceAll("\\", "/"))
      .filter((name) => name.endsWith(".ts") && !name.endsWith("index.ts"));
    const written = await Promise.all(files.map(rulesOfFile));
    expect(written.flat().sort()).toEqual(rules.map((rule) => `${rule.family}/${rule.id}`).sort());
  });

  it("has each id once", () => {
    expect(new Set(rules.map((rule) => rule.id)).size).toBe(rules.length);
  });
});

describe("every rule", () => {
  every("finds its bad example, and no other rule does", rules, (rule) => {
    const { findings } = lintExample(rule.bad);
    expect([...new Set(findings.map((finding) => finding.rule))]).toEqual([rule.id]);
    for (const finding of findings) {
      expect(finding.level).toBe(rule.level);
      expect(finding.line).toBeGreaterThan(0);
      expect(finding.column).toBeGreaterThan(0);
    }
  });

  every("is silent on its good example, and so are all others", rules, (rule) => {
    expect(lintExample(rule.good).findings).toEqual([]);
  });

  every("says what it is for, and who says so", rules, (rule) => {
    expect(rule.summary).toMatch(/^[A-Z].*\.$/);
    expect(rule.protects).toMatch(/^[A-Z].*\.$/);
    expect(rule.source.cite.length).toBeGreaterThan(5);
  });

  every("says what else looks like its finding, shortly", rules, (rule) => {
    expect(rule.lookAlike).toMatch(/^[A-Z].*\.$/);
    expect(rule.lookAlike.length).toBeLessThanOrEqual(longest);
    expect(rule.lookAlike).not.toBe(rule.protects);
  });

  it("says it in words of its own", () => {
    const others = new Map(rules.map(({ id, lookAlike }) => [lookAlike, id]));
    expect(rules.filter(({ id, lookAlike }) => others.get(lookAlike) !== id)).toEqual([]);
  });

  every("has a page of documentation", rules, (rule) => {
    const page = new URL(`../../docs/rules/${rule.id}.md`, import.meta.url);
    expect(existsSync(page)).toBe(true);
    expect(readFileSync(page, "utf8")).toContain(rule.summary);
  });
});
