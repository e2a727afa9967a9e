/** Every name of an organ or a word means that one alone, or is asked about; and nothing is written but what was typed. */
import { expect, it } from "vitest";
import { definitions } from "../../src/knowledge/definitions.ts";
import { organs } from "../../src/knowledge/index.ts";
import { firstName, longestName, type Named, wordKeys } from "../../src/phrases/names.ts";
import { every } from "../every.ts";

const idsOf = (named: readonly Named[]): string[] =>
  named.map((one) =>
    one.is === "organ" ? one.organ.id : one.is === "word" ? `${one.key}: ${one.word}` : one.is,
  );

const named = organs.flatMap(({ id, key, definition: { names = {} } }) =>
  [key, ...Object.values(names).flat()].map((name) => ({ name, is: id })),
);
const words = wordKeys.flatMap((key) =>
  Object.entries(definitions[key]).flatMap(([word, { also = [], de = [], es = [], short = [] }]) =>
    [word, ...also, ...de, ...es, ...short].map((name) => ({ name, is: `${key}: ${word}` })),
  ),
);

every(
  "each name is found as a whole, with what it stands for among its meanings",
  [...named, ...words],
  ({ name, is }) => {
    const written = name.split(/[\s_-]+/);
    expect(written.length).toBeLessThanOrEqual(longestName);
    const match = firstName(name.replaceAll("_", " ").split(" "));
    expect(match?.length).toBe(name.replaceAll("_", " ").split(" ").length);
    expect(idsOf(match?.named ?? [])).toContain(is);
  },
  ({ name }) => name,
);

it("names with several meanings are few, and known", () => {
  const several = new Map<string, string>();
  for (const { name } of [...named, ...words]) {
    const ids = idsOf(firstName(name.replaceAll("_", " ").split(" "))?.named ?? []);
    if (ids.length > 1) several.set(name.toLowerCase(), ids.join(", "));
  }
  expect([...several].sort().map(([name, ids]) => `${name}: ${ids}`)).toMatchInlineSnapshot(`
    [
      "artefact: process: artefact, certainty: artefact",
      "dickdarm: intestine.caecum, intestine.spiral_colon",
      "dünndarm: intestine.duodenum, intestine.jejunum, intestine.ileum",
      "estómago: stomach.pars_oesophagea, stomach.glandular_part",
      "gut: intestine.duodenum, intestine.jejunum, intestine.ileum, intestine.caecum, intestine.spiral_colon",
      "intestino delgado: intestine.duodenum, intestine.jejunum, intestine.ileum",
      "intestino grueso: intestine.caecum, intestine.spiral_colon",
      "large intestine: intestine.caecum, intestine.spiral_colon, intestine.rectum",
      "magen: stomach.pars_oesophagea, stomach.glandular_part",
      "plaque: process: plaque, shape: plaque",
      "small intestine: intestine.duodenum, intestine.jejunum, intestine.ileum",
      "stomach: stomach.pars_oesophagea, stomach.glandular_part",
      "unchanged: colour: unchanged, consistency: unchanged",
    ]
  `);
});
