import type { Visit } from "../../../cases/index.ts";
import { sampleRules } from "../../../knowledge/index.ts";
import { wordIn } from "../../../notes/index.ts";
import { isToxinMaterial } from "../../../sampling/index.ts";
import { fromMemory, type VisitRule } from "../../rule.ts";

export const toxinTestMaterial: VisitRule = {
  id: "toxin-test-material",
  scope: "visit",
  family: "sampling",
  level: "warning",
  silent: "never",
  summary: "The test for the toxin gene was made on swabs of nose or tonsil, or on what grew from them.",
  protects:
    "Toxigenic Pasteurella multocida lives on conchae and tonsils; a negative from lung, blood or faeces says nothing about the snout.",
  lookAlike:
    "A strain grown from the nose is passed as colony, isolate or culture, and words that nobody knows are passed too.",
  source: fromMemory(
    "WOAH Terrestrial Manual on atrophic rhinitis of swine: nasal and tonsillar swabs; that other material does not count is common practice",
  ),
  bad: {
    visit: "tests: [{test: toxin-gene, from: lungs of three finishers, result: negative, at: 2026-04-28}]",
  },
  good: {
    visit: "tests: [{test: toxin-gene, from: nasal swabs of six weaners, result: negative, at: 2026-04-28}]",
  },
  check(visit, reportVisit) {
    for (const [index, { test, from }] of (visit.record.tests ?? []).entries())
      if (test === "toxin-gene" && from !== undefined && isElsewhere(from, visit))
        reportVisit(
          `tests[${index}].from: "${from}" is not a swab of nose or tonsil, where toxigenic Pasteurella multocida is looked for. Correct what was sampled, or send nasal or tonsil swabs.`,
          ["tests", index, "from"],
        );
  },
};

/** Whether the words, or the samples that they name, are of other material; words that nobody knows are not. */
function isElsewhere(from: string, visit: Visit): boolean {
  const known = isToxinMaterial(from);
  if (known !== undefined) return !known;
  const named = visit.cases
    .flatMap(({ record }) => record.samples ?? [])
    .filter(({ id }) => id !== "" && wordIn(from, [id]) !== undefined);
  return named.length > 0 && !named.some((sample) => sampleRules.toxin_gene.from.includes(sample.from));
}
