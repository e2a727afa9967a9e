import { plausible } from "../../../knowledge/index.ts";
import { groupsOf } from "../../../record/index.ts";

import type { VisitRule } from "../../rule.ts";

export const coughCountImplausible: VisitRule = {
  id: "cough-count-implausible",
  scope: "visit",
  family: "history",
  level: "error",
  summary: "Sneezes and coughs of a group are as many as one can count.",
  protects:
    "Counts of two visits are held against each other; a slip of two noughts makes any change of the air a triumph.",
  source: plausible.source,
  bad: { visit: "groups: {nursery-2: {sneezing: 3100 in 2 min}}" },
  good: { visit: "groups: {nursery-2: {sneezing: 31 in 2 min}}" },
  check(visit, reportVisit) {
    for (const [id, group] of groupsOf(visit))
      for (const key of ["sneezing", "coughing"] as const) {
        const text = group[key];
        const [count = 0, minutes = 0] = (text?.match(/\d+/g) ?? []).map(Number);
        const path = ["groups", id, key];
        if (text !== undefined && minutes === 0)
          reportVisit(
            `groups.${id}.${key}: ${text} is no time to count in. Write over how many minutes it was counted: 34 in 2 min.`,
            path,
          );
        else if (count > plausible.counted_in_minute * minutes)
          reportVisit(
            `groups.${id}.${key}: nobody counts ${text}; up to ${plausible.counted_in_minute} a minute would be believed (from memory, wide on purpose). Correct the count or the minutes.`,
            path,
          );
      }
  },
};
