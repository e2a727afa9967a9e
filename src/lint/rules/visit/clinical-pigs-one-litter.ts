import { selectionRules } from "../../../knowledge/index.ts";
import { oneOrigin } from "../../../record/index.ts";

import type { VisitRule } from "../../rule.ts";

export const clinicalPigsOneLitter: VisitRule = {
  id: "clinical-pigs-one-litter",
  scope: "visit",
  family: "visit",
  level: "note",
  summary: "The ill pigs of a visit come from more than one litter.",
  protects:
    "Litter mates share a sow, her milk and her antibodies; what they have in common need not be the disease of the group.",
  source: selectionRules.source,
  bad: {
    case: "pig: {litter: S-381}",
    others: [
      "case: birch-2026-04-20-02\npig: {tag: '902', pen: 5, litter: S-381}",
      "case: birch-2026-04-20-03\npig: {tag: '903', pen: 6, litter: S-381}",
    ],
    visit:
      "cases: [birch-2026-04-20-01, birch-2026-04-20-02, birch-2026-04-20-03]\npigs: {few: , comparison: penmates were bled instead}",
  },
  good: {
    case: "pig: {litter: S-381}",
    others: [
      "case: birch-2026-04-20-02\npig: {tag: '902', pen: 5, litter: S-381}",
      "case: birch-2026-04-20-03\npig: {tag: '903', pen: 6, litter: S-390}",
    ],
    visit:
      "cases: [birch-2026-04-20-01, birch-2026-04-20-02, birch-2026-04-20-03]\npigs: {few: , comparison: penmates were bled instead}",
  },
  check(visit, reportVisit) {
    const origin = oneOrigin(visit, "litter");
    if (origin !== undefined)
      reportVisit(
        `all ${origin.pigs} pigs chosen for their signs come from litter ${origin.name}. Take the next from other litters, or say why under pigs: {few: …}.`,
        ["pigs", "few"],
        "key",
      );
  },
};
