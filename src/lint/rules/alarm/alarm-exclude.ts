import type { CaseRule } from "../../rule.ts";
import { reportAlarms } from "../../shared/report-alarms.ts";

export const alarmExclude: CaseRule = {
  id: "alarm-exclude",
  scope: "case",
  family: "alarm",
  level: "error",
  locked: true,
  summary:
    "Findings that look like a notifiable disease are told to the authority, and the disease is excluded before samples leave.",
  protects:
    "The commonest false alarm looks like the true one; what is waved through once is missed the next time.",
  source: {
    cite: "duty to report on suspicion: GB guidance on submitting farm animals for post-mortem; field card of the American Association of Swine Veterinarians; each pattern names its own source",
    confidence: "verified",
  },
  bad: {
    case: "external:\n  skin:\n    - {process: plaque, site: hams and perineum, distribution: multifocal, shape: round, size: 20 mm, number: 12, colour: purple, severity: moderate, duration: acute}\nurinary:\n  kidneys: {left: [{process: enlargement, distribution: diffuse, size: 150 mm, colour: mottled, severity: moderate, duration: acute}], right: [{process: enlargement, distribution: diffuse, size: 150 mm, colour: mottled, severity: moderate, duration: acute}]}\nsamples:",
  },
  good: {
    case: "external:\n  skin:\n    - {process: plaque, site: hams and perineum, distribution: multifocal, shape: round, size: 20 mm, number: 12, colour: purple, severity: moderate, duration: acute}\nurinary:\n  kidneys: {left: [{process: enlargement, distribution: diffuse, size: 150 mm, colour: mottled, severity: moderate, duration: acute}], right: [{process: enlargement, distribution: diffuse, size: 150 mm, colour: mottled, severity: moderate, duration: acute}]}\nsamples:\nauthority: {contacted: 2026-04-20T10:20, answer: official veterinarian on the way; suspicion lifted 2026-04-22}",
  },
  check(one, report) {
    reportAlarms(one, ["exclude"], report);
  },
};
