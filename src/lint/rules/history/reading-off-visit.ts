import { basename } from "node:path";
import { type Moment, moment } from "../../../cases/index.ts";
import { selectionRules } from "../../../knowledge/index.ts";
import { isVisitDateDoubtful } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const readingOffVisit: VisitRule = {
  id: "reading-off-visit",
  scope: "visit",
  family: "history",
  silent: "never",
  level: "warning",
  summary: "Air readings were taken on the days of the visit.",
  protects: "Air changes with the wind; a reading from last week says nothing about the pigs opened today.",
  lookAlike:
    "A logger that ran all week: give the reading the day of the visit, and the span in its note. Two days before or after are passed.",
  source: practice("our own limit against copied readings"),
  bad: { visit: "environment: [{group: nursery-2, at: 2026-04-02T08:30, ammonia: 14 ppm}]" },
  good: { visit: "environment: [{group: nursery-2, at: 2026-04-20T08:30, ammonia: 14 ppm}]" },
  check(visit, reportVisit) {
    const { environment } = visit.record;
    if (environment === undefined) return;
    const day = moment(visit.record.date);
    // Where the date of the visit is wrong, its pigs or its folder say so, once.
    if (day === undefined || isVisitDateDoubtful(visit)) return;
    const folder = moment(basename(visit.folder));
    for (const [index, { at }] of environment.entries()) {
      const read = moment(at);
      if (read !== undefined && !isNear(read, day) && (folder === undefined || !isNear(read, folder)))
        reportVisit(
          `environment[${index}].at: taken on ${at?.slice(0, 10)}, but the visit was on ${visit.record.date}. Correct the day, or leave out a reading from another visit.`,
          ["environment", index, "at"],
        );
    }
  },
};

const isNear = (read: Moment, day: Moment): boolean =>
  Math.abs(Math.floor(read.written / 24) - Math.floor(day.written / 24)) <= selectionRules.reading_days;
