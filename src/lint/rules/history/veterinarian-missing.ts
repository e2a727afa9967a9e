import type { VisitRule } from "../../rule.ts";

export const veterinarianMissing: VisitRule = {
  id: "veterinarian-missing",
  scope: "visit",
  family: "history",
  level: "warning",
  summary: "The visit says who made it.",
  protects: "A laboratory that finds something notifiable, or nothing at all, must know whom to ring.",
  source: {
    cite: "submission guidelines: Animal Health Laboratory, University of Guelph (2020;24(1):2); NDSU Veterinary Diagnostic Laboratory",
    confidence: "verified",
  },
  bad: { visit: "veterinarian: " },
  good: { visit: "veterinarian: R. Sallow" },
  check(visit, reportVisit) {
    if (visit.record.veterinarian === undefined)
      reportVisit("veterinarian is blank. Write who made the visit.", ["veterinarian"], "key");
  },
};
