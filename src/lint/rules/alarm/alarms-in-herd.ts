/** Open alarms that only the pigs of a visit together show, by what they ask for. */
import { type Alarm, alarmText, findAlarms } from "../../../alarms/index.ts";
import { type RuleRow, type VisitRule, verified } from "../../rule.ts";

interface OfLevels extends RuleRow {
  readonly levels: readonly Alarm["pattern"]["level"][];
}

const rows: readonly OfLevels[] = [
  {
    id: "alarm-in-herd",
    level: "error",
    locked: true,
    summary:
      "A pattern across several pigs that may be a notifiable disease stops the visit until the competent veterinary authority has answered.",
    protects: "No single pig shows it; nothing and nobody may go on to the next farm until it is excluded.",
    source: verified(
      "duty to report on suspicion: GB guidance on submitting farm animals for post-mortem; field card of the American Association of Swine Veterinarians; each pattern names its own source",
    ),
    bad: {
      settings: "notifiable: [scour-in-all-ages]",
      visit: "signs: [diarrhoea, vomiting]\ngroups: {nursery-2: {dead: 52, affected: 90, onset: 2026-04-12}}",
    },
    good: {
      visit: "signs: [diarrhoea, vomiting]\ngroups: {nursery-2: {dead: 52, affected: 90, onset: 2026-04-12}}",
    },
    levels: ["stop", "call"],
  },
  {
    id: "alarm-in-herd-exclude",
    level: "error",
    locked: true,
    summary:
      "A pattern across the groups of a visit that looks like a notifiable disease is reported to the authority, and the disease is excluded before samples leave.",
    protects:
      "A sudden wave of deaths with fever is grounds for suspicion in itself, whatever the first pig shows.",
    source: verified(
      "duty to report on suspicion: GB guidance on submitting farm animals for post-mortem; field card of the American Association of Swine Veterinarians; each pattern names its own source",
    ),
    bad: {
      visit: "signs: [fever, sudden-death]\ngroups: {nursery-2: {dead: 15, onset: 2026-04-16}}",
    },
    good: {
      visit:
        "signs: [fever, sudden-death]\ngroups: {nursery-2: {dead: 15, onset: 2026-04-16}}\nauthority: {contacted: 2026-04-20T10:20, answer: blood of ten pigs to the authority}",
    },
    levels: ["exclude"],
  },
];

export const alarmsInHerd: readonly VisitRule[] = rows.map(({ levels, ...row }) => ({
  ...row,
  scope: "visit",
  family: "alarm",
  check(visit, reportVisit, reportCase) {
    for (const alarm of findAlarms(visit)) {
      if (alarm.lifted || alarm.subject !== visit || !levels.includes(alarm.pattern.level)) continue;
      const first = alarm.evidence.find(({ subject }) => subject === visit) ?? alarm.evidence[0];
      const shownBy = visit.cases.find((one) => one === first?.subject);
      const report = shownBy === undefined ? reportVisit : reportCase(shownBy);
      report(alarmText(alarm), first?.path ?? ["visit"]);
    }
  },
}));
