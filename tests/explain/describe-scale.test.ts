/** What is said of a scale: everything in its data file, once, by one function, in the terminal and on its page alike. */
import { describe, expect, it } from "vitest";
import { describeScale } from "../../src/explain/describe-scale.ts";
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
});
