import { selectionRules } from "../../../knowledge/index.ts";
import { hasAny } from "../../../notes/index.ts";
import { groupsOf } from "../../../record/index.ts";

import type { VisitRule } from "../../rule.ts";

export const groupDeadUnaffected: VisitRule = {
  id: "group-dead-unaffected",
  scope: "visit",
  family: "history",
  level: "warning",
  summary: "Pigs that died since the signs began are among the affected ones.",
  protects:
    "Dead over affected is the case fatality; above 100 % it says that two counts were exchanged, or that the dead were left out of the ill.",
  source: { cite: "arithmetic: case fatality is a share of the affected", confidence: "derived" },
  bad: { visit: "groups: {nursery-2: {affected: 2, dead: 40}}" },
  good: { visit: "groups: {nursery-2: {affected: 40, dead: 2}}" },
  check(visit, reportVisit) {
    for (const [id, { at_risk: all, affected, dead, onset, note }] of groupsOf(visit)) {
      if (affected === undefined || dead === undefined || dead <= affected) continue;
      // A healthy group loses a pig now and then, more dead than there were is told elsewhere, and a note explains the rest.
      if ((affected === 0 && onset === undefined) || (all !== undefined && dead > all)) continue;
      if (note !== undefined && hasAny(note, selectionRules.told_deaths)) continue;
      reportVisit(
        `groups.${id}.dead: ${dead} dead, yet only ${affected} affected. Count the dead among the affected; of what else they died, if it was something else, belongs under note.`,
        ["groups", id, "dead"],
      );
    }
  },
};
