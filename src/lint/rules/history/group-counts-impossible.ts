import { groupsOf } from "../../../record/index.ts";

import type { VisitRule } from "../../rule.ts";

export const groupCountsImpossible: VisitRule = {
  id: "group-counts-impossible",
  scope: "visit",
  family: "history",
  level: "error",
  summary: "No more pigs are affected or dead than were at risk.",
  protects: "A swapped pair of counts gives a morbidity above 100 %, or worse, one that looks right.",
  source: { cite: "arithmetic", confidence: "derived" },
  bad: { visit: "groups: {nursery-2: {at_risk: 40, affected: 238}}" },
  good: { visit: "groups: {nursery-2: {at_risk: 238, affected: 40}}" },
  check(visit, reportVisit) {
    for (const [id, group] of groupsOf(visit))
      for (const key of ["affected", "dead"] as const) {
        const number = group[key];
        if (number !== undefined && group.at_risk !== undefined && number > group.at_risk)
          reportVisit(
            `groups.${id}.${key}: ${number} ${key} of ${group.at_risk} at risk. At risk are all pigs that were there when the signs began; correct one of them.`,
            ["groups", id, key],
          );
      }
  },
};
