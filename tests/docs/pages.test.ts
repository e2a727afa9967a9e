/** Pages that are made from rules and data files. `npm run docs` writes them; here they must be up to date. */
import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { figureName, scaleFigure } from "../../src/explain/figures/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { rules } from "../../src/lint/index.ts";
import { every } from "../every.ts";
import { ruleIndex, rulePage } from "./rule-page.ts";
import { scaleIndex, scalePage } from "./scale-page.ts";

const pagesIn = (folder: string): string[] =>
  readdirSync(new URL(`../../docs/${folder}/`, import.meta.url)).filter((name) => name !== "README.md");

describe("pages of rules", () => {
  every("say what the rules say", rules, (rule) =>
    expect(rulePage(rule)).toMatchFileSnapshot(`../../docs/rules/${rule.id}.md`),
  );
  it("index", async () => {
    await expect(ruleIndex(rules)).toMatchFileSnapshot("../../docs/rules/README.md");
  });
  it("none is left over", () => {
    expect(pagesIn("rules").sort()).toEqual(rules.map((rule) => `${rule.id}.md`).sort());
  });
});

describe("pages of scales", () => {
  it.each([...scales])("%s", async (id, scale) => {
    await expect(scalePage(scale)).toMatchFileSnapshot(`../../docs/scales/${id}.md`);
    const figure = scaleFigure(scale);
    if (figure !== undefined)
      await expect(figure).toMatchFileSnapshot(`../../docs/scales/figures/${figureName(scale)}`);
  });
  it("index", async () => {
    await expect(scaleIndex([...scales.values()])).toMatchFileSnapshot("../../docs/scales/README.md");
  });
  it("none is left over", () => {
    const written = ["figures", "house-scales.md"];
    const made = [...scales.keys()].map((id) => `${id}.md`);
    expect(pagesIn("scales").sort()).toEqual([...made, ...written].sort());
    const drawn = [...scales.values()].filter((scale) => scaleFigure(scale) !== undefined);
    expect(pagesIn("scales/figures").sort()).toEqual(drawn.map(figureName).sort());
  });
});
