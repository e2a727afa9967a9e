import { type PlacedResult, resultsOf } from "../../../record/index.ts";
import { practice, type ResultsRule } from "../../rule.ts";
import { resultName } from "../../shared/result-words.ts";

export const resultsContradict: ResultsRule = {
  id: "results-contradict",
  scope: "results",
  family: "results",
  level: "warning",
  summary: "Of one sample, one test and one agent there is one answer, or a note says which counts.",
  protects: "Positive and negative of one sample both stand, and whoever reads takes the one that suits.",
  lookAlike:
    "PCR and culture of one sample may differ, and so may two samples of one pig: they are other questions.",
  source: practice("a repeated test replaces the first, and the report says so; common practice"),
  bad: {
    results:
      "entries: [{sample: 01-B, test: pcr, agent: prrsv, interpretation: negative}, {sample: 01-B, test: pcr, agent: prrsv, interpretation: positive}]",
  },
  good: {
    results:
      "entries: [{sample: 01-B, test: pcr, agent: prrsv, interpretation: inconclusive}, {sample: 01-B, test: pcr, agent: prrsv, interpretation: positive}]",
  },
  check(results, visit, report) {
    const first = new Map<string, PlacedResult>();
    for (const result of resultsOf(visit)) {
      const { entry, samples, file, index, path } = result;
      const { interpretation: said } = entry;
      if ((said !== "positive" && said !== "negative") || samples.length === 0) continue;
      const key = JSON.stringify([[...samples].sort(), entry.test, entry.agent, entry.analyte, entry.method]);
      const other = first.get(key);
      if (other === undefined) first.set(key, result);
      else if (other.entry.interpretation !== said && entry.note === undefined && file === results)
        report(
          `entries[${index}].interpretation: ${resultName(result)} is ${said} here and ${other.entry.interpretation} in ${other.file === file ? `entries[${other.index}]` : other.file.file}. Take the wrong one out, or say in note: which counts and why.`,
          [...path, "interpretation"],
        );
    }
  },
};
