import { selectionRules } from "../../../knowledge/index.ts";
import { groupsOf } from "../../../record/index.ts";

import type { VisitRule } from "../../rule.ts";

export const groupLargerThanFarm: VisitRule = {
  id: "group-larger-than-farm",
  scope: "visit",
  family: "history",
  level: "warning",
  summary: "A group has about as many pigs at risk as it usually holds.",
  protects:
    "One digit too many, or the head count of the whole house, makes every proportion of the group wrong.",
  source: { cite: "our own limit against typing errors", confidence: "common-practice" },
  bad: { visit: "groups: {nursery-2: {at_risk: 2380}}" },
  good: { visit: "groups: {nursery-2: {at_risk: 238}}" },
  check(visit, reportVisit) {
    for (const [id, { at_risk: atRisk }] of groupsOf(visit)) {
      const head = visit.farm?.record.groups?.[id]?.head ?? 0;
      if (atRisk !== undefined && head > 0 && atRisk > selectionRules.head_times * head)
        reportVisit(
          `groups.${id}.at_risk: ${atRisk} pigs where farm.yaml has ${head}. Correct the digit, or the head of the group in farm.yaml.`,
          ["groups", id, "at_risk"],
        );
    }
  },
};
