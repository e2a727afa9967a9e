/** Every word that a case can hold is defined, as the table uses it, with who says so. */
import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { validate } from "../../src/cases/faults/validate.ts";
import { parseYaml } from "../../src/cases/yaml/parse-yaml.ts";
import { explain } from "../../src/explain/index.ts";
import { explainText } from "../../src/formats/explain/text.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { agentName } from "../../src/knowledge/agents.ts";
import { definitions } from "../../src/knowledge/definitions.ts";
import { diseaseCriteria, diseases } from "../../src/knowledge/diseases.ts";
import { organs, vocabulary } from "../../src/knowledge/index.ts";
import caseSchema from "../../src/schemas/case.schema.json" with { type: "json" };
import organsSchema from "../../src/schemas/organs.schema.json" with { type: "json" };
import resultsSchema from "../../src/schemas/results.schema.json" with { type: "json" };
import visitSchema from "../../src/schemas/visit.schema.json" with { type: "json" };
import vocabularySchema from "../../src/schemas/vocabulary.schema.json" with { type: "json" };
import { root } from "../end-to-end/run.ts";
import { every } from "../every.ts";

/** Every word of every closed list in a schema. */
function wordsIn(schema: unknown): string[] {
  if (Array.isArray(schema)) return schema.flatMap(wordsIn);
  if (typeof schema !== "object" || schema === null) return [];
  return Object.entries(schema).flatMap(([key, value]) =>
    key === "enum" && Array.isArray(value) ? value.filter((one) => typeof one === "string") : wordsIn(value),
  );
}
const answers = ["yes", "no"];
const words = [
  ...new Set([caseSchema, visitSchema, resultsSchema, organsSchema, vocabularySchema].flatMap(wordsIn)),
];
const { format: _format, source: _source, sources: _sources, signs: _signs, differ, ...lists } = definitions;
const defined = Object.entries(lists).flatMap(([list, of]) =>
  Object.entries(of).map(([word, definition]) => ({ list, word, ...definition })),
);
const shown = (name: string): string => explainText(explain(name), makeStyle(false), 400);

every(
  "every word of the format is explained",
  words.filter((word) => !answers.includes(word)),
  (word) => expect(explain(word), word).not.toEqual([]),
);

every(
  "a definition says more than its word and is shown with its source",
  defined,
  ({ list, word, means, source }) => {
    const rest = means
      .toLowerCase()
      .replaceAll(/[^a-z ]/g, "")
      .split(" ")
      .filter((one) => one !== word);
    expect(rest.length, `${list} ${word}: ${means}`).toBeGreaterThan(1);
    expect(shown(word)).toContain(means);
    expect(shown(word)).toContain(source.cite);
  },
  ({ list, word }) => `${list} ${word}`,
);

it("defines the words of the closed lists, in their order", () => {
  const { signs: families, ...closed } = vocabulary;
  for (const [list, of] of Object.entries(closed))
    expect(Object.keys(lists[list as keyof typeof closed]), list).toEqual(of);
  expect(new Set(Object.values(families).flatMap((family) => family.words))).toEqual(
    new Set(vocabulary.sign),
  );
});

it("gives editors the meaning of each word, in its place", () => {
  const { agent, disease, criteria, ...closed } = vocabularySchema.$defs;
  expect(agent.enumDescriptions).toEqual(agent.enum.map(agentName));
  expect(disease.enumDescriptions).toEqual(disease.enum.map((id) => diseases.get(id)?.name));
  expect(criteria.enumDescriptions).toEqual(diseaseCriteria.map(({ title }) => title));
  for (const [name, { enum: of, enumDescriptions }] of Object.entries(closed))
    expect(enumDescriptions).toEqual(of.map((word) => lists[name as keyof typeof lists][word]?.means));
});

