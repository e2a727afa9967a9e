import type { VisitRule } from "../../rule.ts";

export const treatmentsMissing: VisitRule = {
  id: "treatments-missing",
  scope: "visit",
  family: "history",
  level: "warning",
  summary: "The visit says what the groups were treated with, none included.",
  protects: "A blank is not none: behind it may stand a week of antibiotic in the water and a dead culture.",
  source: {
    cite: "submission guidelines: Animal Health Laboratory, University of Guelph (2020;24(1):2); NDSU Veterinary Diagnostic Laboratory",
    confidence: "verified",
  },
  bad: { visit: "treatments: " },
  good: { visit: "treatments: [none]" },
  check(visit, reportVisit) {
    if (visit.record.treatments === undefined)
      reportVisit(
        "treatments is blank. List substance, dose, route and days of each group, or write [none].",
        ["treatments"],
        "key",
      );
  },
};
