import { isNotWorn } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const glovesMissing: CaseRule = {
  id: "gloves-missing",
  scope: "case",
  family: "safety",
  level: "warning",
  summary: "Waterproof gloves are worn at the table.",
  protects: "Streptococcus suis, Erysipelothrix and Leptospira enter by small wounds of the hand.",
  source: {
    cite: "Dutkiewicz et al., Annals of Agricultural and Environmental Medicine (Streptococcus suis enters mainly by skin wounds)",
    confidence: "verified",
  },
  bad: {
    case: "safety: {protection: [cut-proof-glove, eye-protection, mask, boots, overalls], formalin: open-air}",
  },
  good: {
    case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, mask, boots, overalls], formalin: open-air}",
  },
  check(one, report) {
    if (isNotWorn(one, "gloves"))
      report(
        "safety.protection: no gloves. Wear waterproof ones, and wash hands and wounds with soap; if they were worn, add gloves.",
        ["safety", "protection"],
      );
  },
};
