import { practice, type ResultsRule } from "../../rule.ts";

export const resultsOfAnotherVisit: ResultsRule = {
  id: "results-of-another-visit",
  scope: "results",
  family: "results",
  level: "error",
  summary: "A file of results lies beside the visit that it names.",
  protects: "Samples of two visits have the same numbers: March answers for September, and nobody sees it.",
  lookAlike:
    "Results of samples of one visit that came with the parcel of another: they lie beside the visit of the samples.",
  source: practice("sample numbers are unique within a visit; this project's own format"),
  bad: { results: "results: birch-2025-11-03" },
  good: { results: "results: birch-2026-04-20" },
  check({ record }, visit, report) {
    if (record.results === undefined || visit.record.visit === undefined || record.results === visit.id)
      return;
    report(
      `results: these are results of ${record.results}, and the visit beside them is ${visit.id}. Move the file to its visit, or correct the name.`,
      ["results"],
    );
  },
};
