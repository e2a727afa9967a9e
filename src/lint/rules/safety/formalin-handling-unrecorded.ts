import { formalinSamples } from "../../../record/index.ts";
import { count } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";

export const formalinHandlingUnrecorded: CaseRule = {
  id: "formalin-handling-unrecorded",
  scope: "case",
  family: "safety",
  level: "note",
  summary: "Where samples went into formalin, a recorded safety entry says where it was handled.",
  protects: "The people at the table are owed the answer when one of them coughs later.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, mask]}" },
  good: { case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, mask], formalin: open-air}" },
  check(one, report) {
    const number = formalinSamples(one);
    const { safety } = one.record;
    if (number > 0 && safety !== undefined && safety.formalin === undefined)
      report(
        `safety.formalin: ${count(number, "sample")} in formalin, and nothing says where it was handled. Write open-air, extraction or indoors.`,
        ["safety", "formalin"],
        "key",
      );
  },
};
