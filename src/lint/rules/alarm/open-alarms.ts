/** Open alarms of one pig, and those that only the pigs of a visit together show, by what they ask for. */
import { type Alarm, alarmText, openAlarms } from "../../../alarms/index.ts";
import { type CaseRule, type RuleRow, type VisitRule, verified } from "../../rule.ts";

interface OfLevels extends RuleRow {
  readonly levels: readonly Alarm["pattern"]["level"][];
}

const dutyToReport = verified(
  "duty to report on suspicion: GB guidance on submitting farm animals for post-mortem; field card of the American Association of Swine Veterinarians; each pattern names its own source",
);

const inCase: readonly OfLevels[] = [
  {
    id: "alarm-pattern",
    level: "error",
    locked: true,
    summary:
      "Findings that may be a notifiable disease stop the examination until the competent veterinary authority has released or excluded it.",
    protects: "Herds, people and a country are at stake; the first hours decide how far a disease gets.",
    lookAlike:
      "Each alarm names its own look-alikes and what tells them apart: carcase explain with the name of the alarm. What the table cannot tell, the authority excludes.",
    source: dutyToReport,
    bad: {
      case: "alarm_check: {at_knife: {dark_spleen: seen, bloody_nodes: seen}}\nlymphoid:\n  spleen:\n    - {process: enlargement, distribution: diffuse, size: 300 mm, colour: black, consistency: friable, severity: moderate, duration: acute}\n  gastrohepatic_nodes:\n    - {process: haemorrhage, distribution: diffuse, size: 25 mm, colour: dark-red, severity: moderate, duration: acute}\nsamples:",
    },
    good: {
      case: "alarm_check: {at_knife: {dark_spleen: seen, bloody_nodes: seen}}\nlymphoid:\n  spleen:\n    - {process: enlargement, distribution: diffuse, size: 300 mm, colour: black, consistency: friable, severity: moderate, duration: acute}\n  gastrohepatic_nodes:\n    - {process: haemorrhage, distribution: diffuse, size: 25 mm, colour: dark-red, severity: moderate, duration: acute}\nsamples:\nauthority: [{at: 2026-04-22, stands: excluded, for: [dark-spleen-and-haemorrhagic-nodes], sample: PCR of blood}]",
    },
    levels: ["stop", "call"],
  },
  {
    id: "alarm-exclude",
    level: "error",
    locked: true,
    summary:
      "Findings that look like a notifiable disease are reported to the authority, and the disease is excluded before samples leave.",
    protects:
      "The commonest false alarm looks like the true one; what is waved through once is missed the next time.",
    lookAlike:
      "The common harmless disease, and no eye can tell: only stands: excluded with the negative sample, or a release with its ground, closes it.",
    source: dutyToReport,
    bad: {
      case: "alarm_check: {at_knife: {petechiae: seen}}\nexternal:\n  skin:\n    - {process: plaque, site: hams and perineum, distribution: multifocal, shape: round, size: 20 mm, number: 12, colour: purple, severity: moderate, duration: acute}\nurinary:\n  kidneys: {left: [{process: enlargement, distribution: diffuse, size: 150 mm, colour: mottled, severity: moderate, duration: acute}, {process: petechiae, distribution: diffuse, size: 1 mm, colour: red, severity: moderate, duration: acute}], right: [{process: enlargement, distribution: diffuse, size: 150 mm, colour: mottled, severity: moderate, duration: acute}, {process: petechiae, distribution: diffuse, size: 1 mm, colour: red, severity: moderate, duration: acute}]}\nsamples:",
    },
    good: {
      case: "alarm_check: {at_knife: {petechiae: seen}}\nexternal:\n  skin:\n    - {process: plaque, site: hams and perineum, distribution: multifocal, shape: round, size: 20 mm, number: 12, colour: purple, severity: moderate, duration: acute}\nurinary:\n  kidneys: {left: [{process: enlargement, distribution: diffuse, size: 150 mm, colour: mottled, severity: moderate, duration: acute}, {process: petechiae, distribution: diffuse, size: 1 mm, colour: red, severity: moderate, duration: acute}], right: [{process: enlargement, distribution: diffuse, size: 150 mm, colour: mottled, severity: moderate, duration: acute}, {process: petechiae, distribution: diffuse, size: 1 mm, colour: red, severity: moderate, duration: acute}]}\nsamples:\nauthority: [{at: 2026-04-22, stands: excluded, for: [round-skin-plaques-and-spotted-kidneys], sample: PCR of blood}]",
    },
    levels: ["exclude"],
  },
];

