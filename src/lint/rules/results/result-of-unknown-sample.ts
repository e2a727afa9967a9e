import { placed, takenSamples } from "../../../record/index.ts";
import { nearest } from "../../../words/nearest.ts";
import { practice, type ResultsRule } from "../../rule.ts";

export const resultOfUnknownSample: ResultsRule = {
  id: "result-of-unknown-sample",
  scope: "results",
  family: "results",
  level: "error",
  summary: "Every sample that a result names was taken from a pig of this visit.",
  protects:
    "A mistyped number ties the answer to another pig, or to none, and the sample that was meant stays open.",
  lookAlike:
    "A piece that the laboratory took from a carcass itself: write it under samples of its case first, with the number of the laboratory.",
  source: practice("the number on the label ties answer and pig; common practice"),
  bad: { results: "entries: [{sample: 01-F, test: pcr, agent: prrsv, interpretation: negative}]" },
  good: { results: "entries: [{sample: 01-B, test: pcr, agent: prrsv, interpretation: negative}]" },
  check(results, visit, report) {
    // The sample may be of a case that was not read.
    if (!visit.complete || results.record.results !== visit.id) return;
    const taken = takenSamples(visit);
    for (const { entry, samples, path, index } of placed(results))
      for (const [at, id] of samples.entries()) {
        if (taken.has(id)) continue;
        const near = nearest(id, [...taken.keys()]);
        const key = entry.pool === undefined ? ["sample"] : ["pool", at];
        report(
          `entries[${index}].${entry.pool === undefined ? "sample" : `pool[${at}]`}: no case of ${visit.id} has a sample ${id}. ${near === undefined ? "Correct the number, or write the sample into its case" : `Did you mean ${near}? Else write the sample into its case`}.`,
          [...path, ...key],
        );
      }
  },
};
