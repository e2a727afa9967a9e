/** Ill pigs that all come from one place, so that what they have in common may be that of the place. */
import { selectionRules } from "../../../knowledge/index.ts";
import { oneOrigin } from "../../../record/index.ts";
import type { RuleRow, VisitRule } from "../../rule.ts";

interface Place extends RuleRow {
  readonly place: "pen" | "litter";
}

const rows: readonly Place[] = [
  {
    id: "clinical-pigs-one-pen",
    level: "note",
    summary: "The ill pigs opened on a visit come from more than one pen.",
    protects:
      "A pen shares a trough, a drinker and a draught; what its pigs have in common need not be the disease of the group.",
    lookAlike:
      "A disease that was in one pen only: say so under pigs: {few: …}; a group with one pen (pens: 1 in farm.yaml) is not asked.",
    source: selectionRules.source,
    bad: {
      others: [
        "case: birch-2026-04-20-02\npig: {tag: '902'}",
        "case: birch-2026-04-20-03\npig: {tag: '903'}",
      ],
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
    place: "pen",
  },
  {
    id: "clinical-pigs-one-litter",
    level: "note",
    summary: "The ill pigs opened on a visit come from more than one litter.",
    protects:
      "Litter mates share a sow, her milk and her antibodies; what they have in common need not be the disease of the group.",
    lookAlike:
      "A defect that runs in one litter, such as tremor from birth: say so under pigs: {few: …}, and it is a reason.",
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
    place: "litter",
  },
];

export const oneOriginRules: readonly VisitRule[] = rows.map(({ place, ...row }) => ({
  ...row,
  scope: "visit",
  family: "visit",
  check(visit, reportVisit) {
    const origin = oneOrigin(visit, place);
    if (origin !== undefined)
      reportVisit(
        `all ${origin.pigs} pigs chosen for their signs come from ${place} ${origin.name}. Take the next ones from other ${place}s, or say why not under pigs: {few: …}.`,
        ["pigs", "few"],
        "key",
      );
  },
}));
