import { formalinSamples, isNotWorn, sawn } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";

export const eyesUnprotected: CaseRule = {
  id: "eyes-unprotected",
  scope: "case",
  family: "safety",
  level: "warning",
  summary: "Eyes are protected when bone is sawn and when formalin is poured.",
  protects: "Bone chips and formalin blind.",
  source: {
    cite: "Western Australia DPIRD, step-by-step guide to sampling and post-mortem of pigs (eye protection)",
    confidence: "verified",
  },
  bad: { case: "safety: {protection: [gloves, cut-proof-glove, mask, boots, overalls], formalin: open-air}" },
  good: {
    case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, mask, boots, overalls], formalin: open-air}",
  },
  check(one, report) {
    const work = [...sawn(one), ...(formalinSamples(one) > 0 ? ["formalin"] : [])];
    if (work.length > 0 && isNotWorn(one, "eye-protection"))
      report(
        `safety.protection: ${listing(work)}, and no eye protection. Wear glasses that close at the sides or a visor; if it was worn, add eye-protection.`,
        ["safety", "protection"],
      );
  },
};