const weight = { exclude: 0, call: 1, stop: 2 } as const;

/** What stands of a pig or a visit: a stronger alarm says a weaker one of the same diseases, until the authority lifts it. */
const told = (subject: Alarm["subject"]): Alarm[] => {
  const open = openAlarms(subject).filter((alarm) => alarm.subject === subject);
  return open.filter(
    ({ pattern: { level, diseases } }) =>
      !open.some(
        ({ pattern }) =>
          weight[pattern.level] > weight[level] && diseases.every((one) => pattern.diseases.includes(one)),
      ),
  );
};

export const alarmsInCase: readonly CaseRule[] = inCase.map(({ levels, ...row }) => ({
  ...row,
  scope: "case",
  family: "alarm",
  check(one, report) {
    for (const alarm of told(one)) {
      if (!levels.includes(alarm.pattern.level)) continue;
      // One that rests on the alarm check alone is reported by alarm-sign-recorded.
      const shown = alarm.evidence.filter(({ path }) => path[0] !== "alarm_check");
      if (shown.length > 0 || alarm.evidence.length === 0)
        report(alarmText(alarm), shown[0]?.path ?? ["case"]);
    }
  },
}));

const inHerd: readonly OfLevels[] = [
  {
    id: "alarm-in-herd",
    level: "error",
    locked: true,
    summary:
      "A pattern across several pigs that may be a notifiable disease stops the visit until the competent veterinary authority has released or excluded it.",
    protects: "No single pig shows it; nothing and nobody may go on to the next farm until it is excluded.",
    lookAlike:
      "An outbreak of a usual disease in pigs of all ages: the counts cannot tell the two apart, so an authority entry in visit.yaml must.",
    source: dutyToReport,
    bad: {
      settings: "notifiable: [scour-in-all-ages]",
      visit: "signs: [diarrhoea, vomiting]\ngroups: {nursery-2: {dead: 52, affected: 90, onset: 2026-04-12}}",
      case: "selection: {signs: [diarrhoea]}",
    },
    good: {
      visit: "signs: [diarrhoea, vomiting]\ngroups: {nursery-2: {dead: 52, affected: 90, onset: 2026-04-12}}",
      case: "selection: {signs: [diarrhoea]}",
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
    lookAlike:
      "Heat, gas or a failed fan kill many pigs at once as well: leave fever out of the signs where no pig had it, and write into complaint what failed.",
    source: dutyToReport,
    bad: {
      visit: "signs: [fever, sudden-death]\ngroups: {nursery-2: {dead: 30, onset: 2026-04-16}}",
    },
    good: {
      visit:
        "signs: [fever, sudden-death]\ngroups: {nursery-2: {dead: 30, onset: 2026-04-16}}\nauthority: [{at: 2026-04-21T10:20, stands: excluded, for: [many-deaths-in-a-group], sample: PCR of the blood of ten pigs}]",
    },
    levels: ["exclude"],
  },
];

export const alarmsInHerd: readonly VisitRule[] = inHerd.map(({ levels, ...row }) => ({
  ...row,
  scope: "visit",
  family: "alarm",
  check(visit, reportVisit, reportCase) {
    for (const alarm of told(visit)) {
      if (!levels.includes(alarm.pattern.level)) continue;
      const first = alarm.evidence.find(({ subject }) => subject === visit) ?? alarm.evidence[0];
      const shownBy = visit.cases.find((one) => one === first?.subject);
      const report = shownBy === undefined ? reportVisit : reportCase(shownBy);
      report(alarmText(alarm), first?.path ?? ["visit"]);
    }
  },
}));
