import type { CaseRule } from "../../rule.ts";
import { reportAlarms } from "../../shared/report-alarms.ts";

export const alarmPattern: CaseRule = {
  id: "alarm-pattern",
  scope: "case",
  family: "alarm",
  level: "error",
  locked: true,
  summary:
    "Findings that may be a notifiable disease stop the examination until the competent veterinary authority has answered.",
  protects: "Herds, people and a country are at stake; the first hours decide how far a disease gets.",
  source: {
    cite: "duty to report on suspicion: GB guidance on submitting farm animals for post-mortem; field card of the American Association of Swine Veterinarians; each pattern names its own source",
    confidence: "verified",
  },
  bad: {
    case: "lymphoid:\n  spleen:\n    - {process: enlargement, distribution: diffuse, size: 300 mm, colour: black, consistency: friable, severity: moderate, duration: acute}\n  gastrohepatic_nodes:\n    - {process: haemorrhage, distribution: diffuse, size: 25 mm, colour: dark-red, severity: moderate, duration: acute}\nsamples:",
  },
  good: {
    case: "lymphoid:\n  spleen:\n    - {process: enlargement, distribution: diffuse, size: 300 mm, colour: black, consistency: friable, severity: moderate, duration: acute}\n  gastrohepatic_nodes:\n    - {process: haemorrhage, distribution: diffuse, size: 25 mm, colour: dark-red, severity: moderate, duration: acute}\nsamples:\nauthority: {contacted: 2026-04-20T10:20, answer: official veterinarian on the way; suspicion lifted 2026-04-22}",
  },
  check(one, report) {
    reportAlarms(one, ["stop", "call"], report);
  },
};
