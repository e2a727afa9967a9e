import { selectionRules } from "../../../knowledge/index.ts";
import { signsOf, syndromes } from "../../../record/index.ts";
import { count, listing } from "../../../words/listing.ts";
import type { VisitRule } from "../../rule.ts";

export const fewPigsForSyndrome: VisitRule = {
  id: "few-pigs-for-syndrome",
  scope: "visit",
  family: "visit",
  level: "warning",
  summary: "Three or more pigs are opened for each syndrome, or the visit says why fewer.",
  protects:
    "A single pig seldom stands for the herd: it shows its own disease, and the next might show another.",
  lookAlike:
    "A sow of great worth, or a single ill pig: say under pigs: {few: …} why there were no more, and the rule is quiet.",
  source: selectionRules.source,
  bad: { visit: "pigs: {few: }" },
  good: { visit: "pigs: {few: the first pig of a series; two more to follow on Thursday}" },
  check(visit, reportVisit) {
    if (!visit.complete || visit.record.pigs?.few !== undefined) return;
    for (const pigs of syndromes(visit))
      if (pigs.length < selectionRules.pigs_per_syndrome)
        reportVisit(
          `${count(pigs.length, "pig")} opened for ${listing(signsOf(pigs))}. Open ${selectionRules.pigs_per_syndrome} or more with these signs, or say why not under pigs: {few: …}.`,
          ["pigs", "few"],
          "key",
        );
  },
};
