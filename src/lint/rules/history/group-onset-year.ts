import { type Moment, moment, questionText, type Visit } from "../../../cases/index.ts";
import { selectionRules } from "../../../knowledge/index.ts";
import { hasAny } from "../../../notes/index.ts";
import { type GroupOfVisit, groupsOf, isVisitDateDoubtful } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const groupOnsetYear: VisitRule = {
  id: "group-onset-year",
  scope: "visit",
  family: "history",
  silent: "never",
  level: "warning",
  summary:
    "Where the signs of a group began more than half a year ago, the visit says that they are that old.",
  protects:
    "A year typed out of habit turns a sudden outbreak into a problem of long standing, with other causes to look for.",
  lookAlike:
    "Signs that really are so old: say it in the note of the group or in the complaint (on and off for a year), or name the year, and it is believed.",
  source: practice("order of events; the days are the project's own choice"),
  bad: { visit: "groups: {nursery-2: {onset: 2025-04-10}}" },
  good: { visit: "groups: {nursery-2: {onset: 2025-04-10, note: sneezing on and off for a year}}" },
  check(visit, reportVisit) {
    const { date } = visit.record;
    const day = isVisitDateDoubtful(visit) ? undefined : moment(date);
    if (date === undefined || day === undefined) return;
    for (const [id, group] of groupsOf(visit)) {
      const { onset } = group;
      if (onset === undefined) continue;
      const days = daysBetween(moment(onset), day);
      if (days === undefined || days <= selectionRules.onset_days) continue;
      const intended = nearYear(onset, date, day);
      if (intended !== undefined && !isTold(visit, group, onset))
        reportVisit(
          `groups.${id}.onset: ${onset} is ${days} days before the visit (${date}). Check the year (${intended}?); if the signs really are that old, say so under note.`,
          ["groups", id, "onset"],
        );
    }
  },
};

const daysBetween = (began: Moment | undefined, day: Moment): number | undefined =>
  began === undefined ? undefined : Math.floor(day.written / 24) - Math.floor(began.written / 24);

/** The same day in the year of the visit or the one before it, where that lies shortly before the visit. */
function nearYear(onset: string, date: string, day: Moment): string | undefined {
  const year = Number(date.slice(0, 4));
  return [year, year - 1]
    .map((one) => `${one}${onset.slice(4)}`)
    .find((text) => {
      const days = daysBetween(moment(text), day);
      return days !== undefined && days >= 0 && days <= selectionRules.onset_days && text !== onset;
    });
}

/** Whether the words of the visit or the group speak of signs of long standing, or of that year. */
function isTold({ record }: Visit, { note }: GroupOfVisit, onset: string): boolean {
  const year = onset.slice(0, 4);
  const texts = [note, record.complaint, questionText(record).text, record.note];
  return (
    texts.some((text) => text?.includes(year) === true) ||
    [note, record.complaint].some((text) => text !== undefined && hasAny(text, selectionRules.told_long))
  );
}