it("is not generated while a word lacks its definition, or a definition its source", () => {
  const script = `import { readYaml } from "./scripts/generate/read.mjs";
import { schemaCompiler } from "./scripts/generate/validators.mjs";
const fits = schemaCompiler().getSchema("knowledge.schema.json#/$defs/vocabulary");
const words = readYaml("vocabulary.yaml");
const source = { cite: "seen", confidence: "common-practice" };
const added = [null, {}, { means: "A dry crust." }, { source }, { means: "crust", source }, { means: "A dry crust.", source }];
console.log(JSON.stringify([words, ...added.map((scab) => ({ ...words, process: { ...words.process, scab } }))].map((one) => fits(one))));`;
  const { stdout } = spawnSync(process.execPath, ["--input-type=module", "-e", script], {
    cwd: root,
    encoding: "utf8",
  });
  expect(JSON.parse(stdout)).toEqual([true, false, false, false, false, false, true]);
});

it("has no other name that is a word itself, or stands for two words of a list", () => {
  for (const [list, of] of Object.entries(lists)) {
    const names = Object.values(of).flatMap(({ also = [] }) => also);
    expect(
      names.filter((name, at) => names.indexOf(name) !== at),
      list,
    ).toEqual([]);
    expect(
      names.filter((name) => defined.some(({ word }) => word === name)),
      list,
    ).toEqual([]);
  }
});

describe("words easily taken for one another", () => {
  it.each([
    ["consolidation", "collapse", "swells when air is blown in"],
    ["erosion", "ulcer", "goes through the whole lining"],
    ["fibrin", "fibrosis", "peels off"],
    ["cyanosis", "livor", "came after death"],
    ["livor", "haemorrhage", "outside the vessels"],
  ])("%s and %s are told apart at both", (one, other, how) => {
    for (const name of [one, other]) expect(shown(name)).toContain(how);
    expect(shown(one)).toMatch(new RegExp(`^  .*\\b${other}\\b.*: `, "m"));
  });

  every(
    "are told apart in a sentence that names them",
    differ.flatMap(({ words: told, how }) => told.map((word) => ({ word, how }))),
    ({ word, how }) => {
      // "Collapsed lung" names collapse, and "not examined" not_examined.
      const spoken = word.replaceAll(/[-_]/g, " ");
      expect(` ${how.toLowerCase()}`).toContain(` ${spoken.slice(0, Math.max(5, spoken.length - 3))}`);
    },
    ({ word }) => word,
  );
});

describe("what is to be written", () => {
  const written = defined.flatMap(({ list, word, write }) =>
    write === undefined ? [] : [{ list, word, write }],
  );
  const places = new Map(organs.map(({ system, key }) => [key, system]));

  /** A case, visit or results file that holds such a line where it belongs. */
  function around(line: string): ["case" | "visit" | "results", string] {
    const [key = ""] = line.split(":");
    const system = places.get(key);
    if (["parcels", "tests", "treatments", "groups", "question", "trial"].includes(key))
      return ["visit", `format: 1\nvisit: a\ndate: 2026-03-14\n${line}`];
    if (key === "entries") return ["results", `format: 1\nresults: a\n${line}`];
    const place =
      key === "not_assessable" ? "liver_pancreas:\n  liver:\n    " : key === "signs" ? "selection:\n  " : "";
    return ["case", `format: 1\ncase: a\n${system === undefined ? place : `${system}:\n  `}${line}`];
  }

  every(
    "fits the format",
    written,
    ({ write }) => {
      const [kind, text] = around(write);
      const parsed = parseYaml(text);
      if (!parsed.ok) throw new Error(text);
      const faults = validate(kind, parsed.document.value as Record<string, unknown>).faults;
      expect(faults, text).toEqual([]);
    },
    ({ list, word }) => `${list} ${word}`,
  );
});

it("says of every observation what to write", () => {
  for (const { id, definition } of organs)
    for (const [key, { kind, values = [], range }] of Object.entries(definition.observations ?? {})) {
      const [, text = ""] = shown(id).split(`\nObservation ${key}\n`);
      const line = /^ {2}(?:Write (.+)\.|carcase measure --write writes it\.)$/m.exec(
        text.split("\n\n")[0] ?? "",
      );
      expect(line, `${id} ${key}`).not.toBeNull();
      if (kind === "length" || kind === "signed-length") expect(line?.[1]).toContain("12 mm");
      for (const one of [...values, ...(range ?? [])]) expect(line?.[1]).toContain(String(one));
    }
});
