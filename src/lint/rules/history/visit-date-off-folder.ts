import { basename } from "node:path";
import { moment } from "../../../cases/index.ts";
import { isVisitDateDoubtful } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const visitDateOffFolder: VisitRule = {
  id: "visit-date-off-folder",
  scope: "visit",
  family: "history",
  silent: "never",
  level: "warning",
  summary: "A visit in a folder named after a day has that day as its date.",
  protects: "A copied visit.yaml with the old date puts today's pigs into last spring.",
  lookAlike:
    "A visit of two days, or pigs opened the day after: the folder and the date have the first day; a folder whose name is no date is never compared.",
  source: practice("common practice of filing: the folder of a visit is named after its day"),
  bad: { visit: "date: 2026-04-19" },
  good: { visit: "date: 2026-04-20" },
  check(visit, reportVisit) {
    const folder = basename(visit.folder);
    const { date } = visit.record;
    // Where all pigs stand against the date, that is said already.
    if (
      moment(folder)?.dayOnly &&
      moment(date) !== undefined &&
      folder !== date &&
      !isVisitDateDoubtful(visit)
    )
      reportVisit(`date: ${date}, yet the folder is ${folder}. Correct the date, or rename the folder.`, [
        "date",
      ]);
  },
};
