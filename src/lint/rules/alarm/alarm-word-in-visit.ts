import { alarmSignsSource } from "../../../knowledge/index.ts";
import type { VisitRule } from "../../rule.ts";
import { unansweredInVisit, wordsText } from "../../shared/alarm-words.ts";

export const alarmWordInVisit: VisitRule = {
  id: "alarm-word-in-visit",
  scope: "visit",
  family: "alarm",
  level: "error",
  locked: true,
  summary:
    "A sign of a notifiable disease in the words of a visit is answered in its alarm check, or seen in one of its cases.",
  protects:
    "The farmer's word for blisters may be the first sign of foot-and-mouth disease, and no alarm reads words.",
  lookAlike:
    "Words about another year, pig or thing: answer the sign in visit.yaml once, alarm_check: {vesicles: none}, and they may stand as they are.",
  source: alarmSignsSource,
  bad: { visit: "complaint: coughing, and blisters on some snouts" },
  good: { visit: "complaint: coughing, and blisters on some snouts\nalarm_check: {vesicles: none}" },
  check(visit, reportVisit) {
    // The case that shows it may be one that was not read.
    if (!visit.complete) return;
    for (const words of unansweredInVisit(visit))
      reportVisit(wordsText(words, visit.settings, true), words.path);
  },
};
