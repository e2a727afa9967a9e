import { isFarAfter } from "../../../alarms/index.ts";
import { isAfter, moment } from "../../../cases/index.ts";
import { selectionRules } from "../../../knowledge/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const authorityBeforeVisit: VisitRule = {
  id: "authority-before-visit",
  scope: "visit",
  family: "alarm",
  level: "error",
  locked: true,
  summary:
    "The authority entries of a visit are about that visit: made neither before it nor months after it.",
  protects:
    "A call about an earlier visit, or one made months later, does not lift the alarms of this visit.",
  lookAlike:
    "A call that led to this visit: it answered an earlier suspicion, so it goes into the note of the visit; what is said of today's pigs gets an entry of its own.",
  source: practice("order of events; common practice"),
  bad: { visit: "authority: [{at: 2026-04-18T10:00, stands: reported}]" },
  good: { visit: "authority: [{at: 2026-04-20T10:20, stands: reported}]" },
  check(visit, reportVisit) {
    const { authority = [], date } = visit.record;
    const day = moment(date);
    for (const [index, { at }] of authority.entries()) {
      const [entry, path] = [moment(at), ["authority", index, "at"]];
      if (entry !== undefined && day !== undefined && isAfter(day, entry))
        reportVisit(
          `authority[${index}].at: ${at} lies before the visit (${date}), so that entry cannot be about what the visit showed. Correct the time, or call again.`,
          path,
        );
      else if (isFarAfter(at, date))
        reportVisit(
          `authority[${index}].at: ${at} lies more than ${selectionRules.authority_days} days after the visit (${date}), so that entry answers no alarm. Correct the time.`,
          path,
        );
    }
  },
};
