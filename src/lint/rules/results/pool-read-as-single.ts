import { pigsOf, placed, takenSamples } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { practice, type ResultsRule } from "../../rule.ts";

export const poolReadAsSingle: ResultsRule = {
  id: "pool-read-as-single",
  scope: "results",
  family: "results",
  level: "warning",
  summary:
    "A result of a container with several pigs is written as that of a pool, and that of one pig is not.",
  protects:
    "A positive pool says that one of its pigs has it and not which; a negative one is weaker than so many single tests.",
  lookAlike: "Several organs of one pig in one container are no pool of pigs, and are passed as one sample.",
  source: practice("pooled testing; common practice"),
  bad: {
    case: "samples: [{id: 01-A, from: respiratory.lungs, site: 'left cranial, left middle, right cranial, right middle lobe', into: formalin, for: [histology], at: 2026-04-20T10:05}, {id: 01-B, from: respiratory.lungs, into: chilled, for: [pcr, culture], at: 2026-04-20T10:06, pooled_with: [birch-2026-04-20-02]}]",
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    others: ['case: birch-2026-04-20-02\npig: {tag: "902"}'],
    results: "entries: [{sample: 01-B, test: pcr, agent: prrsv, interpretation: negative}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: respiratory.lungs, site: 'left cranial, left middle, right cranial, right middle lobe', into: formalin, for: [histology], at: 2026-04-20T10:05}, {id: 01-B, from: respiratory.lungs, into: chilled, for: [pcr, culture], at: 2026-04-20T10:06, pooled_with: [birch-2026-04-20-02]}]",
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
    others: ['case: birch-2026-04-20-02\npig: {tag: "902"}'],
    results: "entries: [{pool: [01-B], test: pcr, agent: prrsv, interpretation: negative}]",
  },
  check(results, visit, report) {
    const taken = takenSamples(visit);
    for (const result of placed(results)) {
      const { entry, samples, index, path, isPool } = result;
      if (samples.length === 0 || samples.some((id) => !taken.has(id))) continue;
      const pigs = pigsOf(result, taken);
      if (!isPool && pigs.length > 1)
        report(
          `entries[${index}].sample: ${entry.sample} holds material of ${listing(pigs)}, and the result reads as of one pig. Write pool: [${entry.sample}].`,
          [...path, "sample"],
        );
      if (isPool && samples.length === 1 && pigs.length === 1)
        report(
          `entries[${index}].pool: ${samples[0]} is of one pig and pooled with no other. Write sample: ${samples[0]}, or pooled_with: at the sample.`,
          [...path, "pool"],
        );
    }
  },
};
