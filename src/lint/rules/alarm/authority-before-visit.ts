import { isAfter, moment } from "../../../cases/index.ts";
import type { VisitRule } from "../../rule.ts";

export const authorityBeforeVisit: VisitRule = {
  id: "authority-before-visit",
  scope: "visit",
  family: "alarm",
  level: "error",
  locked: true,
  summary: "The authority entry of a visit is not older than the visit.",
  protects: "A call about an earlier visit does not lift the alarms of this one.",
  source: { cite: "order of events; common practice", confidence: "common-practice" },
  bad: { visit: "authority: {contacted: 2026-04-18T10:00, answer: no suspicion}" },
  good: { visit: "authority: {contacted: 2026-04-20T10:20, answer: no suspicion}" },
  check(visit, reportVisit) {
    const contacted = visit.record.authority?.contacted;
    const [call, day] = [moment(contacted), moment(visit.record.date)];
    if (call !== undefined && day !== undefined && isAfter(day, call))
      reportVisit(
        `authority.contacted: the authority was contacted (${contacted}) before the visit (${visit.record.date}), so this call cannot answer what the visit showed. Correct the time, or call again.`,
        ["authority", "contacted"],
      );
  },
};
