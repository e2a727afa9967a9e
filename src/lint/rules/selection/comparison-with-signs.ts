import { listing } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";

export const comparisonWithSigns: CaseRule = {
  id: "comparison-with-signs",
  scope: "case",
  family: "selection",
  level: "warning",
  summary: "A pig for comparison is healthy.",
  protects: "An ill pig as the healthy comparison hides exactly the difference that it was opened for.",
  source: {
    cite: "Loeffen et al., acute respiratory outbreaks in Dutch finishing herds: four diseased and two healthy pigs per herd",
    confidence: "verified",
  },
  bad: { case: "selection: {basis: comparison}" },
  good: { case: "selection: {basis: comparison, signs: [none]}" },
  check(one, report) {
    const signs = one.signs.filter((sign) => sign !== "none");
    if (one.record.selection?.basis === "comparison" && signs.length > 0)
      report(
        `selection.signs: a healthy comparison with ${listing(signs)}. Take a pig without signs, or write basis: clinical.`,
        ["selection", "signs"],
      );
  },
};
