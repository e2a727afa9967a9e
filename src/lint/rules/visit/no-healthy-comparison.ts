import { isUnborn } from "../../../cases/index.ts";
import { selectionRules } from "../../../knowledge/index.ts";
import { clinicalPigs, showsSigns } from "../../../record/index.ts";
import { type VisitRule, verified } from "../../rule.ts";

export const noHealthyComparison: VisitRule = {
  id: "no-healthy-comparison",
  scope: "visit",
  family: "visit",
  level: "note",
  summary: "Where three or more ill pigs are opened, so is a healthy one, or the visit says why not.",
  protects:
    "Agents and lesions that healthy pigs carry too explain nothing, and much of what a laboratory finds is found in them as well.",
  lookAlike:
    "Healthy pigs of an earlier visit, or blood of pen mates: say so under pigs: {comparison: …}; fetuses need none.",
  source: verified(
    "Loeffen et al., acute respiratory outbreaks in Dutch finishing herds: four diseased and two healthy pigs gave a cause in 12 of 16 outbreaks",
  ),
  bad: {
    others: [
      "case: birch-2026-04-20-02\npig: {tag: '902', pen: 5}",
      "case: birch-2026-04-20-03\npig: {tag: '903', pen: 6}",
    ],
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02, birch-2026-04-20-03]\npigs: {few: }",
  },
  good: {
    others: [
      "case: birch-2026-04-20-02\npig: {tag: '902', pen: 5}",
      "case: birch-2026-04-20-03\npig: {tag: '903', pen: 6}",
      "case: birch-2026-04-20-04\npig: {tag: '904', pen: 6}\nselection: {basis: comparison, signs: [none]}",
    ],
    visit:
      "cases: [birch-2026-04-20-01, birch-2026-04-20-02, birch-2026-04-20-03, birch-2026-04-20-04]\npigs: {few: }",
  },
  check(visit, reportVisit) {
    // A pig born dead has no healthy mate of its age.
    if (!visit.complete || visit.record.pigs?.comparison !== undefined) return;
    const ill = clinicalPigs(visit).filter((one) => !isUnborn(one.ageClass)).length;
    if (ill < selectionRules.comparison_from) return;
    const healthy = visit.cases.some(
      (one) => one.record.selection?.basis === "comparison" || (one.signs.length > 0 && !showsSigns(one)),
    );
    if (!healthy)
      reportVisit(
        `${ill} ill pigs and no healthy one. Open a pig without signs of the same age, or say under pigs: {comparison: …} what they are compared with.`,
        ["pigs", "comparison"],
        "key",
      );
  },
};
