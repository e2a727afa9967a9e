import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { rules } from "../../src/lint/index.ts";
import { every } from "../every.ts";
import { lintExample } from "./lay-example.ts";

const folder = new URL("../../src/lint/rules/", import.meta.url);

describe("the base visit of the examples", () => {
  it("is complete: no finding at all", () => {
    expect(lintExample({}).findings).toEqual([]);
  });
});

describe("the list of rules", () => {
  it("has every rule file, in the folder of its family, and no other", () => {
    const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
      .map((name) => name.replaceAll("\\", "/"))
      .filter((name) => name.endsWith(".ts") && !name.endsWith("index.ts"));
    expect(rules.map((rule) => `${rule.family}/${rule.id}.ts`).sort()).toEqual(files.sort());
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

  every("has a page of documentation", rules, (rule) => {
    const page = new URL(`../../docs/rules/${rule.id}.md`, import.meta.url);
    expect(existsSync(page)).toBe(true);
    expect(readFileSync(page, "utf8")).toContain(rule.summary);
  });
});
