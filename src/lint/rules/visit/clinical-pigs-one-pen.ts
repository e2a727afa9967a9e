import { selectionRules } from "../../../knowledge/index.ts";
import { oneOrigin } from "../../../record/index.ts";

import type { VisitRule } from "../../rule.ts";

export const clinicalPigsOnePen: VisitRule = {
  id: "clinical-pigs-one-pen",
  scope: "visit",
  family: "visit",
  level: "note",
  summary: "The ill pigs of a visit come from more than one pen.",
  protects:
    "A pen shares a trough, a drinker and a draught; what its pigs have in common need not be the disease of the group.",
  source: selectionRules.source,
  bad: {
    others: ["case: birch-2026-04-20-02\npig: {tag: '902'}", "case: birch-2026-04-20-03\npig: {tag: '903'}"],
    visit:
      "cases: [birch-2026-04-20-01, birch-2026-04-20-02, birch-2026-04-20-03]\npigs: {few: , comparison: penmates were bled instead}",
  },
  good: {
    others: [
      "case: birch-2026-04-20-02\npig: {tag: '902'}",
      "case: birch-2026-04-20-03\npig: {tag: '903', pen: 7}",
    ],
    visit:
      "cases: [birch-2026-04-20-01, birch-2026-04-20-02, birch-2026-04-20-03]\npigs: {few: , comparison: penmates were bled instead}",
  },
  check(visit, reportVisit) {
    const origin = oneOrigin(visit, "pen");
    if (origin !== undefined)
      reportVisit(
        `all ${origin.pigs} pigs chosen for their signs come from pen ${origin.name}. Take the next from other pens, or say why under pigs: {few: …}.`,
        ["pigs", "few"],
        "key",
      );
  },
};
