import { moment, type Path } from "../../../cases/index.ts";
import { groupsOf } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const visitDateImpossible: VisitRule = {
  id: "visit-date-impossible",
  scope: "visit",
  family: "history",
  silent: "never",
  level: "error",
  summary: "Every date of a visit is a day that exists.",
  protects:
    "Everything in the visit is checked against its day; a day that does not exist switches those checks off.",
  lookAlike:
    "Nothing: such a day was typed wrongly. If only the month of an onset is known, write the first day of it and say so in the note of the group.",
  source: practice("Gregorian calendar, ISO 8601"),
  bad: { visit: "groups: {nursery-2: {onset: 2026-02-30}}" },
  good: { visit: "groups: {nursery-2: {onset: 2026-03-30}}" },
  check(visit, reportVisit) {
    const { date, environment, tests, treatments } = visit.record;
    const check = (text: string | undefined, ...path: Path): void => {
      if (text !== undefined && moment(text) === undefined)
        reportVisit(
          `${path.join(".")}: there is no ${text.slice(0, 10)} in the calendar. Correct the day.`,
          path,
        );
    };
    check(date, "date");
    for (const [id, { onset, feed }] of groupsOf(visit)) {
      check(onset, "groups", id, "onset");
      check(feed?.changed, "groups", id, "feed", "changed");
    }
    for (const [index, { at }] of environment?.entries() ?? []) check(at, "environment", index, "at");
    for (const [index, entry] of treatments?.entries() ?? [])
      if (typeof entry === "object")
        for (const key of ["from", "to"] as const) check(entry[key], "treatments", index, key);
    for (const [index, { at }] of tests?.entries() ?? []) check(at, "tests", index, "at");
  },
};
