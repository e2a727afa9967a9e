import { isNotWorn, sawn } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";

export const sawWithoutMask: CaseRule = {
  id: "saw-without-mask",
  scope: "case",
  family: "safety",
  level: "warning",
  summary: "A mask is worn when skull or snout is opened with saw or axe.",
  protects: "The spray of the saw is breathed in, and Streptococcus suis and influenza virus with it.",
  source: { cite: "FFP2 or better for brain, abortion and saw work; from memory", confidence: "from-memory" },
  bad: {
    case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, boots, overalls], formalin: open-air}",
  },
  good: {
    case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, mask, boots, overalls], formalin: open-air}",
  },
  check(one, report) {
    const organs = sawn(one);
    if (organs.length > 0 && isNotWorn(one, "mask"))
      report(
        `safety.protection: ${listing(organs)} examined, and no mask worn. Wear one of class FFP2 or better for saw and axe; if it was worn, add mask.`,
        ["safety", "protection"],
      );
  },
};
