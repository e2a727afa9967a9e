import type { VisitRule } from "../../rule.ts";
import { reportHerdAlarms } from "../../shared/report-alarms.ts";

export const alarmInHerd: VisitRule = {
  id: "alarm-in-herd",
  scope: "visit",
  family: "alarm",
  level: "error",
  locked: true,
  summary:
    "A pattern over several pigs that may be a notifiable disease stops the visit until the competent veterinary authority has answered.",
  protects: "No single pig shows it; nothing and nobody may go on to the next farm before it is excluded.",
  source: {
    cite: "duty to report on suspicion: GB guidance on submitting farm animals for post-mortem; field card of the American Association of Swine Veterinarians; each pattern names its own source",
    confidence: "verified",
  },
  bad: {
    settings: "notifiable: [scour-in-all-ages]",
    visit: "signs: [diarrhoea, vomiting]\ngroups: {nursery-2: {dead: 52, affected: 90, onset: 2026-04-12}}",
  },
  good: {
    visit: "signs: [diarrhoea, vomiting]\ngroups: {nursery-2: {dead: 52, affected: 90, onset: 2026-04-12}}",
  },
  check(visit, reportVisit, reportCase) {
    reportHerdAlarms(visit, ["stop", "call"], reportVisit, reportCase);
  },
};
