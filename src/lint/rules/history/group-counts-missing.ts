import { submissionSource } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import type { VisitRule } from "../../rule.ts";

const counts = ["at_risk", "affected", "dead"] as const;

export const groupCountsMissing: VisitRule = {
  id: "group-counts-missing",
  scope: "visit",
  family: "history",
  level: "warning",
  summary: "For every group that a pig came from, the pigs at risk, affected and dead are counted.",
  protects: "Two dead of ten and two dead of a thousand are different diseases.",
  lookAlike:
    "A group that has emptied since: 0 is an answer; an estimate of the stockman is one as well, with a note of the group that says so.",
  source: submissionSource,
  bad: { visit: "groups: {nursery-2: {affected: , dead: }}" },
  good: { visit: "groups: {nursery-2: {at_risk: 238, affected: 40, dead: 2}}" },
  check(visit, reportVisit) {
    const opened = new Set(
      visit.cases.map(({ record }) => record.pig?.group).filter((id) => id !== undefined),
    );
    const known = Object.keys(visit.farm?.record.groups ?? visit.record.groups ?? {});
    for (const id of opened) {
      if (!known.includes(id)) continue;
      const group = visit.record.groups?.[id];
      if (group === undefined)
        reportVisit(
          `groups: a pig from ${id} was opened, and the group is not listed here. Write ${id}: {at_risk: …, affected: …, dead: …, onset: …}.`,
          ["groups"],
          "key",
        );
      else {
        const missing = counts.filter((key) => group[key] === undefined);
        if (missing.length > 0)
          reportVisit(
            `groups.${id}: ${listing(missing)} ${missing.length === 1 ? "is" : "are"} blank. Count or ask; 0 is an answer.`,
            ["groups", id],
            "key",
          );
      }
    }
  },
};
