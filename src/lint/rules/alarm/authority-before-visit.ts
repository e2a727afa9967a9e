import { isFarAfter, openAlarms, since } from "../../../alarms/index.ts";
import { isAfter, moment } from "../../../cases/index.ts";
import { selectionRules } from "../../../knowledge/index.ts";
import { listing } from "../../../words/listing.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const authorityBeforeVisit: VisitRule = {
  id: "authority-before-visit",
  scope: "visit",
  family: "alarm",
  level: "error",
  locked: true,
  summary:
    "The authority entry of a visit is about that visit: made neither before it or its alarms nor more than a month after it.",
  protects:
    "A call about an earlier visit, one made before there was an alarm to report, or one made months later does not lift the alarms of this visit.",
  source: practice("order of events; common practice"),
  bad: { visit: "authority: {contacted: 2026-04-18T10:00, answer: no suspicion}" },
  good: { visit: "authority: {contacted: 2026-04-20T10:20, answer: no suspicion}" },
  check(visit, reportVisit) {
    const contacted = visit.record.authority?.contacted;
    if (contacted === undefined) return;
    const [call, day] = [moment(contacted), moment(visit.record.date)];
    if (call !== undefined && day !== undefined && isAfter(day, call))
      reportVisit(
        `authority.contacted: the authority was contacted (${contacted}) before the visit (${visit.record.date}), so that call cannot have been about what the visit showed. Correct the time, or call again.`,
        ["authority", "contacted"],
      );
    else if (isFarAfter(contacted, visit.record.date))
      reportVisit(
        `authority.contacted: the authority was contacted (${contacted}) more than ${selectionRules.call_days} days after the visit (${visit.record.date}), so that call answers no alarm. Correct the time.`,
        ["authority", "contacted"],
      );
    else if (call !== undefined) {
      const early = visit.cases.filter((one) =>
        openAlarms(one).some(({ evidence }) => {
          const from = since(one, evidence);
          return from !== undefined && isAfter(from, call);
        }),
      );
      if (early.length > 0)
        reportVisit(
          `authority.contacted: the authority was contacted (${contacted}) before there was an alarm in ${listing(early.map(({ id }) => id))} to report, so that call does not answer it. Correct the time, or call again.`,
          ["authority", "contacted"],
        );
    }
  },
};
