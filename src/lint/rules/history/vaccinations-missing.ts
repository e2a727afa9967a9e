import type { VisitRule } from "../../rule.ts";

export const vaccinationsMissing: VisitRule = {
  id: "vaccinations-missing",
  scope: "visit",
  family: "history",
  level: "warning",
  summary: "The visit says what the pigs were vaccinated against, none included.",
  protects: "Antibodies and some PCR results of a vaccinated pig are those of the vaccine.",
  source: {
    cite: "submission guidelines: Animal Health Laboratory, University of Guelph (2020;24(1):2); NDSU Veterinary Diagnostic Laboratory",
    confidence: "verified",
  },
  bad: { visit: "vaccinations: " },
  good: { visit: "vaccinations: [none]" },
  check(visit, reportVisit) {
    if (visit.record.vaccinations === undefined)
      reportVisit(
        "vaccinations is blank. List what is given to which pigs at what age, or write [none].",
        ["vaccinations"],
        "key",
      );
  },
};
