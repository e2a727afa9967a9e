import type { FormatRule } from "../../rule.ts";

export const acceptedLockedRule: FormatRule = {
  id: "accepted-locked-rule",
  scope: "format",
  family: "format",
  level: "error",
  locked: true,
  summary: "Alarms, what guards them and faults of the format are not accepted away.",
  protects:
    "A suspicion of a notifiable disease is lifted by the authority, not by an entry in the file; nor does a wrong value become right.",
  source: {
    cite: "duty to report on suspicion; local law rules. The rest is common practice",
    confidence: "common-practice",
  },
  bad: {
    case: "accepted: [{rule: alarm-sign-recorded, at: alarm_check.vesicles, because: looked like sunburn}]",
  },
  good: {
    case: "alarm_check: {vesicles: suspected}\nauthority: {contacted: 2026-04-20T10:20, answer: official veterinarian on the way; suspicion lifted 2026-04-22}",
  },
};
