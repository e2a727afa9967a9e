import { isNotWorn } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const knifeHandBare: CaseRule = {
  id: "knife-hand-bare",
  scope: "case",
  family: "safety",
  level: "note",
  summary: "The hand without the knife wears a cut-proof glove.",
  protects:
    "Most wounds at the table are cuts of the other hand, and they are the way in for the agent of the pig.",
  source: { cite: "common practice; from memory", confidence: "from-memory" },
  bad: { case: "safety: {protection: [gloves, eye-protection, mask, boots, overalls], formalin: open-air}" },
  good: {
    case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, mask, boots, overalls], formalin: open-air}",
  },
  check(one, report) {
    if (isNotWorn(one, "cut-proof-glove"))
      report(
        "safety.protection: no cut-proof glove. Wear one under the waterproof glove of the hand without the knife; if it was worn, add cut-proof-glove.",
        ["safety", "protection"],
      );
  },
};
