import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname } from "node:path";
import { describe, expect, it } from "vitest";
import { type Rule, rules } from "../../src/lint/index.ts";
import { lintExample } from "./lay-example.ts";

const folder = new URL("../../src/lint/rules/", import.meta.url);

/** Family and id of each rule in a file: of one that the file is named after, or of a table of rules. */
async function rulesIn(name: string): Promise<string[]> {
  const module: Record<string, unknown> = await import(new URL(name, folder).href);
  const found = Object.values(module)
    .flat()
    .filter((one): one is Rule => typeof one === "object" && one !== null && "protects" in one)
    .map(({ family, id }) => `${family}/${id}`);
  const file = name.replace(".ts", "");
  if (found.length === 1) expect(found).toEqual([file]);
  else expect([...new Set(found.map(dirname))], name).toEqual([dirname(file)]);
  return found;
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
    const written = await Promise.all(files.map(rulesIn));
    expect(rules.map(({ id, family }) => `${family}/${id}`).sort()).toEqual(written.flat().sort());
  });

  it("has each id once", () => {
    expect(new Set(rules.map((rule) => rule.id)).size).toBe(rules.length);
  });
});

describe.each(rules.map((rule) => [rule.id, rule] as const))("rule %s", (id, rule) => {
  it("finds its bad example, and no other rule does", () => {
    const { findings } = lintExample(rule.bad);
    expect(findings.map((finding) => finding.rule)).toContain(id);
    expect([...new Set(findings.map((finding) => finding.rule))]).toEqual([id]);
    for (const finding of findings) {
      expect(finding.level).toBe(rule.level);
      expect(finding.line).toBeGreaterThan(0);
      expect(finding.column).toBeGreaterThan(0);
    }
  });

  it("is silent on its good example, and so are all others", () => {
    expect(lintExample(rule.good).findings).toEqual([]);
  });

  it("says what it is for, and who says so", () => {
    expect(rule.summary).toMatch(/^[A-Z].*\.$/);
    expect(rule.protects).toMatch(/^[A-Z].*\.$/);
    expect(rule.source.cite.length).toBeGreaterThan(5);
  });

  it("has a page of documentation", () => {
    const page = new URL(`../../docs/rules/${id}.md`, import.meta.url);
    expect(existsSync(page)).toBe(true);
    expect(readFileSync(page, "utf8")).toContain(rule.summary);
  });
});
