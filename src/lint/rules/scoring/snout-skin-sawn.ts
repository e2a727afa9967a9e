import { conchae } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const snoutSkinSawn: CaseRule = {
  id: "snout-skin-sawn",
  scope: "case",
  family: "scoring",
  level: "note",
  summary: "The skin of the snout is cut with the knife before the saw is set.",
  protects:
    "A saw that starts on skin slides, drags bristles through the nose and ends in front of the premolar.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "respiratory: {turbinates: {skin_cut: sawn-through}}" },
  good: { case: "respiratory: {turbinates: {skin_cut: knife-first}}" },
  check(one, report) {
    const nose = conchae(one);
    if (nose?.skin_cut === "sawn-through")
      report(
        "respiratory.turbinates.skin_cut: sawn through the skin. Next time cut it round with the knife at the corner of the mouth and set the saw in the cut.",
        [...nose.path, "skin_cut"],
      );
  },
};
