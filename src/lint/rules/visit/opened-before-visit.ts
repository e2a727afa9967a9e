import { isAfter, moment } from "../../../cases/index.ts";
import { areAllBefore, openedPigs } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const openedBeforeVisit: VisitRule = {
  id: "opened-before-visit",
  scope: "visit",
  family: "visit",
  silent: "never",
  level: "warning",
  summary: "No pig of a visit is opened more than a day before it.",
  protects: "A wrong date links the pigs to the air, the counts and the treatments of another day.",
  lookAlike:
    "A carcass that was brought to you on the day before you went is passed; of one brought earlier, date is the first day of the visit, so write that of the first pig.",
  source: practice("order of events; common practice"),
  bad: { case: "death: {at: 2026-04-18T09:10}\nopened: {at: 2026-04-18T09:40}\nsamples: " },
  good: { case: "death: {at: 2026-04-20T09:10}\nopened: {at: 2026-04-20T09:40}\nsamples: " },
  check(visit, reportVisit, reportCase) {
    const day = moment(visit.record.date);
    if (day === undefined) return;
    const before = openedPigs(visit).filter(({ at, days }) => days < -1 && isAfter(day, at));
    if (areAllBefore(visit))
      reportVisit(
        `date: ${visit.record.date}, yet all ${before.length} pigs were opened before that day, one at ${before[0]?.one.record.opened?.at}. Correct the date of the visit.`,
        ["date"],
      );
    else
      for (const { one } of before)
        reportCase(one)(
          `opened.at: opened (${one.record.opened?.at}) before the visit (${visit.record.date}). Correct one of the two.`,
          ["opened", "at"],
        );
  },
};
