import { count } from "../../../words/listing.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const caseListMissing: VisitRule = {
  id: "case-list-missing",
  scope: "visit",
  family: "visit",
  level: "note",
  summary: "The visit lists its cases.",
  protects: "Only a list shows that a pig was opened and never written up.",
  lookAlike:
    "A visit whose pigs were all written up on the spot: the list costs a line, and only a list shows a missing one.",
  source: practice("common practice of record keeping: pigs are listed on the day they are opened"),
  bad: { visit: "cases: " },
  good: { visit: "cases: [birch-2026-04-20-01]" },
  check(visit, reportVisit) {
    if (visit.record.cases === undefined && visit.complete && visit.cases.length > 0)
      reportVisit(
        `cases is blank, yet ${count(visit.cases.length, "case lies", "cases lie")} in this folder. List them by id on the day, so that none is lost on the way home.`,
        ["cases"],
        "key",
      );
  },
};
