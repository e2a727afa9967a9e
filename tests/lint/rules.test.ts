import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Rule, rules } from "../../src/lint/index.ts";
import { lintExample } from "./lay-example.ts";

const folder = new URL("../../src/lint/rules/", import.meta.url);

describe("the base visit of the examples", () => {
  it("is complete: no finding at all", () => {
    expect(lintExample({}).findings).toEqual([]);
  });
});

/** The rules that a file holds: one named after its id, or a table of several. */
async function rulesOf(name: string): Promise<readonly Rule[]> {
  const module: Record<string, unknown> = await import(new URL(name, folder).href);
  return Object.values(module)
    .flat()
    .filter((value): value is Rule => typeof value === "object" && value !== null && "protects" in value);
}

describe("the list of rules", async () => {
  const files = await Promise.all(
    readdirSync(folder, { recursive: true, encoding: "utf8" })
      .map((name) => name.replaceAll("\\", "/"))
      .filter((name) => name.endsWith(".ts") && !name.endsWith("index.ts"))
      .map(async (name) => ({ name, held: await rulesOf(name) })),
  );

  it("has a file for one rule of its name, or for a table of several of one family", () => {
    const wrong = files.filter(({ name, held: [first, ...others] }) =>
      others.length === 0
        ? name !== `${first?.family}/${first?.id}.ts`
        : [first, ...others].some((rule) => !name.startsWith(`${rule?.family}/`)),
    );
    expect(wrong.map(({ name }) => name)).toEqual([]);
  });

  it("has every rule of every file, and no other", () => {
    const held = files.flatMap((file) => file.held);
    expect(rules.map(({ id }) => id).sort()).toEqual(held.map(({ id }) => id).sort());
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
