import { valueAt } from "../../../cases/index.ts";
import type { CaseRule } from "../../rule.ts";

const path = ["respiratory", "turbinates", "section"];

export const snoutSectionRostral: CaseRule = {
  id: "snout-section-rostral",
  scope: "case",
  family: "scoring",
  level: "warning",
  summary: "The snout is sawn at or behind the first upper premolar.",
  protects:
    "One centimetre in front of the first premolar a normal snout scores as atrophic; such a score is not used.",
  source: {
    cite: "Corrégé, Sallé, Monziols & Volant 2013, Journées de la Recherche Porcine",
    confidence: "verified",
  },
  bad: { case: "respiratory: {turbinates: {section: rostral-to-premolar-1}}" },
  good: { case: "respiratory: {turbinates: {section: premolar-2}}" },
  check(one, report) {
    if (valueAt(one.record, path) === "rostral-to-premolar-1")
      report(
        "respiratory.turbinates.section: sawn in front of the first premolar, where normal conchae look lost. Saw again further back if the head is still there; otherwise this snout gets no score.",
        path,
      );
  },
};
