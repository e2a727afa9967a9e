import { moment } from "../../../cases/index.ts";
import { selectionRules } from "../../../knowledge/index.ts";
import { yearSlips } from "../../misdated.ts";
import type { VisitRule } from "../../rule.ts";

export const caseDayOffVisit: VisitRule = {
  id: "case-day-off-visit",
  scope: "visit",
  family: "visit",
  level: "warning",
  summary: "The pigs of a visit are opened within a week of it.",
  protects:
    "A pig of next month in this month's folder is compared with the wrong air, counts and treatments.",
  source: { cite: "our own limit against misfiled cases", confidence: "common-practice" },
  bad: {
    case: "death: {at: 2026-05-20T09:10}\nopened: {at: 2026-05-20T09:40}\nsamples: ",
  },
  good: { case: "death: {at: 2026-04-22T09:10}\nopened: {at: 2026-04-22T09:40}\nsamples: " },
  check(visit, _reportVisit, reportCase) {
    const day = moment(visit.record.date);
    for (const one of visit.cases) {
      const opened = moment(one.record.opened?.at);
      if (day === undefined || opened === undefined) continue;
      const days = Math.floor(opened.written / 24) - Math.floor(day.written / 24);
      if (days > selectionRules.case_days && yearSlips(one).length === 0)
        reportCase(one)(
          `opened.at: ${days} days after the visit of ${visit.record.date}. Correct the day, or give this pig a visit of its own.`,
          ["opened", "at"],
        );
    }
  },
};
