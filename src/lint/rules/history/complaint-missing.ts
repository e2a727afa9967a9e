import type { VisitRule } from "../../rule.ts";

export const complaintMissing: VisitRule = {
  id: "complaint-missing",
  scope: "visit",
  family: "history",
  level: "warning",
  summary: "The visit says what the farm reported.",
  protects: "The complaint decides the tests; without it a laboratory guesses, and you guess with it.",
  source: {
    cite: "submission guidelines: Animal Health Laboratory, University of Guelph (2020;24(1):2); NDSU Veterinary Diagnostic Laboratory",
    confidence: "verified",
  },
  bad: { visit: "complaint: " },
  good: { visit: "complaint: sneezing in the second nursery room since ten days" },
  check(visit, reportVisit) {
    if (visit.record.complaint === undefined)
      reportVisit(
        "complaint is blank. Write what the farm reported, in its own words, or none and why you went.",
        ["complaint"],
        "key",
      );
  },
};
