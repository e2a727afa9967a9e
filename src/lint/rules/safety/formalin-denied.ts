import { formalinSamples } from "../../../record/index.ts";
import { count } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";

export const formalinDenied: CaseRule = {
  id: "formalin-denied",
  scope: "case",
  family: "safety",
  level: "warning",
  summary: "A case with samples in formalin does not say that none was used.",
  protects:
    "One of the two entries is wrong: either the sample was never fixed, or the exposure is not recorded.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "safety: {formalin: none}" },
  good: { case: "safety: {formalin: open-air}" },
  check(one, report) {
    const number = formalinSamples(one);
    if (number > 0 && one.record.safety?.formalin === "none")
      report(
        `safety.formalin: none, but ${count(number, "sample")} went into formalin. Say where it was handled, or correct the sample.`,
        ["safety", "formalin"],
      );
  },
};
