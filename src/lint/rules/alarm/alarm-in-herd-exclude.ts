import type { VisitRule } from "../../rule.ts";
import { reportHerdAlarms } from "../../shared/report-alarms.ts";

export const alarmInHerdExclude: VisitRule = {
  id: "alarm-in-herd-exclude",
  scope: "visit",
  family: "alarm",
  level: "error",
  locked: true,
  summary:
    "A pattern over the groups of a visit that looks like a notifiable disease is told to the authority, and the disease is excluded before samples leave.",
  protects: "A sudden wave of deaths with fever is a suspicion by itself, whatever the first pig shows.",
  source: {
    cite: "duty to report on suspicion: GB guidance on submitting farm animals for post-mortem; field card of the American Association of Swine Veterinarians; each pattern names its own source",
    confidence: "verified",
  },
  bad: {
    visit: "signs: [fever, sudden-death]\ngroups: {nursery-2: {dead: 15, onset: 2026-04-16}}",
  },
  good: {
    visit:
      "signs: [fever, sudden-death]\ngroups: {nursery-2: {dead: 15, onset: 2026-04-16}}\nauthority: {contacted: 2026-04-20T10:20, answer: blood of ten pigs to the authority}",
  },
  check(visit, reportVisit, reportCase) {
    reportHerdAlarms(visit, ["exclude"], reportVisit, reportCase);
  },
};
