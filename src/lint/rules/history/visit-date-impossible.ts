import { moment, type Path } from "../../../cases/index.ts";
import { groupsOf } from "../../../record/index.ts";

import type { VisitRule } from "../../rule.ts";

export const visitDateImpossible: VisitRule = {
  id: "visit-date-impossible",
  scope: "visit",
  family: "history",
  level: "error",
  summary: "Every date of a visit is a day of the calendar.",
  protects:
    "Everything of the visit is held against its day; a day that does not exist switches these checks off.",
  source: { cite: "Gregorian calendar, ISO 8601", confidence: "common-practice" },
  bad: { visit: "groups: {nursery-2: {onset: 2026-02-30}}" },
  good: { visit: "groups: {nursery-2: {onset: 2026-03-30}}" },
  check(visit, reportVisit) {
    const { record } = visit;
    const dates: [Path, string | undefined][] = [
      [["date"], record.date],
      ...groupsOf(visit).map(([id, { onset }]): [Path, string | undefined] => [
        ["groups", id, "onset"],
        onset,
      ]),
      ...(record.environment ?? []).map(({ at }, index): [Path, string | undefined] => [
        ["environment", index, "at"],
        at,
      ]),
      ...(record.tests ?? []).map(({ at }, index): [Path, string | undefined] => [
        ["tests", index, "at"],
        at,
      ]),
    ];
    for (const [path, text] of dates)
      if (text !== undefined && moment(text) === undefined)
        reportVisit(
          `${path.join(".")}: there is no ${text.slice(0, 10)} in the calendar. Correct the day.`,
          path,
        );
  },
};
