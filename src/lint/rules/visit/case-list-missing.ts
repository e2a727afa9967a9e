import { count } from "../../../words/listing.ts";
import type { VisitRule } from "../../rule.ts";

export const caseListMissing: VisitRule = {
  id: "case-list-missing",
  scope: "visit",
  family: "visit",
  level: "note",
  summary: "The visit lists its cases.",
  protects: "Only against a list can a pig be missed that was opened and never written up.",
  source: { cite: "common practice of recording", confidence: "common-practice" },
  bad: { visit: "cases: " },
  good: { visit: "cases: [birch-2026-04-20-01]" },
  check(visit, reportVisit) {
    if (visit.record.cases === undefined && visit.complete && visit.cases.length > 0)
      reportVisit(
        `cases is blank and ${count(visit.cases.length, "case lies", "cases lie")} here. List them by id on the day itself, so that none is lost on the way home.`,
        ["cases"],
        "key",
      );
  },
};
