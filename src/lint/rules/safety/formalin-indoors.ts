import type { CaseRule } from "../../rule.ts";

export const formalinIndoors: CaseRule = {
  id: "formalin-indoors",
  scope: "case",
  family: "safety",
  level: "warning",
  summary: "Formalin is handled in the open air or under extraction.",
  protects:
    "Formaldehyde is toxic, sensitises and may cause cancer; 29 CFR 1910.1048 allows 0.75 ppm over eight hours, and an open pot passes it.",
  source: { cite: "29 CFR 1910.1048 (b), (c)", confidence: "verified" },
  bad: { case: "safety: {formalin: indoors}" },
  good: { case: "safety: {formalin: extraction}" },
  check(one, report) {
    if (one.record.safety?.formalin === "indoors")
      report(
        "safety.formalin: formalin was handled indoors. Go outside or under extraction, use prefilled pots, and keep the lid on.",
        ["safety", "formalin"],
      );
  },
};
