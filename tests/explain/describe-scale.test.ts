/** What is said of a scale: everything in its data file, once, by one function, in the terminal and on its page alike. */
import { describe, expect, it } from "vitest";
import { describeScale } from "../../src/explain/describe-scale.ts";
import { scaleFigure } from "../../src/explain/figures/index.ts";
import { explain } from "../../src/explain/index.ts";
import type { Scale } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { scalePage } from "../docs/scale-page.ts";

/** Every text and number that stands in the data, but for the keys of the format. */
function said(scale: Scale): string[] {
  return [
    scale.title,
    scale.boundary.trim(),
    scale.source.cite.trim(),
    ...Object.values(scale.meaning ?? {}),
    ...Object.keys(scale.parts),
    ...Object.values(scale.parts).flatMap(({ weight, max, unit }) => [
      ...(weight === undefined ? [] : [String(weight)]),
      ...(max === undefined ? [] : [String(max)]),
      ...(unit === undefined ? [] : [unit]),
    ]),
    ...Object.values(scale.parts).map(({ read }) => read),
    ...(scale.classes ?? []).map(({ name }) => name),
    ...(scale.class_source === undefined ? [] : [scale.class_source.cite.trim()]),
    ...(scale.steps ?? []).map(({ from, above }) => (from === undefined ? `above ${above}` : `from ${from}`)),
    ...(scale.indices ?? []).flatMap(({ id, title, population, note, source }) => [
      id,
      title,
      source.cite.trim(),
      ...(population === undefined ? [] : [population]),
      ...(note === undefined ? [] : [note]),
    ]),
    ...(scale.references ?? []).flatMap(({ of, population, source }) => [of, population, source.cite.trim()]),
    ...(scale.not_comparable ?? []),
    ...scale.examples.map(({ case: name }) => name),
    ...(scale.herd_examples ?? []).map(({ case: name }) => name),
  ];
}

const plain = (text: string): string => text.replaceAll(/\\([\\`*<|])/g, "$1").replaceAll(/\s+/g, " ");

describe.each([...scales.values()])("$id", (scale) => {
  it("is described whole, in the terminal and on its page", () => {
    const [found] = explain(scale.id).filter(({ kind }) => kind === "scale");
    const terminal = plain(
      JSON.stringify([
        found?.title,
        found?.source,
        found?.sections.map(({ heading, lines }) => [heading, ...lines]),
      ]).replaceAll('\\"', '"'),
    );
    const page = plain(scalePage(scale));
    for (const text of said(scale).map(plain)) {
      expect(terminal, "terminal").toContain(text);
      expect(page, "page").toContain(text);
    }
  });

  it("has a formula in symbols that names every part, or rules", () => {
    const formula = describeScale(scale).find(({ heading }) => heading === "Formula");
    if (scale.combine === "rules") expect(formula?.table?.rows.length).toBe(scale.rules?.length);
    else
      for (const name of Object.keys(scale.parts))
        expect(formula?.text?.find((line) => line.startsWith("score = "))).toContain(name);
  });

  it("has a figure that says in words what it shows, for light and dark paper, without scripts or outside files", () => {
    const svg = scaleFigure(scale);
    expect(svg).toMatch(/^<svg [^>]*role="img" aria-labelledby="title desc">/);
    expect(svg).toMatch(/<title id="title">[^<]{10,}<\/title>\n<desc id="desc">[^<]{10,}<\/desc>/);
    expect(svg).toContain("prefers-color-scheme: dark");
    expect(svg).not.toMatch(/NaN|undefined|Infinity|<script|href=/);
    const drawn = [...svg.matchAll(/<(?:path|rect) /g)].length;
    expect(drawn).toBeGreaterThan(0);
    for (const [, x = "", y = ""] of svg.matchAll(/<text x="([^"]*)" y="([^"]*)"/g)) {
      expect(Number(x)).toBeGreaterThanOrEqual(0);
      expect(Number(x)).toBeLessThanOrEqual(720);
      expect(Number(y)).toBeGreaterThan(0);
    }
  });
});

describe("the lung map", () => {
  it("has the weight of each lobe written in", () => {
    const scale = scales.get("christensen-1999");
    if (scale === undefined) throw new Error("no such scale");
    const svg = scaleFigure(scale);
    for (const { weight } of Object.values(scale.parts)) expect(svg).toContain(`>${weight}</text>`);
    for (const lobe of ["left cranial", "right middle", "accessory, below"]) expect(svg).toContain(lobe);
  });
});

describe("the snout section", () => {
  it("names each part where it is read, with its range", () => {
    const scale = scales.get("polloni-2018");
    if (scale === undefined) throw new Error("no such scale");
    const svg = scaleFigure(scale);
    for (const [name, { max }] of Object.entries(scale.parts)) expect(svg).toContain(`${name} (0 to ${max})`);
  });
});
