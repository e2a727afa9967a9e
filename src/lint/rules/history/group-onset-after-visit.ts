import { isAfter, moment } from "../../../cases/index.ts";
import { groupsOf, isVisitDateDoubtful } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const groupOnsetAfterVisit: VisitRule = {
  id: "group-onset-after-visit",
  scope: "visit",
  family: "history",
  silent: "never",
  level: "error",
  summary: "The signs of a group began before the visit or on the same day.",
  protects: "Incubation, spread and the effect of a change are all reckoned from the first day of signs.",
  lookAlike:
    "Signs that began between the visit and a later opening: they belong to a visit of their own, with its own date.",
  source: practice("order of events; common practice"),
  bad: { visit: "groups: {nursery-2: {onset: 2026-05-10}}" },
  good: { visit: "groups: {nursery-2: {onset: 2026-04-10}}" },
  check(visit, reportVisit) {
    const day = isVisitDateDoubtful(visit) ? undefined : moment(visit.record.date);
    for (const [id, { onset }] of groupsOf(visit)) {
      const began = moment(onset);
      if (day !== undefined && began !== undefined && isAfter(began, day))
        reportVisit(
          `groups.${id}.onset: ${onset} is after the visit (${visit.record.date}). Correct the day.`,
          ["groups", id, "onset"],
        );
    }
  },
};
