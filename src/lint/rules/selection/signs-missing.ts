import type { CaseRule } from "../../rule.ts";

export const signsMissing: CaseRule = {
  id: "signs-missing",
  scope: "case",
  family: "selection",
  level: "error",
  summary: "The signs in life are recorded, [none] for a pig without any.",
  protects: "Signs decide which organs are due and which tests the laboratory runs.",
  source: {
    cite: "Animal Health Laboratory, University of Guelph: history decides the test set",
    confidence: "verified",
  },
  bad: { case: "selection: {signs: }" },
  good: { case: "selection: {signs: [sneezing, cough]}" },
  check(one, report) {
    if (one.protocol.facts.includes("all") && one.record.selection?.signs === undefined)
      report(
        "selection.signs is blank. List what was seen in life, such as [sneezing, cough], or [none].",
        ["selection", "signs"],
        "key",
      );
  },
};
