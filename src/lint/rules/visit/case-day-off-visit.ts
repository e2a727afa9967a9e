import { selectionRules } from "../../../knowledge/index.ts";
import { areAllAfter, openedPigs } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const caseDayOffVisit: VisitRule = {
  id: "case-day-off-visit",
  scope: "visit",
  family: "visit",
  silent: "never",
  level: "warning",
  summary: "The pigs of a visit are opened within a week of it.",
  protects:
    "A pig from next month in this month's folder is compared with the wrong air, counts and treatments.",
  lookAlike:
    "A pig of the visit that died and was kept frozen: it is compared with the air and counts of that visit, so accept the finding with that reason.",
  source: practice("our own limit against misfiled cases"),
  bad: {
    case: "death: {at: 2026-05-20T09:10}\nopened: {at: 2026-05-20T09:40}\nsamples: ",
  },
  good: { case: "death: {at: 2026-04-22T09:10}\nopened: {at: 2026-04-22T09:40}\nsamples: " },
  check(visit, reportVisit, reportCase) {
    const { date } = visit.record;
    const late = openedPigs(visit).filter(({ days }) => days > selectionRules.case_days);
    if (areAllAfter(visit))
      reportVisit(
        `date: ${date}, yet all ${late.length} pigs were opened more than a week after it, one at ${late[0]?.one.record.opened?.at}. Correct the date of the visit.`,
        ["date"],
      );
    else
      for (const { one, days } of late)
        reportCase(one)(
          `opened.at: ${days} days after the visit on ${date}. Correct the day, or give this pig a visit of its own.`,
          ["opened", "at"],
        );
  },
};
